import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundsOf, type DueLook, type WorthOfLook } from '../../../src/domain/decision/rounds.js';
import type { Conveyor } from '../../../src/domain/model/conveyor.js';
import type { AccessUnit } from '../../../src/domain/model/plant.js';
import { addDays } from '../../../src/domain/units/calendar.js';
import { conveyor, mm, origin, plant } from '../../kit/estate.js';
import { today } from './kit.js';

const unit = (name: string, reach: number): AccessUnit => ({
  name,
  reach: mm(reach),
  origin: origin(),
  nameOrigin: origin(),
});
const works = plant({ accessUnits: [unit('MP1', 14_000), unit('MP2', 8_000)] });
interface More {
  readonly worth?: Partial<WorthOfLook>;
  readonly height?: number;
}
const at = (
  name: string,
  days: number,
  kind?: Conveyor['access'][number]['kind'],
  { worth, height }: More = {},
): DueLook => ({
  conveyor: conveyor({
    name,
    plant: works,
    access: kind
      ? [
          {
            name: 'A',
            kind,
            from: mm(0),
            to: mm(5000),
            origin: origin(),
            ...(height === undefined ? {} : { height: mm(height) }),
          },
        ]
      : [],
  }),
  day: addDays(today, days),
  worth: { narrows: 0.3, saves: undefined, reassures: undefined, ...worth },
});
const said = (looks: readonly DueLook[]): readonly string[] =>
  roundsOf(looks).map(
    ({ by, looks: own }) => `${by - today}: ${own.map((look) => look.conveyor.name).join(' ')}`,
  );

describe('looks that go together', () => {
  it('need the same access within four weeks; the earliest says when', () => {
    expect(
      said([
        at('A', 28, 'mobile platform'),
        at('B', 0, 'mobile platform'),
        at('C', 29, 'mobile platform'),
        at('D', 3),
      ]),
    ).toEqual(['0: B A', '3: D', '29: C']);
  });

  it('join by what the look is worth: not where it tells little, and however late where it pays', () => {
    expect(
      said([
        at('A', 0, 'mobile platform'),
        at('Knows', 14, 'mobile platform', { worth: { narrows: 0.01 } }),
        at('Pays', 120, 'mobile platform', { worth: { saves: 900 } }),
        at('Costs', 121, 'mobile platform', { worth: { saves: -100 } }),
        at('Late', 60, 'mobile platform'),
      ]),
    ).toEqual(['0: A Pays', '14: Knows', '60: Late', '121: Costs']);
  });

  it('go by one access unit that reaches all of them', () => {
    const rounds = roundsOf([
      at('Low', 0, 'mobile platform', { height: 5000 }),
      at('High', 3, 'mobile platform', { height: 12_000 }),
      at('Tower', 4, 'mobile platform', { height: 20_000 }),
    ]);
    expect(rounds.map(({ units, looks }) => [units, looks.map((look) => look.conveyor.name)])).toEqual([
      [['MP1'], ['Low', 'High']],
      [[], ['Tower']],
    ]);
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
