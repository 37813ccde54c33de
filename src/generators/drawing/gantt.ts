// The steps of a job as bars over working time: one row a step, solid where it is critical, open with a thin line for its float
// where it is not, days marked where a shift begins. Enough sheets for every row to keep its lettering.

import { drawingArea } from './drawing-sheet.js';
import type { Markup } from '../page/markup.js';
import { letters, lettering, line, lineWidth, rectangle } from '../page/svg.js';
import type { Picture } from './picture.js';
import { fitText, textWidth } from '../page/text-width.js';

export interface GanttRow {
  readonly number: number;
  readonly label: string;
  readonly who: string;
  /** Working hours since the first shift began. */
  readonly start: number;
  readonly finish: number;
  readonly float: number;
  readonly critical: boolean;
}

export interface GanttFacts {
  readonly conveyor: string;
  readonly rows: readonly GanttRow[];
  readonly duration: number;
  /** Where a new day's work begins, working hours, with the day's name. */
  readonly days: readonly { readonly at: number; readonly name: string }[];
}

const names = 86;
const top = drawingArea.y + 17;
const room = drawingArea.y + drawingArea.height - top;
/** What the lettering needs, mm. */
const rowHeight = 5.3;
const rowsASheet = Math.floor(room / rowHeight);

export function gantt(facts: GanttFacts): readonly Picture[] {
  const sheets = Math.max(1, Math.ceil(facts.rows.length / rowsASheet));
  const perSheet = Math.ceil(facts.rows.length / sheets);
  return Array.from({ length: facts.rows.length === 0 ? 0 : sheets }, (_, sheet): Picture => {
    const rows = facts.rows.slice(sheet * perSheet, (sheet + 1) * perSheet);
    return {
      title: `${facts.conveyor}: time plan`,
      documentType: 'Bar chart',
      scale: 'time',
      description: `Steps ${rows[0]?.number ?? 0} to ${rows.at(-1)?.number ?? 0} of ${facts.rows.length} over ${facts.duration.toFixed(1)} working hours; solid bars are critical.`,
      hatches: [],
      height: top + rows.length * rowHeight + 1,
      chart: true,
      content: () => [
        ...paintKey(),
        ...paintTime(facts, rows.length * rowHeight),
        ...rows.flatMap((row, index) => paintRow(facts, row, top + index * rowHeight)),
      ],
    };
  });
}

function paintKey(): Markup[] {
  const y = drawingArea.y + 4.5;
  return [
    letters([drawingArea.x, y], 'Step', { bold: true }),
    rectangle(drawingArea.x + names, y - 3, 9, 3.2, { width: 0, fill: '#000' }),
    letters([drawingArea.x + names + 11, y], 'critical: late here is late at the end'),
    rectangle(drawingArea.x + names + 80, y - 3, 9, 3.2, { width: lineWidth.medium, fill: '#fff' }),
    line([drawingArea.x + names + 89, y - 1.4], [drawingArea.x + names + 97, y - 1.4], {
      width: lineWidth.medium,
      dash: '1 0.8',
    }),
    letters([drawingArea.x + names + 99, y], 'may slip as far as the dashes'),
  ];
}

function paintTime(facts: GanttFacts, height: number): Markup[] {
  const x = place(facts);
  const foot = top + height;
  const marks: Markup[] = [
    line([drawingArea.x, top - 1], [drawingArea.x + drawingArea.width, top - 1], { width: lineWidth.thick }),
  ];
  const step =
    [1, 2, 5, 10, 20, 50, 100].find(
      (hours) => (hours / Math.max(facts.duration, 1)) * (drawingArea.width - names) >= 9,
    ) ?? 200;
  for (let at = 0; at <= facts.duration + 1e-6; at += step) {
    marks.push(
      line([x(at), top - 1], [x(at), top - 2.4], { width: lineWidth.thin }),
      letters([x(at), top - 3.2], `${at}`, { anchor: 'middle' }),
    );
  }
  marks.push(letters([drawingArea.x + names - 2, top - 3.2], 'working hours', { anchor: 'end' }));
  let free = -Infinity;
  for (const day of facts.days) {
    marks.push(line([x(day.at), top - 1], [x(day.at), foot], { width: lineWidth.thin, dash: '0.6 1' }));
    const width = textWidth(day.name, lettering.normal);
    if (x(day.at) < free || x(day.at) + width > drawingArea.x + drawingArea.width) continue;
    marks.push(
      letters([x(day.at) + 0.6, top - 7.6], day.name),
      line([x(day.at), top - 1], [x(day.at), top - 10.6], { width: lineWidth.thin }),
    );
    free = x(day.at) + width + 2;
  }
  return marks;
}

function paintRow(facts: GanttFacts, row: GanttRow, y: number): Markup[] {
  const x = place(facts);
  const [from, to] = [x(row.start), Math.max(x(row.finish), x(row.start) + 0.6)];
  const right = drawingArea.x + drawingArea.width;
  const marks = [
    line([drawingArea.x, y + rowHeight - 1], [right, y + rowHeight - 1], { width: 0.12 }),
    letters([drawingArea.x + 6.5, y + 3.9], `${row.number}`, { anchor: 'end', bold: row.critical }),
    letters([drawingArea.x + 8.5, y + 3.9], fitText(row.label, names - 10, lettering.normal), {
      bold: row.critical,
    }),
    rectangle(from, y + 0.6, to - from, 3.8, {
      width: row.critical ? 0 : lineWidth.medium,
      fill: row.critical ? '#000' : '#fff',
    }),
  ];
  const slip = row.float > 1e-6 ? Math.min(x(row.finish + row.float), right) : to;
  if (slip > to) marks.push(line([to, y + 2.5], [slip, y + 2.5], { width: lineWidth.medium, dash: '1 0.8' }));
  const words = `${row.who}${row.who ? ', ' : ''}${Number((row.finish - row.start).toFixed(1))} h`;
  const width = textWidth(words, lettering.normal);
  if (slip + 1.5 + width <= right) marks.push(letters([slip + 1.5, y + 3.9], words));
  else if (from - 1.5 - width >= drawingArea.x + names)
    marks.push(letters([from - 1.5, y + 3.9], words, { anchor: 'end' }));
  return marks;
}

function place(facts: GanttFacts): (hours: number) => number {
  const left = drawingArea.x + names;
  const width = drawingArea.width - names - 2;
  return (hours) => left + (hours / Math.max(facts.duration, 1e-6)) * width;
}
