// What was known on a day? The estate as the same texts make it without every later record: whoever looks back, whether for a
// report as of a day, one since a day, a sheet, a pack or a comparison, asks here. What is described stays; what was dated ahead
// as a plan (duty) is known only where no record comes after the day. Corrections made later are taken back, jobs find what lay there then.

import type { CalendarDay } from '../units/calendar.js';
import { looksOn } from './amended.js';
import { readingsOn } from './corrected.js';
import type { Estate } from './estate.js';
import { jobBy } from './found-by-job.js';
import { newestDay } from './newest.js';
import type { Inspection, JudgedCorrection, Readings, Reline } from './records.js';

const known = new WeakMap<Estate, Map<CalendarDay, Estate>>();

/** The estate itself where nothing came later, or no day is named; else one object an estate and day. */
export function knownOn(present: Estate, day: CalendarDay | undefined): Estate {
  if (day === undefined || (newestDay(present) ?? day) <= day) return present;
  const days = known.get(present) ?? new Map<CalendarDay, Estate>();
  known.set(present, days);
  const found = days.get(day) ?? cut(present, day);
  days.set(day, found);
  return found;
}

function cut(present: Estate, day: CalendarDay): Estate {
  const estate = looksOn(readingsOn(present, day), day);
  const isKnown = ({ date }: { readonly date: { readonly day: CalendarDay } }): boolean => date.day <= day;
  const looks = estate.inspections.filter(isKnown);
  const relines = estate.relines.filter(isKnown);
  const rows = rowsOf(looks, relines, estate.readings);
  let firstRow = 0;
  const inspections = looks.map((look): Inspection => {
    while ((rows[firstRow] ?? Infinity) < look.firstRow) firstRow++;
    const endRow = firstRow + look.endRow - look.firstRow;
    return { ...look, firstRow, endRow };
  });
  // A spot that nobody had looked at yet is no place of that estate.
  const used = new Set(rows.map((row) => estate.readings.place[row]));
  const kept = estate.places.flatMap((place, i) => (place.declared || used.has(i) ? [i] : []));
  const screwChanges = estate.screwChanges.filter(isKnown);
  return {
    ...estate,
    places: kept.flatMap((i) => estate.places[i] ?? []),
    inspections,
    readings: picked(estate.readings, rows, inspections, new Map(kept.map((old, now) => [old, now]))),
    corrections: estate.corrections.map((each) => movedTo(each, rows)),
    relines,
    panelsMoved: estate.panelsMoved.filter(isKnown),
    patches: estate.patches.filter(isKnown),
    services: estate.services.filter(isKnown),
    screwChanges,
    meterChanges: estate.meterChanges.filter(isKnown),
    driveChanges: estate.driveChanges.filter(isKnown),
    dutyChanges: estate.dutyChanges.filter(({ from }) => from.day <= day),
    jobs: estate.jobs.map((job) => jobBy(job, { relines, screwChanges })),
  };
}

/** In the order of the columns: what the bench showed stands last of its conveyor. */
function rowsOf(
  looks: readonly Inspection[],
  relines: readonly Reline[],
  { bench }: Readings,
): readonly number[] {
  const known = new Set(relines);
  const seen = looks.flatMap((look) =>
    Array.from({ length: look.endRow - look.firstRow }, (_, i) => look.firstRow + i),
  );
  const measured = [...bench].flatMap(([row, reline]) => (known.has(reline) ? [row] : []));
  return [...seen, ...measured].sort((a, b) => a - b);
}

function movedTo(correction: JudgedCorrection, rows: readonly number[]): JudgedCorrection {
  const row = correction.row === undefined ? -1 : rows.indexOf(correction.row);
  return { ...correction, row: row < 0 ? undefined : row };
}

function picked(
  readings: Readings,
  rows: readonly number[],
  inspections: readonly Inspection[],
  places: ReadonlyMap<number, number>,
): Readings {
  const pick = (column: ArrayLike<number>): number[] => rows.map((row) => column[row] ?? NaN);
  const moved = <T>(of: ReadonlyMap<number, T>): Map<number, T> =>
    new Map(
      rows.flatMap((row, now): readonly (readonly [number, T])[] => {
        const value = of.get(row);
        return value === undefined ? [] : [[now, value]];
      }),
    );
  const inspection = new Int32Array(rows.length).fill(-1);
  inspections.forEach(({ firstRow, endRow }, i) => inspection.fill(i, firstRow, endRow));
  return {
    count: rows.length,
    inspection,
    place: Int32Array.from(pick(readings.place), (place) => places.get(place) ?? -1),
    kind: Uint8Array.from(pick(readings.kind)),
    value: Float64Array.from(pick(readings.value)),
    error: Float64Array.from(pick(readings.error)),
    source: Int32Array.from(pick(readings.source)),
    start: Int32Array.from(pick(readings.start)),
    end: Int32Array.from(pick(readings.end)),
    notes: moved(readings.notes),
    photos: moved(readings.photos),
    corrected: moved(readings.corrected),
    bench: moved(readings.bench),
  };
}
