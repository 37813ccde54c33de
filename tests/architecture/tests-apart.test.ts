// Test files share what a worker has loaded of the source, all but those that put something in the place of a module of it.

import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { apart } from '../vitest.config.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
/** Written in two parts, so that this file is not taken for one of them. */
const replacing = ['vi.' + 'mock(', 'vi.' + 'doMock(', 'vi.' + 'resetModules('];

test('tests that put something in the place of a module run apart, and no other', () => {
  const files = readdirSync(path.join(root, 'tests'), { recursive: true, encoding: 'utf8' })
    .map((name) => `tests/${name.split(path.sep).join('/')}`)
    .filter((name) => name.endsWith('.test.ts') && !name.startsWith('tests/editor/'));
  const found = files.filter((name) => {
    const text = readFileSync(path.join(root, name), 'utf8');
    return replacing.some((call) => text.includes(call));
  });
  expect(found).toEqual(apart);
});
