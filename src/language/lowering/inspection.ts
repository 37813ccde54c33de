// An inspection block → InspectionDraft, its readings into the sheet's columns. `view` and `gauge` hold for the whole block
// wherever they stand in it. Clock positions seen against the flow are mirrored here, once; a named point's own is not.

import { lowerAlong, lowerFlight } from './along.js';
import { noOtherFacts, type Mutable, type OtherFacts } from '../../domain/model/other-facts.js';
import type * as ast from '../generated/ast.js';
import type { Inspection } from '../../domain/model/records.js';
import type { ReadingRows, TextSpan } from '../reading-rows.js';
import type { InspectionDraft, MeasureDrafts } from '../sheet.js';
import { notesOf, stated, type FactAccount } from './block.js';
import { addBareSteel, lowerCondition } from './condition.js';
import { chainage } from './limits.js';
import { mirror } from './mirror.js';
import { wordsOf, type Reader } from './reader.js';
import { lowerMeter, tellMeterTwice } from './records.js';
import { lowerPlateReading } from './plate-reading.js';
import { lowerReading } from './readings.js';
import { isPictured, lowerPhotoBehind, lowerSeenBeside } from './seen-beside.js';

/** Its rows are counted once all of a text are written. */
export type UncountedInspection = Omit<InspectionDraft, 'firstRow' | 'endRow'>;

type Seen = Omit<OtherFacts, keyof MeasureDrafts> & Mutable<MeasureDrafts>;

export function lowerInspection(
  reader: Reader,
  block: FactAccount,
  node: ast.Inspection,
  rows: ReadingRows,
  span: TextSpan,
): UncountedInspection | undefined {
  const conveyorUse = reader.use(node, 'conveyor');
  const date = reader.day(node, 'date');
  const meter = lowerMeter(reader, node);
  tellMeterTwice(reader, block, node, node.rows);
  const { by, view, gauge, measuredFrom } = lowerHow(reader, block, node);
  const mirrored = view.direction === 'upstream';
  const gaugeError = gauge?.error?.value ?? NaN;
  const seen: Seen = noMeasures();
  rows.settle(span, mirrored, gaugeError);
  for (const row of node.rows) {
    if (row.$type === 'Reading' && !isNotLooked(row)) lowerReading(reader, row, rows, mirrored, gaugeError);
    else if (row.$type === 'Condition') {
      const lines = lowerCondition(reader, row, mirrored);
      seen.conditions.push(...lines);
      for (const line of lines) addBareSteel(line, row, rows);
    } else if (row.$type === 'Reading') {
      keep(seen.notLooked, lowerNotLooked(reader, row));
      lowerPhotoBehind(reader, row, seen);
    } else lowerOther(reader, row, mirrored, seen);
  }
  if (!conveyorUse || !date || !meter) return undefined;
  return {
    conveyorUse,
    date,
    meter,
    origin: reader.origin(node),
    view,
    ...seen,
    ...stated({ by, gauge, measuredFrom }),
  };
}

/** Who, looking which way, with what. */
function lowerHow(
  reader: Reader,
  block: FactAccount,
  node: ast.Inspection,
): Pick<Inspection, 'view'> & {
  by: string | undefined;
  gauge: Inspection['gauge'] | undefined;
  measuredFrom: Inspection['measuredFrom'] | undefined;
} {
  let by: string | undefined;
  let view: Inspection['view'] = { direction: 'downstream', stated: false, origin: block.nameOrigin };
  let gauge: Inspection['gauge'];
  let measuredFrom: Inspection['measuredFrom'];
  for (const row of node.rows) {
    if (row.$type === 'By' && block.first('by', row)) by = row.who;
    if (row.$type === 'View' && row.direction !== undefined && block.first('view', row)) {
      view = { direction: row.direction, stated: true, origin: reader.origin(row) };
    }
    if (row.$type === 'MeasuredFrom' && block.first('measured from', row)) measuredFrom = row.end;
    if (row.$type === 'Gauge' && block.first('gauge', row)) {
      const kind = wordsOf(row, 'kind') as NonNullable<Inspection['gauge']>['kind'] | undefined; // the grammar takes these words only
      const error = reader.quantity(row, 'error', 'length', 'error of the gauge');
      if (kind) gauge = { kind, origin: reader.origin(row), ...stated({ error }) };
    }
  }
  return { by, view, gauge, measuredFrom };
}

function lowerOther(
  reader: Reader,
  row: Exclude<ast.InspectionRow, ast.Reading | ast.Condition>,
  mirrored: boolean,
  seen: Seen,
): void {
  const origin = reader.origin(row);
  if (isPictured(row)) lowerPhotoBehind(reader, row, seen);
  switch (row.$type) {
    case 'By':
    case 'View':
    case 'MeasuredFrom':
    case 'Gauge':
    case 'WorkRow':
    case 'MeterNotRead':
      return;
    case 'NotLooked':
      keep(seen.notLooked, lowerNotLooked(reader, row));
      return;
    case 'PlateReading':
      keep(seen.plates, lowerPlateReading(reader, row, mirrored));
      return;
    case 'HoldDownGap': {
      const along = lowerAlong(reader, row, mirrored);
      const gap = reader.quantity(row, 'gap', 'length', 'gap of the hold-down');
      if (along && gap) seen.holdDownGaps.push({ ...along, gap, origin });
      return;
    }
    case 'FlightReading':
      lowerFlight(reader, row, mirrored, seen);
      return;
    case 'WornWidth': {
      const along = lowerAlong(reader, row, mirrored);
      const from = reader.clock(row, 'clock');
      const to = reader.clock(row, 'clockEnd');
      if (!along || !from || !to) return;
      // Seen from the other side a sector runs the other way round too, so its ends change places.
      const sector = mirrored ? { from: mirror(to), to: mirror(from) } : { from, to };
      seen.wornWidths.push({ ...along, ...sector, origin });
      return;
    }
    case 'MotorCurrent': {
      const empty = reader.quantity(row, 'empty', 'current', 'motor current empty');
      const loaded = reader.quantity(row, 'loaded', 'current', 'motor current loaded');
      if (empty ?? loaded) seen.currents.push({ origin, ...stated({ empty, loaded, note: notesOf(row) }) });
      return;
    }
    case 'MeasuredSpeed': {
      const speed = reader.quantity(row, 'speed', 'rotation', 'measured speed');
      if (speed) seen.speeds.push({ speed, origin, ...stated({ note: notesOf(row) }) });
      return;
    }
    case 'Finding':
    case 'NextLook':
    case 'Photo':
      lowerSeenBeside(reader, row, seen, mirrored);
  }
}

/** `from 12 m to 15 m not seen` says of a stretch what `not seen from 12 m to 15 m` does. */
function isNotLooked(row: ast.Reading): boolean {
  return row.notSeen && row.from !== undefined && row.clock === undefined;
}

function lowerNotLooked(
  reader: Reader,
  row: ast.NotLooked | ast.Reading,
): Seen['notLooked'][number] | undefined {
  const note = [row.reason, notesOf(row)].filter((text) => text !== undefined).join(': ') || undefined;
  const origin = reader.origin(row);
  if (row.$type === 'NotLooked') {
    const along = lowerAlong(reader, row, false);
    return along && { place: along.place, origin, ...stated({ note }) };
  }
  const span = reader.range(row, 'length', 'stretch', chainage);
  if (!span) return undefined;
  const [at, to] = span.from.value <= span.to.value ? [span.from, span.to] : [span.to, span.from];
  return { place: { at, to }, origin, ...stated({ note }) };
}

function noMeasures(): Seen {
  return {
    ...noOtherFacts(),
    holdDownGaps: [],
    flights: [],
    flightDiameters: [],
    wornWidths: [],
    plates: [],
    notLooked: [],
  };
}

function keep<T>(items: T[], item: T | undefined): void {
  if (item !== undefined) items.push(item);
}
