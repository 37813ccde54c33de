// What the looks say of a change of the wear rate, conveyor by conveyor: since which look, how sure that is, and when the limit
// comes if it is so and if it is not; or that it cannot be told yet, and which look would tell. Said only where thicknesses were
// read: colours alone cry wolf (see DEVELOPERS.md).

import type { CalendarDay } from '../../../domain/units/calendar.js';
import type { Duty } from '../../../domain/model/duty.js';
import type { Belief, ConveyorChange, Curvature, Scatter, WearChange } from '../../../domain/wear/change.js';
import { scatterSure } from '../../../domain/wear/fit.js';
import type { Quantiles } from '../../../domain/wear/quantiles.js';
import type { DayQuantiles } from '../../../domain/wear/to-calendar.js';

/** Why nothing is said where the model keeps no wear clock at all. */
export const noClock = 'no wear clock';

/** Above this a change is told with both branches; above the lower one it is told that it cannot be told yet. */
const believed = 0.55;
const suspected = 0.2;
/** Chance of wearing at least a fifth faster than on average so far, above which age is told where no look explains it. */
const agedEnough = 0.35;
/** Below so many thicknesses nothing is said of a change. */
const fewest = 4;
/** A whole look is told to read off from this share of its gauge error on. */
const lookOff = 0.7;

export interface BranchDates {
  readonly point: string;
  /** Day of the report: a branch's dates may lie before it. */
  readonly asOf: CalendarDay;
  readonly ifChanged: DayQuantiles;
  readonly ifNot: DayQuantiles;
  /** The same as exposure since fitting, h or t. */
  readonly exposureIfChanged: Quantiles;
  readonly exposureIfNot: Quantiles;
}

/** A look after which the rate may have changed. */
export interface SuspectedLook {
  readonly day: CalendarDay;
  /** Of a change since this or another of the last looks. */
  readonly chance: number;
  /** Rate since over rate before, if it changed. */
  readonly factor: Belief;
  /** What a duty record of about then says beside its hours: often the cause. */
  readonly noted: { readonly day: CalendarDay; readonly text: string } | undefined;
}

export type WearPace =
  | ({
      readonly kind: 'changed';
      /** Conveyors that carry the same and are told to have changed with it. */
      readonly withOthers: readonly string[];
      readonly dates: BranchDates | undefined;
    } & SuspectedLook)
  | ({ readonly kind: 'cannot yet be told'; readonly dates: BranchDates | undefined } & SuspectedLook)
  /** wear ~ exposure^power. */
  | { readonly kind: 'faster with age'; readonly power: number; readonly spread: number }
  | { readonly kind: 'no sign'; readonly thicknesses: number }
  | { readonly kind: 'not asked'; readonly why: string };

export interface LookOff {
  readonly day: CalendarDay;
  /** mm, above 0 where it reads too thick. */
  readonly bias: Belief;
  readonly readings: number;
}

/** What of the records does not fit the gauge. */
export interface ScatterTold {
  readonly level: 'above half as much again' | 'above twice';
  /** Scatter about smooth wear over the declared error. */
  readonly factor: Belief;
  /** mm, declared by most readings. */
  readonly declared: number;
}

export interface PaceInput {
  readonly change: WearChange | undefined;
  /** Number of the conveyor in the fit; names by number. */
  readonly conveyor: number;
  readonly names: readonly string[];
  /** Both branches' dates at the point whose limit comes first; asked for only where a change is suspected. */
  readonly dates: () => BranchDates | undefined;
  /** Duties with their notes, in order. */
  readonly duties: readonly Duty[];
}

export function wearPace({ change, conveyor, names, dates, duties }: PaceInput): WearPace {
  const clock = change?.conveyors.find((c) => c.conveyor === conveyor);
  if (!clock) return { kind: 'not asked', why: noClock };
  if (clock.kind === 'not asked') return { kind: 'not asked', why: clock.why };
  if (clock.thicknesses < fewest) return { kind: 'not asked', why: 'too few thicknesses' };
  const { likeliest, chance, factor } = clock;
  // Days in the columns came from calendar days.
  const day = likeliest?.day as CalendarDay | undefined;
  const look = day === undefined ? undefined : { day, chance, factor, noted: notedAbout(duties, day) };
  if (look && chance > believed)
    return { kind: 'changed', ...look, withOthers: changedWith(change, clock, names), dates: dates() };
  const age = agedBy(change?.curvature, clock);
  if (age) return age;
  if (look && chance > suspected) return { kind: 'cannot yet be told', ...look, dates: dates() };
  return { kind: 'no sign', thicknesses: clock.thicknesses };
}

/** From a month before the look on: the first record with a note. */
function notedAbout(duties: readonly Duty[], look: CalendarDay): SuspectedLook['noted'] {
  const record = duties.find(
    ({ from, note }) => note !== undefined && from !== undefined && from >= look - 31,
  );
  return record?.from === undefined || record.note === undefined
    ? undefined
    : { day: record.from, text: record.note };
}

function changedWith(
  change: WearChange | undefined,
  clock: ConveyorChange,
  names: readonly string[],
): readonly string[] {
  if (!(clock.shared > 0.5 * clock.chance)) return [];
  return (change?.conveyors ?? []).flatMap((other) =>
    other.kind === 'asked' && other !== clock && other.chance > believed && other.shared > 0.5 * other.chance
      ? (names[other.conveyor] ?? [])
      : [],
  );
}

function agedBy(curvature: Curvature | undefined, clock: ConveyorChange): WearPace | undefined {
  if (!curvature || !(clock.faster > agedEnough) || !(curvature.fasterWithAge > agedEnough)) return undefined;
  return { kind: 'faster with age', power: curvature.mean, spread: curvature.spread };
}

/** Whole looks that read off: by more than most of their gauge error, and surely on one side. */
export function looksOff(
  change: WearChange | undefined,
  conveyor: number,
  gaugeError: number,
): readonly LookOff[] {
  const clock = change?.conveyors.find((c) => c.conveyor === conveyor);
  if (clock?.kind !== 'asked') return [];
  return clock.looks
    .filter(({ bias }) => Math.abs(bias.middle) > lookOff * gaugeError && bias.low * bias.high > 0)
    .map((look) => ({ ...look, day: look.day as CalendarDay }));
}

export function scatterTold(scatter: Scatter | undefined): ScatterTold | undefined {
  if (!scatter) return undefined;
  const [usual] = [...scatter.gauges].sort((a, b) => b.readings - a.readings);
  const level =
    scatter.above2 > scatterSure
      ? 'above twice'
      : scatter.above15 > scatterSure
        ? 'above half as much again'
        : undefined;
  return level && usual && { level, factor: scatter.factor, declared: usual.error };
}
