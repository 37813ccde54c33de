// Has wear been faster since the look before the last than it was before that look? For every spot whose liner is still in: its
// rate by least squares through the origin of all thicknesses before the last, and what the last one should then have been. An
// average that contains the fast interval cannot show a doubling; this one can. Pooled over the spots of a conveyor that were
// read at its last look (domain/wear/pooled-miss), because one spot's miss is mostly its gauge.

import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Estate } from '../../domain/model/estate.js';
import { exposureBetween } from '../../domain/model/exposure.js';
import { fittedThickness } from '../../domain/model/fitted-thickness.js';
import { historyOf, momentOf } from '../../domain/model/history.js';
import type { LinerSet } from '../../domain/model/liner-sets.js';
import type { Inspection, Place } from '../../domain/model/records.js';
import { ReadingKind } from '../../domain/units/reading-kind.js';
import { lookShare, pooledMiss, type Miss, type PooledMiss } from '../../domain/wear/pooled-miss.js';
import { grownRows } from './growth.js';
import { isPlausible } from './plausible.js';
import { errorOf } from '../../domain/model/reading-error.js';
import { eachCounted } from './seen-sets.js';

export interface Pace {
  readonly place: Place;
  /** Row of the last thickness and of the one before it. */
  readonly row: number;
  readonly before: number;
  readonly inspection: Inspection;
  /** mm per unit of exposure up to the reading before, and since. */
  readonly rateBefore: number;
  readonly rateSince: number;
  readonly miss: Miss;
  readonly unit: 'h' | 't';
}

export interface ConveyorPace {
  readonly spots: readonly Pace[];
  /** Over the spots read at the conveyor's last look with thicknesses and at one look before; undefined below two of them. */
  readonly together: Together | undefined;
}

export interface Together {
  readonly last: Inspection;
  readonly spots: readonly Pace[];
  readonly pooled: PooledMiss;
  /** The same without the spot that sped up most: what the others have in common. */
  readonly others: PooledMiss;
}

const known = new WeakMap<Estate, ReadonlyMap<Conveyor, ConveyorPace>>();

/** By conveyor; those without a spot that was read twice are left out. Worked out once an estate. */
export function pacesOf(estate: Estate): ReadonlyMap<Conveyor, ConveyorPace> {
  const found = known.get(estate) ?? workOut(estate);
  known.set(estate, found);
  return found;
}

interface Seen {
  readonly row: number;
  readonly inspection: Inspection;
}

/** More looks back than this tell nothing more of the rate before. */
const mostLooks = 12;

function workOut(estate: Estate): ReadonlyMap<Conveyor, ConveyorPace> {
  const rows: Seen[][] = estate.places.map(() => []);
  const sets: (LinerSet | undefined)[] = [];
  eachCounted(estate, (row, place, set, inspection) => {
    if (estate.readings.kind[row] !== ReadingKind.thickness) return;
    const list = rows[place];
    if (!list) return;
    if (sets[place] !== set) list.length = 0;
    sets[place] = set;
    if (list.length === mostLooks) list.shift();
    list.push({ row, inspection });
  });
  const spots = new Map<Conveyor, Pace[]>();
  estate.places.forEach((place, index) => {
    const set = sets[index];
    const pace = set && !set.removed ? paceOf(estate, place, set, rows[index] ?? []) : undefined;
    if (!pace) return;
    const list = spots.get(place.conveyor);
    if (list) list.push(pace);
    else spots.set(place.conveyor, [pace]);
  });
  return new Map([...spots].map(([conveyor, list]) => [conveyor, { spots: list, together: together(list) }]));
}

function paceOf(estate: Estate, place: Place, set: LinerSet, seen: readonly Seen[]): Pace | undefined {
  const [before, last] = [seen.at(-2), seen.at(-1)];
  if (!last || !before || grownRows(estate).has(before.row)) return undefined;
  if (!isPlausible('liner thickness', set.liner.thickness.value)) return undefined;
  const history = historyOf(estate, place.conveyor);
  const fitted = fittedThickness(set, place).value;
  const points = seen.flatMap(({ row, inspection }) => {
    const exposure = exposureBetween(history, set, momentOf(history, inspection));
    const wear = fitted - (estate.readings.value[row] ?? NaN);
    return exposure.known && exposure.value > 0 && Number.isFinite(wear)
      ? [{ x: exposure.value, y: wear, error: errorOf(estate, row), row }]
      : [];
  });
  const [then, now] = [points.at(-2), points.at(-1)];
  if (now?.row !== last.row || then?.row !== before.row || !(now.x > then.x)) return undefined;
  const earlier = points.slice(0, -1);
  const information = earlier.reduce((sum, { x, error }) => sum + (x / error) ** 2, 0);
  const rate = earlier.reduce((sum, { x, y, error }) => sum + (x * y) / error ** 2, 0) / information;
  const squares = earlier.reduce((sum, { x }) => sum + x * x, 0);
  return {
    place,
    row: last.row,
    before: before.row,
    inspection: last.inspection,
    rateBefore: rate,
    rateSince: (now.y - then.y) / (now.x - then.x),
    miss: {
      foretold: rate * (now.x - then.x),
      miss: now.y - rate * now.x,
      variance: now.error ** 2 + now.x ** 2 / information,
      shared: lookShare * now.error * Math.hypot(1, now.x / Math.sqrt(squares)),
    },
    unit: history.wearBy === 'tonnes' ? 't' : 'h',
  };
}

function together(spots: readonly Pace[]): Together | undefined {
  const last = spots.reduce<Inspection | undefined>(
    (a, { inspection }) => (a === undefined || inspection.date.day > a.date.day ? inspection : a),
    undefined,
  );
  const own = spots.filter(({ inspection, miss }) => inspection === last && miss.foretold > 0);
  const faster = ({ miss }: Pace): number => miss.miss / miss.foretold;
  const most = own.reduce<Pace | undefined>((a, b) => (a && faster(a) >= faster(b) ? a : b), undefined);
  const pooled = pooledMiss(own.map(({ miss }) => miss));
  const others = pooledMiss(own.filter((spot) => spot !== most).map(({ miss }) => miss));
  return last && pooled && others ? { last, spots: own, pooled, others } : undefined;
}

/** How many errors a spot's own miss is beyond what its conveyor has in common (`shared`, a share of the foretold wear). */
export function beyond({ miss: { foretold, miss, variance, shared } }: Pace, common: number): number {
  if (!(foretold > 0)) return miss / Math.sqrt(variance + shared ** 2);
  return (miss - common * foretold) / Math.sqrt(variance + shared ** 2);
}
