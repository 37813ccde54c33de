import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundsOf, type DueLook } from '../../../src/domain/decision/rounds.js';
import type { Conveyor } from '../../../src/domain/model/conveyor.js';
import { addDays } from '../../../src/domain/units/calendar.js';
import { conveyor, mm, origin, plant } from '../../kit/estate.js';
import { today } from './kit.js';

const works = plant();
const at = (name: string, days: number, kind?: Conveyor['access'][number]['kind']): DueLook => ({
  conveyor: conveyor({
    name,
    plant: works,
    access: kind ? [{ name: 'A', kind, from: mm(0), to: mm(5000), origin: origin() }] : [],
  }),
  day: addDays(today, days),
});
const said = (looks: readonly DueLook[]): readonly string[] =>
  roundsOf(looks).map(
    ({ by, looks: own }) => `${by - today}: ${own.map((look) => look.conveyor.name).join(' ')}`,
  );

describe('looks that go together', () => {
  it('need the same access within four weeks; the earliest says when', () => {
    expect(
      said([
        at('A', 28, 'scaffold'),
        at('B', 0, 'mobile platform'),
        at('C', 29, 'mobile platform'),
        at('D', 3),
      ]),
    ).toEqual(['0: B A', '3: D', '29: C']);
  });

  it('are each in one round, which is never later than the look is due', () => {
    const looks = fc.array(fc.tuple(fc.integer({ min: 0, max: 200 }), fc.boolean()), { maxLength: 12 });
    fc.assert(
      fc.property(looks, (days) => {
        const all = days.map(([day, high], i) => at(`C${i}`, day, high ? 'scaffold' : 'ground'));
        const rounds = roundsOf(all);
        expect(rounds.flatMap((round) => round.looks)).toHaveLength(all.length);
        for (const round of rounds)
          for (const look of round.looks) {
            expect(round.by).toBeLessThanOrEqual(look.day);
            expect(look.day - round.by).toBeLessThanOrEqual(28);
          }
      }),
      { seed: 20261126, numRuns: 60 },
    );
  });
});
