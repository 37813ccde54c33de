// The published degradation test of the example estate: hours until each of 15 components reaches its limit, by least squares
// through the origin. Source of the readings: NIST/SEMATECH e-Handbook of Statistical Methods, section 8.4.2.3 (table recalled
// from memory); the hours were worked out outside this project as limit over slope.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { estateOf } from './story.js';

const hoursToLimit: Readonly<Record<string, readonly number[]>> = {
  Cell65: [10392.1, 14461.9, 5291.9, 7148.1, 13986.3],
  Cell85: [5354.9, 1689.4, 2610.3, 1527.7, 861.8],
  Cell105: [241.8, 623.8, 1271.6, 256.2, 544.5],
};

describe('the published degradation example', () => {
  const text = readFileSync(
    new URL('../../../examples/3-degradation/degradation.trough', import.meta.url),
    'utf8',
  );
  const report = remainingLife(estateOf(text), { depth: 'hand' });

  for (const [name, expected] of Object.entries(hoursToLimit)) {
    it(`${name}: each unit reaches the limit when the published readings say`, () => {
      const life = report.conveyors.find((c) => c.conveyor.name === name);
      const hours = life?.points.map((p) => (p.fitted.value - p.condemn) / (p.line?.slope ?? NaN));
      expect(hours).toHaveLength(5);
      hours?.forEach((h, i) => expect(h).toBeCloseTo(expected[i] ?? NaN, 1));
    });
  }

  it('knows which cells are past their limit', () => {
    const past = report.conveyors.flatMap((c) =>
      c.points.filter((p) => p.pastLimit).map((p) => `${c.conveyor.name} ${p.place.name}`),
    );
    // More than 30 % of change at 1000 h in the published table.
    expect(past.sort()).toEqual(['Cell105 U1', 'Cell105 U2', 'Cell105 U4', 'Cell105 U5', 'Cell85 U5']);
  });
});
