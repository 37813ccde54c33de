// Months: what each set holds, what it says of the month before, and that the same records give the same bytes.

import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { repository } from '../kit/repository.js';
import { duckdb } from '../kit/duckdb.js';
import { estateTexts, machine, nextLook } from '../kit/small-estate.js';
import { folderWith, troughline, type Ran } from './console.js';

const month = (cwd: string, day: string, ...more: readonly string[]): Promise<Ran> =>
  troughline(['month', 'plant', '--as-of', day, '--out', 'months', ...more], { cwd });

const below = (folder: string, texts: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(texts).map(([name, text]) => [`${folder}/${name}`, text]));

const read = (cwd: string, ...parts: readonly string[]): string =>
  readFileSync(path.join(cwd, 'months', ...parts), 'utf8');

const all = (cwd: string, of: string): Record<string, string> =>
  Object.fromEntries(readdirSync(path.join(cwd, 'months', of)).map((name) => [name, read(cwd, of, name)]));

const lookAt = (day: string, meter: number, left: string): string =>
  `inspection BR1 ${day} meter ${meter} h {\n  view downstream\n  gauge ultrasonic ± 0.2 mm\n  P1 thickness ${left}\n}\n`;

/** One conveyor with one point: twelve months of it are made while the others make one or two. */
const onePoint = below('plant', {
  'machine.trough': machine.slice(0, machine.indexOf('conveyor BR2')).replace(/  point P2.*\n/, ''),
  'looks/2025-01.trough': lookAt('2025-01-13', 3200, '9.9 mm'),
  'looks/2025-09.trough': lookAt('2025-09-15', 5300, '8.4 mm'),
});

/** Every value by its path. */
function leavesOf(data: unknown, at = ''): Map<string, unknown> {
  if (typeof data !== 'object' || data === null) return new Map([[at, data]]);
  return new Map(Object.entries(data).flatMap(([key, value]) => [...leavesOf(value, `${at}.${key}`)]));
}

describe('a month', () => {
  test('twelve of them make a log that reads like a logbook, and in a month without a record no row of text changes', async () => {
    const { folder, git, write, commit } = repository(onePoint);
    const happens: Readonly<Record<string, Readonly<Record<string, string>>>> = {
      '2026-03': { 'plant/looks/2026-03.trough': lookAt('2026-03-09', 6700, '7.4 mm') },
      '2026-06': { 'plant/reline.trough': 'reline BR1 2026-06-15 meter 7600 h {\n  liner TwoLayer12\n}\n' },
      '2026-09': { 'plant/looks/2026-09.trough': lookAt('2026-09-14', 8400, '11.3 mm') },
      '2026-11': { 'plant/looks/2025-09.trough': lookAt('2025-09-15', 5300, '9.4 mm') },
    };
    const said: Record<string, string> = {};
    for (let number = 1; number <= 12; number++) {
      const name = `2026-${String(number).padStart(2, '0')}`;
      write(happens[name] ?? {});
      const ran = await month(folder, `${name}-28`);
      expect(ran, ran.err).toMatchObject({ exit: 0 });
      said[name] = read(folder, name, 'message.txt');
      commit(said[name]);
    }
    // What git's log shows is what the months said, oldest first: a subject and why.
    const log = git('log', '--reverse', '--format=%B%x00')
      .split('\0')
      .map((entry) => entry.trim());
    expect(log.filter(Boolean).slice(1)).toEqual(Object.values(said).map((words) => words.trim()));
    for (const [name, words] of Object.entries(said))
      expect(words).toMatch(
        new RegExp(`^${name}: .*\\.\\n\\n(?:The first month|Since the report of 2026-\\d\\d-28: .*)\\.\\n$`),
      );
    expect(said['2026-03']).toContain('1 inspection added');
    expect(said['2026-06']).toContain('1 reline added');
    expect(said['2026-09']).toContain('1 inspection added');
    expect(said['2026-11']).toContain('HISTORY EDITED in 1 place');
    const quiet = ['2026-02', '2026-04', '2026-05', '2026-07', '2026-08', '2026-10', '2026-12'];
    for (const name of quiet) {
      expect(said[name]).toContain('nothing differs');
      const before = `2026-${String(Number(name.slice(5)) - 1).padStart(2, '0')}`;
      for (const file of ['points.csv', 'conveyors.csv', 'readings.csv'])
        expect(read(folder, name, file), `${name} ${file}`).toBe(read(folder, before, file));
      expect(read(folder, name, 'today.csv')).not.toBe(read(folder, before, 'today.csv'));
    }
    const index = read(folder, 'README.md');
    expect(index.match(/\[20\d\d-\d\d\]/g)).toHaveLength(12);
    // The thickness of March stands against what January and February had published.
    expect(index).toMatch(/\| 2026-01 \| 1 point \|/);
    expect(index).toMatch(/\| 2026-02 \| 1 point \|/);
    for (const name of Object.keys(said))
      expect(read(folder, 'index.html')).toContain(`href="${name}/report.html"`);
    // All twelve are asked at once.
    const { ask } = await duckdb();
    const tables = (name: string): string =>
      `read_parquet('${folder}/months/tables/${name}/*/*/*.parquet', hive_partitioning = true)`;
    expect(await ask(`SELECT month FROM ${tables('conveyors')} ORDER BY month`)).toEqual(
      Object.keys(said).map((name) => ({ month: name })),
    );
    expect(
      await ask(
        `SELECT month, count(*) AS n, count(*) FILTER (former) AS former FROM ${tables('readings')} WHERE month IN ('2026-02', '2026-12') GROUP BY month ORDER BY month`,
      ),
    ).toEqual([
      { month: '2026-02', n: 2, former: 0 },
      { month: '2026-12', n: 4, former: 3 },
    ]);
  }, 240_000);

  test('the same records give the same bytes, whatever the line ends and however often', async () => {
    const [unix, dos] = [estateTexts, estateTexts].map((texts, i) =>
      folderWith(
        below(
          'plant',
          Object.fromEntries(
            Object.entries(texts).map(([name, text]) => [
              name,
              i === 0 ? text : text.replaceAll('\n', '\r\n'),
            ]),
          ),
        ),
      ),
    );
    if (unix === undefined || dos === undefined) throw new Error('two folders');
    for (const folder of [unix, unix, dos]) await month(folder, '2026-09-30');
    expect(all(dos, '2026-09')).toEqual(all(unix, '2026-09'));
    expect(read(dos, 'index.html')).toBe(read(unix, 'index.html'));
  });

  test('without an inspection only what time changes differs', async () => {
    const folder = folderWith(below('plant', estateTexts));
    await month(folder, '2026-08-31');
    await month(folder, '2026-09-30');
    const cells = (of: string): Record<string, string>[] => {
      const [head = '', ...rows] = read(folder, of, 'points.csv').trimEnd().split('\r\n');
      const names = head.split(',');
      return rows.map((row) => Object.fromEntries(row.split(',').map((cell, i) => [names[i] ?? '', cell])));
    };
    const [before, after] = [cells('2026-08'), cells('2026-09')];
    const moved = new Set(
      before.flatMap((row, i) => Object.keys(row).filter((name) => row[name] !== after[i]?.[name])),
    );
    expect(moved).toEqual(new Set());
    expect(read(folder, '2026-09', 'changes.md')).toContain('nothing differs');
    // Of the report's data each line that differs is a value that counts from the day.
    const values = (of: string): Map<string, unknown> =>
      leavesOf(JSON.parse(read(folder, of, 'report.json')));
    const [then, now] = [values('2026-08'), values('2026-09')];
    const keys = [...new Set([...then.keys(), ...now.keys()])].filter(
      (key) => then.get(key) !== now.get(key),
    );
    const fromTheDay =
      /asOf|published|exposureNow|\.hours$|\.today\.|arrives|reachable|orderIsLate|earliest|\.options|leadTime|reasons|todo|nextLook|passed|overdue|working|words|exposureFromNow|cheapestAge|already|wander|(?:layers|unseen).*days/;
    expect(keys.filter((key) => !fromTheDay.test(key))).toEqual([]);
  });

  test('holds papers for what is ahead: packs of open jobs, sheets of looks that are due, the order list, a calendar', async () => {
    const folder = folderWith(below('plant', { ...estateTexts, 'looks/new.trough': nextLook }));
    await month(folder, '2026-11-30', '--sheets-within', '4000');
    const names = Object.keys(all(folder, '2026-11'));
    expect(names).toEqual(
      expect.arrayContaining([
        'pack-BR1_Spring.html',
        'pack-BR1_Spring-crew.html',
        'sheet-BR1.html',
        'month.ics',
      ]),
    );
    expect(read(folder, '2026-11', 'orders.csv')).toContain('plant,conveyor,liner,scope,outage,order_by');
    // Each order of the list is an order of the report too.
    const report = JSON.parse(read(folder, '2026-11', 'report.json'));
    for (const line of read(folder, '2026-11', 'orders.csv').trimEnd().split('\r\n').slice(1)) {
      const [, conveyor, , scope, outage] = line.split(',');
      const planned = report.programmes[0].lines.find(
        (each: { conveyor: string }) => each.conveyor === conveyor,
      );
      const row = report.conveyors.find((each: { conveyor: string }) => each.conveyor === conveyor);
      expect([planned.scope ?? 'the whole conveyor', planned.outage ?? row.decision.orderBy.outage]).toEqual([
        scope,
        outage,
      ]);
    }
  });

  test('what a run of the month before it left and this one has no more is gone; what others put there stays', async () => {
    const folder = folderWith(below('plant', estateTexts));
    await month(folder, '2026-11-30');
    expect(Object.keys(all(folder, '2026-11'))).toContain('pack-BR1_Spring.html');
    writeFileSync(path.join(folder, 'months', '2026-11', 'minutes.txt'), 'kept');
    writeFileSync(
      path.join(folder, 'plant', 'machine.trough'),
      machine.slice(0, machine.indexOf('job BR1_Spring')),
    );
    await month(folder, '2026-11-30');
    const names = Object.keys(all(folder, '2026-11'));
    expect(names).not.toContain('pack-BR1_Spring.html');
    expect(names).toContain('minutes.txt');
  });

  test('trouble is told and nothing is written', async () => {
    const folder = folderWith({ ...below('plant', estateTexts), months: 'a file' });
    expect(await month(folder, '2026-11-30')).toMatchObject({
      exit: 2,
      err: expect.stringContaining('is a file'),
    });
    const other = folderWith(below('plant', estateTexts));
    mkdirSync(path.join(other, 'months', '2026-10'), { recursive: true });
    writeFileSync(path.join(other, 'months', '2026-10', 'report.json'), '{');
    expect(await month(other, '2026-11-30')).toMatchObject({
      exit: 2,
      err: expect.stringContaining('is no JSON'),
    });
    expect(readdirSync(path.join(other, 'months'))).toEqual(['2026-10']);
    expect(
      await troughline(['month', 'plant', '--out', 'months'], { cwd: other, env: { CI: 'true' } }),
    ).toMatchObject({ exit: 2, err: expect.stringContaining('--as-of') });
  });
});
