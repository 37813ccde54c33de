// One small estate printed as Markdown and CSV by the hand arithmetic, read before it was accepted: every number in it can be
// redone with a pencil.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { remainingLifeCsv } from '../../../src/generators/remaining-life/csv.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { look, reportOf } from './story.js';

const report = reportOf(
  look(2400, 'P1 thickness 10.8 mm; P2 colour ivory') +
    look(4800, 'P1 thickness 9.6 mm; P2 not seen "build-up"') +
    look(7200, 'P1 thickness 8.1 mm; P2 colour teal'),
  { depth: 'hand' },
);
const baseline = (name: string): string =>
  readFileSync(new URL(`baselines/${name}`, import.meta.url), 'utf8');

describe('a small report by hand', () => {
  it('as Markdown', () => {
    expect(remainingLifeMarkdown(report)).toBe(baseline('small.md'));
  });
  it('as CSV', () => {
    expect(remainingLifeCsv(report).replaceAll('\r\n', '\n')).toBe(baseline('small.csv'));
  });
});
