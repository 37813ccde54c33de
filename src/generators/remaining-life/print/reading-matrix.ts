// Every reading of the liners that lie there now, on paper: a row a point, a column an inspection. What was looked for and not
// seen has a question mark, what was not looked at a dot.

import { formatDay } from '../../../domain/units/calendar.js';
import { momentOf } from '../../../domain/model/history.js';
import type { Inspection } from '../../../domain/model/records.js';
import { element, group, type Markup } from '../../page/markup.js';
import { table } from '../../page/page.js';
import type { ObservedReading, PointLife } from '../remaining-life.js';
import { amountWithUnit } from './wording.js';
import type { ConveyorLife } from '../parts/conveyor-life.js';
import { sizesOf, type Sizes } from '../sizes.js';

/** Columns that fit across the page; older inspections are in the data beneath the charts. */
const most = 9;
const mostRemarks = 12;

export interface ReadingTable {
  readonly title: string;
  /** What is left out of it, or nothing. */
  readonly note: string;
  readonly looks: readonly { readonly date: string; readonly total: string; readonly gauge: string }[];
  /** A point, and a cell for each of the looks. */
  readonly rows: readonly (readonly string[])[];
  readonly key: string;
  /** What was noted beside readings, newest first, each with its full stop. */
  readonly remarks: readonly string[];
}

/** Undefined where nothing was ever looked at. */
export function readingTable(life: ConveyorLife): ReadingTable | undefined {
  const used = new Set(life.points.flatMap((p) => p.readings.map((r) => r.inspection)));
  const inspections = life.history.inspections.map((i) => i.inspection).filter((i) => used.has(i));
  if (inspections.length === 0) return undefined;
  const shown = inspections.slice(-most);
  const sizes = sizesOf(life.conveyor);
  const total = (inspection: (typeof shown)[number]): string => {
    const moment = momentOf(life.history, inspection);
    const value = life.unit === 'h' ? moment.hours : moment.tonnes;
    return value === undefined ? '' : amountWithUnit(value, life.unit);
  };
  const cell = (point: PointLife, inspection: (typeof shown)[number]): string =>
    point.readings
      .filter((r) => r.inspection === inspection)
      .map((reading) => short(reading, sizes))
      .join(' ') || '·';
  return {
    title: `What was read, ${sizes.near} left`,
    note:
      inspections.length > most
        ? `The last ${most} of the ${inspections.length} inspections that looked at the liners which lie there now.`
        : '',
    looks: shown.map((i) => ({ date: formatDay(i.date.day), total: total(i), gauge: gaugeWords(i, sizes) })),
    rows: life.points.map((point) => [point.place.name, ...shown.map((i) => cell(point, i))]),
    key:
      '?: looked for, not seen. ·: no reading of this liner. ' +
      `Below each date: ${life.unit === 'h' ? 'hours run' : 'tonnes carried'} since commissioning.`,
    remarks: remarksOf(life),
  };
}

/** `ultrasonic ± 0.2 mm`. */
function gaugeWords({ gauge }: Inspection, sizes: Sizes): string {
  if (!gauge) return '';
  return `${gauge.kind}${gauge.error ? ` ± ${sizes.size(gauge.error.value)}` : ''}`;
}

/** Those of looks that saw nothing stand with what was not seen. */
function remarksOf({ points }: ConveyorLife): readonly string[] {
  const noted = points
    .flatMap(({ place, readings }) =>
      readings.flatMap(({ day, note, seen }) =>
        note === undefined || seen.kind === 'not seen'
          ? []
          : [{ day, words: `${place.name} on ${formatDay(day)}: ${note}.` }],
      ),
    )
    .sort((a, b) => b.day - a.day);
  const more = noted.length - mostRemarks;
  return [
    ...noted.slice(0, mostRemarks).map(({ words }) => words),
    ...(more > 0 ? [`${more} older remarks stand in the records.`] : []),
  ];
}

export function readingMatrix(life: ConveyorLife): Markup | undefined {
  const found = readingTable(life);
  if (!found) return undefined;
  return group(
    element('h3', {}, found.title),
    found.note !== '' && element('p', { class: 'small muted' }, found.note),
    table({
      class: 'tight matrix',
      columns: [
        { head: 'Point' },
        ...found.looks.map(({ date, total, gauge }) => ({
          head: group(
            date,
            element('br'),
            element('small', { class: 'muted' }, total),
            gauge !== '' && group(element('br'), element('small', { class: 'muted' }, gauge)),
          ),
          number: true,
        })),
      ],
      rows: found.rows,
    }),
    element('p', { class: 'small muted' }, found.key),
    found.remarks.length > 0 &&
      element(
        'ul',
        { class: 'small' },
        found.remarks.map((remark) => element('li', {}, remark)),
      ),
  );
}

function short({ seen }: ObservedReading, sizes: Sizes): string {
  switch (seen.kind) {
    case 'thickness':
      return sizes.thickness(seen.thickness);
    case 'colour':
      return seen.name;
    case 'trough':
      return 'steel';
    case 'not seen':
      return '?';
  }
}
