// One day to order by, whoever prints it: page, comment, data, tables, order list, calendars, programme, comparison, editor.

import { beforeAll, describe, expect, it } from 'vitest';
import { isNow } from '../../../src/domain/decision/order-call.js';
import { programmeProblem } from '../../../src/domain/decision/programme-problem.js';
import { formatDay } from '../../../src/domain/units/calendar.js';
import { forecastRows } from '../../../src/generators/change-summary/parts/forecast-row.js';
import { readSavedReport } from '../../../src/generators/change-summary/saved-report.js';
import { orderListCsv, orderRows } from '../../../src/generators/month/order-list.js';
import { conveyorsCsv } from '../../../src/generators/remaining-life/csv-conveyors.js';
import { programmeCsv } from '../../../src/generators/remaining-life/csv-programme.js';
import { remainingLifeCsv } from '../../../src/generators/remaining-life/csv.js';
import { orderDay, orderText } from '../../../src/generators/remaining-life/decision-words.js';
import { estateCalendar } from '../../../src/generators/remaining-life/estate-calendar.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { programmeCalendar } from '../../../src/generators/remaining-life/programme-calendar.js';
import { programmeRow } from '../../../src/generators/remaining-life/programme-words.js';
import { remainingLife, type RemainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { workPackMarkdown } from '../../../src/generators/work-pack/markdown.js';
import { workPackCalendar } from '../../../src/generators/work-pack/calendar.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { nodeSolver } from '../../../src/solver/node-solver.js';
import { tarnholt } from '../estate.js';
import { day, estateOf, look, only, works } from './story.js';

/** The days of entries `Order liner for X …` of a calendar file, by conveyor. */
function ordered(calendar: string): Record<string, string> {
  const entries = calendar.replace(/\r\n /g, '').split('BEGIN:VEVENT').slice(1);
  return Object.fromEntries(
    entries.flatMap((entry) => {
      const [, name] = /SUMMARY:Order liner for (\S+)/.exec(entry) ?? [];
      const [, year, month, date] = /DTSTART;VALUE=DATE:(\d{4})(\d\d)(\d\d)/.exec(entry) ?? [];
      return name === undefined ? [] : [[name, `${year ?? ''}-${month ?? ''}-${date ?? ''}`]];
    }),
  );
}

/** A column of a table without commas in what stands before it, by conveyor. */
function column(csv: string, name: string): Record<string, string> {
  const [head = '', ...rows] = csv.trimEnd().split('\r\n');
  const names = head.split(',');
  return Object.fromEntries(
    rows.map((row) => {
      const cells = [...row.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)].map(([, cell = '']) => cell);
      return [cells[names.indexOf('conveyor')] ?? '', cells[names.indexOf(name)] ?? '?'];
    }),
  );
}

function saysTheSame(report: RemainingLife): void {
  const { asOf } = report;
  if (asOf === undefined) throw new Error('no day');
  const days = Object.fromEntries(
    report.conveyors.map(({ conveyor, order }) => [conveyor.name, orderDay(order)]),
  );
  const dated = Object.entries(days).flatMap(([name, on]) =>
    on === undefined ? [] : [[name, formatDay(on)]],
  );
  const all = Object.fromEntries(dated) as Record<string, string>;
  const cells = Object.fromEntries(Object.keys(days).map((name) => [name, all[name] ?? '']));
  expect(column(conveyorsCsv(report), 'order_by')).toEqual(cells);
  expect(column(remainingLifeCsv(report), 'conveyor_order_by')).toEqual(cells);
  expect(ordered(estateCalendar(report))).toEqual(all);
  const open = report.conveyors.flatMap(({ conveyor, order }) =>
    order?.kind === 'no lead time' ? [[conveyor.name, '']] : [],
  );
  expect(column(orderListCsv(report), 'order_by')).toEqual({ ...all, ...Object.fromEntries(open) });
  const json = remainingLifeJson(report);
  const data = JSON.parse(json) as {
    conveyors: { conveyor: string; decision: { orderBy: { day: string; now: boolean } | null } | null }[];
  };
  const read = readSavedReport(json, (value) => value);
  const [html, markdown] = [remainingLifeHtml(report), remainingLifeMarkdown(report)];
  const compared = forecastRows(report);
  report.conveyors.forEach((life, i) => {
    const words = orderText(life);
    const { name } = life.conveyor;
    expect(data.conveyors[i]?.decision?.orderBy?.day ?? '').toBe(cells[name]);
    const row = markdown.split('\n').find((line) => line.startsWith(`| ${i + 1} | **${name}**`));
    expect(row?.replaceAll('*', '')).toMatch(new RegExp(`\\| ${words.replace(/[()]/g, '\\$&')} \\|$`));
    expect(html).toContain(words.split(' (')[0]);
    expect(compared[i]?.order?.words ?? '–').toBe(words);
    expect(read.ok && (read.saved.rows[i]?.order?.words ?? '–')).toBe(words);
    if (life.order && isNow(life.order)) expect(orderDay(life.order)).toBe(asOf);
  });
  for (const answer of report.programmes ?? []) {
    if (answer.kind === 'none') continue;
    const calendar = ordered(programmeCalendar([answer], asOf));
    const table = column(programmeCsv([answer]), 'order_by');
    for (const line of answer.programme.lines) {
      if (line.choice.kind !== 'reline') continue;
      const life = report.conveyors.find(({ conveyor }) => conveyor.name === line.conveyor);
      if (!life) throw new Error(line.conveyor);
      expect(programmeRow(answer.programme, line)[6]).toBe(orderText(life));
      expect(calendar[line.conveyor] ?? '').toBe(cells[line.conveyor]);
      expect(table[line.conveyor]).toBe(cells[line.conveyor]);
    }
    for (const { month, orders } of answer.programme.months)
      for (const name of orders) expect(all[name]?.slice(0, 7)).toBe(month);
  }
}

describe('the day to order by', () => {
  let solver: Awaited<ReturnType<typeof nodeSolver>>;
  beforeAll(async () => {
    solver = await nodeSolver();
  });

  it('of the demo with its programme', () => {
    saysTheSame(remainingLife(tarnholt(), { asOf: day('2026-10-31'), track: false, solver }));
  }, 120_000);

  it('of one that is late, of one without a lead time, of one at its limit, and of one where nothing is due', () => {
    const records =
      look(3000, 'P1 thickness 10.5 mm; P2 thickness 10.6 mm') +
      look(6000, 'P1 thickness 9 mm; P2 thickness 9.2 mm') +
      look(8000, 'P1 thickness 8 mm; P2 thickness 8.3 mm');
    const newest = day('2025-11-30');
    const told = (text: string, asOf = newest, more = ''): string => {
      const report = remainingLife(estateOf(text, records + more), { asOf, track: false, solver });
      saysTheSame(report);
      return orderText(only(report));
    };
    expect(told(works)).toBe('2026-02-02');
    const slow = works.replace('10 week', '20 week');
    expect(told(slow)).toBe('now');
    expect(told(slow.replace(/ *outage Autumn27.*\n/, ''))).toBe('now (was 2025-11-24)');
    expect(told(works.replace('lead time liner 10 week', ''))).toBe('no lead time declared');
    expect(told(works.replace(/outage .*\n/g, ''))).toMatch(/^now|^2025-12/);
    expect(told(works, day('2026-01-20'), look(9000, 'P1 thickness 3.9 mm; P2 thickness 7.8 mm'))).toBe(
      'now',
    );
  }, 60_000);
});

describe('the pack of a job', () => {
  it('says now where the report does, and the last day for its window behind it', () => {
    const estate = tarnholt();
    const asOf = day('2026-10-31');
    const report = remainingLife(estate, { asOf, track: false });
    let now = 0;
    for (const job of estate.jobs.filter(({ relines }) => relines.length > 0)) {
      const life = report.conveyors.find(({ conveyor }) => conveyor === job.conveyor);
      const pack = workPack(estate, job, { asOf, decision: life?.decision });
      const liner = pack.orderBy.find(({ item }) => item === 'liner');
      const row = pack.materials.find(({ kind }) => kind === 'liner');
      expect(row?.orderBy).toBe(liner?.date);
      const order = life?.decision?.order;
      const reached = life?.decision?.outages.find(({ name }) => name === order?.outage)?.from;
      if (!order || !isNow(order) || (job.window?.from.day ?? 0) > (reached ?? Infinity)) continue;
      now += 1;
      expect([liner?.date, liner?.latest]).toEqual([formatDay(asOf), expect.stringMatching(/^20/)]);
      expect(Object.keys(ordered(workPackCalendar(pack)))).toEqual([pack.number]);
    }
    expect(now).toBeGreaterThan(0);
  }, 60_000);
});

describe('what is to be bought', () => {
  const two = works
    .replace(
      'screw Spiral400 {',
      'liner TwoLayer16 { layer ivory 8 mm layer blue 8 mm panel length 1200 mm condemn at 4 mm }\nscrew Spiral400 {',
    )
    .replace('liner TwoLayer12\n  drive', 'liner TwoLayer16 from 0 m to 2.4 m\n  liner TwoLayer12\n  drive');
  const records =
    look(3000, 'P1 thickness 13 mm; P2 thickness 9 mm') + look(6000, 'P1 thickness 10 mm; P2 thickness 6 mm');

  it('is each panel’s own liner, a row a liner', () => {
    const report = remainingLife(estateOf(two, records), { track: false });
    saysTheSame(report);
    expect(orderRows(report).map(({ liner, panels }) => [liner, panels])).toEqual([
      ['TwoLayer16', 2],
      ['TwoLayer12', 3],
    ]);
  });

  it('comes from the shelf only where every liner lies there', () => {
    const shelf = (text: string): string => two.replace('lead time liner', `${text}\n  lead time liner`);
    const told = (text: string) => {
      const report = remainingLife(estateOf(shelf(text), records), { track: false });
      saysTheSame(report);
      return orderText(only(report));
    };
    const count = 'counted 2025-01-10';
    expect(told(`on the shelf TwoLayer12 9 panels ${count}`)).toBe('now');
    expect(
      told(`on the shelf TwoLayer16 9 panels ${count}\n  on the shelf TwoLayer12 9 panels ${count}`),
    ).toBe('on the shelf');
  });

  it('a part that the programme takes from the shelf does not spare the whole that cannot wait', async () => {
    const solver = await nodeSolver();
    const crewed = works
      .replace('  point P1', '  access Floor at 0 m to 6 m ground\n  isolation Q1 electrical\n  point P1')
      .replace(
        'lead time liner',
        'crew Alpha 4 people\n  on the shelf TwoLayer12 3 panels counted 2025-01-10\n  lead time liner',
      );
    const uneven =
      look(3000, 'P1 thickness 11.7 mm; P2 thickness 8.5 mm') +
      look(6000, 'P1 thickness 11.4 mm; P2 thickness 5 mm');
    const report = remainingLife(estateOf(crewed, uneven), { track: false, solver });
    saysTheSame(report);
    const { decision, order } = only(report);
    const parts = decision?.scopes?.works.slice(0, -1) ?? [];
    expect(parts.some((part) => decision?.supplies.get(part)?.ways.some(({ by }) => by === 'shelf'))).toBe(
      true,
    );
    expect(decision?.order && isNow(decision.order)).toBe(true);
    expect(order && isNow(order)).toBe(true);
    expect(orderRows(report).map(({ panels }) => panels)).toEqual([5]);
  }, 30_000);

  it('gaps of the joints are no part of a panel: the shelf covers what it covers', () => {
    const gaps = works
      .replace('panel length 1200 mm', 'panel length 1200 mm joint gap 8 mm')
      .replace('lead time liner', 'on the shelf TwoLayer12 5 panels counted 2025-01-10\n  lead time liner');
    const report = remainingLife(estateOf(gaps, records), { track: false });
    const work = only(report).decision?.scopes?.works.at(-1)?.work;
    expect(work?.pieces[0]?.lengths.every((length) => length <= 1200)).toBe(true);
    expect(orderText(only(report))).toBe('on the shelf');
  });

  it('panels of different liners are not offered for exchange', () => {
    const exchange = (text: string): readonly string[] =>
      (only(remainingLife(estateOf(text, records), { track: false })).decision?.options ?? []).flatMap(
        ({ kind, what }) => (kind === 'exchange' ? [what] : []),
      );
    expect(exchange(two)).toEqual([]);
    expect(exchange(works)).toEqual(['Stop and exchange the panel of P2 for that of P1']);
  });
});

describe('what is ordered already', () => {
  const records =
    look(3000, 'P1 thickness 10.5 mm; P2 thickness 10.6 mm') +
    look(6000, 'P1 thickness 9 mm; P2 thickness 9.2 mm') +
    look(8000, 'P1 thickness 8 mm; P2 thickness 8.3 mm');
  const slow = works.replace('10 week', '20 week');
  const told = (line: string, asOf = '2025-11-30') => {
    const text = slow.replace('lead time liner', `${line}\n  lead time liner`);
    const report = remainingLife(estateOf(text, records), { asOf: day(asOf), track: false });
    saysTheSame(report);
    return { life: only(report), report, html: remainingLifeHtml(report) };
  };
  const order = 'ordered TwoLayer12 5 panels on 2025-10-06 arrives 2026-03-02';

  it('is not to be ordered again, in any form, and the outage counts from the day it comes', () => {
    expect(told('').html).toMatch(/\bnow\b/);
    const { life, report } = told(order);
    expect(orderText(life)).toBe('ordered, there on 2026-03-02');
    expect(orderRows(report)).toEqual([]);
    const spring = life.decision?.outages.find(({ name }) => name === 'Spring26');
    expect(spring).toMatchObject({ reachable: true, orderIsLate: false });
    expect(formatDay(spring?.arrives ?? day('1999-01-01'))).toBe('2026-03-02');
  });

  it('counts for the programme in all lengths, with the newest count of each', () => {
    const { life } = told(
      [
        'on the shelf TwoLayer12 4 panels length 1200 mm counted 2025-09-01',
        'on the shelf TwoLayer12 9 panels length 1200 mm counted 2025-03-03',
        'on the shelf TwoLayer12 3 panels length 1000 mm counted 2025-09-01',
        'on the shelf TwoLayer12 90 fixings counted 2025-09-01',
        'ordered TwoLayer12 5 panels length 1200 mm on 2025-10-06 arrives 2026-03-02',
      ].join('\n  '),
    );
    const { conveyor, decision } = life;
    const problem = programmeProblem(conveyor.plant, decision ? [decision] : [], []);
    expect([...(problem?.shelf ?? [])]).toEqual([['TwoLayer12', 4 + 3 + 5]]);
  });

  it('that comes after the outage does not make it', () => {
    const { life } = told(order.replace('2026-03-02', '2026-06-01'));
    expect(life.decision?.outages.find(({ name }) => name === 'Spring26')?.reachable).toBe(false);
  });

  it('too few panels are no liner: the rest is ordered', () => {
    expect(orderText(told(order.replace('5 panels', '2 panels')).life)).toMatch(/^now/);
    const rest = 'on the shelf TwoLayer12 3 panels counted 2025-01-10';
    expect(orderText(told(`${order.replace('5 panels', '2 panels')}\n  ${rest}`).life)).toBe(
      'ordered, there on 2026-03-02',
    );
  });

  it('is not known before the day it was ordered, and a count after it came takes its place', () => {
    expect(orderText(told(order.replace('2025-10-06', '2025-12-15')).life)).toMatch(/^now/);
    const came = `ordered TwoLayer12 5 panels arrives 2025-11-03`;
    expect(orderText(told(`${came}\n  on the shelf TwoLayer12 5 panels counted 2025-11-03`).life)).toBe(
      'on the shelf',
    );
    expect(orderText(told(`${came}\n  on the shelf TwoLayer12 1 panels counted 2025-11-03`).life)).toMatch(
      /^now/,
    );
  });

  it('is taken by the pack and not ordered again', () => {
    const job = 'job Reline {\n  conveyor DG1\n  outage Spring26\n  reline all\n  crews Alpha\n}\n';
    const text = (line: string) =>
      works.replace('lead time liner', `crew Alpha 4 people\n  ${line}\n  lead time liner`);
    const packOf = (line: string) => {
      const estate = estateOf(text(line), records + job);
      const [only] = estate.jobs;
      if (!only) throw new Error('there is one');
      const pack = workPack(estate, only, { asOf: day('2025-11-30') });
      return pack.materials.filter(({ kind }) => kind === 'liner');
    };
    expect(packOf('').some(({ toOrder }) => toOrder > 0)).toBe(true);
    const [row, ...others] = packOf(order.replace('5 panels', '9 panels')).filter(({ needed }) => needed > 0);
    expect(others).toEqual([]);
    expect(row).toMatchObject({ ordered: 9, toOrder: 0 });
    expect(row?.onShelf).toBeUndefined();
    expect(row?.basis).toContain('9 ordered, promised for 2026-03-02');
    expect(packOf(order.replace('2026-03-02', '2026-06-01')).some(({ toOrder }) => toOrder > 0)).toBe(true);
  });

  describe('and came before a reline with it', () => {
    const came = 'ordered TwoLayer12 9 panels on 2024-12-02 arrives 2025-01-20';
    const reline = 'reline DG1 2025-02-03 meter 792 h {\n  scope panel 2 of run 1\n}\n';
    const made = (line: string, records_ = records + reline) =>
      estateOf(
        slow.replace('lead time liner', `crew Alpha 4 people\n  ${line}\n  lead time liner`),
        records_ + 'job Reline {\n  conveyor DG1\n  outage Spring26\n  reline all\n  crews Alpha\n}\n',
      );
    const packOf = (line: string, records_?: string) => {
      const estate = made(line, records_);
      const [job] = estate.jobs;
      if (!job) throw new Error('there is one');
      return workPack(estate, job, { asOf: day('2025-11-30') });
    };
    const panels = (pack: ReturnType<typeof workPack>) =>
      pack.materials.find(({ kind, needed }) => kind === 'liner' && needed > 0);

    it('is not taken as there: how much of it was fitted nobody wrote down, and the pack and the report say so', () => {
      const pack = packOf(came);
      expect(panels(pack)).toMatchObject({ toOrder: panels(packOf(''))?.toOrder });
      expect(panels(pack)).not.toHaveProperty('ordered');
      const doubt =
        'DG1 was relined with it on 2025-02-03 and nobody has counted since, so none of it is taken as there';
      expect(panels(pack)?.basis).toContain(`9 were ordered for 2025-01-20: ${doubt}`);
      expect(workPackMarkdown(pack)).toContain(
        `Ordered once: 9 panels of 1.20 m, promised for 2025-01-20; ${doubt}.`,
      );
      const report = remainingLife(made(came), { asOf: day('2025-11-30'), track: false });
      expect(orderText(only(report))).toMatch(/^now/);
      expect(remainingLifeHtml(report)).toContain(
        '9 panels of TwoLayer12 ordered for 2025-01-20 are not taken as there (DG1 relined with it on 2025-02-03, not counted since)',
      );
    });

    it('was there before it, and is there again once it is counted', () => {
      expect(panels(packOf(came, records))).toMatchObject({ ordered: 9, toOrder: 0 });
      const counted = `${came}\n  on the shelf TwoLayer12 6 panels counted 2025-02-04`;
      expect(panels(packOf(counted))).toMatchObject({ onShelf: 6, toOrder: 0 });
    });

    it('a reline before it came, or with another liner, used nothing of it', () => {
      expect(panels(packOf(came.replace('2025-01-20', '2025-02-10')))).toMatchObject({ ordered: 9 });
      const other = 'liner Thin { layer red 10 mm panel length 1200 mm condemn at 4 mm }\n';
      const thin = reline.replace('{\n', '{\n  liner Thin\n');
      expect(panels(packOf(came, records + other + thin))).toMatchObject({ ordered: 9 });
    });

    it('the day it was promised for stands as written, also where that day has passed', () => {
      expect(panels(packOf(came, records))?.basis).toContain('9 ordered, promised for 2025-01-20');
      expect(workPackMarkdown(packOf(came, records))).toContain(
        'Ordered: 9 panels of 1.20 m, promised for 2025-01-20',
      );
    });
  });
});
