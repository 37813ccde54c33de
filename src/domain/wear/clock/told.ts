// What may be said of the clocks: the chance of a change and since which look, its factor, curvature, looks that read off, place trend
// and scatter, all as means over the list of clocks or the nodes of the shared parameters.
// Index arithmetic runs within lengths made in blocks.ts and draws.ts, so `!` after an index is safe.

import type {
  Belief,
  ChangeSince,
  ConveyorChange,
  ConveyorClock,
  Curvature,
  LookBias,
  Scatter,
  WearChange,
} from '../change.js';
import { area, normalQuantile } from '../numeric/normal.js';
import { crossing } from '../numeric/root.js';
import type { Block } from './blocks.js';
import type { Clocks } from './clocks.js';
import type { ClockDraw } from './draws.js';
import { clockPriors } from './priors.js';

export function changeTold(clocks: Clocks): WearChange {
  const conveyors: ConveyorClock[] = clocks.blocks.map((block, b) => conveyorTold(block, clocks.draws(b)));
  for (const { conveyor, why } of clocks.notAsked) conveyors.push({ kind: 'not asked', conveyor, why });
  conveyors.sort((a, b) => a.conveyor - b.conveyor);
  return { conveyors, curvature: curvatureTold(clocks), scatter: scatterTold(clocks) };
}

interface Weighed {
  readonly value: number;
  readonly weight: number;
}

/** 5, 50 and 95 % points of values with weights, each softened by a normal of the values' own grain. */
function belief(values: readonly Weighed[], grain?: number): Belief {
  const sum = values.reduce((s, { weight }) => s + weight, 0);
  if (!(sum > 0)) return { low: NaN, middle: NaN, high: NaN };
  const mean = values.reduce((s, { value, weight }) => s + value * weight, 0) / sum;
  const spread = Math.sqrt(
    values.reduce((s, { value, weight }) => s + weight * (value - mean) ** 2, 0) / sum,
  );
  const soft = grain ?? Math.max(0.25 * spread, 1e-9);
  const below = (x: number): number =>
    values.reduce((s, { value, weight }) => s + weight * area((x - value) / soft), 0) / sum;
  const least = Math.min(...values.map(({ value }) => value)) - 5 * soft;
  const most = Math.max(...values.map(({ value }) => value)) + 5 * soft;
  const at = (level: number): number => crossing(below, level, least, most, 1e-6) ?? mean;
  return { low: at(0.05), middle: at(0.5), high: at(0.95) };
}

const exponent = ({ low, middle, high }: Belief): Belief => ({
  low: Math.exp(low),
  middle: Math.exp(middle),
  high: Math.exp(high),
});

function conveyorTold(block: Block, draws: readonly ClockDraw[]): ConveyorChange {
  const sum = (of: (draw: ClockDraw) => number): number => draws.reduce((s, d) => s + d.weight * of(d), 0);
  const chance = sum((d) => (d.from >= 0 ? 1 : 0));
  const since = block.candidates.map(({ stretch, look }): ChangeSince => {
    const here = draws.filter((d) => d.from === stretch);
    return {
      day: block.lookDay[look]!,
      meter: block.lookMeter[look]!,
      chance: here.reduce((s, d) => s + d.weight, 0),
      factor: exponent(belief(here.map((d) => ({ value: d.jump, weight: d.weight })))),
    };
  });
  const likeliest = since.reduce<ChangeSince | undefined>(
    (best, s) => (s.chance > (best?.chance ?? 0) ? s : best),
    undefined,
  );
  const paces = draws.map((d) => ({ value: paceNow(block, d), weight: d.weight }));
  const soft = 0.02;
  const above = (at: number): number =>
    paces.reduce((s, { value, weight }) => s + weight * area((value - at) / soft), 0);
  const coefficient = (name: 'side' | 'along'): Belief | undefined => {
    const q = block.placeName.indexOf(name);
    if (q < 0) return undefined;
    const at = block.stretches + block.biases + q;
    return belief(draws.map((d) => ({ value: d.v[at]!, weight: d.weight })));
  };
  return {
    kind: 'asked',
    conveyor: block.conveyor,
    chance,
    shared: sum((d) => (d.from >= 0 && d.shared ? 1 : 0)),
    since,
    likeliest,
    factor: exponent(
      belief(draws.filter((d) => d.from >= 0).map((d) => ({ value: d.jump, weight: d.weight }))),
    ),
    pace: exponent(belief(paces, soft)),
    faster: above(Math.log(1.2)),
    slower: 1 - above(-Math.log(1.2)),
    looks: looksTold(block, draws),
    side: coefficient('side'),
    along: coefficient('along'),
    thicknesses: block.row.length,
  };
}

/** ln of the rate now over the mean rate so far, of a set as old as the oldest point here. */
function paceNow(block: Block, { sums, pace, now }: ClockDraw): number {
  let oldest = 0;
  for (let i = 1; i < block.known; i++) if (sums.lastAge[i]! > sums.lastAge[oldest]!) oldest = i;
  const age = sums.lastAge[oldest]!;
  let hours = 0;
  for (let j = 0; j < block.stretches; j++) hours += pace[j]! * sums.lastHours[oldest * block.stretches + j]!;
  const local = (sums.theta.power - 1) * Math.log(age / sums.reference);
  return now + local - Math.log(hours / age);
}

function looksTold(block: Block, draws: readonly ClockDraw[]): readonly LookBias[] {
  return Array.from(block.biasLook, (look, b): LookBias => {
    // A bias of the wear is the other way round for the thickness.
    const at = block.stretches + b;
    return {
      day: block.lookDay[look]!,
      error: block.biasSpread[b]! / clockPriors.lookBias,
      bias: belief(draws.map((d) => ({ value: -d.v[at]!, weight: d.weight }))),
      readings: block.bias.reduce((sum, other) => sum + (other === b ? 1 : 0), 0),
    };
  });
}

function curvatureTold({ hyper }: Clocks): Curvature {
  const powers = hyper.nodes.map(({ weight, answer }) => ({ value: answer.theta.power, weight }));
  const curved = hyper.nodes.filter((node) => node.curved);
  const share = curved.reduce((s, { weight }) => s + weight, 0);
  const mean = share > 0 ? curved.reduce((s, n) => s + n.weight * n.answer.theta.power, 0) / share : 1;
  const spread =
    share > 0
      ? Math.sqrt(curved.reduce((s, n) => s + n.weight * (n.answer.theta.power - mean) ** 2, 0) / share)
      : 0;
  const chance = (holds: (power: number) => boolean): number =>
    powers.reduce((s, { value, weight }) => s + (holds(value) ? weight : 0), 0);
  return {
    power: belief(powers, 0.01),
    mean,
    spread,
    fasterWithAge: chance((p) => p > 1.05),
    slowerWithAge: chance((p) => p < 0.95),
  };
}

function scatterTold({ hyper, blocks }: Clocks): Scatter {
  const logs = hyper.nodes.map(({ weight, answer }) => ({ value: Math.log(answer.theta.scatter), weight }));
  const mean = logs.reduce((s, { value, weight }) => s + value * weight, 0);
  const spread = Math.sqrt(logs.reduce((s, { value, weight }) => s + weight * (value - mean) ** 2, 0));
  const above = (factor: number): number => area((mean - Math.log(factor)) / Math.max(spread, 1e-6));
  const at = (level: number): number => Math.exp(mean + spread * normalQuantile(level));
  return {
    factor: { low: at(0.05), middle: at(0.5), high: at(0.95) },
    above15: above(1.5),
    above2: above(2),
    gauges: gaugesOf(blocks, hyper.centre.theta.scatter),
  };
}

function gaugesOf(blocks: readonly Block[], factor: number): Scatter['gauges'] {
  const counts = new Map<number, number>();
  for (const block of blocks) block.error.forEach((e) => counts.set(e, (counts.get(e) ?? 0) + 1));
  return [...counts].sort((a, b) => a[0] - b[0]).map(([error, readings]) => ({ error, readings, factor }));
}
