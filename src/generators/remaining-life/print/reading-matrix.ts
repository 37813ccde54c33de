// Every reading of the liners that lie there now, on paper: a row a point, a column an inspection. What was looked for and not
// seen has a question mark, what was not looked at a dot.

import { formatDay } from '../../../domain/units/calendar.js';
import { momentOf } from '../../../domain/model/history.js';
import { element, group, type Markup } from '../../page/markup.js';
import { table } from '../../page/page.js';
import type { ObservedReading } from '../remaining-life.js';
import { amountWithUnit, thickness } from './wording.js';
import type { ConveyorLife } from '../parts/conveyor-life.js';

/** Columns that fit across the page; older inspections are in the data beneath the charts. */
const most = 9;

export function readingMatrix(life: ConveyorLife): Markup | undefined {
  const used = new Set(life.points.flatMap((p) => p.readings.map((r) => r.inspection)));
  const inspections = life.history.inspections.map((i) => i.inspection).filter((i) => used.has(i));
  if (inspections.length === 0) return undefined;
  const shown = inspections.slice(-most);
  const total = (inspection: (typeof shown)[number]): string => {
    const moment = momentOf(life.history, inspection);
    const value = life.unit === 'h' ? moment.hours : moment.tonnes;
    return value === undefined ? '' : amountWithUnit(value, life.unit);
  };
  return group(
    element('h3', {}, 'What was read, mm left'),
    inspections.length > most &&
      element('p', { class: 'small muted' }, `The last ${most} of ${inspections.length} inspections.`),
    table({
      class: 'tight matrix',
      columns: [
        { head: 'Point' },
        ...shown.map((i) => ({
          head: group(formatDay(i.date.day), element('br'), element('small', { class: 'muted' }, total(i))),
          number: true,
        })),
      ],
      rows: life.points.map((point) => [
        point.place.name,
        ...shown.map(
          (i) =>
            point.readings
              .filter((r) => r.inspection === i)
              .map(short)
              .join(' ') || '·',
        ),
      ]),
    }),
    element(
      'p',
      { class: 'small muted' },
      `?: looked for, not seen. ·: no reading of this liner. Below each date: ${life.unit === 'h' ? 'hours run' : 'tonnes carried'} since commissioning.`,
    ),
  );
}

function short({ seen }: ObservedReading): string {
  switch (seen.kind) {
    case 'thickness':
      return thickness(seen.thickness);
    case 'colour':
      return seen.name;
    case 'trough':
      return 'steel';
    case 'not seen':
      return '?';
  }
}
