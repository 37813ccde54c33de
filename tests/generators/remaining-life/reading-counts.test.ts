// Whoever counts readings counts the same ones: front page, forecast, charts, tables and the change summary, over every kind of
// reading there is. Sums are by hand.

import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { forecastRows } from '../../../src/generators/change-summary/parts/forecast-row.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { readingCounts } from '../../../src/generators/remaining-life/reading-counts.js';
import { look, only, reportOf } from './story.js';
import type { Counts } from '../../../src/generators/remaining-life/remaining-life.js';

const reline = 'reline DG1 2025-05-06 meter 3000 h { liner TwoLayer12 scope panel 4 of run 1 }\n';
const records =
  look(1000, 'P1 thickness 11.6 mm; P2 thickness 11.5 mm') +
  look(2000, 'P1 colour ivory; P2 not seen; at 1.00 m clock 5:00 thickness 11.4 mm') +
  reline +
  look(4000, 'P1 thickness 10.4 mm; P2 thickness 11.7 mm; P9 thickness 9 mm') +
  look(5000, 'P1 colour teal; P2 not seen blocked; at 1.00 m clock 5:00 trough showing') +
  look(6000, 'P1 not seen; P2 colour ivory');

function sums({ leftOut, ...counts }: Counts): readonly [number, number, number] {
  return [
    counts.readings,
    counts.thicknesses +
      counts.colours +
      counts.troughShowing +
      counts.notSeen +
      counts.withdrawn +
      counts.unreadable,
    counts.used +
      counts.ofFormerSets +
      counts.notSeen +
      counts.withdrawn +
      leftOut.reduce((sum, { count }) => sum + count, 0),
  ];
}

const report = reportOf(records);

test('each reading is counted once: by what it saw, and by what became of it', () => {
  // P2 lies on panel 4, relined: 1 thickness before; P9 is no point. Not seen: 3.
  expect(report.counts).toMatchObject({
    readings: 13,
    thicknesses: 6,
    colours: 3,
    troughShowing: 1,
    notSeen: 3,
    used: 8,
    ofFormerSets: 1,
    leftOut: [{ reason: 'the point named is not on the conveyor', count: 1 }],
  });
  expect(sums(report.counts)).toEqual([13, 13, 13]);
});

test('every page says the number that the front page says', () => {
  const life = only(report);
  const counts = readingCounts(life.points);
  expect(counts).toEqual({ thicknesses: 4, colours: 3, troughShowing: 1, seen: 8, notSeen: 2 });
  expect(report.counts.used).toBe(counts.seen);
  // What the model rests on, point by point.
  const behind = life.points.flatMap(({ model }) => (model ? [model.readings + model.indicators] : []));
  expect(behind.reduce((sum, each) => sum + each, 0)).toBe(counts.seen);
  expect(forecastRows(report)[0]?.readings).toBe(counts.seen);
  const html = remainingLifeHtml(report);
  expect(html).toContain(
    '8 readings are of the liners that lie there now, which forecasts rest on, and 1 of',
  );
  expect(html).toContain('The 8 readings behind these charts, and 2 looks that saw nothing');
  expect(remainingLifeMarkdown(report)).toContain('13 readings: 6 thicknesses, 3 colours, 1 with steel');
});

test('a forecast rests on what the front page says it does', () => {
  const dated = reportOf(
    look(1000, 'P1 thickness 11.6 mm; P2 thickness 11.7 mm') +
      look(3000, 'P1 colour ivory; P2 not seen') +
      look(5000, 'P1 thickness 9.9 mm; P2 colour ivory'),
  );
  const { model, points } = only(dated);
  const counts = readingCounts(points);
  const forecast = model?.forecast;
  expect(forecast).toMatchObject({
    kind: 'dates',
    readings: counts.thicknesses,
    indicators: counts.colours + counts.troughShowing,
  });
  expect(remainingLifeHtml(dated)).toContain('It rests on 3 thicknesses and 2 colours');
});

test('the sums hold for any records', () => {
  const row = fc.constantFrom(
    'P1 thickness 11 mm',
    'P1 colour ivory',
    'P1 not seen',
    'P1 trough showing',
    'P2 thickness 10.8 mm',
    'P2 colour teal',
    'P2 not seen "dark"',
    'P7 thickness 9 mm',
    'P7 not seen',
    'at 2.4 m clock 6:00 thickness 11 mm',
    'at 2.4 m clock 6:00 not seen',
    'P2 colour pink',
  );
  fc.assert(
    fc.property(
      fc.array(fc.uniqueArray(row, { minLength: 1, maxLength: 6 }), { minLength: 1, maxLength: 5 }),
      fc.integer({ min: 0, max: 5 }),
      (looks, relined) => {
        const texts = looks.map((rows, i) => look((i + 1) * 1000, rows.join(';')));
        texts.splice(relined, 0, reline);
        const [all, byKind, byFate] = sums(reportOf(texts.join(''), { depth: 'hand' }).counts);
        expect([byKind, byFate]).toEqual([all, all]);
      },
    ),
    { numRuns: 60 },
  );
});

describe('a spot on the joint of an older and a newer liner', () => {
  const spotted = (at: string, says: string): string =>
    'reline DG1 2025-01-11 meter 240 h {\n  scope from 3 m to 5.4 m\n}\n' +
    look(3000, 'P1 thickness 11 mm; P2 thickness 11.2 mm') +
    look(6000, `P1 thickness 10.2 mm; P2 thickness 10.4 mm; at ${at} clock 5:00 ${says}`);
  const spot = (at: string, says = 'thickness 4.2 mm') => {
    const life = only(reportOf(spotted(at, says)));
    const governs = life.attention.reasons.some((each) =>
      each.startsWith(`${Number.parseFloat(at).toFixed(2)} m 5:00: `),
    );
    return { point: life.points.find(({ place }) => !place.declared), governs };
  };

  it('may be of either, so it starts no rate and governs nothing; the report says why it is left out', () => {
    const { point, governs } = spot('3 m');
    expect(point?.readings).toEqual([]);
    expect(point?.leftOut.map(({ reason }) => reason)).toEqual([
      'on the joint of an older and a newer liner, and nobody can say of which it is',
    ]);
    expect(governs).toBe(false);
  });

  it('a hand’s breadth off it counts, and steel that shows counts on it', () => {
    expect(spot('3.1 m').point?.readings).toHaveLength(1);
    expect(spot('3.1 m').governs).toBe(true);
    expect(spot('3 m', 'trough showing').point?.readings).toHaveLength(1);
  });
});
