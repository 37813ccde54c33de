// A block pasted twice into the records, as the phone's and the as-fitted form's text is pasted: it is told, and nothing that follows
// from the records counts it double. Blocks are those of the forms; the second copy stands in another file, as after a bad merge.

import { expect, test } from 'vitest';
import { historyOf } from '../../../src/domain/model/history.js';
import { cutLists } from '../../../src/domain/plan/cut-list.js';
import { fittedAreas } from '../../../src/domain/order/ground.js';
import { groundOf } from '../../../src/domain/order/ground.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { day, liftConveyor, read, theConveyor, theJob } from '../estate.js';

const first = `inspection DG1 2025-10-12 meter 12000 h {
  view upstream
  gauge depth gauge
  P1 thickness 9.2 mm
  P2 thickness 9.6 mm
  P3 thickness 10 mm
}`;
const looked = `inspection Tarnholt.DG1 2026-10-12 meter 16500 h {
  view upstream
  gauge depth gauge
  P1 thickness 7 mm
  P2 thickness 6.5 mm
  P3 colour ivory
  panel torn at 4 m slight
}`;
const fitted = `reline Tarnholt.DG1 2026-10-20 meter 16600 h {
  liner TwoLayer12
  scope run 2
  P3 thickness 12.1 mm
  fitted run 2 panels 497 mm, 1000 mm, 1001 mm, 1000.5 mm, 1000 mm
  fitted panel 2 of run 2 thickness 12.2 mm
  offcut 497 mm
}`;
const changed = `screw change Tarnholt.DG1 2026-10-20 meter 16600 h {
  screw Spiral300
}`;

/** Everything that the report says of the conveyor, without the records themselves and how many of them there are. */
function told(...texts: readonly string[]): {
  readonly counts: Record<string, unknown>;
  readonly rest: unknown;
} {
  const life = remainingLife(read(liftConveyor(), first, ...texts).estate, {
    asOf: day('2026-11-01'),
    track: false,
  });
  const {
    counts,
    records: _records,
    ...rest
  } = JSON.parse(remainingLifeJson(life)) as Record<string, unknown>;
  return { counts: counts as Record<string, unknown>, rest: withoutOrigins(rest) };
}

/** What was left out is told with its place, which differs between the two. */
function withoutOrigins(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutOrigins);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key]) => key !== 'leftOut')
      .map(([key, each]) => [key, withoutOrigins(each)]),
  );
}

function newFindings(block: string): readonly string[] {
  const once = read(liftConveyor(), first, block).findings.map(({ message }) => message);
  return read(liftConveyor(), first, block, block)
    .findings.filter(({ message }) => !once.includes(message))
    .map(({ code, severity }) => `${code} ${severity}`);
}

test('an inspection is an error, and its readings count once', () => {
  expect(newFindings(looked)).toEqual(['TL304 error']);
  const [once, twice] = [told(looked), told(looked, looked)];
  expect(twice.rest).toEqual(once.rest);
  expect([once.counts['used'], twice.counts['used']]).toEqual([6, 6]);
  expect(twice.counts['leftOut']).toEqual([
    { reason: 'the same reading is written down twice on that day', count: 3 },
  ]);
});

test('a part of an inspection pasted again counts once too, and another reading of that day counts', () => {
  const part = looked.replace('  P1 thickness 7 mm\n', '');
  expect(told(looked, part).rest).toEqual(told(looked).rest);
  const other = looked.replace('P1 thickness 7 mm', 'P1 thickness 7.4 mm');
  expect(told(looked, other).counts['used']).toBe(7);
  // Once more in the evening, with the same result: a reading of its own.
  expect(told(looked, looked.replace('16500 h', '16510 h')).counts['used']).toBe(9);
});

test.each([
  ['P1 colour ivory', 'from 1.5 m to 2.5 m clock 5:00 colour ivory'],
  ['P1 thickness 7 mm', 'from 1.5 m to 2.5 m clock 5:00 thickness 7 mm'],
  ['P1 colour ivory "dull"', 'from 1.5 m to 2.5 m clock 5:00 colour ivory'],
  ['P1 not seen "no light"', 'P1 not seen'],
])('a point and a stretch over it that say the same are one reading: %s', (point, stretch) => {
  const look = (...rows: readonly string[]): string =>
    `inspection DG1 2026-10-12 meter 16500 h {\n  view downstream\n  gauge depth gauge\n  ${rows.join('\n  ')}\n}`;
  const of = (...rows: readonly string[]) => {
    const { estate } = read(liftConveyor(), first, look(...rows));
    const report = remainingLife(estate, { asOf: day('2026-11-01'), track: false });
    const seen = report.conveyors.flatMap(({ points }) => points.map(({ readings }) => readings.length));
    return { seen, readings: report.counts.readings, used: report.counts.used };
  };
  const one = of(point);
  expect(of(point, stretch)).toEqual(one);
  expect(of(stretch, point)).toEqual(one);
});

test('a reline is told; its panels, its liner and its offcuts are there once', () => {
  expect(newFindings(fitted)).toEqual(['TL316 warning']);
  expect(told(fitted, fitted).rest).toEqual(told(fitted).rest);
  const offcuts = (...texts: readonly string[]) => {
    const analysis = read(liftConveyor(), first, ...texts);
    const job = theJob(analysis);
    const ground = groundOf(job, [], analysis.estate);
    return cutLists(job, analysis.estate, ground, fittedAreas(ground)).map((list) => list.recordedOffcuts);
  };
  expect(offcuts(fitted, fitted)).toEqual(offcuts(fitted));
  expect(offcuts(fitted).flat()).toEqual([{ length: 497, count: 1, date: '2026-10-20' }]);
  // Changed again some hours later: the first liner did lie there.
  const sets = (...texts: readonly string[]): number => {
    const analysis = read(liftConveyor(), first, ...texts);
    return historyOf(analysis.estate, theConveyor(analysis)).linerSets.length;
  };
  expect(sets(fitted, fitted)).toBe(sets(fitted));
  expect(sets(fitted, fitted.replace('16600 h', '16606 h'))).toBe(sets(fitted) + 1);
  // Two relines of one day that are no copies keep an offcut each.
  expect(offcuts(fitted, fitted.replace('scope run 2', 'scope run 1')).flat()).toHaveLength(2);
});

test('a screw change is told, and no screw comes between', () => {
  expect(newFindings(changed)).toEqual(['TL532 warning']);
  expect(told(changed, changed).rest).toEqual(told(changed).rest);
  const analysis = read(liftConveyor(), changed, changed);
  expect(historyOf(analysis.estate, theConveyor(analysis)).screwSets).toHaveLength(2);
});
