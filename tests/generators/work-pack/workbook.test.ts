// The workbook and the calendars, read back by other libraries (read-excel-file, ical.js): dates are dates, totals are formulas, a
// quarter of an hour is not rounded away; work takes up its days, what is to be remembered rings beforehand and leaves them free.

import ICAL from 'ical.js';
import { unzipSync, strFromU8 } from 'fflate';
import { readSheet } from 'read-excel-file/node';
import { describe, expect, test } from 'vitest';
import { orderCall } from '../../../src/domain/decision/order-call.js';
import { addDays, formatDay } from '../../../src/domain/units/calendar.js';
import { estateCalendar } from '../../../src/generators/remaining-life/estate-calendar.js';
import { remainingLife, type ConveyorLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { workPackCalendar } from '../../../src/generators/work-pack/calendar.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { workPackXlsx } from '../../../src/generators/work-pack/xlsx.js';
import { day, liftConveyor, read, tarnholt, theJob } from '../estate.js';

const facts = 'unit time cover off 15 min';
const analysis = read(
  liftConveyor({ more: 'inspection DG1 2026-05-04 meter 11000 h {\n  P1 thickness 7 mm\n}' }).replace(
    'lead time',
    `${facts}\n  lead time`,
  ),
);
const pack = workPack(analysis.estate, theJob(analysis), { asOf: day('2026-10-31') });

/** The file counts days as fractions: to the nearest second. */
function minute(cell: Date): string {
  const seconds = new Date(Math.round(cell.getTime() / 1000) * 1000);
  return seconds.toISOString().slice(0, 16).replace('T', ' ');
}

describe('the workbook', () => {
  test('has dates that are dates, to the minute', async () => {
    const file = Buffer.from(await workPackXlsx(pack));
    const [head = [], ...rows] = await readSheet(file, 'Steps');
    const at = head.indexOf('Start');
    pack.steps.forEach((step, index) => {
      const cell = rows[index]?.[at];
      if (step.startText === undefined) return;
      expect(cell).toBeInstanceOf(Date);
      expect(cell instanceof Date ? minute(cell) : '').toBe(step.startText);
    });
    expect(pack.steps.some(({ startText }) => startText !== undefined)).toBe(true);
  });

  test('has totals that are formulas, and shows a quarter of an hour', async () => {
    const file = Buffer.from(await workPackXlsx(pack));
    const panels = await readSheet(file, 'Panels');
    const at = (panels[0] ?? []).findIndex((head) => String(head).startsWith('Length'));
    const column = String.fromCharCode(65 + at);
    const sheets = unzipSync(file);
    const all = Object.entries(sheets)
      .filter(([name]) => name.startsWith('xl/worksheets/sheet'))
      .map(([, bytes]) => strFromU8(bytes));
    const formulas = all.flatMap((xml) => [...xml.matchAll(/<f>([^<]*)<\/f><v>([^<]*)<\/v>/g)]);
    expect(formulas.map(([, formula]) => formula)).toContain(`SUM(${column}2:${column}${panels.length - 1})`);
    const lengths = panels.slice(1, -1).map((row) => Number(row[at]));
    const sum = lengths.reduce((a, b) => a + b, 0);
    expect(
      formulas.some(
        ([, formula, value]) =>
          formula?.startsWith(`SUM(${column}2`) === true && Math.abs(Number(value) - sum) < 1e-6,
      ),
    ).toBe(true);
    const [head = [], ...steps] = await readSheet(file, 'Steps');
    const hours = steps.map((row) => Number(row[head.indexOf('Hours')]));
    pack.steps.forEach(({ hours: planned }, index) => expect(hours[index]).toBeCloseTo(planned, 9));
    expect(pack.steps.some(({ hours: planned }) => (planned * 4) % 2 === 1)).toBe(true);
    expect(strFromU8(sheets['xl/styles.xml'] ?? new Uint8Array())).toContain('formatCode="0.00"');
  });
});

interface Read {
  readonly summary: string;
  readonly description: string;
  readonly from: string;
  readonly to: string;
  readonly transparent: boolean;
  readonly triggers: readonly number[];
}

/** By the other library: whole days, free or busy, and the seconds from the beginning at which it rings. */
function entriesOf(text: string): readonly Read[] {
  const calendar = new ICAL.Component(ICAL.parse(text) as unknown as string);
  return calendar.getAllSubcomponents('vevent').map((component) => {
    const event = new ICAL.Event(component);
    expect(event.startDate.isDate).toBe(true);
    return {
      summary: event.summary,
      description: event.description,
      from: event.startDate.toString(),
      to: event.endDate.toString(),
      transparent: component.getFirstPropertyValue('transp') === 'TRANSPARENT',
      triggers: component
        .getAllSubcomponents('valarm')
        .map((alarm) => (alarm.getFirstPropertyValue('trigger') as ICAL.Duration).toSeconds()),
    };
  });
}

describe('the calendar', () => {
  test('of a job: its window is busy and rings four weeks and one before, at eight in the morning', () => {
    const [window, order] = entriesOf(workPackCalendar(pack));
    expect(window).toMatchObject({ from: '2027-04-12', to: '2027-04-17', transparent: false });
    expect(window?.triggers).toEqual([-28 * 86_400 + 8 * 3600, -7 * 86_400 + 8 * 3600]);
    expect(order?.summary).toContain('Order liner');
    expect(order).toMatchObject({
      transparent: true,
      triggers: [-14 * 86_400 + 8 * 3600, -3 * 86_400 + 8 * 3600],
    });
  });

  test('of the estate: a look for every conveyor, orders, every outage to come; busy only where somebody works', () => {
    const asOf = day('2026-10-31');
    const report = remainingLife(tarnholt(), { asOf, track: false });
    const entries = entriesOf(estateCalendar(report));
    for (const { conveyor } of report.conveyors)
      expect(entries.some(({ summary }) => summary.startsWith(`${conveyor.name}: look by today`))).toBe(true);
    const outages = entries.filter(({ summary }) => summary.startsWith('Outage'));
    expect(outages.length).toBe(
      report.estate.plants.flatMap(({ outages: all }) => all.filter(({ to }) => to.day >= asOf)).length,
    );
    for (const { attention, conveyor } of report.conveyors) {
      const { outage } = attention;
      if (!outage) continue;
      const entry = outages.find(({ summary }) => summary.startsWith(`Outage ${outage.name}`));
      expect(entry?.summary).toContain(conveyor.name);
      expect(entry?.transparent).toBe(false);
    }
    for (const entry of entries.filter(({ summary }) => !summary.startsWith('Outage')))
      expect(entry.transparent).toBe(true);
    for (const { order, conveyor } of report.conveyors)
      expect(
        entries.flatMap(({ summary, from }) =>
          summary.startsWith(`Order liner for ${conveyor.name} `) ? [from] : [],
        ),
      ).toEqual(order?.kind === 'order' ? [formatDay(order.day)] : []);
    expect(estateCalendar(report)).toBe(estateCalendar(report));
  });

  test('of the estate: no day taken up by an outage for nobody, none of an outage that is over, no order in the past', () => {
    const asOf = day('2026-10-31');
    const report = remainingLife(tarnholt(), { asOf, track: false });
    const outages = report.estate.plants.flatMap((plant) => plant.outages);
    const [first] = [...outages].sort((a, b) => a.to.day - b.to.day).filter(({ to }) => to.day >= asOf);
    if (!first) throw new Error('the demo has an outage to come');
    const told = (entries: ReturnType<typeof entriesOf>): string[] =>
      entries.map(({ summary }) => summary).filter((summary) => summary.startsWith(`Outage ${first.name}`));

    const idle = { ...report, conveyors: report.conveyors.map(nobodyDue) };
    const free = entriesOf(estateCalendar(idle)).filter(({ summary }) => summary.startsWith('Outage'));
    expect(free.map(({ transparent }) => transparent)).toEqual(free.map(() => true));
    expect(told(free)).toEqual([`Outage ${first.name}`]);

    // Its last day still counts; the day after it is over.
    expect(told(entriesOf(estateCalendar({ ...idle, asOf: first.to.day })))).toHaveLength(1);
    expect(told(entriesOf(estateCalendar({ ...idle, asOf: addDays(first.to.day, 1) })))).toHaveLength(0);

    const late = {
      ...report,
      conveyors: report.conveyors.map((life) => ({
        ...life,
        order: orderCall({
          asOf,
          chosen: { name: first.name, orderBy: addDays(asOf, -9) },
          first: undefined,
          atLimit: false,
          onShelf: false,
          leadDeclared: true,
        }),
      })),
    };
    const orders = entriesOf(estateCalendar(late)).filter(({ summary }) => summary.startsWith('Order liner'));
    expect(orders.length).toBeGreaterThan(0);
    for (const order of orders) {
      expect(order.from).toBe('2026-10-31');
      expect(order.description).toContain(`For ${first.name} it was to be ordered by 2026-10-22`);
    }
  });
});

function nobodyDue(life: ConveyorLife): ConveyorLife {
  return { ...life, attention: { ...life.attention, outage: undefined } };
}
