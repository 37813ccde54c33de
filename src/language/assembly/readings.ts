// Joins the readings of all conveyors into the estate's columns: conveyor after conveyor, inspections by date within each.

import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Problem } from '../../domain/model/problem.js';
import type { Inspection, Place, Readings, Reline } from '../../domain/model/records.js';
import type { Sheet } from '../sheet.js';
import type { ConveyorIndex } from './conveyors.js';
import { groupBy } from './group-by.js';
import { segmentOf, type PlacedDraft } from './segment.js';

export interface Joined {
  readonly inspections: readonly Inspection[];
  readonly readings: Readings;
  readonly places: readonly Place[];
}

export function joinReadings(
  sheets: readonly Sheet[],
  conveyors: ConveyorIndex,
  relines: readonly Reline[],
  problems: Problem[],
): Joined {
  const looks = looksByConveyor(sheets, conveyors, problems);
  const relinesOf = groupBy(relines, (reline) => reline.conveyor);
  const segments = conveyors.items.map((conveyor) => ({
    conveyor,
    segment: segmentOf(conveyor, looks.get(conveyor) ?? [], relinesOf.get(conveyor) ?? [], (...args) =>
      conveyors.checkPoint(...args),
    ),
  }));
  const count = segments.reduce((sum, { segment }) => sum + segment.count, 0);
  const readings = {
    count,
    inspection: new Int32Array(count),
    place: new Int32Array(count),
    kind: new Uint8Array(count),
    value: new Float64Array(count),
    error: new Float64Array(count),
    source: new Int32Array(count),
    start: new Int32Array(count),
    end: new Int32Array(count),
    notes: new Map<number, string>(),
  };
  const inspections: Inspection[] = [];
  const places: Place[] = [];
  let row = 0;
  for (const { conveyor, segment } of segments) {
    const [firstLook, firstPlace] = [inspections.length, places.length];
    readings.kind.set(segment.kind, row);
    readings.value.set(segment.value, row);
    readings.error.set(segment.error, row);
    readings.source.set(segment.source, row);
    readings.start.set(segment.start, row);
    readings.end.set(segment.end, row);
    for (let i = 0; i < segment.count; i++) {
      const place = segment.place[i] ?? -1;
      readings.place[row + i] = place < 0 ? -1 : place + firstPlace;
      readings.inspection[row + i] = (segment.look[i] ?? 0) + firstLook;
    }
    for (const [at, note] of segment.notes) readings.notes.set(row + at, note);
    for (const place of segment.places) places.push(place);
    for (const problem of segment.problems) problems.push(problem);
    for (const { draft } of segment.looks) {
      const endRow = row + draft.endRow - draft.firstRow;
      inspections.push({ ...draft, conveyor, firstRow: row, endRow });
      row = endRow;
    }
  }
  return { inspections, readings, places };
}

function looksByConveyor(
  sheets: readonly Sheet[],
  conveyors: ConveyorIndex,
  problems: Problem[],
): ReadonlyMap<Conveyor, readonly PlacedDraft[]> {
  const found = sheets.flatMap((sheet) =>
    sheet.inspections.flatMap((draft) => {
      const conveyor = conveyors.find(draft.conveyorUse, problems);
      return conveyor ? [{ draft, sheet, conveyor }] : [];
    }),
  );
  const groups = groupBy(found, (look) => look.conveyor);
  for (const group of groups.values())
    group.sort(
      (a, b) => a.draft.date.day - b.draft.date.day || a.draft.meter.hours.value - b.draft.meter.hours.value,
    );
  return groups;
}
