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
  },
});
