// Readings go straight from the syntax tree into growing columns: no object a row stays behind. Equal texts (`8.4 mm`) are
// parsed once. What cannot be read keeps its row, marked unreadable, so that a row is never lost silently.

import type * as ast from '../generated/ast.js';
import { mirrorClock, parseClock } from '../../domain/units/clock.js';
import { parseQuantity } from '../../domain/units/parse.js';
import type { LiftedRows } from '../lifting.js';
import type { Rows, ReadingSpot } from '../sheet.js';
import { chainage as chainageLimit, thickness, type Limit } from './limits.js';
import { misread, type Reader } from './reader.js';
import { ReadingKind } from '../../domain/units/reading-kind.js';

export interface RowWriter {
  readonly count: number;
  /** `mirrored`: the inspector looked against the flow. `gaugeError`: mm, NaN where none is stated. */
  add(row: ast.Reading, mirrored: boolean, gaugeError: number): void;
  /** A row that was read without the parser. */
  addLifted(rows: LiftedRows, index: number, mirrored: boolean, gaugeError: number): void;
  finish(): Rows;
}

export function createRowWriter(reader: Reader): RowWriter {
  const { problems } = reader;
  const spot: number[] = [];
  const kind: number[] = [];
  const value: number[] = [];
  const errors: number[] = [];
  const start: number[] = [];
  const end: number[] = [];
  const colourStart: number[] = [];
  const notes = new Map<number, string>();
  const spots: ReadingSpot[] = [];
  const spotNumbers = new Map<string, number>();
  const colours: string[] = [];
  const colourNumbers = new Map<string, number>();
  const lengths = new Map<string, number>();
  const plainSpots: number[] = [];
  const mirroredSpots: number[] = [];

  /** mm; NaN where it cannot be read. */
  function length(
    row: ast.Reading,
    property: 'thickness' | 'error' | 'chainage',
    limit: Limit,
    fact: string,
  ): number {
    const text = row[property] ?? '';
    let mm = lengths.get(text);
    if (mm === undefined) {
      const parsed = parseQuantity(text, 'length');
      mm = parsed.ok ? parsed.quantity.value : NaN;
      lengths.set(text, mm);
    }
    if (mm >= limit.from && mm <= limit.to) return mm;
    const origin = reader.part(row, property);
    const parsed = parseQuantity(text, 'length');
    problems.push(
      parsed.ok
        ? { kind: 'out of range', origin, text, fact, range: limit.range }
        : misread(parsed, text, 'length', fact, origin),
    );
    return NaN;
  }

  function spotNumber(row: ast.Reading, mirrored: boolean): number {
    if (row.point !== undefined)
      return numbered(`p ${row.point}`, () => ({ kind: 'point', name: row.point ?? '' }));
    const at = length(row, 'chainage', chainageLimit, 'chainage');
    const seen = parseClock(row.clock ?? '');
    if (seen === undefined) reader.clock(row, 'clock'); // says what is wrong with it
    if (Number.isNaN(at) || seen === undefined) return numbered('?', () => ({ kind: 'unreadable' }));
    const clock = mirrored ? mirrorClock(seen) : seen;
    return numbered(`c ${at} ${clock}`, () => ({ kind: 'chainage', at, clock }));
  }

  function numbered(key: string, make: () => ReadingSpot): number {
    const known = spotNumbers.get(key);
    if (known !== undefined) return known;
    spotNumbers.set(key, spots.length);
    return spots.push(make()) - 1;
  }

  function colourNumber(name: string): number {
    const known = colourNumbers.get(name);
    if (known !== undefined) return known;
    colourNumbers.set(name, colours.length);
    return colours.push(name) - 1;
  }

  return {
    get count() {
      return spot.length;
    },
    add(row, mirrored, gaugeError) {
      const place = row.$cstNode;
      // A row that the parser could not follow to its fact has been reported; it says nothing.
      const says = row.thickness !== undefined || row.colour !== undefined || row.trough || row.notSeen;
      if (
        !place ||
        !says ||
        (row.point === undefined && (row.chainage === undefined || row.clock === undefined))
      )
        return;
      const index = spot.push(spotNumber(row, mirrored)) - 1;
      start.push(place.offset);
      end.push(place.end);
      colourStart.push(row.colour === undefined ? 0 : reader.part(row, 'colour').start);
      errors.push(
        row.error === undefined ? gaugeError : length(row, 'error', thickness, 'error of the thickness'),
      );
      if (row.thickness !== undefined) {
        const mm = length(row, 'thickness', thickness, 'thickness');
        kind.push(Number.isNaN(mm) ? ReadingKind.unreadable : ReadingKind.thickness);
        value.push(mm);
      } else if (row.colour !== undefined) {
        kind.push(ReadingKind.colour);
        value.push(colourNumber(row.colour));
      } else {
        kind.push(row.trough ? ReadingKind.trough : ReadingKind.notSeen);
        value.push(NaN);
      }
      if (row.note !== undefined) notes.set(index, row.note);
    },
    addLifted(rows, from, mirrored, gaugeError) {
      const known = mirrored ? mirroredSpots : plainSpots;
      const spotHere = rows.spot[from] ?? 0;
      let number = known[spotHere];
      if (number === undefined) {
        const seen = rows.spots[spotHere] ?? '';
        const { at, clock } =
          typeof seen === 'string'
            ? { at: 0, clock: 0 }
            : { at: seen.at, clock: mirrored ? mirrorClock(seen.clock) : seen.clock };
        number =
          typeof seen === 'string'
            ? numbered(`p ${seen}`, () => ({ kind: 'point', name: seen }))
            : numbered(`c ${at} ${clock}`, () => ({ kind: 'chainage', at, clock }));
        known[spotHere] = number;
      }
      const index = spot.push(number) - 1;
      const kindHere = rows.kind[from] ?? ReadingKind.unreadable;
      const valueHere = rows.value[from] ?? NaN;
      const errorHere = rows.error[from] ?? NaN;
      kind.push(kindHere);
      value.push(kindHere === ReadingKind.colour ? colourNumber(rows.colours[valueHere] ?? '') : valueHere);
      errors.push(Number.isNaN(errorHere) ? gaugeError : errorHere);
      start.push(rows.start[from] ?? 0);
      end.push(rows.end[from] ?? 0);
      colourStart.push(rows.colourStart[from] ?? 0);
      const note = rows.notes.get(from);
      if (note !== undefined) notes.set(index, note);
    },
    finish: () => ({
      count: spot.length,
      spot: Int32Array.from(spot),
      kind: Uint8Array.from(kind),
      value: Float64Array.from(value),
      error: Float64Array.from(errors),
      start: Int32Array.from(start),
      end: Int32Array.from(end),
      colourStart: Int32Array.from(colourStart),
      notes,
      spots,
      colours,
    }),
  };
}
