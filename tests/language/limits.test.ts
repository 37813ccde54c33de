// Sizes that would keep the planner busy for minutes are told in one finding, and the block is left out.

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { most } from '../../src/language/lowering/limits.js';

const first = readFileSync(new URL('../../examples/1-first-conveyor/first.trough', import.meta.url), 'utf8');
const numbered = (count: number, text: (i: number) => string, between = '\n'): string =>
  Array.from({ length: count }, (_, i) => text(i)).join(between);
const job = (facts: string): string => `${first}\njob J {\n  conveyor BR1\n  reline all\n${facts}\n}\n`;
const crews = (count: number): string =>
  job(`  crews ${numbered(count, (i) => `C${i}`, ', ')}`).replace(
    'duty 60 h/week',
    `duty 60 h/week\n${numbered(count, (i) => `  crew C${i} 2 people`)}`,
  );
const tooMany = (text: string): string[] =>
  analyse([{ uri: 'a.trough', text }])
    .findings.filter(({ code }) => code === 'TL133')
    .map(({ message }) => message);

test.each([
  ['crews', 3000, crews(3000), 'The job J has 3000 crews, and at most 60 are reckoned with.'],
  [
    'steps',
    10_000,
    job(`  order {\n${numbered(10_000, (i) => `    s${i}: strip all`)}\n  }`),
    'The job J has 10000 steps, and at most 400 are reckoned with.',
  ],
  [
    'panel lengths',
    100,
    first.replace('panel length 1000 mm', `panel length ${numbered(100, (i) => `${900 + i} mm`, ', ')}`),
    'The liner TwoLayer10 has 100 panel lengths, and at most 12 are reckoned with.',
  ],
  [
    'breaks',
    300,
    first.replace('  point', `${numbered(300, (i) => `  break B${i} at ${i + 1} cm inlet`)}\n  point`),
    'The conveyor BR1 has 301 breaks, and at most 100 are reckoned with.',
  ],
])('%s: %i are told as too many', (_, __, text, message) => {
  expect(tooMany(text)).toEqual([message]);
});

test('as many as may be are no finding', () => {
  expect(tooMany(crews(most.crews))).toEqual([]);
});
