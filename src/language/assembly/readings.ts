// Joins the readings of all conveyors into the estate's columns: conveyor after conveyor, inspections by date within each.

import { compareMeters } from '../../domain/model/meter-read.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Problem } from '../../domain/model/problem.js';
import type { Inspection, Place, Readings, Reline } from '../../domain/model/records.js';
import type { Sheet } from '../sheet.js';
import type { ConveyorIndex } from './conveyors.js';
import { groupBy } from './group-by.js';
import { lookFromTail } from './from-the-head.js';
import { measuresPlaced, seenPlaced } from './seen-places.js';
import { emptyColumns, segmentOf, type AlongSpot, type PlacedDraft } from './segment.js';

export interface Joined {
  readonly inspections: readonly Inspection[];
  readonly readings: Readings;
  /** As in a segment. */
  readonly along: ReadonlyMap<number, AlongSpot>;
  readonly places: readonly Place[];
}

export function joinReadings(
  sheets: readonly Sheet[],
  conveyors: ConveyorIndex,
  relines: readonly Reline[],
  problems: Problem[],
): Joined {
  const looks = looksByConveyor(sheets, conveyors, problems);
  const known = { conveyors, relines, problems };
  const relinesOf = groupBy(relines, (reline) => reline.conveyor);
  const segments = conveyors.items.map((conveyor) => ({
    conveyor,
    segment: segmentOf(conveyor, looks.get(conveyor) ?? [], relinesOf.get(conveyor) ?? [], (...args) =>
      conveyors.checkPoint(...args),
    ),
  }));
  const count = segments.reduce((sum, { segment }) => sum + segment.readings.count, 0);
  const readings = emptyColumns(count);
  const inspections: Inspection[] = [];
  const places: Place[] = [];
  const along = new Map<number, AlongSpot>();
  let row = 0;
  for (const { conveyor, segment } of segments) {
    const [firstLook, firstPlace] = [inspections.length, places.length];
    const own = segment.readings;
    for (const column of plainColumns) readings[column].set(own[column], row);
    for (let i = 0; i < own.count; i++) {
      const place = own.place[i] ?? -1;
      readings.place[row + i] = place < 0 ? -1 : place + firstPlace;
      const look = own.inspection[i] ?? -1;
      readings.inspection[row + i] = look < 0 ? -1 : look + firstLook;
    }
    const end = row + own.count;
    for (const [at, reline] of own.bench) readings.bench.set(row + at, reline);
    for (const [at, note] of own.notes) readings.notes.set(row + at, note);
    for (const [at, photo] of own.photos) readings.photos.set(row + at, photo);
    for (const [at, spot] of segment.along) along.set(row + at, spot);
    for (const place of segment.places) places.push(place);
    for (const problem of segment.problems) problems.push(problem);
    for (const look of segment.looks) {
      const draft = lookFromTail(look.draft, conveyor);
      const endRow = row + draft.endRow - draft.firstRow;
      const seen = { ...seenPlaced(draft, conveyor, known), ...measuresPlaced(draft, conveyor, known) };
      inspections.push({ ...draft, conveyor, ...seen, firstRow: row, endRow });
      row = endRow;
    }
    row = end;
  }
  return { inspections, readings, places, along };
}

/** Columns that mean the same in a segment and in the estate. */
const plainColumns = ['kind', 'value', 'error', 'source', 'start', 'end'] as const;

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
    group.sort((a, b) => a.draft.date.day - b.draft.date.day || compareMeters(a.draft.meter, b.draft.meter));
  return groups;
}
