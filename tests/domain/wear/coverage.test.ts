// Do the intervals hold? Fleets drawn from the pinned seed of all random tests, truth known. Bounds are in standard errors between fleets: 4.5 of
// them, so that a right model fails about once in 100 000 runs of a line. The full table is made by tests/bench/coverage.
import { randomSeed } from '../../kit/random-seed.js';
import { describe, expect, it } from 'vitest';
import type { StudyPlan } from '../../bench/coverage/study.js';
import { study } from '../../bench/coverage/study.js';
import { plainFleet } from './fleet.js';

const seed = randomSeed;

/** `from` and `to`: what the share held may be besides sampling error. Where the model holds both are the nominal share. */
interface Line {
  readonly name: string;
  readonly study: StudyPlan;
  readonly held80: readonly [from: number, to: number];
  readonly held90: readonly [from: number, to: number];
}

const even = { dutyNoise: 'none' } as const;
const fleetOf = (points: number): typeof plainFleet => ({ ...plainFleet, points });
// A numerical allowance: the pool's uncertainty is taken as normal, which costs up to a percent or two on pools of three.
const exact = { held80: [0.78, 0.82], held90: [0.885, 0.915] } as const;
// Parameters at the middle of the priors: small pools allow for worse and so hold more often than promised.
const careful = { held80: [0.78, 0.92], held90: [0.885, 0.975] } as const;
// Duty that varies by 35 % while nothing is declared: a few points cannot tell, and the prior expects 25 %.
const uneven = { held80: [0.77, 0.83], held90: [0.875, 0.925] } as const;

const lines: readonly Line[] = [
  {
    name: 'three points, parameters as uncertain as the priors say',
    study: { plan: fleetOf(3), fleets: 120, options: even, drawParameters: true },
    ...exact,
  },
  {
    name: 'eight points, parameters as uncertain as the priors say',
    study: { plan: fleetOf(8), fleets: 60, options: even, drawParameters: true },
    ...exact,
  },
  {
    name: 'twenty points, parameters as uncertain as the priors say',
    study: { plan: fleetOf(20), fleets: 30, options: even, drawParameters: true },
    ...exact,
  },
  {
    name: 'eight points, all as uncertain as the priors say, duty too',
    study: { plan: { ...fleetOf(8), dutyNoise: 0.25 }, fleets: 40, drawParameters: true },
    held80: [0.76, 0.84],
    held90: [0.865, 0.935],
  },
  { name: '200 points', study: { plan: fleetOf(200), fleets: 6, options: even, every: 2 }, ...exact },
  { name: '2,000 points', study: { plan: fleetOf(2000), fleets: 1, options: even, every: 4 }, ...exact },
  { name: 'twenty points, nothing declared', study: { plan: fleetOf(20), fleets: 20 }, ...careful },
  {
    name: 'gamma rates',
    study: { plan: { ...fleetOf(60), rates: 'gamma' }, fleets: 10, options: even },
    ...careful,
  },
  {
    name: 'normal rates',
    study: { plan: { ...fleetOf(60), rates: 'normal' }, fleets: 10, options: even },
    ...careful,
  },
  {
    name: 'colours only',
    study: { plan: { ...fleetOf(60), colours: 1 }, fleets: 10, options: even },
    ...careful,
  },
  {
    name: '3 % of readings stray',
    study: { plan: { ...fleetOf(60), strays: 0.03 }, fleets: 10, options: even },
    ...careful,
  },
  {
    name: 'duty varies by 35 %, eight points',
    study: { plan: { ...fleetOf(8), dutyNoise: 0.35 }, fleets: 30 },
    ...uneven,
  },
  {
    name: 'duty varies by 35 %, 200 points',
    study: { plan: { ...fleetOf(200), dutyNoise: 0.35 }, fleets: 4, every: 2 },
    ...uneven,
  },
  {
    name: 'duty varies by 35 % and says so',
    study: {
      plan: { ...fleetOf(100), dutyNoise: 0.35 },
      fleets: 5,
      options: { dutyNoise: { ratio: 0.35, per: 1500 } },
    },
    held80: [0.77, 0.83],
    held90: [0.88, 0.92],
  },
];

describe('share of lives within the 80 and 90 % intervals', () => {
  it.each(lines)('$name', { timeout: 240_000 }, ({ study: plan, held80, held90 }) => {
    const s = study(plan, seed);
    expect(s.forecasts).toBeGreaterThan(150);
    const wide = (bound: readonly [number, number], error: number): readonly [number, number] => [
      bound[0] - 4.5 * error,
      bound[1] + 4.5 * error,
    ];
    const [low80, high80] = wide(held80, s.error80);
    const [low90, high90] = wide(held90, s.error90);
    expect(s.held80).toBeGreaterThan(low80);
    expect(s.held80).toBeLessThan(high80);
    expect(s.held90).toBeGreaterThan(low90);
    expect(s.held90).toBeLessThan(high90);
  });
});

it(
  'scores better than a two-point rate with a fixed margin, and than a line through the origin',
  { timeout: 240_000 },
  () => {
    for (const plan of [plainFleet, { ...plainFleet, dutyNoise: 0.35 }, { ...plainFleet, strays: 0.03 }]) {
      const { score } = study({ plan, fleets: 12 }, seed);
      expect(score.compared).toBeGreaterThan(80);
      expect(score.ours).toBeLessThan(0.85 * score.line);
      expect(score.ours).toBeLessThan(0.6 * score.twoPoint);
    }
  },
);
