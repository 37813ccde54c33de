// What is known of one place on the liner that lies there now: every reading with its exposure, what was looked for and not
// seen, the hand arithmetic from thicknesses, the bounds from colours, and when each depth would be reached at the ruling rate.

import type { CalendarDay } from '../../../domain/units/calendar.js';
import { setLying, type ExposedReading } from '../../../domain/model/exposure.js';
import { fittedThickness } from '../../../domain/model/fitted-thickness.js';
import type { Estate } from '../../../domain/model/estate.js';
import { dayAt, totalOn, type History } from '../../../domain/model/history.js';
import { wearTotal, type LinerSet } from '../../../domain/model/liner-sets.js';
import { originOf, type Inspection, type PhotoUse, type Place } from '../../../domain/model/records.js';
import type { Origin } from '../../../domain/model/origin.js';
import type { HandResult } from '../../../domain/wear/arithmetic.js';
import { knownByHand, type Overruled, type SeenByHand } from '../../../domain/wear/known.js';
import {
  colourBounds,
  layerDepths,
  leftWhile,
  type ColourResult,
} from '../../../domain/wear/colour-bounds.js';
import type { ConveyorForecast, PointModel } from './model.js';
import { passedBySight, type LimitPassed } from '../../../domain/wear/passed.js';
import { lineThroughOrigin, type FittedLine } from '../../../domain/wear/least-squares.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';

export type { PointModel, Quantiles } from './model.js';

export type Observation =
  | { readonly kind: 'thickness'; readonly thickness: number; readonly error: number | undefined }
  /** `layer` 0 is the first on the screw side. */
  | { readonly kind: 'colour'; readonly layer: number; readonly name: string }
  | { readonly kind: 'trough' }
  | { readonly kind: 'not seen' };

export interface ObservedReading {
  readonly row: number;
  readonly day: CalendarDay;
  readonly inspection: Inspection;
  /** Of the set that lies there now, h or t. */
  readonly exposure: number;
  readonly seen: Observation;
  readonly note: string | undefined;
  readonly photo: PhotoUse | undefined;
  readonly origin: Origin;
}

/** A reading of a liner that was replaced since. */
export interface FormerReading {
  readonly day: CalendarDay;
  readonly liner: string;
  /** When it came out there, or was moved. */
  readonly until: LinerSet['removed'];
  readonly seen: Observation;
  readonly photo: PhotoUse | undefined;
}

/** A reading that took no part, and why. */
export interface LeftOut {
  readonly row: number;
  readonly day: CalendarDay;
  readonly reason: string;
  readonly origin: Origin;
}

/** When a depth of wear is reached at the ruling rate of the hand arithmetic. */
export interface Milestone {
  readonly kind: 'layer' | 'condemn' | 'trough';
  /** `teal shows`, `condemn limit`, `trough shows`. */
  readonly name: string;
  /** mm of wear. */
  readonly depth: number;
  /** h or t from the last thickness; 0 where it is reached. Undefined where nothing finite can be concluded. */
  readonly remaining: number | undefined;
  /** Exposure of the set at which it is reached. */
  readonly exposure: number | undefined;
  /** By duty; undefined where no duty tells. */
  readonly day: CalendarDay | undefined;
}

export interface PointLife {
  readonly place: Place;
  /** The set lying there on the day of the report; undefined before commissioning. */
  readonly set: LinerSet | undefined;
  readonly fitted: { readonly value: number; readonly measured: boolean };
  /** Remaining thickness at which the liner is to be changed, mm. */
  readonly condemn: number;
  /** Depths at which each layer ends, mm, from 0; the last is the full thickness. */
  readonly depths: readonly number[];
  /** Exposure of the set on the day of the report. */
  readonly exposureNow: number | undefined;
  /** Readings of the present set in order of exposure, those not seen included. */
  readonly readings: readonly ObservedReading[];
  /** Readings that saw something of sets that were replaced. */
  readonly formerReadings: number;
  /** The same one by one, oldest first. */
  readonly former: readonly FormerReading[];
  readonly leftOut: readonly LeftOut[];
  /** `thickness`: at least one; `colour`: colours or trough only; `not seen`: looked for, never seen; `none`: not looked at. */
  readonly state: 'thickness' | 'colour' | 'not seen' | 'none';
  /** From the thicknesses, and from what was seen after the last of them where that says less is left. */
  readonly hand: HandResult;
  /** What overruled the last thickness, if anything did: `hand.last` is then the most that is left. */
  readonly overruled: Overruled | undefined;
  readonly colours: ColourResult;
  /** Least squares through the origin over the thicknesses: mm of wear per unit of exposure. */
  readonly line: FittedLine | undefined;
  readonly milestones: readonly Milestone[];
  /** Undefined where no model could be fitted. */
  readonly model?: PointModel | undefined;
  /** By hand: the limit at the ruling rate, or the earliest that the colours allow. Undefined where nothing finite follows. */
  readonly limitByHand: { readonly day: CalendarDay; readonly by: 'rate' | 'colour' } | undefined;
  /** What is left by hand counts from this day: of the last thickness, or of what was seen since and rules. */
  readonly leftFrom: CalendarDay | undefined;
  /** Latest day of the next look: half of the remaining life. Undefined where nothing finite follows. */
  readonly nextLook: { readonly day: CalendarDay; readonly overdue: boolean } | undefined;
  /** The last reading in words: steel shows, or the last thickness is at or below the limit. */
  readonly pastLimit: 'trough shows' | 'at the limit' | undefined;
  /** When, by the looks alone: after the last that saw more than the limit, by the next. Undefined where the limit is not passed. */
  readonly passedBySight: LimitPassed | undefined;
}

export interface PointInput {
  readonly estate: Estate;
  readonly history: History;
  readonly place: Place;
  readonly readings: readonly ExposedReading[];
  readonly asOf: CalendarDay | undefined;
}

export function pointLife(input: PointInput): PointLife {
  const { history, place, asOf } = input;
  const set = asOf === undefined ? undefined : setLying(history, place.at, asOf);
  const liner = set?.liner ?? history.conveyor.liner;
  const fitted = set ? fittedThickness(set, place) : { value: liner.thickness.value, measured: false };
  const depths = set?.reline?.moved
    ? [0, fitted.value]
    : layerDepths(liner.layers.map((layer) => layer.thickness.value));
  const { readings, leftOut, former } = sortReadings(
    input,
    set,
    liner.layers.map((layer) => layer.name),
  );
  const { result: hand, overruled } = knownByHand({
    fitted: fitted.value,
    least: liner.condemn.value,
    depths,
    seen: readings.flatMap(({ exposure, seen }): readonly SeenByHand[] => {
      switch (seen.kind) {
        case 'thickness':
          return [{ exposure, thickness: seen.thickness }];
        case 'colour':
          return [{ exposure, layer: seen.layer }];
        case 'trough':
          return [{ exposure, layer: depths.length - 1 }];
        case 'not seen':
          return [];
      }
    }),
  });
  const colours = colourBounds({
    layers: liner.layers.map((layer) => layer.thickness.value),
    least: liner.condemn.value,
    seen: readings.flatMap((r) =>
      r.seen.kind === 'colour'
        ? [{ exposure: r.exposure, layer: r.seen.layer }]
        : r.seen.kind === 'trough'
          ? [{ exposure: r.exposure, layer: liner.layers.length }]
          : [],
    ),
  });
  const thick = readings.flatMap((r) =>
    r.seen.kind === 'thickness' && r.exposure > 0
      ? [[r.exposure, fitted.value - r.seen.thickness] as const]
      : [],
  );
  const milestones = milestonesOf(history, set, hand, {
    fitted: fitted.value,
    condemn: liner.condemn.value,
    depths,
    names: liner.layers.map((l) => l.name),
  });
  const last = readings.findLast((r) => r.seen.kind !== 'not seen');
  const pastLimit =
    last?.seen.kind === 'trough' || overruled?.by === 'steel'
      ? 'trough shows'
      : hand.kind === 'at the limit'
        ? 'at the limit'
        : undefined;
  return {
    place,
    set,
    fitted,
    condemn: liner.condemn.value,
    depths,
    readings,
    leftOut,
    formerReadings: former.length,
    former,
    hand,
    overruled,
    colours,
    milestones,
    exposureNow: exposureOn(history, set, asOf),
    state: stateOf(readings),
    line: lineThroughOrigin(
      thick.map(([x]) => x),
      thick.map(([, y]) => y),
    ),
    limitByHand: limitByHandOf(history, set, milestones, hand, colours),
    leftFrom: leftFromOf(readings, hand, colours),
    nextLook: nextLookOf(history, set, hand, colours, last?.exposure, asOf),
    pastLimit,
    passedBySight: pastLimit && sightOf(readings, set, liner.condemn.value, depths, fitted.value),
  };
}

/** The last look that surely saw more than the limit, else the fitting, and the first after it that surely did not. */
function sightOf(
  readings: readonly ObservedReading[],
  set: LinerSet | undefined,
  condemn: number,
  depths: readonly number[],
  fitted: number,
): LimitPassed | undefined {
  const looks = readings.flatMap(({ seen, day }) => {
    const left = leftBy(seen, fitted, depths);
    return left ? [{ day, ...left }] : [];
  });
  const short = looks.findLastIndex(({ least }) => least > condemn);
  const reached = looks.find(({ most }, i) => i > short && most <= condemn);
  return reached && passedBySight(looks[short]?.day ?? set?.fitted?.day, reached.day);
}

/** mm that may be left, by what was seen alone; undefined where nothing was. */
function leftBy(
  seen: Observation,
  fitted: number,
  depths: readonly number[],
): { readonly least: number; readonly most: number } | undefined {
  switch (seen.kind) {
    case 'thickness':
      return { least: seen.thickness, most: seen.thickness };
    case 'colour':
      return leftWhile(seen.layer, fitted, depths);
    case 'trough':
      return { least: 0, most: 0 };
    case 'not seen':
      return undefined;
  }
}

/** So many later looks that agree with the rest make an old reading that strays no question of today (judgement). */
const agreeing = 3;

/** Readings that stray count for little; one that enough later looks have overtaken stays listed and is not asked about again. */
export function isOvertaken({ readings, model }: PointLife, day: CalendarDay): boolean {
  const strays = new Set((model?.strays ?? []).filter(({ weight }) => weight < 0.5).map((s) => s.day));
  const later = readings.filter((r) => r.seen.kind === 'thickness' && r.day > day && !strays.has(r.day));
  return strays.has(day) && later.length >= agreeing;
}

/** When the limit was passed, by the model where it says so, else by the looks; undefined where it was not. */
export function passedAt({ model, passedBySight: seen }: PointLife): LimitPassed | undefined {
  return model && model.condemn.kind !== 'cannot say' ? (model.condemn.passed ?? seen) : seen;
}

/** The point whose condemn limit comes first: those past it first of all, then by the model's median, else by hand. */
export function worstOf(points: readonly PointLife[]): PointLife | undefined {
  let worst: PointLife | undefined;
  let least = Infinity;
  for (const point of points) {
    const left = lifeLeft(point);
    if (left < least) [worst, least] = [point, left];
  }
  return worst;
}

/**
 * The one point that the report speaks of as governing: what was seen at its limit; else of those that were seen the likeliest to
 * be first, as the forecast says; else the worst by `worstOf`.
 */
export function governingPoint(
  points: readonly PointLife[],
  forecast: ConveyorForecast,
): PointLife | undefined {
  const worst = worstOf(points);
  if (worst?.pastLimit || forecast.kind !== 'dates') return worst;
  const isSeen = ({ state }: PointLife): boolean => state === 'thickness' || state === 'colour';
  const names = forecast.first.filter(({ share }) => share > 0).map(({ name }) => name);
  const likeliest = names.flatMap((name) => points.find((p) => isSeen(p) && p.place.name === name) ?? []);
  return likeliest[0] ?? worst;
}

/** The points with the least life left, as many as asked for, and a few that nobody has seen: what a forecast turns on. */
export function nearestToLimit(points: readonly PointLife[], most: number): ReadonlySet<PointLife> {
  const left = new Map(points.map((p) => [p, lifeLeft(p)]));
  const seen = points
    .filter((p) => left.get(p) !== Infinity)
    .sort((a, b) => (left.get(a) ?? 0) - (left.get(b) ?? 0))
    .slice(0, most);
  const unseen = points.filter((p) => p.state === 'none' || p.state === 'not seen').slice(0, 3);
  return new Set([...seen, ...unseen]);
}

/** Exposure from now to the condemn limit, below 0 where it is past, to order points by; Infinity where nothing can be concluded. */
function lifeLeft(point: PointLife): number {
  // Before all that is only reckoned, however long ago.
  if (point.pastLimit) return point.pastLimit === 'trough shows' ? -2e15 : -1e15;
  const now = point.exposureNow;
  if (now === undefined) return Infinity;
  const seen = point.state === 'thickness' || point.state === 'colour';
  if (point.model?.condemn.kind === 'life' && seen) return point.model.condemn.exposure.q50 - now;
  const condemn = point.milestones.find((m) => m.kind === 'condemn');
  if (condemn?.exposure !== undefined) return condemn.exposure - now;
  return point.colours.kind === 'between'
    ? point.colours.last.exposure + point.colours.leastLife - now
    : Infinity;
}

function sortReadings(
  input: PointInput,
  set: LinerSet | undefined,
  layers: readonly string[],
): { readings: ObservedReading[]; leftOut: LeftOut[]; former: FormerReading[] } {
  const { estate } = input;
  const { readings: columns } = estate;
  const readings: ObservedReading[] = [];
  const leftOut: LeftOut[] = [];
  const former: FormerReading[] = [];
  for (const { row, inspection, set: of, exposure } of input.readings) {
    const day = inspection.date.day;
    const origin = originOf(columns, row);
    const isFormer = of !== undefined && of !== set;
    const seen = seenOf(input, row, isFormer ? of.liner.layers.map((layer) => layer.name) : layers);
    const withdrawn = columns.kind[row] === ReadingKind.withdrawn;
    if (!seen && !withdrawn) leftOut.push({ row, day, origin, reason: 'could not be read' });
    else if (isFormer) {
      if (seen && seen.kind !== 'not seen')
        former.push({ day, liner: of.liner.name, until: of.removed, seen, photo: columns.photos.get(row) });
    } else if (!exposure.known) leftOut.push({ row, day, origin, reason: exposure.reason });
    else if (seen)
      readings.push({
        row,
        day,
        inspection,
        exposure: exposure.value,
        seen,
        note: columns.notes.get(row),
        photo: columns.photos.get(row),
        origin,
      });
  }
  readings.sort((a, b) => a.exposure - b.exposure || a.day - b.day || a.row - b.row);
  return { readings, leftOut, former };
}

function seenOf(input: PointInput, row: number, layers: readonly string[]): Observation | undefined {
  const { kind, value, error } = input.estate.readings;
  const number = value[row] ?? NaN;
  switch (kind[row]) {
    case ReadingKind.thickness: {
      const sigma = error[row] ?? NaN;
      return Number.isFinite(number) && number >= 0
        ? { kind: 'thickness', thickness: number, error: Number.isFinite(sigma) ? sigma : undefined }
        : undefined;
    }
    case ReadingKind.colour: {
      const name = layers[number];
      return name === undefined ? undefined : { kind: 'colour', layer: number, name };
    }
    case ReadingKind.trough:
      return { kind: 'trough' };
    case ReadingKind.notSeen:
      return { kind: 'not seen' };
    default:
      return undefined;
  }
}

function stateOf(readings: readonly ObservedReading[]): PointLife['state'] {
  if (readings.some((r) => r.seen.kind === 'thickness')) return 'thickness';
  if (readings.some((r) => r.seen.kind !== 'not seen')) return 'colour';
  return readings.length > 0 ? 'not seen' : 'none';
}

function milestonesOf(
  history: History,
  set: LinerSet | undefined,
  hand: HandResult,
  liner: { fitted: number; condemn: number; depths: readonly number[]; names: readonly string[] },
): readonly Milestone[] {
  const marks: { kind: Milestone['kind']; name: string; depth: number }[] = [];
  liner.depths
    .slice(1, -1)
    .forEach((depth, i) =>
      marks.push({ kind: 'layer', name: `${liner.names[i + 1] ?? 'next layer'} shows`, depth }),
    );
  marks.push({ kind: 'condemn', name: 'condemn limit', depth: liner.fitted - liner.condemn });
  marks.push({ kind: 'trough', name: 'trough shows', depth: liner.fitted });
  return marks
    .map((mark) => {
      const worn =
        hand.kind === 'rate' || hand.kind === 'at the limit' ? liner.fitted - hand.last.thickness : undefined;
      // At the limit there is still a long-term rate for what lies below it.
      const rate =
        hand.kind === 'rate'
          ? hand.ruling
          : hand.kind === 'at the limit' && hand.longTerm > 0
            ? hand.longTerm
            : undefined;
      if (
        worn === undefined ||
        rate === undefined ||
        (hand.kind !== 'rate' && hand.kind !== 'at the limit')
      ) {
        return { ...mark, remaining: undefined, exposure: undefined, day: undefined };
      }
      const remaining = Math.max(0, mark.depth - worn) / rate;
      const exposure = hand.last.exposure + remaining;
      return { ...mark, remaining, exposure, day: dayOfExposure(history, set, exposure) };
    })
    .sort((a, b) => a.depth - b.depth);
}

/** The day on which a set has had so much exposure; undefined where the fitting or the duty is not known. */
export function dayOfExposure(
  history: History,
  set: LinerSet | undefined,
  exposure: number,
): CalendarDay | undefined {
  const from = wearTotal(history, set?.fitted);
  if (from === undefined) return undefined;
  const day = dayAt(history, from + exposure);
  // Whole days: the day during which it is reached. Beyond the year 9999 no date is worth printing.
  return day === undefined || day > 2_932_896 ? undefined : (Math.floor(day) as CalendarDay);
}

function exposureOn(
  history: History,
  set: LinerSet | undefined,
  asOf: CalendarDay | undefined,
): number | undefined {
  if (!set?.fitted || asOf === undefined) return undefined;
  const from = wearTotal(history, set.fitted);
  const now = totalOn(history, asOf);
  if (from === undefined || now === undefined) return undefined;
  return Math.max(0, now - from);
}

function limitByHandOf(
  history: History,
  set: LinerSet | undefined,
  milestones: readonly Milestone[],
  hand: HandResult,
  colours: ColourResult,
): PointLife['limitByHand'] {
  const day = milestones.find((m) => m.kind === 'condemn')?.day;
  if (day !== undefined) return { day, by: 'rate' };
  if (hand.kind !== 'no reading' || colours.kind !== 'between') return undefined;
  const earliest = dayOfExposure(history, set, colours.last.exposure + colours.leastLife);
  return earliest === undefined ? undefined : { day: earliest, by: 'colour' };
}

function leftFromOf(
  readings: readonly ObservedReading[],
  hand: HandResult,
  colours: ColourResult,
): CalendarDay | undefined {
  const last = hand.kind === 'no reading' ? ('last' in colours ? colours.last : undefined) : hand.last;
  return (
    last &&
    readings.findLast(({ exposure, seen }) => exposure === last.exposure && seen.kind !== 'not seen')?.day
  );
}

/**
 * Half of the life that was left at the last look that saw something: by thickness where there is one, else half of the least
 * life that the colours allow. A colour seen after the last thickness is a look too.
 */
function nextLookOf(
  history: History,
  set: LinerSet | undefined,
  hand: HandResult,
  colours: ColourResult,
  looked: number | undefined,
  asOf: CalendarDay | undefined,
): PointLife['nextLook'] {
  const limit =
    hand.kind === 'rate'
      ? hand.last.exposure + hand.remaining
      : hand.kind === 'no reading' && (colours.kind === 'between' || colours.kind === 'at most')
        ? colours.last.exposure + colours.leastLife
        : undefined;
  if (limit === undefined || looked === undefined) return undefined;
  const day = dayOfExposure(history, set, looked + Math.max(0, limit - looked) / 2);
  return day === undefined || asOf === undefined ? undefined : { day, overdue: day < asOf };
}
