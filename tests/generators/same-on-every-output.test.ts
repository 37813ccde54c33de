// A quantity that stands on two outputs is the same on both, as printed: each number of the Markdown report is looked for, in the
// digits it has there, in the page, the two tables, the data, the inspection sheet and the pack of the same day. Over the demo and
// the two smaller estates with records, one of them in inches.

import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { amountText } from '../../src/domain/decision/money.js';
import { percent } from '../../src/domain/decision/option-setting.js';
import { unitOfMachine } from '../../src/domain/model/unit-of-machine.js';
import { formatDay, type CalendarDay } from '../../src/domain/units/calendar.js';
import { rateText } from '../../src/domain/units/length-words.js';
import { inspectionSheetHtml } from '../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../src/generators/inspection-sheet/inspection-sheet.js';
import { remainingLifeCsv } from '../../src/generators/remaining-life/csv.js';
import { conveyorsCsv } from '../../src/generators/remaining-life/csv-conveyors.js';
import { remainingLifeHtml } from '../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../src/generators/remaining-life/json.js';
import { markdownText, remainingLifeMarkdown } from '../../src/generators/remaining-life/markdown.js';
import { remainingLife, type RemainingLife } from '../../src/generators/remaining-life/remaining-life.js';
import { sizesIn } from '../../src/generators/remaining-life/sizes.js';
import { tableCsv } from '../../src/generators/tables/csv.js';
import { decisionsTable } from '../../src/generators/tables/decisions.js';
import { workPackMarkdown } from '../../src/generators/work-pack/markdown.js';
import { workPack } from '../../src/generators/work-pack/work-pack.js';
import { day } from './estate.js';

const folders = [
  ['4-tarnholt', '2026-10-31'],
  ['7-five-years', '2026-11-30'],
  ['2-inches', '2026-10-31'],
] as const;

type Row = Readonly<Record<string, string>>;

describe.each(folders)('%s', (folder, on) => {
  let report: RemainingLife;
  let asOf: CalendarDay;
  let markdown: string;
  let html: string;
  let points: readonly Row[];
  let conveyors: readonly Row[];
  let options: readonly Row[];
  beforeAll(() => {
    asOf = day(on);
    report = remainingLife(analyse(textsOf(folder)).estate, { asOf, track: false });
    markdown = remainingLifeMarkdown(report);
    html = wordsOf(remainingLifeHtml(report));
    points = csvRows(remainingLifeCsv(report));
    conveyors = csvRows(conveyorsCsv(report));
    options = csvRows(tableCsv(decisionsTable(report)));
  }, 60_000);

  it('life, rate, dates and thickness of a point: report, table, data and sheet', () => {
    const data = JSON.parse(remainingLifeJson(report)) as {
      conveyors: readonly { conveyor: string; points: readonly { point: string; condemn: number }[] }[];
    };
    for (const { conveyor, points: own } of report.conveyors) {
      const unit = unitOfMachine(conveyor);
      const sizes = sizesIn(unit);
      const rows = markdownRows(sectionOf(markdown, conveyor.name), '| Point | At');
      const sheet = inspectionSheet(report.estate, conveyor, { asOf });
      const page = wordsOf(inspectionSheetHtml(sheet));
      for (const { place, condemn } of own) {
        const told = rows.find(([name]) => name?.replace(/\*/g, '') === markdownText(place.name));
        const csv = points.find((row) => row['conveyor'] === conveyor.name && row['point'] === place.name);
        if (!told || !csv) throw new Error(`${conveyor.name} ${place.name} stands on one output only`);
        const [, at = '', , last = '', long = '', short = '', left = '', from = '', limit = '', look = ''] =
          told;
        const what = `${conveyor.name} ${place.name}`;
        expect(at, what).toBe(sizes.along(Number(csv['chainage_m']) * 1000));
        // Thickness and its day, on the sheet too.
        const thickness = csv['thickness_mm'] ?? '';
        if (csv['last_seen_on']) expect(last, what).toContain(`, ${csv['last_seen_on']}`);
        if (thickness) expect(last, what).toContain(sizes.size(Number(thickness)));
        const point = sheet.points.find(
          (each) => (each.name ?? each.writes.replace(/^at /, '')) === place.name,
        );
        if (point?.last && thickness && point.last.date === csv['last_seen_on'])
          expect(point.last.thickness, what).toBeCloseTo(Number(thickness), 3);
        if (point?.last?.thickness !== undefined) expect(page, what).toContain(point.last.words);
        expect(Number(csv['condemn_mm']), what).toBeCloseTo(condemn, 3);
        const json = data.conveyors
          .find((each) => each.conveyor === conveyor.name)
          ?.points.find((each) => each.point === place.name);
        expect(json?.condemn, what).toBeCloseTo(condemn, 3);
        const liner = sheet.liners.find(({ name }) => name === point?.liner);
        if (liner) expect(liner.condemn, what).toBeCloseTo(condemn, 3);
        // Rates, what is left by hand and from when, the day to look again by.
        const rate = (column: string): string =>
          rateText(Number(csv[column]) / (unit === 'mm' ? 1 : 25.4), unit);
        for (const [cell, column] of [
          [long, 'long_term_mm_per_1000'],
          [short, 'short_term_mm_per_1000'],
        ] as const)
          if (/^[\d.]+$/.test(cell)) expect(Number(cell), what).toBeCloseTo(Number(rate(column)), 4);
        if (/^\d+$/.test(left))
          expect(Math.abs(Number(left) - Number(csv['remaining_by_hand'])), what).toBeLessThan(0.56);
        if (/^\d{4}/.test(from)) expect(from, what).toBe(csv['remaining_from']);
        if (/^\d{4}/.test(look)) expect(look, what).toContain(csv['look_again_by']);
        // The limit, which is the page's too.
        if (/^\d{4}/.test(limit)) {
          const { limit_on_p10: low, limit_on_p50: middle, limit_on_p90: high } = csv;
          expect(limit, what).toBe(`${middle ?? ''} (${low ?? ''} to ${high ?? ''})`);
          expect(html, what).toContain(middle);
        }
      }
    }
  });

  it('what to do, chance and day to order by of a conveyor: first page, Markdown and table', () => {
    const front = markdownRows(markdown, '|  | Conveyor | What to do');
    for (const { conveyor } of report.conveyors) {
      const told = front.find(([, name]) => name?.startsWith(`**${conveyor.name}**`));
      const csv = conveyors.find((row) => row['conveyor'] === conveyor.name);
      if (!told || !csv) throw new Error(conveyor.name);
      const [, , todo = '', limit = '', chance = '', , order = ''] = told;
      expect(todo).toBe(markdownText(`${csv['todo'] ?? ''}.`));
      expect(html).toContain(`${csv['todo'] ?? ''}.`);
      if (/^\d{4}/.test(limit))
        expect(limit).toBe(
          `${csv['limit_on_p50'] ?? ''} (${csv['limit_on_p10'] ?? ''} to ${csv['limit_on_p90'] ?? ''})`,
        );
      if (csv['limit_by_outage'])
        expect(chance).toContain(
          markdownText(`${percent(Number(csv['limit_by_outage']))} by ${csv['outage'] ?? ''}`),
        );
      if (/^\*{0,2}\d{4}/.test(order)) expect(order).toContain(csv['order_by']);
    }
  });

  it('number, day, chance and money of an option: page, Markdown and table', () => {
    for (const { conveyor } of report.conveyors) {
      const own = options.filter((row) => row['conveyor'] === conveyor.name);
      const rows = markdownRows(sectionOf(markdown, conveyor.name), '|  | What can be done');
      expect(rows).toHaveLength(own.length);
      own.forEach((csv, i) => {
        const [mark = '', what = '', on = '', chance = '', cost = '', expected = ''] = rows[i] ?? [];
        expect(what).toBe(markdownText(csv['what'] ?? ''));
        expect(html).toContain(csv['what']);
        if (/^\d/.test(mark)) expect(mark).toBe(csv['option']);
        if (csv['day']) expect(on).toBe(csv['day']);
        if (csv['limit_by_day']) expect(chance).toContain(markdownText(percent(Number(csv['limit_by_day']))));
        if (csv['steel_by_day'])
          expect(chance).toContain(markdownText(`steel ${percent(Number(csv['steel_by_day']))}`));
        for (const [cell, column] of [
          [cost, 'cost'],
          [expected, 'expected_cost'],
        ] as const)
          if (csv[column]) expect(cell).toContain(amountText(Number(csv[column]), csv['currency'] ?? ''));
      });
    }
  });

  it('chances of a job’s first day: the pack and the report', () => {
    for (const job of report.estate.jobs) {
      const decision = report.conveyors.find(({ conveyor }) => conveyor === job.conveyor)?.decision;
      const from = job.window?.from.day;
      if (!decision || from === undefined || from < asOf) continue;
      const pack = workPackMarkdown(workPack(report.estate, job, { asOf, decision }));
      const { condemn, contact } = decision.chancesOn(from);
      expect(pack).toContain(
        markdownText(
          `On ${formatDay(from)}: chance of the condemn limit ${percent(condemn)}, of steel ${percent(contact)}`,
        ),
      );
      const planned = options.find(
        (row) => row['conveyor'] === job.conveyor?.name && row['day'] === formatDay(from),
      );
      if (planned) expect(percent(Number(planned['limit_by_day']))).toBe(percent(condemn));
    }
  });
});

function textsOf(folder: string): readonly { readonly uri: string; readonly text: string }[] {
  const root = fileURLToPath(new URL(`../../examples/${folder}`, import.meta.url));
  return readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.trough'))
    .map((name) => ({ uri: name, text: readFileSync(path.join(root, name), 'utf8') }));
}

function sectionOf(markdown: string, conveyor: string): string {
  const from = markdown.search(new RegExp(`^## ${conveyor}( |$)`, 'm'));
  const to = markdown.indexOf('\n## ', from + 3);
  return from < 0 ? '' : markdown.slice(from, to < 0 ? undefined : to);
}

/** Cells of the table whose head begins so. */
function markdownRows(text: string, head: string): readonly (readonly string[])[] {
  const at = text.indexOf(head);
  if (at < 0) return [];
  const lines = text.slice(at).split('\n');
  const end = lines.findIndex((line) => !line.startsWith('|'));
  return lines.slice(2, end < 0 ? undefined : end).map((line) =>
    line
      .replace(/^\| ?| ?\|$/g, '')
      .split(/(?<!\\)\|/)
      .map((cell) => cell.trim()),
  );
}

function csvRows(text: string): readonly Row[] {
  const [heads = [], ...rows] = text
    .trim()
    .split('\r\n')
    .map((line) =>
      [...line.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)].map(([, cell = '']) =>
        cell.replace(/^"|"$/g, '').replaceAll('""', '"'),
      ),
    );
  return rows.map((cells) => Object.fromEntries(heads.map((name, i) => [name, cells[i] ?? ''])));
}

function wordsOf(html: string): string {
  return html
    .replace(/<style[\s\S]*?<\/style>/g, '')
    .replace(/<[^>]*>/g, '')
    .replaceAll('\u00a0', ' ')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&#39;/g, "'")
    .replace(/&amp;/g, '&');
}
