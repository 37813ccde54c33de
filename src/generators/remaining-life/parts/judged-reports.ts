// Did the forecasts that were published come true? Later thicknesses of the same liner are held against the rate that a saved report
// gave, pooled as in the track record, and limits seen reached since against the lives it gave. Unlike re-made forecasts these
// cannot profit from a model that has been mended since.

import type { CalendarDay } from '../../../domain/units/calendar.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { ExposedReading } from '../../../domain/model/exposure.js';
import type { Place } from '../../../domain/model/records.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';
import {
  lookShare,
  pooledMiss,
  pooledTogether,
  toldBeyond,
  type Miss,
  type PooledMiss,
} from '../../../domain/wear/pooled-miss.js';
import { defaultGaugeError } from '../../../domain/wear/reduce.js';
import type { Published, PublishedPoint, PublishedReport } from '../published.js';

export interface JudgedReport {
  readonly asOf: CalendarDay;
  /** By name of the conveyor, where points were read since. */
  readonly conveyors: readonly {
    readonly name: string;
    readonly pooled: PooledMiss;
    readonly told: boolean;
  }[];
  readonly together: PooledMiss | undefined;
  readonly told: boolean;
  /** Limits seen reached since, and how many of them before the 10 % quantile and after the 90 % one. */
  readonly reached: { readonly of: number; readonly early: number; readonly late: number };
  /** Points of the report that no thickness of the same liner was read at since. */
  readonly notReadSince: number;
}

export function judgeReport(
  report: PublishedReport,
  estate: Estate,
  readings: ReadonlyMap<Place, readonly ExposedReading[]>,
): JudgedReport {
  const places = new Map(
    [...readings.keys()].map((place) => [`${place.conveyor.name} ${place.name}`, place]),
  );
  const misses = new Map<string, Miss[]>();
  let notReadSince = 0;
  const ends: ('early' | 'within' | 'late')[] = [];
  for (const point of report.points) {
    const place = places.get(`${point.conveyor} ${point.point}`);
    const since = place ? laterThicknesses(estate, readings.get(place) ?? [], point, report.asOf) : [];
    const last = since.at(-1);
    const miss = last && missOf(point, last);
    if (!miss) notReadSince += 1;
    else misses.set(point.conveyor, [...(misses.get(point.conveyor) ?? []), miss]);
    const end = endOf(point, since);
    if (end) ends.push(end);
  }
  const conveyors = [...misses].flatMap(([name, own]) => {
    const pooled = pooledMiss(own);
    return pooled ? [{ name, pooled, told: pooled.z > toldBeyond }] : [];
  });
  const together = pooledTogether(conveyors.map(({ pooled }) => pooled));
  const count = (end: string): number => ends.filter((e) => e === end).length;
  return {
    asOf: report.asOf,
    conveyors,
    together,
    told: together !== undefined && together.z > toldBeyond,
    reached: { of: ends.length, early: count('early'), late: count('late') },
    notReadSince,
  };
}

interface Later {
  readonly exposure: number;
  readonly wear: number;
  readonly error: number;
}

/** Of the liner that lay there then, by the day it was fitted. */
function laterThicknesses(
  estate: Estate,
  rows: readonly ExposedReading[],
  point: PublishedPoint,
  asOf: CalendarDay,
): readonly Later[] {
  const { kind, value, error } = estate.readings;
  return rows.flatMap(({ row, inspection, set, exposure }) => {
    const left = value[row] ?? NaN;
    if (kind[row] !== ReadingKind.thickness || inspection.date.day <= asOf || !exposure.known) return [];
    if (set?.fitted?.day !== point.fittedOn || !Number.isFinite(left)) return [];
    const stated = error[row] ?? NaN;
    return [
      {
        exposure: exposure.value,
        wear: point.fitted - left,
        error: stated > 0 ? stated : defaultGaugeError,
      },
    ];
  });
}

/** Wear since the last look it knew of, at the rate it gave. */
function missOf({ rate, last }: PublishedPoint, later: Later): Miss | undefined {
  const start = last ?? { exposure: 0, wear: 0, spread: 0 };
  const ahead = later.exposure - start.exposure;
  if (!(ahead > 0)) return undefined;
  const foretold = rate.q50 * ahead;
  const rateSpread = ((rate.q90 - rate.q10) / 2.5631) * ahead;
  return {
    foretold,
    miss: later.wear - start.wear - foretold,
    variance: later.error ** 2 + start.spread ** 2 + rateSpread ** 2,
    shared: lookShare * later.error,
  };
}

/** Where the limit was seen reached since: the end of its life between two looks, by straight line. */
function endOf(
  { fitted, condemn, life, last }: PublishedPoint,
  since: readonly Later[],
): 'early' | 'within' | 'late' | undefined {
  if (!life) return undefined;
  const limit = fitted - condemn;
  const at = since.findIndex(({ wear }) => wear >= limit);
  const reached = since[at];
  const short = since[at - 1] ?? last ?? { exposure: 0, wear: 0 };
  if (!reached || !(reached.wear > short.wear)) return undefined;
  const share = Math.max(0, (limit - short.wear) / (reached.wear - short.wear));
  return placeOf(short.exposure + share * (reached.exposure - short.exposure), life);
}

function placeOf(exposure: number, life: Published): 'early' | 'within' | 'late' {
  return exposure < life.q10 ? 'early' : exposure > life.q90 ? 'late' : 'within';
}
