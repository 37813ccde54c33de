// A clock position as sheets have it: `7:30`, `07:30:00`, `7 o'clock`, a time of day (the fraction 0.3125 shown as 07:30), hours
// with a decimal (7.5) or degrees, the last two only where the mapping says so. Minutes are the finest that the language writes.

import { formatClock, parseClock } from '../../domain/units/clock.js';
import type { SheetCell } from '../table.js';
import { readDigits, type Decimal } from './number.js';

export const clockForms = ['time', 'hours', 'degrees from 12', 'degrees from 6'] as const;
/** Degrees are clockwise as the inspector looks, from the top or from the bottom. */
export type ClockForm = (typeof clockForms)[number];

export interface Clock {
  readonly text: string;
  readonly hours: number;
}

export type ReadClock =
  { readonly ok: true; readonly clock: Clock } | { readonly ok: false; readonly why: string };

export function readClock(cell: SheetCell, form: ClockForm, decimal: Decimal | undefined): ReadClock {
  if (cell.kind === 'error') return { ok: false, why: `holds ${cell.text}` };
  if (form !== 'time') return fromNumber(cell, form, decimal);
  if (cell.kind === 'date') return fromFraction(cell.number ?? NaN, cell.text);
  if (cell.kind === 'number') {
    const value = cell.number ?? NaN;
    if (value > 0 && value < 1) return fromFraction(value, cell.text);
    return Number.isInteger(value) ? onFace(`${value}:00`, cell.text) : unsure(cell.text);
  }
  const time = /^(\d{1,2}):(\d{2})(?::00(?:[.,]0+)?)?(?:\s*(?:h|hrs|uhr|o['’]?\s?clock))?$/i.exec(cell.text);
  if (time) return onFace(`${Number(time[1])}:${time[2] ?? ''}`, cell.text);
  const whole = /^(\d{1,2})\s*(?:h|uhr|o['’]?\s?clock)?$/i.exec(cell.text);
  if (whole) return onFace(`${Number(whole[1])}:00`, cell.text);
  return unsure(cell.text);
}

function unsure(text: string): ReadClock {
  return {
    ok: false,
    why: `${text} is not a clock position for sure (7:30, 7 o'clock; "clock in hours" takes 7.5)`,
  };
}

function onFace(time: string, text: string): ReadClock {
  const hours = parseClock(time);
  if (hours === undefined) return { ok: false, why: `${text} is not on the face of a clock (1:00 to 12:59)` };
  return { ok: true, clock: { hours, text: formatClock(hours) } };
}

/** A time of day; whole days before it are no clock position. */
function fromFraction(serial: number, text: string): ReadClock {
  if (!(serial > 0 && serial < 1)) return { ok: false, why: `${text} is not a clock position` };
  const minutes = Math.round(serial * 1440);
  if (Math.abs(serial * 1440 - minutes) > 0.01) return { ok: false, why: `${text} is not a whole minute` };
  return onFace(`${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`, text);
}

function fromNumber(
  cell: SheetCell,
  form: Exclude<ClockForm, 'time'>,
  decimal: Decimal | undefined,
): ReadClock {
  const bare = cell.text.replace(/\s*(?:°|deg|degrees|h)$/i, '');
  const read = cell.kind === 'number' ? undefined : readDigits(bare, decimal ?? '.');
  if (read && (!read.ok || (decimal === undefined && /[.,]/.test(bare))))
    return { ok: false, why: read.ok ? `${cell.text}: the mapping states no decimal mark` : read.why };
  const value = read?.ok ? Number(read.digits) : (cell.number ?? NaN);
  const most = form === 'hours' ? 12 : 360;
  if (cell.kind === 'date' || !(value >= 0 && value <= most))
    return { ok: false, why: `${cell.text} is not between 0 and ${most}` };
  const hours = form === 'hours' ? value : value / 30 + (form === 'degrees from 6' ? 6 : 0);
  const text = formatClock(hours);
  return { ok: true, clock: { text, hours: parseClock(text) ?? 12 } };
}
