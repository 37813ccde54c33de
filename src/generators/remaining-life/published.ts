// A report that was published: what its JSON foretold of each point, read back. Only what a later reading can be held against is
// taken; a file that is no such report is refused in words, never half read.

import { parseDay, type CalendarDay } from '../../domain/units/calendar.js';

export interface PublishedReport {
  readonly asOf: CalendarDay;
  readonly points: readonly PublishedPoint[];
}

/** What was foretold of a liner at a point. Exposures since that liner was fitted, h or t; wear in mm. */
export interface PublishedPoint {
  readonly conveyor: string;
  readonly point: string;
  readonly fittedOn: CalendarDay | undefined;
  readonly fitted: number;
  readonly condemn: number;
  /** mm per h or t: 10, 50 and 90 % quantiles. */
  readonly rate: Published;
  /** Exposure at which the limit was to be reached; undefined where it was reached already or nothing could be said. */
  readonly life: Published | undefined;
  /** The last thickness it knew of: exposure, and the wear as the model saw it (as read in a report of format 1). */
  readonly last: { readonly exposure: number; readonly wear: number; readonly spread: number } | undefined;
}

export interface Published {
  readonly q10: number;
  readonly q50: number;
  readonly q90: number;
}

export type PublishedRead =
  { readonly ok: true; readonly report: PublishedReport } | { readonly ok: false; readonly message: string };

/** @param text of a file that `troughline report --format json` has written, of format 1 or 2 */
export function readPublished(text: string): PublishedRead {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return { ok: false, message: 'is no JSON' };
  }
  if (fieldOf(data, 'kind') !== 'remaining life')
    return { ok: false, message: 'is no remaining-life report (JSON) of this program' };
  const version = fieldOf(data, 'formatVersion');
  if (version !== 1 && version !== 2)
    return { ok: false, message: `has format ${JSON.stringify(version)}; formats 1 and 2 can be read` };
  const asOf = dayOf(fieldOf(data, 'asOf'));
  if (asOf === undefined) return { ok: false, message: 'names no day that it counts from' };
  const points = listOf(fieldOf(data, 'conveyors')).flatMap((conveyor) =>
    listOf(fieldOf(conveyor, 'points')).flatMap(
      (point) => pointOf(fieldOf(conveyor, 'conveyor'), point) ?? [],
    ),
  );
  return { ok: true, report: { asOf, points } };
}

function pointOf(conveyor: unknown, point: unknown): PublishedPoint | undefined {
  const name = fieldOf(point, 'point');
  const fitted = numberOf(fieldOf(point, 'fitted'));
  const condemn = numberOf(fieldOf(point, 'condemn'));
  const model = fieldOf(point, 'model');
  const rate = quantilesOf(fieldOf(model, 'rate'));
  if (typeof conveyor !== 'string' || typeof name !== 'string') return undefined;
  if (fitted === undefined || condemn === undefined || !rate) return undefined;
  const limit = fieldOf(model, 'condemn');
  return {
    conveyor,
    point: name,
    fittedOn: dayOf(fieldOf(point, 'fittedOn')),
    fitted,
    condemn,
    rate,
    life: fieldOf(limit, 'kind') === 'life' ? quantilesOf(fieldOf(limit, 'exposure')) : undefined,
    last: lastOf(fieldOf(model, 'path'), fieldOf(point, 'readings'), fitted),
  };
}

function lastOf(path: unknown, readings: unknown, fitted: number): PublishedPoint['last'] {
  const seen = listOf(path).at(-1);
  const [exposure, wear, spread] = ['exposure', 'mean', 'spread'].map((key) => numberOf(fieldOf(seen, key)));
  if (exposure !== undefined && wear !== undefined && spread !== undefined) return { exposure, wear, spread };
  const read = listOf(readings).findLast((r) => fieldOf(r, 'seen') === 'thickness');
  const [at, left, error] = ['exposure', 'thickness', 'error'].map((key) => numberOf(fieldOf(read, key)));
  return at === undefined || left === undefined
    ? undefined
    : { exposure: at, wear: fitted - left, spread: error ?? 0.5 };
}

function quantilesOf(value: unknown): Published | undefined {
  const [q10, q50, q90] = ['q10', 'q50', 'q90'].map((key) => numberOf(fieldOf(value, key)));
  return q10 === undefined || q50 === undefined || q90 === undefined ? undefined : { q10, q50, q90 };
}

function fieldOf(value: unknown, key: string): unknown {
  return typeof value === 'object' && value !== null && Object.hasOwn(value, key)
    ? (value as Readonly<Record<string, unknown>>)[key] // an object with that own field
    : undefined;
}

function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? (value as readonly unknown[]) : []; // Array.isArray gives any[]
}

function numberOf(value: unknown): number | undefined {
  return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
}

function dayOf(value: unknown): CalendarDay | undefined {
  return typeof value === 'string' ? parseDay(value) : undefined;
}
