// Options and arguments that several commands take, each defined once so that it means the same everywhere.

import { InvalidArgumentError, Option } from 'commander';
import { parseDay, type CalendarDay } from '../../domain/units/calendar.js';
import { Trouble, type Console } from '../console.js';

export const paths = [
  '[paths...]',
  'files or folders; - reads standard input (default: this folder)',
] as const;

export function asOfOption(): Option {
  return new Option(
    '--as-of <date>',
    'count from this day (YYYY-MM-DD); default SOURCE_DATE_EPOCH, else the newest record',
  ).argParser(dayArgument);
}

export function stdinFilenameOption(): Option {
  return new Option('--stdin-filename <name>', 'name to show for standard input (-)').default('stdin.trough');
}

export function paperOption(): Option {
  return new Option('--paper <size>', 'page size of HTML, crew sheet and PDF')
    .choices(['A4', 'Letter'])
    .default('A4');
}

/** For an option that may be given several times. */
export function collect(value: string, before: readonly string[]): string[] {
  return [...before, value];
}

export function dayArgument(text: string): CalendarDay {
  const day = parseDay(text);
  if (day === undefined)
    throw new InvalidArgumentError('a date is written YYYY-MM-DD, for example 2026-10-31.');
  return day;
}

/** SOURCE_DATE_EPOCH (reproducible-builds.org): seconds since 1970-01-01, UTC. */
export function epochDay(console: Console): CalendarDay | undefined {
  const text = console.env['SOURCE_DATE_EPOCH'];
  if (text === undefined || text === '') return undefined;
  if (!/^\d+$/.test(text))
    throw new Trouble(`SOURCE_DATE_EPOCH is '${text}': it must be whole seconds since 1970-01-01`);
  return parseDay(new Date(Number(text) * 1000).toISOString().slice(0, 10));
}
