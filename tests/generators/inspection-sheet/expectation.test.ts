// What to expect at a point comes from the report's model: after colours, after a reline, with every reading of the estate.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import type { Expectation } from '../../../src/generators/inspection-sheet/sheet.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { day, liftConveyor, read, tarnholt, theConveyor } from '../estate.js';

const thick = (text: string): string =>
  text.replace('layer ivory 6 mm', 'layer ivory 8 mm').replace('layer teal 6 mm', 'layer teal 8 mm');

function expectedOf(more: string, asOf: string, point: string, change = (text: string): string => text) {
  const analysis = read(change(liftConveyor({ more })));
  const sheet = inspectionSheet(analysis.estate, theConveyor(analysis), { asOf: day(asOf) });
  const found = sheet.points.find(({ name }) => name === point);
  if (!found) throw new Error(`no point ${point}`);
  return found;
}

function range(expect: Expectation): Extract<Expectation, { kind: 'range' }> {
  if (expect.kind !== 'range') throw new Error(expect.reason);
  return expect;
}

describe('what a gauge should read', () => {
  const thicknesses = `
inspection DG1 2024-07-01 meter 4000 h {
  gauge ultrasonic ± 0.2 mm
  P1 thickness 13.6 mm
  P2 thickness 13.4 mm
  P3 thickness 13.7 mm
}
inspection DG1 2025-07-01 meter 8000 h {
  gauge ultrasonic ± 0.2 mm
  P1 thickness 11.1 mm
  P2 thickness 10.9 mm
  P3 thickness 11.3 mm
}`;

  test('after a colour still goes by the thicknesses before it and beside it', () => {
    // 0.6 mm/1000 h: about 8.7 mm at 12,000 h on a liner of 16 mm whose first layer ends at 8.
    const seen = `${thicknesses}\ninspection DG1 2026-07-01 meter 12000 h {\n  P1 colour ivory\n}`;
    const { least, most } = range(expectedOf(seen, '2026-07-01', 'P1', thick).expect);
    expect(least).toBeGreaterThanOrEqual(7);
    expect(most).toBeLessThan(10.5);
  });

  test('with colours alone at a point, the points beside it say how fast it wears', () => {
    const seen = thicknesses
      .replace('P1 thickness 13.6 mm', 'P1 colour ivory')
      .replace('P1 thickness 11.1 mm', 'P1 colour ivory');
    const { least, most } = range(expectedOf(seen, '2025-07-01', 'P1', thick).expect);
    // 11.1 by the points beside it; the plain colours would say anything from 8 to 16.
    expect(least).toBeGreaterThan(7);
    expect(most).toBeLessThan(15);
  });

  test('never more than what a colour seen leaves', () => {
    const seen = `${thicknesses}\ninspection DG1 2025-08-01 meter 8100 h {\n  P1 colour teal\n}`;
    const { most, layers } = range(expectedOf(seen, '2025-08-01', 'P1', thick).expect);
    // 8 mm, the layer's tolerance of 5 % and the gauge.
    expect(most).toBeLessThan(8 + 2.4 * Math.hypot(0.2, 0.4) + 0.1);
    expect(layers).toContain('teal');
  });

  test('on a liner that nobody has read yet, from the liners before it', () => {
    const relined = `${thicknesses}\nreline DG1 2025-08-01 meter 8200 h {\n  scope run 1\n}`;
    const { least, most, basis } = range(expectedOf(relined, '2026-07-01', 'P1', thick).expect);
    // About 3,900 h on it by duty: 16 less 2.4 mm.
    expect((least + most) / 2).toBeGreaterThan(12);
    expect(most).toBeLessThan(15.5);
    expect(basis).toMatch(/^not read since it was fitted, with \d+ other places$/);
  });

  test('is nothing after steel was seen, and nothing is promised without records', () => {
    const steel = `${thicknesses}\ninspection DG1 2026-07-01 meter 12000 h {\n  P1 trough showing\n}`;
    expect(expectedOf(steel, '2026-07-01', 'P1').expect.kind).toBe('worn through');
    expect(expectedOf('', '2026-07-01', 'P1').expect.kind).toBe('open');
  });

  test('says that the limit may be reached only where it may', () => {
    expect(range(expectedOf(thicknesses, '2025-07-01', 'P1', thick).expect).mayBeAtLimit).toBe(false);
    expect(range(expectedOf(thicknesses, '2027-10-01', 'P1', thick).expect).mayBeAtLimit).toBe(true);
  });
});

test('the sheet and the report speak of one model: what may still be read lies above the limit while its chance is small', () => {
  const estate = tarnholt();
  const asOf = day('2026-10-31');
  const report = remainingLife(estate, { asOf, track: false });
  for (const { conveyor, points } of report.conveyors) {
    const sheet = inspectionSheet(estate, conveyor, { asOf });
    for (const point of sheet.points) {
      const life = points.find(({ place }) => place.name === point.name && place.at === point.at);
      const condemn = life?.model?.condemn;
      if (condemn?.kind !== 'life' || !point.table || life?.exposureNow === undefined) continue;
      const left = condemn.exposure.q05 - life.exposureNow;
      const limit = life.condemn;
      // Where the limit comes with a chance of one in twenty only later, the least reading to expect (one in a hundred, gauge
      // and all) may already lie below it, the most (99 in 100) not.
      if (left > 0) expect(point.table.most[0], `${conveyor.name} ${point.writes}`).toBeGreaterThan(limit);
    }
  }
});

test('a table never rises with the running, nor leaves 0 to the fitted thickness and the gauge', () => {
  const reading = fc.integer({ min: 1, max: 150 }).map((n) => `thickness ${n / 10} mm`);
  const seen = fc.oneof(
    reading,
    fc.constantFrom('colour ivory', 'colour teal', 'trough showing', 'not seen'),
  );
  const rounds = fc.array(fc.tuple(seen, seen, seen), { maxLength: 3 });
  fc.assert(
    fc.property(rounds, (looks) => {
      const more = looks
        .map(
          ([a, b, c], k) =>
            `inspection DG1 202${4 + k}-03-01 meter ${4000 * (k + 1)} h {\n  P1 ${a}\n  P2 ${b}\n  P3 ${c}\n}`,
        )
        .join('\n');
      const analysis = read(liftConveyor({ more }));
      const { points } = inspectionSheet(analysis.estate, theConveyor(analysis), { asOf: day('2026-12-01') });
      for (const { table, expect: words } of points) {
        if (words.kind === 'range') expect(words.least).toBeLessThanOrEqual(words.most);
        if (!table) continue;
        for (const row of [table.least, table.most]) {
          expect(row.every((mm) => mm >= 0 && mm <= 12 + 1.3)).toBe(true);
          row.forEach((mm, k) => expect(mm).toBeLessThanOrEqual((row[k - 1] ?? Infinity) + 0.02));
        }
      }
    }),
    { numRuns: 12 },
  );
});

test('an hour at a recorded speed counts by its turns on the sheet too', () => {
  const seen = 'inspection DG1 2025-07-01 meter 8000 h {\n  P1 thickness 9 mm\n  P2 thickness 9 mm\n}\n';
  const faster = `${seen}duty DG1 from 2025-07-01 84 h/week speed 36 rpm\n`;
  const least = (more: string): number => range(expectedOf(more, '2025-12-01', 'P1').expect).least;
  expect(least(faster)).toBeLessThan(least(seen) - 1);
  const analysis = read(liftConveyor({ more: faster }));
  expect(
    inspectionSheet(analysis.estate, theConveyor(analysis), { asOf: day('2025-12-01') }).running.perCount,
  ).toBe(2);
});
