// A reading in the syntax tree → a row. These are the rows that are not regular; what is wrong with them is said here.

import type * as ast from '../generated/ast.js';
import { middleClock, mirrorClock, parseClock } from '../../domain/units/clock.js';
import type { PanelUse } from '../../domain/model/records.js';
import { parseQuantity } from '../../domain/units/parse.js';
import { ReadingKind } from '../../domain/units/reading-kind.js';
import { secondColour, type NewRow, type ReadingRows } from '../reading-rows.js';
import { chainage as chainageLimit, thickness, type Limit } from './limits.js';
import { notesOf, present } from './block.js';
import { lowerStretches } from './stretch.js';
import { sectorWords } from './seen-at.js';
import { misread, statedText, type Reader } from './reader.js';

/** `mirrored`: the inspector looked against the flow. `gaugeError`: mm, NaN where none is stated. */
export function lowerReading(
  reader: Reader,
  row: ast.Reading,
  rows: ReadingRows,
  mirrored: boolean,
  gaugeError: number,
): void {
  const place = row.$cstNode;
  // A row that the parser could not follow to its fact has been reported; it says nothing.
  const says =
    row.thickness !== undefined || row.colour !== undefined || row.second || row.trough || row.notSeen;
  const isStretch = row.from !== undefined && row.to !== undefined;
  const isPlaced =
    row.point !== undefined ||
    row.panel !== undefined ||
    isStretch ||
    (row.chainage !== undefined && row.clock !== undefined);
  if (!place || !says || !isPlaced) return;
  const reading = {
    start: place.offset,
    end: place.end,
    error:
      row.error === undefined
        ? gaugeError
        : length(reader, row, rows, 'error', thickness, 'error of the thickness'),
    note:
      [stretchWords(row), row.reason, notesOf(row)].filter((text) => text !== undefined).join(': ') ||
      undefined,
    photo: reader.photo(row),
    ...saidBy(reader, row, rows),
  };
  for (const spot of spotsOf(reader, row, rows, mirrored)) rows.add({ ...reading, spot });
}

function saidBy(
  reader: Reader,
  row: ast.Reading,
  rows: ReadingRows,
): Pick<NewRow, 'kind' | 'value' | 'colourStart'> {
  if (row.thickness !== undefined) {
    const value = length(reader, row, rows, 'thickness', thickness, 'thickness');
    return {
      kind: Number.isNaN(value) ? ReadingKind.unreadable : ReadingKind.thickness,
      value,
      colourStart: 0,
    };
  }
  if (row.colour !== undefined) {
    const colourStart = reader.part(row, 'colour').start;
    return { kind: ReadingKind.colour, value: rows.colour(row.colour), colourStart };
  }
  if (row.second)
    return {
      kind: ReadingKind.colour,
      value: rows.colour(secondColour),
      colourStart: reader.part(row, 'second').start,
    };
  return { kind: row.trough ? ReadingKind.trough : ReadingKind.notSeen, value: NaN, colourStart: 0 };
}

/** Of panels that are named together each has a reading of its own. */
function spotsOf(reader: Reader, row: ast.Reading, rows: ReadingRows, mirrored: boolean): readonly number[] {
  if (row.panel !== undefined) return panelSpots(reader, row, rows, mirrored);
  return [row.point === undefined ? placedSpot(reader, row, rows, mirrored) : rows.point(row.point)];
}

function placedSpot(reader: Reader, row: ast.Reading, rows: ReadingRows, mirrored: boolean): number {
  const along = stretchOf(reader, row, rows);
  const at = along
    ? (along.from + along.to) / 2
    : length(reader, row, rows, 'chainage', chainageLimit, 'chainage');
  if (along && row.clock === undefined)
    return Number.isNaN(at) ? rows.unreadableSpot() : rows.stretch(along.from, along.to);
  const clock = clockOf(reader, row);
  if (Number.isNaN(at) || clock === undefined) return rows.unreadableSpot();
  return rows.chainage(at, mirrored ? mirrorClock(clock) : clock, along);
}

/** What was seen on a panel counts once, at its middle. */
function panelSpots(
  reader: Reader,
  row: ast.Reading,
  rows: ReadingRows,
  mirrored: boolean,
): readonly number[] {
  const clock = row.clock === undefined ? undefined : clockOf(reader, row);
  const named = lowerStretches(reader, row.panel);
  if (named.includes(undefined) || (row.clock !== undefined && clock === undefined))
    return [rows.unreadableSpot()];
  return present(named).flatMap((stretch) =>
    stretch.kind === 'panels'
      ? eachPanel(stretch).map((panel) => rows.panel(panel, clock && mirrored ? mirrorClock(clock) : clock))
      : [],
  );
}

/** More than a run can have are told as panels that are not there. */
const mostPanels = 200;

function eachPanel(panels: PanelUse): readonly PanelUse[] {
  const { first, last } = panels;
  const count = Math.min(Math.max(last.count - first.count, 0), mostPanels) + 1;
  return Array.from({ length: count }, (_, i) => {
    const number = { ...first, count: first.count + i };
    return { ...panels, first: number, last: number };
  });
}

/** Of a sector its middle; undefined where it cannot be read, which is then said. */
function clockOf(reader: Reader, row: ast.Reading): number | undefined {
  const [from, to] = [parseClock(row.clock ?? ''), parseClock(row.clockEnd ?? '')];
  if (from === undefined) reader.clock(row, 'clock');
  if (row.clockEnd === undefined) return from;
  if (to === undefined) reader.clock(row, 'clockEnd');
  return from === undefined || to === undefined ? undefined : middleClock(from, to);
}

/** What was seen all along a stretch counts once: at a point in it, else at its middle (assembly/places.ts). */
function stretchOf(
  reader: Reader,
  row: ast.Reading,
  rows: ReadingRows,
): { readonly from: number; readonly to: number } | undefined {
  if (row.from === undefined) return undefined;
  const a = length(reader, row, rows, 'from', chainageLimit, 'chainage');
  const b = length(reader, row, rows, 'to', chainageLimit, 'chainage');
  return { from: Math.min(a, b), to: Math.max(a, b) };
}

function stretchWords(row: ast.Reading): string | undefined {
  const words = sectorWords(row);
  const sector = words === undefined ? '' : ` ${words}`;
  if (row.panel) return `${row.panel.$cstNode?.text.replace(/\s+/g, ' ') ?? ''}${sector}`;
  const from = statedText(row, 'from');
  return from === undefined || row.to === undefined ? words : `from ${from} to ${row.to}${sector}`;
}

/** mm; NaN where it cannot be read, which is then said. */
function length(
  reader: Reader,
  row: ast.Reading,
  rows: ReadingRows,
  property: 'thickness' | 'error' | 'chainage' | 'from' | 'to',
  limit: Limit,
  fact: string,
): number {
  const text = statedText(row, property) ?? '';
  const mm = rows.length(text, limit);
  if (!Number.isNaN(mm)) return mm;
  const origin = reader.part(row, property);
  const parsed = parseQuantity(text, 'length');
  reader.problems.push(
    parsed.ok
      ? { kind: 'out of range', origin, text, fact, range: limit.range }
      : misread(parsed, text, 'length', fact, origin),
  );
  return NaN;
}
