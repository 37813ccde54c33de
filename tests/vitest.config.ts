import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Tests that put something in the place of a module of the source: what they load is theirs alone. */
export const apart = ['tests/domain/wear/changed-wear.test.ts'];

const exclude = ['tests/editor/**', 'tests/bench/**'];
const shared = {
  root: fileURLToPath(new URL('..', import.meta.url)),
  setupFiles: ['tests/kit/random-seed.ts'],
  // Stops what hangs; a busy machine of two cores takes a minute for the longest.
  testTimeout: 180_000,
};

export default defineConfig({
  test: {
    globalSetup: ['tests/kit/generated.ts', 'tests/kit/random-seed.ts'],
    // Left alone, a machine of two cores would get one worker and take half as long again.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    root: shared.root,
    projects: [
      {
        // The source is loaded once a worker and not once a file: a third of the time. What one file leaves behind in it, the next
        // one meets, as in a language server that runs all day.
        test: {
          ...shared,
          name: 'together',
          isolate: false,
          include: ['tests/**/*.test.ts'],
          exclude: [...exclude, ...apart],
        },
      },
      { test: { ...shared, name: 'apart', include: apart, exclude } },
    ],
  },
});
