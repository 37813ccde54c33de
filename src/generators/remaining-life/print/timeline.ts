// When does each conveyor reach its limit? One row a conveyor on one calendar: the thin bar is 90 % of the forecast, the thick
// one 80 %, the diamond its middle; planned outages are bands across all rows, the one to reline at is boxed in its row.

import { scaleLinear } from 'd3-scale';
import { formatDay, parseDay, type CalendarDay } from '../../../domain/units/calendar.js';
import { chartRim, drawing, ink, line, mark, rectangle, letters } from '../../page/svg.js';
import { group, type Markup } from '../../page/markup.js';
import { textWidth } from '../../page/text-width.js';
import { date } from './wording.js';
import type { ConveyorLife } from '../parts/conveyor-life.js';
import { isNow } from '../../../domain/decision/order-call.js';
import { orderDay } from '../decision-words.js';
import { limitPassed, passedText } from '../passed-words.js';

const width = 700;
const left = 58;
const right = width - 12;
const head = 46;
const rowHeight = 27;

/** Undefined where no conveyor has dates. */
export function timeline(conveyors: readonly ConveyorLife[], asOf: CalendarDay): Markup | undefined {
  const dated = conveyors.filter(
    (c) =>
      c.model?.forecast.kind === 'dates' ||
      c.model?.forecast.kind === 'reached' ||
      c.worst?.pastLimit !== undefined,
  );
  if (dated.length === 0) return undefined;
  const outages = uniqueOutages(conveyors).filter((o) => o.to >= asOf);
  const lastOutage = Math.max(asOf + 365, ...outages.map((o) => o.to + 60));
  const medians = dated.flatMap((c) =>
    c.model?.forecast.kind === 'dates' && c.model.forecast.days.q50 !== undefined
      ? [c.model.forecast.days.q50]
      : [],
  );
  const end = Math.min(asOf + 4 * 366, Math.max(lastOutage, ...medians.map((d) => d + 60)));
  const bottom = head + dated.length * rowHeight;
  const scale = scaleLinear().domain([asOf, end]).range([left, right]);
  const x = (day: number): number => scale(Math.min(Math.max(day, asOf), end));
  return drawing(
    {
      id: 'timeline',
      width,
      height: bottom + 32,
      title: 'When each conveyor reaches its condemn limit',
      description: describe(dated),
    },
    outages
      .filter((o) => o.from <= end)
      .map((o) =>
        rectangle(x(o.from), head - 4, Math.max(3, x(o.to) - x(o.from)), bottom - head + 4, {
          fill: '#d9d9d9',
          width: 0,
        }),
      ),
    outageLabels(
      outages.filter((o) => o.from <= end),
      x,
    ),
    axis(asOf, end as CalendarDay, x, bottom),
    dated.map((life, i) => row(life, head + i * rowHeight + rowHeight / 2, x, end)),
  );
}

function uniqueOutages(
  conveyors: readonly ConveyorLife[],
): readonly { name: string; from: number; to: number }[] {
  const plants = [...new Set(conveyors.map((c) => c.conveyor.plant))];
  return plants
    .flatMap((p) => p.outages.map((o) => ({ name: o.name, from: o.from.day, to: o.to.day })))
    .sort((a, b) => a.from - b.from);
}

function describe(conveyors: readonly ConveyorLife[]): string {
  return conveyors
    .map((c) => {
      const f = c.model?.forecast;
      const passed = limitPassed(c);
      if (passed) return `${c.conveyor.name}: ${passedText(passed)}`;
      return f?.kind === 'dates'
        ? `${c.conveyor.name}: middle ${date(f.days.q50)}, 80 % between ${date(f.days.q10)} and ${date(f.days.q90)}`
        : `${c.conveyor.name}: passed`;
    })
    .join('; ');
}

function row(life: ConveyorLife, y: number, x: (day: number) => number, end: number): Markup {
  const forecast = life.model?.forecast;
  const { outage } = life.attention;
  const name = letters([left - 8, y + 4], life.conveyor.name, { anchor: 'end', size: 11.5, bold: true });
  const base = line([left, y + rowHeight / 2], [right, y + rowHeight / 2], { colour: '#d0d0d0', width: 0.6 });
  const passed = limitPassed(life);
  if (forecast?.kind !== 'dates' || passed) {
    return group(
      base,
      name,
      mark('cross', [left + 5, y], 5, { width: 2.4 }),
      letters([left + 16, y + 4], passed ? passedText(passed) : 'passed', {
        size: 11,
        bold: true,
        rim: chartRim,
      }),
    );
  }
  const { q05, q10, q50, q90, q95 } = forecast.days;
  const to = (day: number | undefined): number => (day === undefined ? right : x(day));
  const orderBy = life.order && !isNow(life.order) ? orderDay(life.order) : undefined;
  // Where no outage is early enough none is boxed: the reline cannot wait for one.
  const within = outage !== undefined && life.attention.level === 'reline to plan' && outage.from <= end;
  return group(
    base,
    name,
    rectangle(to(q05), y - 1.6, to(q95) - to(q05), 3.2, { fill: ink.blue, width: 0 }),
    rectangle(to(q10), y - 4.5, to(q90) - to(q10), 9, { fill: ink.blue, width: 0 }),
    (q95 === undefined || q95 > end) && letters([right + 1, y + 4], '▸', { size: 11, colour: ink.blue }),
    q50 !== undefined && q50 <= end && mark('diamond', [x(q50), y], 5.2, { fill: '#ffffff', width: 1.5 }),
    q05 !== undefined &&
      q05 > end &&
      letters([right - 4, y + 4], `middle ${date(q50)} ▸`, { anchor: 'end', size: 10.5, rim: chartRim }),
    within && rectangle(x(outage.from) - 2.5, y - 10.5, 13, 21, { width: 1.8 }),
    orderBy !== undefined && mark('triangle down', [x(orderBy), y], 5, { fill: ink.vermilion, width: 0.8 }),
  );
}

function outageLabels(
  outages: readonly { name: string; from: number; to: number }[],
  x: (day: number) => number,
): Markup {
  // Two lines of labels, the lower first; a label on the upper one stands on a hair line.
  const free = [-Infinity, -Infinity];
  return group(
    outages.map((o) => {
      const middle = (x(o.from) + x(o.to)) / 2;
      const w = textWidth(o.name, 10.5);
      const at = Math.min(Math.max(middle, left + w / 2), right - w / 2);
      const level = free.findIndex((until) => at - w / 2 >= until);
      if (level < 0) return undefined;
      free[level] = at + w / 2 + 4;
      return group(
        level === 1 && line([middle, head - 22], [middle, head - 4], { colour: '#8c8c8c', width: 0.6 }),
        letters([at, head - 12 - 13 * level], o.name, { anchor: 'middle', size: 10.5 }),
      );
    }),
  );
}

function axis(asOf: CalendarDay, end: CalendarDay, x: (day: number) => number, bottom: number): Markup {
  const months = ['Jan', 'Apr', 'Jul', 'Oct'];
  const first = Number(formatDay(asOf).slice(0, 4));
  const last = Number(formatDay(end).slice(0, 4));
  const ticks: { x: number; label: string; year: string | undefined }[] = [];
  for (let year = first; year <= last; year++) {
    months.forEach((label, q) => {
      const day = parseDay(`${year}-${String(q * 3 + 1).padStart(2, '0')}-01`);
      if (day !== undefined && day >= asOf && day <= end)
        ticks.push({ x: x(day), label, year: q === 0 ? String(year) : undefined });
    });
  }
  const crowded = ticks.length > 1 && (right - left) / ticks.length < 26;
  return group(
    line([left, bottom], [right, bottom], { width: 1 }),
    line([left, head - 4], [left, bottom], { colour: ink.grey, dash: '1 2.5', width: 1 }),
    ticks.map((t) =>
      group(
        line([t.x, bottom], [t.x, bottom + (t.year ? 7 : 4)], { width: 1 }),
        t.year
          ? letters([t.x, bottom + 18], t.year, { anchor: 'middle', size: 11, bold: true })
          : !crowded &&
              letters([t.x, bottom + 16], t.label, { anchor: 'middle', size: 10, colour: ink.grey }),
      ),
    ),
    letters([left, bottom + 29], `day of report ${formatDay(asOf)}`, { size: 10, colour: ink.grey }),
  );
}
