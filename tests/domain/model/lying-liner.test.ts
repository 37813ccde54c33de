// What lies along a trough, in pieces: drawn relines over parts, told once by the set at each spot (the second road) and once by
// pieces, liners and the places where two meet.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { setLying } from '../../../src/domain/model/exposure.js';
import { historyOf, type History } from '../../../src/domain/model/history.js';
import { newSince } from '../../../src/domain/model/liner-sets.js';
import { linersLying, piecesOf, setsMeeting } from '../../../src/domain/model/lying-liner.js';
import { setsLying } from '../../../src/domain/model/exposure.js';
import { addDays, formatDay, parseDay, type CalendarDay } from '../../../src/domain/units/calendar.js';
import { inSoundEstate } from '../../../src/validation/example.js';

const other =
  'liner TwoLayer10 {\n  layer ivory 5 mm\n  layer teal 5 mm\n  panel length 1200 mm\n  condemn at 3 mm\n}';
const start = parseDay('2024-06-01') ?? (0 as CalendarDay);
const length = 12_000;

function history(records: readonly string[]): History {
  const { estate } = analyse([
    { uri: 'a.trough', text: inSoundEstate('estate', [other, ...records].join('\n')) },
  ]);
  const conveyor = estate.conveyors.find(({ name }) => name === 'DG1');
  if (!conveyor) throw new Error('DG1 is there');
  return historyOf(estate, conveyor);
}

const reline = fc.record({
  from: fc.integer({ min: 0, max: 10 }),
  over: fc.integer({ min: 1, max: 6 }),
  liner: fc.constantFrom('TwoLayer12', 'TwoLayer10'),
});

/** Between the ends and the breaks of the sound estate. */
const runs = [
  [0, 300],
  [1500, 7000],
  [7500, 12_000],
] as const;

/** Each by its liner and the day it was new, at every tenth of a metre but where two meet. */
const probes = Array.from({ length: 120 }, (_, i) => 50 + 100 * i);

describe('what lies along a trough', () => {
  test('is the same told by spots, pieces, liners and meetings', () => {
    fc.assert(
      fc.property(fc.array(reline, { maxLength: 6 }), (drawn) => {
        const lines = drawn.map(
          ({ from, over, liner }, i) =>
            `reline DG1 ${formatDay(addDays(start, 30 * i))} meter ${2000 + 500 * i} h {\n  liner ${liner}\n` +
            `  scope from ${from} m to ${Math.min(12, from + over)} m\n}`,
        );
        const of = history(lines);
        const day = addDays(start, 400);
        const sets = setsLying(of, undefined);
        const byAge = piecesOf(sets, true);
        const liners = linersLying(of, undefined);
        for (const at of probes) {
          const set = setLying(of, at, day);
          const own = byAge.filter(({ from, to }) => from < at && at < to);
          expect(own.map(({ liner, since }) => [liner.name, since?.day])).toEqual(
            set ? [[set.liner.name, newSince(set)?.day]] : [],
          );
          const there = liners.filter(({ stretches }) =>
            stretches.some(({ from, to }) => from < at && at < to),
          );
          expect(there.map(({ liner }) => liner.name)).toEqual(set ? [set.liner.name] : []);
        }
        // Told as few pieces as can be: no two that meet are alike.
        for (const [i, piece] of byAge.entries()) {
          const before = byAge[i - 1];
          if (before && piece.from <= before.to + 1)
            expect([before.liner.name, before.since?.day]).not.toEqual([piece.liner.name, piece.since?.day]);
        }
        for (const { stretches } of liners)
          for (const [i, { from }] of stretches.entries())
            if (i > 0) expect(from).toBeGreaterThan((stretches[i - 1]?.to ?? length) + 1);
        const changes = setsMeeting(of);
        for (const { run, at, lower, upper } of changes) {
          expect(at).toBeGreaterThan(run.from);
          expect(at).toBeLessThan(run.to);
          expect(setLying(of, at - 50, day)).toBe(lower);
          expect(setLying(of, at + 50, day)).toBe(upper);
        }
        // Wherever the set changes from one spot to the next within a run, it is among the meetings.
        for (const at of probes) {
          const [a, b] = [setLying(of, at, day), setLying(of, at + 100, day)];
          const met = changes.some((each) => each.at > at && each.at < at + 100);
          const within = runs.some(([from, to]) => at > from && at + 100 < to);
          if (a && b && a !== b && within) expect(met).toBe(true);
        }
      }),
      { numRuns: 40 },
    );
  });
});
