// Months: what each set holds, what it says of the month before, and that the same records give the same bytes.

import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { repository } from '../kit/repository.js';
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

describe('a month', () => {
  test('six of them make a log that reads like a logbook, and a month without an inspection says so', async () => {
    const noJob = machine.slice(0, machine.indexOf('job BR1_Spring'));
    const { folder, git, write, commit } = repository(
      below('plant', { ...estateTexts, 'machine.trough': noJob }),
    );
    const messages: string[] = [];
    for (const name of ['2026-07', '2026-08', '2026-09', '2026-10', '2026-11', '2026-12']) {
      if (name === '2026-09')
        write({ 'plant/looks/BR1-2026-09.trough': nextLook.replace('2026-11-02', '2026-09-07') });
      if (name === '2026-11')
        write({
          'plant/looks/BR2-2026-06.trough': (estateTexts['looks/BR2-2026-06.trough'] ?? '').replace(
            '9.0',
            '9.8',
          ),
        });
      const ran = await month(folder, `${name}-28`);
      expect(ran, ran.err).toMatchObject({ exit: 0 });
      const message = read(folder, name, 'message.txt');
      messages.push(message);
      commit(message);
    }
    expect(messages[0]).toMatch(/^2026-07: .*\.\n\nThe first month\.\n$/);
    expect(messages[1]).toContain('Since the report of 2026-07-28: nothing differs.');
    expect(messages[2]).toContain('1 inspection added');
    expect(messages[4]).toContain('HISTORY EDITED in 1 place');
    expect(messages[5]).toContain('nothing differs');
    const log = git('log', '--format=%s');
    expect(log.split('\n').filter((line) => /^20\d\d-\d\d: /.test(line))).toHaveLength(6);
    const index = read(folder, 'README.md');
    expect(index.match(/\[20\d\d-\d\d\]/g)).toHaveLength(6);
    // Two thicknesses of September stand against what July and August had published.
    expect(index).toMatch(/\| 2026-07 \| 2 points \|/);
    expect(
      index
        .split('\n')
        .find((line) => line.startsWith('| BR1 |'))
        ?.split('|'),
    ).toHaveLength(9);
    for (const name of readdirSync(path.join(folder, 'months')).filter((each) => /^\d/.test(each)))
      expect(read(folder, 'index.html')).toContain(`href="${name}/report.html"`);
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
    const byTime = [...moved].filter(
      (name) => !/as_of|now|today|hours|life|duty|outage|risk|arriv|order|earliest/.test(name),
    );
    expect(byTime).toEqual([]);
    expect(read(folder, '2026-09', 'changes.md')).toContain('nothing differs');
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
