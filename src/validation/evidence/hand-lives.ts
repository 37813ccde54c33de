// The remaining life an inspector would work out by hand, for every spot whose liner is still in: only its last two
// thicknesses and what was seen since are needed, so this is one pass over the columns and a division a spot. Intervals are the report's business.

import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Estate } from '../../domain/model/estate.js';
import { exposureBetween } from '../../domain/model/exposure.js';
import { fittedThickness } from '../../domain/model/fitted-thickness.js';
import { historyOf, momentOf, type History } from '../../domain/model/history.js';
import { wearTotal, type LinerSet } from '../../domain/model/liner-sets.js';
import { runningHours } from '../../domain/model/turns.js';
import type { Inspection, Place } from '../../domain/model/records.js';
import type { HandResult } from '../../domain/wear/arithmetic.js';
import { layerDepths } from '../../domain/wear/colour-bounds.js';
import { knownByHand, type Overruled, type SeenByHand } from '../../domain/wear/known.js';
import { grownRows } from './growth.js';
import { isPlausible } from './plausible.js';
import { errorOf } from '../../domain/model/reading-error.js';
import { eachCounted } from './seen-sets.js';
import { ReadingKind } from '../../domain/units/reading-kind.js';

export interface HandLife {
  readonly place: Place;
  readonly set: LinerSet;
  readonly history: History;
  /** Row of the last thickness, and of the one before it on the same liner. */
  readonly row: number;
  readonly before: number | undefined;
  readonly inspection: Inspection;
  /** The look whose reading, of a thickness or a colour, it counts from. */
  readonly from: Inspection;
  readonly result: HandResult;
  /** What overruled the last thickness; `result.last` is then the most that is left. */
  readonly overruled: Overruled | undefined;
  readonly unit: 'h' | 't';
}

const known = new WeakMap<Estate, ReadonlyMap<Conveyor, readonly HandLife[]>>();

/** By conveyor, in the order of the places; spots without a thickness on the present liner are left out. */
export function handLives(estate: Estate): ReadonlyMap<Conveyor, readonly HandLife[]> {
  const found = known.get(estate) ?? workOut(estate);
  known.set(estate, found);
  return found;
}

export interface RatedLife extends HandLife {
  readonly result: Extract<HandResult, { kind: 'rate' }>;
  /** Total of the conveyor (h or t since commissioning) at which the limit is reached at the ruling rate. */
  readonly end: number;
}

/**
 * Between two totals that wear goes by, as the meter counts: hours at another speed than the drive's are counted by their turns, and
 * nobody can hold those beside a meter.
 */
export function onTheMeter({ speeds }: History, unit: 'h' | 't', from: number, to: number): number {
  return unit === 't' ? to - from : runningHours(speeds, to) - runningHours(speeds, from);
}

/** The spot of each conveyor that reaches its limit first; a conveyor where none has a rate is left out. */
export function* firstToGo(estate: Estate): Iterable<RatedLife> {
  for (const lives of handLives(estate).values()) {
    const rated = lives.flatMap((life): readonly RatedLife[] => {
      const { result, set, history } = life;
      const fitted = wearTotal(history, set.fitted);
      // What has worn off must be more than the reading's error, or the rate is one of chance.
      const sure =
        result.kind === 'rate' &&
        fittedThickness(set, life.place).value - result.last.thickness > 2 * errorOf(estate, life.row);
      return result.kind === 'rate' && sure && fitted !== undefined && !goesByOthers(estate, life, lives)
        ? [{ ...life, result, end: fitted + result.last.exposure + result.remaining }]
        : [];
    });
    const first = rated.reduce<RatedLife | undefined>((a, b) => (!a || b.end < a.end ? b : a), undefined);
    if (first) yield first;
  }
}

/**
 * A spot read once that was no worse than another of its liner in the same look goes by that one, where it was read again since: its one
 * reading tells of its gauge, the later ones of the wear.
 */
function goesByOthers(estate: Estate, life: HandLife, lives: readonly HandLife[]): boolean {
  if (life.before !== undefined || life.overruled) return false;
  const { readings, places } = estate;
  const { inspection, set, row } = life;
  for (let other = inspection.firstRow; other < inspection.endRow; other++) {
    if (other === row || readings.kind[other] !== ReadingKind.thickness) continue;
    const place = places[readings.place[other] ?? -1];
    const newer = lives.find((each) => each.place === place && each.set === set);
    if (!newer || newer.inspection.date.day <= inspection.date.day) continue;
    const less = (readings.value[other] ?? NaN) - (readings.value[row] ?? NaN);
    if (less <= 2 * Math.hypot(errorOf(estate, row), errorOf(estate, other))) return true;
  }
  return false;
}

function workOut(estate: Estate): ReadonlyMap<Conveyor, readonly HandLife[]> {
  const { readings, places } = estate;
  const last = new Int32Array(places.length).fill(-1);
  const before = new Int32Array(places.length).fill(-1);
  const since: (number[] | undefined)[] = [];
  const sets: (LinerSet | undefined)[] = [];
  eachCounted(estate, (row, place, set) => {
    if (readings.kind[row] !== ReadingKind.thickness) {
      (since[place] ??= []).push(row);
      return;
    }
    since[place] = since[place]?.filter((one) => readings.inspection[one] === readings.inspection[row]);
    before[place] = sets[place] === set ? (last[place] ?? -1) : -1;
    last[place] = row;
    sets[place] = set;
  });
  const lives = new Map<Conveyor, HandLife[]>();
  places.forEach((place, index) => {
    const row = last[index] ?? -1;
    const set = sets[index];
    const inspection = estate.inspections[readings.inspection[row] ?? -1];
    if (!set || !inspection || set.removed || !isPlausible('liner thickness', set.liner.thickness.value))
      return;
    const history = historyOf(estate, place.conveyor);
    const earlier = before[index] ?? -1;
    const used = [earlier, row, ...(since[index] ?? [])]
      .filter(
        (one) => one !== earlier || (isBeyondError(estate, earlier, row) && !grownRows(estate).has(earlier)),
      )
      .flatMap((one) => seenIn(estate, history, set, one) ?? []);
    const { result, overruled } = knownByHand({
      fitted: fittedThickness(set, place).value,
      least: set.liner.condemn.value,
      depths: layerDepths(set.liner.layers.map((layer) => layer.thickness.value)),
      seen: used,
    });
    const from = (since[index] ?? []).findLast((one) => {
      const seen = seenIn(estate, history, set, one);
      return overruled && seen && 'last' in result && seen.exposure === result.last.exposure;
    });
    const life: HandLife = {
      from: estate.inspections[readings.inspection[from ?? row] ?? -1] ?? inspection,
      place,
      set,
      history,
      row,
      before: earlier < 0 ? undefined : earlier,
      inspection,
      result,
      overruled,
      unit: history.wearBy === 'tonnes' ? 't' : 'h',
    };
    lives.set(place.conveyor, [...(lives.get(place.conveyor) ?? []), life]);
  });
  return lives;
}

/** Two readings whose difference is within their error give no short-term rate to raise an alarm on. */
function isBeyondError(estate: Estate, before: number, row: number): boolean {
  const { value } = estate.readings;
  return (
    before >= 0 &&
    Math.abs((value[row] ?? 0) - (value[before] ?? 0)) >
      2 * Math.hypot(errorOf(estate, row), errorOf(estate, before))
  );
}

function seenIn(estate: Estate, history: History, set: LinerSet, row: number): SeenByHand | undefined {
  const { readings } = estate;
  const inspection = estate.inspections[readings.inspection[row] ?? -1];
  const value = readings.value[row];
  if (!inspection || value === undefined) return undefined;
  const exposure = exposureBetween(history, set, momentOf(history, inspection));
  if (!exposure.known) return undefined;
  switch (readings.kind[row]) {
    case ReadingKind.thickness:
      return { exposure: exposure.value, thickness: value };
    case ReadingKind.colour:
      return { exposure: exposure.value, layer: value };
    case ReadingKind.trough:
      return { exposure: exposure.value, layer: set.liner.layers.length };
    default:
      return undefined;
  }
}
