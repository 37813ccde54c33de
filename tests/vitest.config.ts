import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: fileURLToPath(new URL('..', import.meta.url)),
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/editor/**', 'tests/bench/**'],
    globalSetup: ['tests/kit/generated.ts', 'tests/kit/random-seed.ts'],
    setupFiles: ['tests/kit/random-seed.ts'],
    testTimeout: 60_000,
    // Left alone, a machine of two cores would get one worker and take half as long again.
    maxWorkers: Math.max(2, availableParallelism() - 1),
  },
});
