// A set of outputs is replaced as a set, on a real disk: when a move fails, when the disk is full, read-only, or when the
// process is killed at any moment. Afterwards there is the old set or the new one, and no left-over beside it.

import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, symlinkSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeFile, writeFiles } from '../../src/cli/write-files.js';
import { folderWith, troughline } from './console.js';

const names = ['report.html', 'report.md', 'report.json', 'report.csv'];
const set = (generation: string, size = 1): { name: string; content: string }[] =>
  names.map((name) => ({ name, content: `${generation}\n`.repeat(size) }));

/** The generations that the set's files are of, and everything else that lies in the folder. */
function read(folder: string): { generations: string[]; others: string[] } {
  const generations = new Set<string>();
  for (const name of names)
    for (const line of readFileSync(path.join(folder, name), 'utf8').trimEnd().split('\n'))
      generations.add(line);
  const others = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(
    (name) => !names.includes(name),
  );
  return { generations: [...generations], others: others.sort() };
}

describe('a set of files', () => {
  test('is back as it was when any of its moves fails', () => {
    for (let failing = 0; failing < names.length; failing++) {
      const folder = folderWith({});
      writeFiles(folder, set('old'));
      let moves = 0;
      const move = (from: string, to: string): void => {
        if (moves++ === failing) throw Object.assign(new Error('held'), { code: 'EBUSY' });
        renameSync(from, to);
      };
      expect(() => writeFiles(folder, set('new'), move)).toThrow('could not write: another program holds it');
      expect(read(folder)).toEqual({ generations: ['old'], others: [] });
    }
  });

  test('that is new leaves nothing when a move fails', () => {
    const folder = folderWith({ 'mine.txt': 'kept' });
    let moves = 0;
    const move = (from: string, to: string): void => {
      if (moves++ === 2) throw new Error('x');
      renameSync(from, to);
    };
    expect(() => writeFiles(folder, set('new'), move)).toThrow();
    expect(readdirSync(folder).sort()).toEqual(['mine.txt']);
  });

  test('does not touch what others keep in the folder, and replaces a link instead of following it', () => {
    const folder = folderWith({ 'mine.part': 'kept', 'away/secret': 'kept' });
    symlinkSync('away/secret', path.join(folder, 'report.md'));
    writeFiles(folder, set('new'));
    expect(read(folder)).toEqual({ generations: ['new'], others: ['away', 'away/secret', 'mine.part'] });
    expect(readFileSync(path.join(folder, 'away/secret'), 'utf8')).toBe('kept');
  });

  test('a journal in the folder moves nothing but parts of that folder', () => {
    const moves = [
      ['../a.html.999999999.part', '../a.html'],
      ['b', 'c'],
      ['d.html.999999999.part', 'e.html'],
    ];
    const folder = folderWith({
      b: 'b',
      'd.html.999999999.part': 'd',
      '.troughline-set.json': JSON.stringify(moves),
    });
    writeFiles(folder, [{ name: 'x.md', content: 'x' }]);
    // Parts are cleared, since no process of that number writes them.
    expect(readdirSync(folder).sort()).toEqual(['b', 'x.md']);
  });
});

describe('killed while writing', () => {
  let script = '';
  beforeAll(async () => {
    script = path.join(mkdtempSync(path.join(os.tmpdir(), 'trough-write-')), 'write.mjs');
    await build({
      stdin: {
        contents: `import { writeFiles } from './src/cli/write-files.js';
          const [, , folder, from] = process.argv;
          process.stdout.write('.');
          for (let i = Number(from); ; i++)
            writeFiles(folder, ${JSON.stringify(names)}.map((name) => ({ name, content: (i + '\\n').repeat(4000) })));`,
        resolveDir: path.resolve(import.meta.dirname, '../..'),
      },
      bundle: true,
      platform: 'node',
      format: 'esm',
      outfile: script,
    });
  });

  afterAll(() => rmSync(path.dirname(script), { recursive: true, force: true }));

  test('a hundred times at random moments: the next run finds the old set or the new one, whole', async () => {
    const folder = folderWith({});
    writeFiles(folder, set('0'));
    let interrupted = 0;
    for (let i = 1; i <= 100; i++) {
      await killSoon(script, [folder, String(i * 1_000_000)]);
      if (readdirSync(folder).some((name) => name.endsWith('.part'))) interrupted++;
      writeFiles(folder, [{ name: 'other.md', content: '' }]);
      const { generations, others } = read(folder);
      expect(generations).toHaveLength(1);
      expect(others).toEqual(['other.md']);
    }
    // Else the kills came too late or too early to say anything.
    expect(interrupted).toBeGreaterThan(30);
  }, 60_000);
});

describe('a place that cannot be written', () => {
  const mayMount = process.platform === 'linux' && process.getuid?.() === 0;

  test.runIf(mayMount)('a disk that fills up keeps the old set, and says so', (context) => {
    const folder = folderWith({});
    mkdirSync(path.join(folder, 'disk'));
    const disk = path.join(folder, 'disk');
    // A container may forbid mounts even to its root; then there is nothing to try.
    if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=256k', 'tmpfs', disk]).status !== 0)
      return context.skip();
    try {
      writeFiles(disk, set('old', 5000));
      expect(() => writeFiles(disk, set('new', 25_000))).toThrow('no space left on the disk');
      expect(read(disk)).toEqual({ generations: ['old'], others: [] });
      spawnSync('mount', ['-o', 'remount,ro', disk]);
      expect(() => writeFiles(disk, set('new'))).toThrow('the disk is read-only');
      expect(read(disk)).toEqual({ generations: ['old'], others: [] });
    } finally {
      spawnSync('umount', [disk]);
    }
  });

  test.runIf(process.platform === 'linux')('/dev/full says so and is not replaced', async () => {
    expect(() => writeFile('/dev/full', 'x')).toThrow(
      '/dev/full: could not write: no space left on the disk',
    );
    const ran = await troughline(['check', '-f', 'json=/dev/full'], {
      cwd: folderWith({ 'a.trough': 'plant A {\n}\n' }),
    });
    expect(ran.exit).toBe(2);
    expect(ran.err).toBe('troughline: /dev/full: could not write: no space left on the disk\n');
  });

  test('a file where the folder should be', async () => {
    const ran = await troughline(['check', '-f', 'json=x/check.json'], {
      cwd: folderWith({ 'a.trough': 'plant A {\n}\n', x: '' }),
    });
    expect(ran.exit).toBe(2);
    expect(ran.err).toContain('could not write: a file stands where a folder is needed');
  });
});

/** Moments spread evenly over 8 ms, the same in every run. */
let killed = 0;

/** Ends once the process is gone; it lives long enough to write, and not always long enough to finish a set. */
async function killSoon(script: string, args: readonly string[]): Promise<void> {
  const writer = spawn(process.execPath, [script, ...args], { stdio: ['ignore', 'pipe', 'inherit'] });
  const gone = new Promise((resolve) => writer.once('exit', resolve));
  await new Promise((resolve) => writer.stdout.once('data', resolve));
  setTimeout(() => writer.kill('SIGKILL'), (Math.imul(killed++, 2654435761) >>> 0) / 2 ** 29);
  await gone;
}
