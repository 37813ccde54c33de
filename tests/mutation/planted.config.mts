// Runs tests with one fault planted in the source as it is read; no file is changed. run-planted.mjs names the fault.

import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const { file, from, to } = JSON.parse(process.env['PLANTED'] ?? '{}') as Record<
  'file' | 'from' | 'to',
  string
>;
const root = fileURLToPath(new URL('../../', import.meta.url));

export default defineConfig({
  plugins: [
    {
      name: 'planted fault',
      enforce: 'pre',
      transform: (code, id) => (id.split('?')[0] === root + file ? code.replace(from, () => to) : undefined),
    },
  ],
  test: {
    root,
    fsModuleCache: false,
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
    bail: 1,
    fileParallelism: false,
  },
});
