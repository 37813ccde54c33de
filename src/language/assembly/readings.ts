// Joins the rows of all sheets into the estate's columns: inspections by conveyor and date, each spot a place, each colour a
// layer of the liner that lay there at the time. Rows are copied, not visited, but for looking up what they name.

import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Problem } from '../../domain/model/problem.js';
import { ReadingKind, type Inspection, type Place, type Readings, type Reline } from '../../domain/model/records.js';
import type { InspectionDraft, Rows, Sheet } from '../sheet.js';
import type { ConveyorIndex } from './conveyors.js';
import { createFitted } from './fitted.js';
import { closest } from './name-table.js';
import { createPlaces, type Places } from './places.js';

interface Found {
  readonly draft: InspectionDraft;
  readonly conveyor: Conveyor;
  readonly sheet: Sheet;
}

export interface Joined {
  readonly inspections: readonly Inspection[];
  readonly readings: Readings;
  readonly places: readonly Place[];
}

export function joinReadings(sheets: readonly Sheet[], conveyors: ConveyorIndex, relines: readonly Reline[], problems: Problem[]): Joined {
  const found: Found[] = [];
  for (const sheet of sheets) {
    for (const draft of sheet.inspections) {
      const conveyor = conveyors.find(draft.conveyorUse, problems);
      if (conveyor) found.push({ draft, conveyor, sheet });
    }
  }
  found.sort((a, b) =>
    conveyors.orderOf(a.conveyor) - conveyors.orderOf(b.conveyor)
    || a.draft.date.day - b.draft.date.day
    || a.draft.meter.hours.value - b.draft.meter.hours.value);

  const count = found.reduce((sum, { draft }) => sum + draft.endRow - draft.firstRow, 0);
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
  const places = createPlaces(conveyors.items);
  const fitted = createFitted(relines);
  const inspections: Inspection[] = [];
  let row = 0;
  for (const [index, { draft, conveyor, sheet }] of found.entries()) {
    const { firstRow, endRow } = draft;
    const { rows } = sheet;
    const end = row + endRow - firstRow;
    readings.inspection.fill(index, row, end);
    readings.kind.set(rows.kind.subarray(firstRow, endRow), row);
    readings.value.set(rows.value.subarray(firstRow, endRow), row);
    readings.error.set(rows.error.subarray(firstRow, endRow), row);
    readings.source.fill(sheet.source, row, end);
    readings.start.set(rows.start.subarray(firstRow, endRow), row);
    readings.end.set(rows.end.subarray(firstRow, endRow), row);
    placeRows(rows, draft, conveyor, sheet.source, places, readings.place, row, (name, origin) => conveyors.checkPoint(conveyor, { name, origin }, problems));
    inspections.push({ ...draft, conveyor, firstRow: row, endRow: end });
    row = end;
  }
  if (sheets.some((sheet) => sheet.rows.notes.size > 0)) joinNotes(found, readings.notes);
  const order = places.finish();
  for (let i = 0; i < count; i++) {
    const place = readings.place[i] ?? -1;
    if (place >= 0) readings.place[i] = order.newNumber[place] ?? -1;
  }
  nameColours(found, inspections, readings, order.places, fitted, problems);
  return { inspections, readings, places: order.places };
}

function placeRows(
  rows: Rows, draft: InspectionDraft, conveyor: Conveyor, source: number, places: Places, into: Int32Array, offset: number,
  missing: (name: string, origin: { source: number; start: number; end: number }) => void,
): void {
  const numbers = new Map<number, number>();
  for (let from = draft.firstRow, to = offset; from < draft.endRow; from++, to++) {
    const spotNumber = rows.spot[from] ?? -1;
    const spot = rows.spots[spotNumber];
    const start = rows.start[from] ?? 0;
    let number = numbers.get(spotNumber);
    if (number === undefined) {
      number = spot ? places.numberOf(conveyor, spot, { source, start, end: rows.end[from] ?? 0 }) : -1;
      numbers.set(spotNumber, number);
    }
    if (number < 0 && spot?.kind === 'point') missing(spot.name, { source, start, end: start + spot.name.length });
    into[to] = number;
  }
}

function joinNotes(found: readonly Found[], notes: Map<number, string>): void {
  let offset = 0;
  for (const { draft, sheet } of found) {
    if (sheet.rows.notes.size > 0) {
      for (let row = draft.firstRow; row < draft.endRow; row++) {
        const note = sheet.rows.notes.get(row);
        if (note !== undefined) notes.set(offset + row - draft.firstRow, note);
      }
    }
    offset += draft.endRow - draft.firstRow;
  }
}

/** Colour names become layer numbers of the liner that lay at the place on the day. */
function nameColours(
  found: readonly Found[], inspections: readonly Inspection[], readings: Readings & { readonly kind: Uint8Array; readonly value: Float64Array }, places: readonly Place[],
  fitted: ReturnType<typeof createFitted>, problems: Problem[],
): void {
  for (let row = 0; row < readings.count; row++) {
    if (readings.kind[row] !== ReadingKind.colour) continue;
    const one = found[readings.inspection[row] ?? -1];
    const colour = one?.sheet.rows.colours[readings.value[row] ?? -1];
    if (!one || colour === undefined) continue;
    const place = places[readings.place[row] ?? -1];
    const liners = fitted.linersAt(one.conveyor, place?.at, one.draft.date.day, one.draft.meter.hours.value);
    const layer = liners.map((liner) => liner.layers.findIndex((each) => each.name === colour)).find((index) => index >= 0) ?? -1;
    if (layer >= 0) {
      readings.value[row] = layer;
      continue;
    }
    readings.kind[row] = ReadingKind.unreadable;
    readings.value[row] = NaN;
    const [liner] = liners;
    if (!liner) continue;
    const start = one.sheet.rows.colourStart[one.draft.firstRow + row - (inspections[readings.inspection[row] ?? -1]?.firstRow ?? 0)] ?? 0;
    problems.push({
      kind: 'unknown colour', origin: { source: one.sheet.source, start, end: start + colour.length },
      colour, liner: liner.name, known: closest(colour, liner.layers.map((each) => each.name)),
    });
  }
}
