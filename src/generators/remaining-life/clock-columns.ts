// Where round the trough a place lies, as data: in words that no program takes for a time of day, and as an angle.

import { formatClock } from '../../domain/units/clock.js';
import { number, text, type DataColumn } from './columns.js';

/** `7 o'clock`, `7:30 o'clock`. */
export function clockWords(hours: number): string {
  return `${formatClock(hours).replace(':00', '')} o'clock`;
}

/** @param hours on the face of a clock, as seen in the direction of flow */
export function clockColumns<Row>(hours: (row: Row) => number | undefined): readonly DataColumn<Row>[] {
  return [
    text('clock', 'clock position as seen in the direction of flow; no time of day', (row) => {
      const at = hours(row);
      return at === undefined ? undefined : clockWords(at);
    }),
    number('clock_deg', 'the same as an angle from 12 o’clock, clockwise, degrees', 1, (row) => {
      const at = hours(row);
      return at === undefined ? undefined : (at % 12) * 30;
    }),
  ];
}
