import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';

test('what stands for a line of text leads back to it: the conveyor, its points and their last readings', () => {
  const text = readFileSync(
    new URL('../../../examples/1-first-conveyor/first.trough', import.meta.url),
    'utf8',
  );
  const analysis = analyse([{ uri: 'first.trough', text }]);
  const html = remainingLifeHtml(remainingLife(analysis.estate));
  const places = [...html.matchAll(/data-origin="(\d+):(\d+):(\d+)"/g)].map(([, source, start, end]) =>
    analysis.textOf({ source: Number(source), start: Number(start), end: Number(end) }),
  );
  expect(places).toEqual(['BR1', 'P1', 'P1 thickness 7.9 mm']);
});
