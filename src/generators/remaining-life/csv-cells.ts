// Cells of a table of comma-separated values: RFC 4180 with CRLF. A text that a spreadsheet could take for a formula gets an
// apostrophe before it; numbers are written plain, days in ISO 8601, yes and no in words.

import { formatDay, type CalendarDay } from '../../domain/units/calendar.js';

export type Cell = string | number | boolean | undefined | { readonly day: CalendarDay | undefined };

export function csvTable(columns: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return [columns.join(','), ...rows.map((row) => row.map(cellText).join(','))]
    .map((line) => `${line}\r\n`)
    .join('');
}

function cellText(cell: Cell): string {
  if (cell === undefined) return '';
  if (typeof cell === 'number') return String(cell);
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  if (typeof cell === 'object') return cell.day === undefined ? '' : formatDay(cell.day);
  return csvText(cell);
}

/** Quoted where RFC 4180 asks for it; a leading = + - @ tab or return is made harmless. */
export function csvText(text: string): string {
  const harmless = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replace(/"/g, '""')}"` : harmless;
}
