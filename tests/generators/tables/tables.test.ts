// Tables: every form says what the value says, read back by DuckDB (Parquet, CSV) and held against the schema by ajv (JSON); the
// value says what the report says.

import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLife, type RemainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { clockColumns } from '../../../src/generators/remaining-life/clock-columns.js';
import { jobsAhead } from '../../../src/generators/tables/plans.js';
import { tableCsv } from '../../../src/generators/tables/csv.js';
import { tableJson } from '../../../src/generators/tables/json.js';
import { tablesSchema } from '../../../src/generators/tables/json-schema.js';
import {
  conveyorsOfFile,
  partitionFolder,
  partitionValue,
  tableParquet,
} from '../../../src/generators/tables/parquet.js';
import {
  tableNames,
  type EstateTable,
  type TableName,
  type Value,
} from '../../../src/generators/tables/table.js';
import { tableKinds, tablesOf } from '../../../src/generators/tables/tables.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { nodeSolver } from '../../../src/solver/node-solver.js';
import { formatDay, type CalendarDay } from '../../../src/domain/units/calendar.js';
import { analyse } from '../../../src/analysis/analyse.js';
import type { Analysis } from '../../../src/analysis/analysis.js';
import { duckdb, type Asking, type Row } from '../../kit/duckdb.js';
import { estateTexts, nextLook } from '../../kit/small-estate.js';
import { day } from '../estate.js';

const asOf = day('2026-11-30');
const folder = mkdtempSync(path.join(os.tmpdir(), 'trough-tables-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

// A reline, so that there are former readings; a liner that nobody can read, so that a finding is of no plant.
const texts: Readonly<Record<string, string>> = {
  ...estateTexts,
  'looks/new.trough': nextLook,
  'reline.trough': 'reline BR2 2026-07-06 meter 7800 h {\n  liner TwoLayer12\n}\n',
  'looks/BR2-2026-10.trough':
    'inspection BR2 2026-10-12 meter 9100 h tonnes 4500 t {\n  view upstream\n  P1 not seen "build-up, = 3 mm"\n}\n',
};

let analysis: Analysis;
let report: RemainingLife;
let tables: readonly EstateTable[];
let engine: Asking;

const table = (name: TableName): EstateTable => {
  const found = tables.find((each) => each.name === name);
  if (!found) throw new Error(name);
  return found;
};

/** The rows of the value as objects; days in ISO 8601, missing as null. */
const objects = ({ columns, rows }: EstateTable): Row[] =>
  rows.map((row) =>
    Object.fromEntries(
      columns.map(({ name, type }, i) => [
        name,
        row[i] === undefined ? null : type === 'day' ? formatDay(row[i] as CalendarDay) : row[i],
      ]),
    ),
  );

beforeAll(async () => {
  analysis = analyse(
    Object.entries(texts).map(([uri, text]) => ({ uri, text })),
    { asOf },
  );
  report = remainingLife(analysis.estate, { asOf, track: false, solver: await nodeSolver() });
  tables = tablesOf(
    report,
    analysis.findings.map((finding, i) => ({
      ...finding,
      file: 'a.trough',
      line: 1,
      fingerprint: `f${i}`,
    })),
  );
  engine = await duckdb();
  for (const each of tables) {
    const place = path.join(folder, partitionFolder(each.name, { plant: 'Tarnholt', month: '2026-11' }));
    mkdirSync(place, { recursive: true });
    writeFileSync(path.join(place, `${each.name}.parquet`), tableParquet(each, 'Tarnholt', asOf));
    writeFileSync(path.join(folder, `${each.name}.csv`), tableCsv(each));
    writeFileSync(path.join(folder, `${each.name}.json`), tableJson(each, asOf));
  }
}, 120_000);

const parquet = (name: string): string =>
  `read_parquet('${folder}/${name}/*/*/*.parquet', hive_partitioning = true)`;

describe('every form', () => {
  test('has a table for each name, in order, and rows to look at', () => {
    expect(tables.map(({ name }) => name)).toEqual([...tableNames]);
    expect(tableKinds.map(({ name }) => name)).toEqual([...tableNames]);
    for (const each of tables) expect(each.rows.length, each.name).toBeGreaterThan(0);
  });

  test('Parquet: DuckDB reads every cell as it is in the value, with its type; plant and month from the path', async () => {
    const typeOf = {
      text: 'VARCHAR',
      day: 'DATE',
      number: 'DOUBLE',
      whole: 'INTEGER',
      'yes or no': 'BOOLEAN',
    };
    for (const each of tables) {
      const types = await engine.types(parquet(each.name));
      for (const { name, type } of each.columns) expect([name, types[name]]).toEqual([name, typeOf[type]]);
      const back = await engine.ask(`SELECT * FROM ${parquet(each.name)}`);
      expect(back.map(({ as_of: _day, month: _month, ...rest }) => rest)).toEqual(
        objects(each).map(({ as_of: _day, ...rest }) => rest),
      );
      for (const { as_of, month } of back) expect([as_of, month]).toEqual(['2026-11-30', '2026-11']);
    }
  });

  test('CSV: DuckDB guesses the type of every column that holds anything, and no clock is a time of day', async () => {
    const guesses = {
      text: ['VARCHAR'],
      day: ['DATE'],
      number: ['DOUBLE', 'BIGINT'],
      whole: ['BIGINT'],
      'yes or no': ['BOOLEAN'],
    };
    for (const each of tables) {
      const types = await engine.types(`read_csv('${folder}/${each.name}.csv')`);
      for (const [i, { name, type }] of each.columns.entries())
        if (each.rows.some((row) => row[i] !== undefined))
          expect(guesses[type], `${each.name}.${name}`).toContain(types[name]);
      const [count] = await engine.ask(`SELECT count(*) AS n FROM read_csv('${folder}/${each.name}.csv')`);
      expect(count?.['n']).toBe(each.rows.length);
    }
    const [clock] = await engine.ask(
      `SELECT clock, clock_deg FROM read_csv('${folder}/readings.csv') LIMIT 1`,
    );
    expect(clock).toEqual({ clock: "5 o'clock", clock_deg: 150 });
  });

  test('JSON: a row a line, by the published schema, the same values; a wrong table does not pass', () => {
    const ajv = new Ajv2020({ allErrors: true });
    addFormats.default(ajv);
    const validate = ajv.compile(tablesSchema);
    for (const each of tables) {
      const text = tableJson(each, asOf);
      const data = JSON.parse(text) as { asOf: string; rows: Row[] };
      expect(validate(data), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
      expect([data.asOf, data.rows]).toEqual(['2026-11-30', objects(each)]);
      expect(text.trimEnd().split('\n')).toHaveLength(each.rows.length + 2);
    }
    const points = JSON.parse(tableJson(table('points'), asOf)) as { rows: Record<string, unknown>[] };
    for (const [field, value] of [
      ['limit_on_p50', 'soon'],
      ['fitted_mm', '12 mm'],
      ['plant', null],
      ['more', 1],
    ] as const)
      expect(
        validate({ ...points, rows: points.rows.map((row) => ({ ...row, [field]: value })) }),
        field,
      ).toBe(false);
  });

  test('missing is NULL and never a number', async () => {
    const [row] = await engine.ask(
      `SELECT thickness_mm, error_mm, kind, note, meter_h, meter_t FROM ${parquet('readings')} WHERE conveyor = 'BR2' AND date = '2026-10-12'`,
    );
    expect(row).toEqual({
      ...{ thickness_mm: null, error_mm: null, kind: 'not seen', note: 'build-up, = 3 mm' },
      ...{ meter_h: 9100, meter_t: 4500 },
    });
    for (const each of tables)
      for (const values of each.rows) for (const value of values) expect(value).not.toBeNaN();
  });

  test('the same estate gives the same bytes', () => {
    for (const each of tables)
      expect(Buffer.compare(tableParquet(each, 'Tarnholt', asOf), tableParquet(each, 'Tarnholt', asOf))).toBe(
        0,
      );
  });

  test('a table without rows keeps its columns', async () => {
    writeFileSync(path.join(folder, 'none.parquet'), tableParquet(table('points'), 'Nobody', asOf));
    const [none] = await engine.ask(
      `SELECT count(*) AS n, max(limit_on_p50) AS d FROM '${folder}/none.parquet'`,
    );
    expect(none).toEqual({ n: 0, d: null });
  });
});

describe('the value', () => {
  interface Data {
    readonly conveyors: readonly (Row & {
      readonly conveyor: string;
      readonly points: readonly (Row & {
        readonly point: string;
        readonly readings: readonly Row[];
        readonly model: { readonly condemn: { readonly days: Row | null } } | null;
      })[];
      readonly decision: { readonly options: readonly Row[]; readonly outages: readonly Row[] };
      readonly forecast: Row & { readonly days: Row };
    })[];
  }
  const data = (): Data => JSON.parse(remainingLifeJson(report)) as Data;
  const six = (value: unknown): unknown => (typeof value === 'number' ? Number(value.toFixed(6)) : value);

  test('points and conveyors say what the report’s JSON says, with interval and count', () => {
    const points = objects(table('points'));
    const conveyors = objects(table('conveyors'));
    for (const life of data().conveyors) {
      const row = conveyors.find(({ conveyor }) => conveyor === life.conveyor);
      const { days } = life.forecast;
      expect(row).toMatchObject({
        limit_on_p10: days['q10'],
        limit_on_p50: days['q50'],
        limit_on_p90: days['q90'],
        readings: life.forecast['readings'],
        pool: life.forecast['pool'],
        rank: life['rank'],
        todo: life['todo'],
      });
      for (const point of life.points)
        expect(
          points.find((each) => each['conveyor'] === life.conveyor && each['point'] === point.point),
        ).toMatchObject({
          limit_on_p10: point.model?.condemn.days?.['q10'] ?? null,
          limit_on_p90: point.model?.condemn.days?.['q90'] ?? null,
          condemn_mm: point['condemn'],
          exposure_now: Number((point['exposureNow'] as number).toFixed(1)),
        });
    }
  });

  test('decisions and outages say what the report’s JSON says', () => {
    for (const { conveyor, decision } of data().conveyors) {
      const options = objects(table('decisions')).filter((row) => row['conveyor'] === conveyor);
      expect(
        options.map((row) => [
          row['what'],
          row['day'],
          row['limit_by_day'],
          row['steel_by_day'],
          row['limit_by_day_seen'],
          row['steel_by_day_seen'],
          row['within'],
        ]),
      ).toEqual(
        decision.options.map((o) => [
          o['what'],
          o['day'],
          six(o['condemn']),
          six(o['contact']),
          six(o['condemnSeen']),
          six(o['contactSeen']),
          o['within'],
        ]),
      );
      const outages = objects(table('outages')).filter((row) => row['conveyor'] === conveyor);
      expect(
        outages.map((row) => [row['outage'], row['limit_by_outage'], row['steel_by_outage'], row['chosen']]),
      ).toEqual(
        decision.outages.map((o) => [o['outage'], six(o['condemn']), six(o['contact']), o['chosen']]),
      );
    }
  });

  test('readings of the present liner are the report’s; those of former ones are there too and marked', () => {
    const readings = objects(table('readings'));
    for (const { conveyor, points } of data().conveyors)
      for (const point of points) {
        const own = readings.filter(
          (row) => row['conveyor'] === conveyor && row['point'] === point.point && row['former'] === false,
        );
        expect(
          own.map((row) => [row['date'], row['exposure'], row['thickness_mm'], row['error_mm']]),
        ).toEqual(
          point.readings.map((r) => [r['day'], r['exposure'], r['thickness'] ?? null, r['error'] ?? null]),
        );
      }
    expect(readings.filter((row) => row['former'])).toMatchObject([
      { conveyor: 'BR2', date: '2026-06-08', thickness_mm: 9, fitted_on: '2024-01-01' },
    ]);
    expect(readings).toHaveLength(analysis.estate.readings.count);
  });

  test('jobs and steps are those of the work pack', () => {
    const [job] = analysis.estate.jobs;
    if (!job) throw new Error('a job');
    const pack = workPack(analysis.estate, job, { asOf });
    const [row] = objects(table('jobs'));
    expect(row).toMatchObject({
      job: 'BR1_Spring',
      outage: 'Spring27',
      order_of_work: pack.order,
      steps: pack.steps.length,
    });
    expect(objects(table('steps')).map((step) => step['action'])).toEqual(
      pack.steps.map((step) => step.action),
    );
  });

  test('a job is ahead up to the last day of its window', () => {
    const on = (text: string): number => jobsAhead(analysis.estate, day(text)).length;
    expect([on('2027-04-11'), on('2027-04-23'), on('2027-04-24')]).toEqual([1, 1, 0]);
  });

  test('a clock position is words and an angle from the top', () => {
    const [words, angle] = clockColumns<number>((hours) => hours);
    expect([12, 0.5, 6, 7.5].map((hours) => [words?.of(hours), angle?.of(hours)])).toEqual([
      ["12 o'clock", 0],
      ["12:30 o'clock", 15],
      ["6 o'clock", 180],
      ["7:30 o'clock", 225],
    ]);
  });

  test('a finding stands with its conveyor, its plant, or as of the estate', () => {
    const origin = (file: string, words: string): { source: number; start: number; end: number } => {
      const start = texts[file]?.indexOf(words) ?? -1;
      expect(start).toBeGreaterThanOrEqual(0);
      return { source: analysis.sourceOf(file) ?? -1, start, end: start + words.length };
    };
    const told = [
      ['looks/new.trough', 'P1'],
      ['machine.trough', 'risk 5 %'],
      ['machine.trough', 'condemn at'],
      ['machine.trough', 'reline all'],
    ].map(([file = '', words = '']) => ({
      ...{ code: 'TL001', severity: 'warning', message: words, why: 'w', todo: 't' },
      ...{ file, line: 1, fingerprint: words, origin: origin(file, words) },
    }));
    const found = tablesOf(report, told).find(({ name }) => name === 'findings');
    const rows = found ? objects(found) : [];
    expect(rows.map((row) => [row['plant'], row['conveyor'], row['finding_of']])).toEqual([
      ['Tarnholt', 'BR1', 'conveyor'],
      ['Tarnholt', null, 'plant'],
      ['Tarnholt', null, 'estate'],
      ['Tarnholt', 'BR1', 'conveyor'],
    ]);
  });
});

describe('a name in a path', () => {
  const names = [
    'Tarnholt',
    'a/b',
    '..',
    '.',
    'a%2Fb',
    'Ödenhof',
    'a b',
    "o'c",
    'x=y',
    'C:\\d',
    '*?',
    'a\nb',
    '',
    '日本',
  ];

  test('stays below its folder and holds no sign that a disk or an engine reads', () => {
    for (const name of names) {
      const value = partitionValue(name);
      expect(value, name).not.toMatch(/[/\\:*?"<>|=.\s]|^$/);
      expect(path.posix.normalize(`t/plant=${value}/x`)).toBe(`t/plant=${value}/x`);
    }
    expect(partitionValue('__HIVE_DEFAULT_PARTITION__')).not.toBe('__HIVE_DEFAULT_PARTITION__');
    expect(new Set(names.map(partitionValue)).size).toBe(names.length);
  });

  test('is read back by DuckDB as it was', async () => {
    const root = path.join(folder, 'names');
    const told = names.filter(Boolean);
    for (const plant of told) {
      const place = path.join(root, partitionFolder('points', { plant, month: '2026-11' }));
      mkdirSync(place, { recursive: true });
      writeFileSync(
        path.join(place, 'points.parquet'),
        tableParquet(renamed(table('points'), plant), plant, asOf),
      );
    }
    const back = await engine.ask(
      `SELECT DISTINCT plant FROM read_parquet('${root}/points/*/*/*.parquet', hive_partitioning = true, hive_types = {'plant': VARCHAR})`,
    );
    expect(back.map(({ plant }) => plant).sort()).toEqual([...told].sort());
  });

  function renamed(whole: EstateTable, plant: string): EstateTable {
    const at = whole.columns.findIndex(({ name }) => name === 'plant');
    return {
      ...whole,
      rows: whole.rows.map((row) => row.map((value, i): Value => (i === at ? plant : value))),
    };
  }
});

test('whose conveyors a file holds is read off its foot', () => {
  expect(conveyorsOfFile(tableParquet(table('conveyors'), 'Tarnholt', asOf))).toEqual(['BR1', 'BR2']);
  expect(conveyorsOfFile(tableParquet(table('points'), 'Tarnholt', asOf))).toBeUndefined();
  expect(conveyorsOfFile(new TextEncoder().encode('no table'))).toBeUndefined();
});
