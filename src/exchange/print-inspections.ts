// An inspection as text of the language, laid out as the formatter does it: one reading a line, so that each line can be
// answered for. Words of the sheet become quoted texts on one line; nothing in them can end the quotation.

import type { Conveyor } from '../domain/model/conveyor.js';
import { formatDay } from '../domain/units/calendar.js';
import { formatClock, clockAsSeen } from '../domain/units/clock.js';
import { visibleLine } from '../domain/units/visible-text.js';
import type { Mapping } from './mapping.js';
import type { FreshInspection, FreshReading } from './settle-readings.js';

/** A line, and the reading it stands for. */
export interface PrintedLine {
  readonly text: string;
  readonly reading?: FreshReading;
}

/** A block of its own. `name` is the conveyor's as the estate takes it. */
export function printInspection(
  inspection: FreshInspection,
  name: string,
  { view, gauge }: Pick<Mapping, 'view' | 'gauge'>,
): readonly PrintedLine[] {
  const { day, hours, tonnes, by, readings } = inspection;
  const meter = `meter ${hours?.text ?? ''}${tonnes ? ` tonnes ${tonnes.text}` : ''}`;
  return [
    { text: `inspection ${name} ${formatDay(day)} ${meter} {` },
    ...(by.length > 0 ? [{ text: `  by ${quoted(by.join(', '))}` }] : []),
    ...(view === undefined ? [] : [{ text: `  view ${view}` }]),
    ...gaugeLine(readings, gauge),
    ...readings.map((reading) => ({ text: readingLine(reading, view ?? 'downstream'), reading })),
    { text: '}' },
  ];
}

/** The mapping's, or the one kind that the sheet says of every reading. */
function gaugeLine(readings: readonly FreshReading[], stated: string | undefined): readonly PrintedLine[] {
  const [kind, another] = [...new Set(readings.map(({ gauge }) => gauge))];
  const gauge = stated ?? (another === undefined ? kind : undefined);
  return gauge === undefined ? [] : [{ text: `  gauge ${gauge}` }];
}

/** A row for a block whose inspector looked that way. */
export function readingLine(
  { spot, words, note, saying }: FreshReading,
  view: 'upstream' | 'downstream',
  error?: string,
): string {
  const place =
    'point' in spot ? spot.point : `at ${spot.at.text} clock ${formatClock(clockAsSeen(spot.clock, view))}`;
  const spread =
    error !== undefined && saying.kind === 'thickness' && !words.includes('±') ? ` ± ${error}` : '';
  return `  ${place} ${words}${spread}${note === undefined ? '' : ` ${quoted(note)}`}`;
}

/** The conveyor's name; with its plant's before it where another plant has one of that name. */
export function nameFor(conveyor: Conveyor, all: readonly Conveyor[]): string {
  const twins = all.filter(({ name }) => name === conveyor.name).length;
  return twins > 1 ? `${conveyor.plant.name}.${conveyor.name}` : conveyor.name;
}

function quoted(text: string): string {
  const line = visibleLine(text.replace(/\s+/g, ' ').trim()).replaceAll('"', "'");
  return `"${line}"`;
}
