// The estate as it stood before the newest records: everything that happened after a day is left out, what is described stays.

import type { CalendarDay } from '../units/calendar.js';
import { readingsOn } from './corrected.js';
import type { Estate } from './estate.js';
import type { Inspection, Readings } from './records.js';

export function withoutRecordsAfter(present: Estate, day: CalendarDay): Estate {
  const estate = readingsOn(present, day);
  const isKnown = ({ date }: { readonly date: { readonly day: CalendarDay } }): boolean => date.day <= day;
  const rows: number[] = [];
  const inspections: Inspection[] = [];
  for (const inspection of estate.inspections.filter(isKnown)) {
    const firstRow = rows.length;
    for (let row = inspection.firstRow; row < inspection.endRow; row++) rows.push(row);
    inspections.push({ ...inspection, firstRow, endRow: rows.length });
  }
  const relines = estate.relines.filter(isKnown);
  for (const [row, reline] of estate.readings.bench) if (relines.includes(reline)) rows.push(row);
  // A spot that nobody had looked at yet is no place of that estate.
  const used = new Set(rows.map((row) => estate.readings.place[row]));
  const kept = estate.places.flatMap((place, i) => (place.declared || used.has(i) ? [i] : []));
  return {
    ...estate,
    places: estate.places.filter((_, i) => kept.includes(i)),
    inspections,
    readings: picked(estate.readings, rows, inspections, new Map(kept.map((old, now) => [old, now]))),
    relines,
    panelsMoved: estate.panelsMoved.filter(isKnown),
    patches: estate.patches.filter(isKnown),
    services: estate.services.filter(isKnown),
    screwChanges: estate.screwChanges.filter(isKnown),
    meterChanges: estate.meterChanges.filter(isKnown),
    dutyChanges: estate.dutyChanges.filter(({ from }) => from.day <= day),
  };
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
  return {
    count: rows.length,
    inspection: Int32Array.from(rows, (_, row) =>
      inspections.findIndex(({ firstRow, endRow }) => row >= firstRow && row < endRow),
    ),
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
