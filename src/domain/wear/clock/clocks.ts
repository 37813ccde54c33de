// The wear clocks of a fit: which conveyors ask for one, what the shared parameters are, and for each point the outlook under its
// conveyor's clock. The door of this folder for fit.ts and forecast.ts.
// Index arithmetic runs within lengths made here and in reduce.ts, so `!` after an index is safe.

import type { ClockColumns } from '../change.js';
import type { NormalPrior } from '../likelihood/parameters.js';
import type { Units } from '../reduce.js';
import type { Block, BlockSetting, NoBlock } from './blocks.js';
import { blockOf, evenHours } from './blocks.js';
import type { ClockDraw } from './draws.js';
import { drawClocks } from './draws.js';
import type { Hyper, Setting } from './hyper.js';
import { effortFor, explore, referenceAge } from './hyper.js';
import type { Outlook } from './outlook.js';
import { outlookOf } from './outlook.js';
import { clockPriors } from './priors.js';
import type { Strays } from './strays.js';
import { straysOf } from './strays.js';
import { outlookWithoutNewest } from './without.js';

export interface Clocks {
  readonly blocks: readonly Block[];
  readonly hyper: Hyper;
  readonly setting: Setting;
  /** Block and place in it of each unit; undefined where wear is taken as straight. */
  readonly placeOf: (unit: number) => { readonly block: number; readonly unit: number } | undefined;
  readonly draws: (block: number) => readonly ClockDraw[];
  readonly outlook: (unit: number) => Outlook | undefined;
  /** The same as if its newest thickness had not been read; undefined where it has none. */
  readonly withoutNewest: (unit: number) => Outlook | undefined;
  /** What strays, by block. */
  readonly strays: readonly Strays[] | undefined;
  readonly notAsked: readonly { readonly conveyor: number; readonly why: NoBlock }[];
}

export interface ClockSetting extends BlockSetting {
  readonly expected: Setting['expected'];
  /** ln of the factor on declared errors. */
  readonly scatter: NormalPrior;
  /** Whether readings that stray count for less. */
  readonly strays: 'down-weight' | 'keep';
}

export function clocksOf(units: Units, clock: ClockColumns, asked: ClockSetting): Clocks | undefined {
  const byConveyor: number[][] = clock.product.map(() => []);
  for (let unit = 0; unit < units.count; unit++) byConveyor[clock.conveyor[unit] ?? -1]?.push(unit);
  const blocks: Block[] = [];
  const notAsked: { conveyor: number; why: NoBlock }[] = [];
  byConveyor.forEach((members, conveyor) => {
    const block = blockOf(units, clock, conveyor, members, asked);
    if (typeof block === 'string') notAsked.push({ conveyor, why: block });
    else blocks.push(block);
  });
  if (blocks.length === 0) return undefined;
  const plain = settingOf(blocks, asked);
  const strays = asked.strays === 'keep' ? undefined : blocks.map((block) => straysOf(block, plain));
  const setting = strays ? { ...plain, weight: strays.map(({ weight }) => weight) } : plain;
  const hyper = explore(setting, effortFor(blocks));
  const at = new Map<number, { block: number; unit: number }>();
  blocks.forEach((block, b) => block.units.forEach((unit, i) => at.set(unit, { block: b, unit: i })));
  const draws = new Map<number, readonly ClockDraw[]>();
  const drawsOf = (b: number): readonly ClockDraw[] => {
    let known = draws.get(b);
    if (!known) draws.set(b, (known = drawClocks(blocks[b]!, b, hyper, drawsFor(blocks[b]!))));
    return known;
  };
  const outlooks = new Map<number, Outlook>();
  return {
    blocks,
    hyper,
    setting,
    strays,
    notAsked,
    placeOf: (unit) => at.get(unit),
    draws: drawsOf,
    withoutNewest: (unit) => {
      const place = at.get(unit);
      if (!place) return undefined;
      const { block, unit: own } = place;
      return outlookWithoutNewest(blocks[block]!, own, drawsOf(block), strays?.[block]?.weight);
    },
    outlook: (unit) => {
      const place = at.get(unit);
      if (!place) return undefined;
      let known = outlooks.get(unit);
      if (!known)
        outlooks.set(unit, (known = outlookOf(blocks[place.block]!, place.unit, drawsOf(place.block))));
      return known;
    },
  };
}

/**
 * More clocks for fewer points: there they cost little, and the clock is less sure; with three or four points half as many leave
 * quantiles of life up to 0.9 % off. An even number.
 */
function drawsFor({ known }: Block): number {
  return 2 * Math.round(Math.max(32, Math.min(512, (known <= 4 ? 2000 : 800) / known)));
}

function settingOf(blocks: readonly Block[], asked: ClockSetting): Setting {
  const weight = blocks.map((block) => new Float64Array(block.row.length).fill(1));
  return {
    blocks,
    weight,
    expected: asked.expected,
    reference: referenceAge(blocks),
    scatter: asked.scatter,
    curvedChance: evenHours(asked.duty) * (1 - clockPriors.straightChance),
    ...noisePriors(blocks, asked.duty),
  };
}

function noisePriors(
  blocks: readonly Block[],
  duty: ClockSetting['duty'],
): { readonly pointNoise: NormalPrior; readonly sharedNoise: NormalPrior } {
  if (duty === 'estimate')
    return { pointNoise: clockPriors.logPointNoise, sharedNoise: clockPriors.logSharedNoise };
  if (duty === 'none') {
    const even = { mean: Math.log(0.01), spread: 0.05 };
    return { pointNoise: even, sharedNoise: even };
  }
  const step = blocks[0]!.step;
  const ratio = Math.max(duty.ratio * Math.sqrt(duty.per / step), 1e-3);
  return { pointNoise: { mean: Math.log(ratio), spread: 0.05 }, sharedNoise: clockPriors.logSharedNoise };
}
