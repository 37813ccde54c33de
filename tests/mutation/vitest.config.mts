// The tests of one group (run.mjs names them), run by the mutation tester inside its own copy of the project.

import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: (process.env['MUTATION_TESTS'] ?? '').split(' ').filter((path) => path !== ''),
    testTimeout: 60_000,
  },
});
