// Runs the tests of a group in the mutation tester's own process: they are bundled and loaded once, and each planted fault is
// switched on and off in what is loaded already. A fault then costs milliseconds, where a fresh vitest costs a second or two.
// For groups whose tests are pure: no clock, no files beside them, nothing shared between tests that a fault could spoil.

import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const collect = fileURLToPath(new URL('collect.mjs', import.meta.url));
const state = (globalThis.__stryker__ ??= {});

class InProcessRunner {
  #bundle = path.resolve('mutation-tests.mjs');
  #loaded;
  #copies = 0;
  #lastToSee = new Set();

  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    const files = (process.env['MUTATION_TESTS'] ?? '').split(' ').filter((file) => file !== '');
    await build({
      stdin: {
        contents: [
          ...files.map((file) => `import ${JSON.stringify(path.resolve(file))};`),
          `export { collected } from ${JSON.stringify(collect)};`,
        ].join('\n'),
        resolveDir: process.cwd(),
      },
      outfile: this.#bundle,
      bundle: true,
      format: 'esm',
      platform: 'node',
      logLevel: 'error',
      packages: 'external',
      plugins: [
        {
          name: 'tests are collected',
          setup: ({ onResolve }) =>
            onResolve({ filter: /^vitest$/ }, ({ importer }) =>
              importer === collect ? { path: 'vitest', external: true } : { path: collect },
            ),
        },
      ],
    });
  }

  async dryRun() {
    const tests = await this.#load();
    const results = [];
    for (const test of tests) {
      state.currentTestId = test.name;
      const begun = performance.now();
      const failure = await failureOf(test);
      const timeSpentMs = performance.now() - begun;
      const told = { id: test.name, name: test.name, timeSpentMs };
      results.push(
        failure === undefined ? { ...told, status: 0 } : { ...told, status: 1, failureMessage: failure },
      );
    }
    state.currentTestId = undefined;
    return { status: 'complete', tests: results, mutantCoverage: state.mutantCoverage };
  }

  async mutantRun(asked) {
    const told = await this.#attempt(asked);
    if (told.status !== 'killed' || asked.mutantActivation === 'static') return told;
    // A fault may spoil what tests share. Where its test fails without it too, it is tried again with everything fresh.
    const [killer] = (await this.#load()).filter(({ name }) => name === told.killedBy[0]);
    if (killer && (await failureOf(killer)) === undefined) return told;
    this.#loaded = undefined;
    const again = await this.#attempt(asked);
    this.#loaded = undefined;
    return again;
  }

  async #attempt({ activeMutant, testFilter, hitLimit, mutantActivation }) {
    const atLoad = mutantActivation === 'static';
    state.activeMutant = atLoad ? activeMutant.id : undefined;
    state.hitCount = hitLimit === undefined ? undefined : 0;
    state.hitLimit = hitLimit;
    try {
      const all = await this.#load(atLoad ? activeMutant.id : undefined);
      state.activeMutant = activeMutant.id;
      let nrOfTests = 0;
      for (const test of this.#likelyFirst(all, testFilter)) {
        nrOfTests += 1;
        const failureMessage = await failureOf(test);
        if (hitLimit !== undefined && state.hitCount > hitLimit) return { status: 'timeout' };
        if (failureMessage !== undefined) {
          this.#lastToSee.delete(test.name);
          this.#lastToSee.add(test.name);
          return { status: 'killed', killedBy: [test.name], failureMessage, nrOfTests };
        }
      }
      return { status: 'survived', nrOfTests };
    } catch (error) {
      return { status: 'error', errorMessage: String(error) };
    } finally {
      state.activeMutant = undefined;
    }
  }

  /** What saw the fault before often sees the next one, which stands a few characters further on. */
  #likelyFirst(all, testFilter) {
    const byName = new Map(all.map((test) => [test.name, test]));
    const wanted = new Set(testFilter ?? byName.keys());
    const first = [...this.#lastToSee].reverse().filter((name) => wanted.has(name));
    return [...new Set([...first, ...wanted])].flatMap((name) => byName.get(name) ?? []);
  }

  /** A fault that acts while modules are loaded has a copy of them of its own. */
  async #load(copy) {
    if (copy !== undefined) return (await import(`${pathToFileURL(this.#bundle)}?${copy}`)).collected;
    this.#loaded ??= (await import(`${pathToFileURL(this.#bundle)}?copy${this.#copies++}`)).collected;
    return this.#loaded;
  }
}

async function failureOf(test) {
  try {
    await test.run();
    return undefined;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

export const strykerPlugins = [{ kind: 'TestRunner', name: 'in-process', injectableClass: InProcessRunner }];
