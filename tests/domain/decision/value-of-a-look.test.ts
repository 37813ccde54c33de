// The value of a look, worked out before looking, against a simulation that knows nothing of the grids: lives are drawn, read by
// a gauge that errs, and the chance after each reading is worked out by Bayes' rule on a fine grid of its own.

import { describe, expect, it } from 'vitest';
import { valueOfALook } from '../../../src/domain/decision/value-of-a-look.js';
import { addDays } from '../../../src/domain/units/calendar.js';
import { limit, normal, outlook, perDay, today, type Place } from './kit.js';

const until = addDays(today, 79);
const accepted = { condemn: 0.05, contact: 0.005 };
const gauge = 0.2;

describe('the value of a look', () => {
  const cases: readonly (readonly [string, readonly Place[]])[] = [
    ['one panel', [{ panel: 1, median: 18_500, spread: 0.12, now: 15_000 }]],
    [
      'three panels, one of them never seen',
      [
        { panel: 1, median: 19_500, spread: 0.1, now: 15_000 },
        { panel: 2, median: 22_000, spread: 0.15, now: 15_000 },
        { panel: 3, median: 27_000, spread: 0.35, now: 15_000, seen: false },
      ],
    ],
  ];
  it.each(cases)('is what a simulation of looks finds: %s', (_, places) => {
    const value = valueOfALook({ outlook: outlook(places), accepted, until, gauge });
    const { share, error } = simulated(places, 6000);
    expect(Math.abs(value.reassures - share)).toBeLessThan(4 * error + 0.01);
    expect(value.reassures).toBeGreaterThan(0.05);
    expect(value.reassures).toBeLessThan(0.95);
  });

  it('agrees with the forecast before the look, and leaves out panels that cannot matter', () => {
    const all = outlook([
      { panel: 1, median: 18_500, spread: 0.12, now: 15_000 },
      { panel: 2, median: 90_000, spread: 0.1, now: 15_000 },
    ]);
    const value = valueOfALook({ outlook: all, accepted, until, gauge });
    expect(value.panels.map(({ place }) => place)).toEqual(['P1']);
    expect(value.before.condemn).toBeCloseTo(all.counted.condemnBy(until), 2);
  });

  it('is nothing with a gauge that tells nothing, and the chance itself with one that tells all', () => {
    const one = outlook([{ panel: 1, median: 18_500, spread: 0.12, now: 15_000 }]);
    const chance = one.counted.condemnBy(until);
    expect(chance).toBeGreaterThan(accepted.condemn);
    expect(valueOfALook({ outlook: one, accepted, until, gauge: 50 }).reassures).toBeLessThan(0.02);
    // A perfect reading shows whether the limit comes before the day.
    const exact = valueOfALook({ outlook: one, accepted, until, gauge: 0.01 }).reassures;
    expect(Math.abs(exact - (1 - chance))).toBeLessThan(0.03);
  });
});

/** Draws lives and readings; panels are independent, duty is even. */
function simulated(
  places: readonly Place[],
  draws: number,
): { readonly share: number; readonly error: number } {
  const random = numbers(20261126);
  const x = perDay * 79;
  let good = 0;
  for (let i = 0; i < draws; i++) {
    let left = 1;
    let leftSteel = 1;
    for (const place of places) {
      let life = 0;
      do life = place.median * Math.exp(place.spread * random());
      while (life < place.now);
      const reading = (limit * place.now) / life + gauge * random();
      left *= 1 - chanceAfter(place, reading, place.now + x);
      leftSteel *= 1 - chanceAfter(place, reading, ((place.now + x) * limit) / 12);
    }
    if (1 - left <= accepted.condemn && 1 - leftSteel <= accepted.contact) good += 1;
  }
  const share = good / draws;
  return { share, error: Math.sqrt((share * (1 - share)) / draws) };
}

/** Bayes' rule by Simpson-free brute force over z of the lognormal life. */
function chanceAfter({ median, spread, now }: Place, reading: number, exposure: number): number {
  let sum = 0;
  let soon = 0;
  for (let z = -6; z <= 6; z += 0.02) {
    const life = median * Math.exp(spread * z);
    if (life < now) continue;
    const weight = Math.exp(-0.5 * z * z) * Math.exp(-0.5 * ((reading - (limit * now) / life) / gauge) ** 2);
    sum += weight;
    if (life <= exposure) soon += weight;
  }
  return sum > 0 ? soon / sum : 1;
}

/** Standard normal numbers from a fixed stream (mulberry32 and Box–Muller). */
function numbers(seed: number): () => number {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

it('its own normal area is the textbook one', () => {
  expect(normal(1.6448536)).toBeCloseTo(0.95, 6);
});
