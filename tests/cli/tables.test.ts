// Tables from the command line: where they lie, that another works of the same name is never written over, and what bad input does.

import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { writeFiles } from '../../src/cli/write-files.js';
import { duckdb } from '../kit/duckdb.js';
import { estateTexts, machine } from '../kit/small-estate.js';
import { folderWith, troughline, type Ran } from './console.js';

/** Without looks, so that nothing is forecast and a run takes no time. */
const works = (change: (text: string) => string = (text) => text): Record<string, string> => ({
  'plant/machine.trough': change(machine.slice(0, machine.indexOf('job BR1_Spring'))),
});

const tables = (cwd: string, ...more: readonly string[]): Promise<Ran> =>
  troughline(['tables', 'plant', '--as-of', '2026-10-31', '--out', 'fleet', ...more], { cwd });

const below = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)).split(path.sep).join('/'))
    .sort();

const names = [
  'conveyors',
  'decisions',
  'findings',
  'jobs',
  'orders',
  'outages',
  'points',
  'readings',
  'steps',
];

describe('where tables lie', () => {
  test('Parquet by table, plant and month; CSV and JSON a file a table; the same bytes again', async () => {
    const folder = folderWith(
      Object.fromEntries(Object.entries(estateTexts).map(([name, text]) => [`plant/${name}`, text])),
    );
    const formats = ['--format', 'parquet', '--format', 'csv', '--format', 'json'];
    const ran = await tables(folder, ...formats);
    expect(ran, ran.err).toMatchObject({ exit: 0 });
    const files = below(path.join(folder, 'fleet'));
    expect(files).toEqual(
      names
        .flatMap((name) => [
          `${name}.csv`,
          `${name}.json`,
          `${name}/plant=Tarnholt/month=2026-10/${name}.parquet`,
        ])
        .sort(),
    );
    expect(ran.out.trimEnd().split('\n').sort()).toEqual(files.map((name) => `fleet/${name}`));
    const bytes = (): Record<string, string> =>
      Object.fromEntries(files.map((name) => [name, readFileSync(path.join(folder, 'fleet', name), 'hex')]));
    const before = bytes();
    await tables(folder, ...formats);
    expect(bytes()).toEqual(before);
  });

  test('a month written again replaces itself; other months, other plants and other files stay', async () => {
    const folder = folderWith({
      ...works(),
      'other/o.trough': machine.replaceAll('Tarnholt', 'Vennholm').replace(/\bBR/g, 'VB'),
      'fleet/notes.txt': 'kept',
    });
    await tables(folder);
    await troughline(['tables', 'plant', '--as-of', '2026-11-30', '--out', 'fleet'], { cwd: folder });
    await troughline(['tables', 'other', '--as-of', '2026-10-31', '--out', 'fleet'], { cwd: folder });
    writeFileSync(
      path.join(folder, 'plant/machine.trough'),
      (works()['plant/machine.trough'] ?? '').replace('"Bark to bay"', '"Bark to bay 2"'),
    );
    await tables(folder);
    const { ask } = await duckdb();
    expect(
      await ask(
        `SELECT plant, month, list(title ORDER BY title) AS titles FROM read_parquet('${folder}/fleet/conveyors/*/*/*.parquet', hive_partitioning = true) GROUP BY ALL ORDER BY ALL`,
      ),
    ).toEqual([
      { plant: 'Tarnholt', month: '2026-10', titles: ['Bark to bay 2', 'Bark to hall'] },
      { plant: 'Tarnholt', month: '2026-11', titles: ['Bark to bay', 'Bark to hall'] },
      { plant: 'Vennholm', month: '2026-10', titles: ['Bark to bay', 'Bark to hall'] },
    ]);
    expect(readFileSync(path.join(folder, 'fleet/notes.txt'), 'utf8')).toBe('kept');
  });
});

describe('another works', () => {
  test('of the same name is not written over, and the same works with one conveyor more is', async () => {
    const folder = folderWith(works());
    await tables(folder);
    const before = below(path.join(folder, 'fleet'));
    const grown = (works()['plant/machine.trough'] ?? '').replace('conveyor BR2', 'conveyor BR3');
    writeFileSync(path.join(folder, 'plant/machine.trough'), grown);
    expect(await tables(folder)).toMatchObject({ exit: 0 });
    writeFileSync(path.join(folder, 'plant/machine.trough'), grown.replace(/\bBR/g, 'KB'));
    const ran = await troughline(['tables', 'plant', '--as-of', '2026-11-30', '--out', 'fleet'], {
      cwd: folder,
    });
    expect(ran).toMatchObject({
      exit: 2,
      err: expect.stringContaining('fleet holds another works of the name Tarnholt, with BR1 and BR3'),
    });
    expect(below(path.join(folder, 'fleet'))).toEqual(before);
  });

  test('in one estate whose name differs by capitals alone is refused', async () => {
    const folder = folderWith({ ...works(), 'plant/b.trough': 'plant TARNHOLT {\n  risk 5 %\n}\n' });
    expect(await tables(folder)).toMatchObject({
      exit: 2,
      err: expect.stringContaining('plants TARNHOLT and Tarnholt are one folder on some disks'),
    });
    expect(existsSync(path.join(folder, 'fleet'))).toBe(false);
  });

  test('what lies in the place of a table and is none stops the run', async () => {
    const place = 'fleet/conveyors/plant=Tarnholt/month=2026-09/conveyors.parquet';
    const folder = folderWith({ ...works(), [place]: 'mine' });
    expect(await tables(folder)).toMatchObject({
      exit: 2,
      err: expect.stringContaining('is no table of this program'),
    });
    expect(readFileSync(path.join(folder, place), 'utf8')).toBe('mine');
  });
});

describe('bad input', () => {
  test('an out folder that is a file, or none; an unknown form; no day in CI', async () => {
    const folder = folderWith({ ...works(), fleet: 'a file' });
    expect(await tables(folder)).toMatchObject({ exit: 2, err: expect.stringContaining('is a file') });
    expect(await tables(folder, '--format', 'xlsx')).toMatchObject({
      exit: 2,
      err: expect.stringContaining('not one of parquet, csv, json'),
    });
    expect(await troughline(['tables', 'plant'], { cwd: folder })).toMatchObject({
      exit: 2,
      err: expect.stringContaining('--out'),
    });
    expect(
      await troughline(['tables', 'plant', '--out', 'other'], { cwd: folder, env: { CI: 'true' } }),
    ).toMatchObject({ exit: 2, err: expect.stringContaining('--as-of') });
  });

  test('errors in the estate end with 1 and are in the tables; --fail-on never ends with 0', async () => {
    const folder = folderWith(works((text) => text.replace('incline 20 deg', 'incline 20 kg')));
    const ran = await tables(folder, '--format', 'json');
    expect(ran).toMatchObject({ exit: 1, err: expect.stringContaining('of severity error in the estate') });
    const { rows } = JSON.parse(readFileSync(path.join(folder, 'fleet/findings.json'), 'utf8')) as {
      rows: readonly Record<string, unknown>[];
    };
    expect(rows.filter(({ severity }) => severity === 'error')).not.toEqual([]);
    expect(rows.find(({ severity }) => severity === 'error')).toMatchObject({
      plant: 'Tarnholt',
      file: 'plant/machine.trough',
    });
    expect(await tables(folder, '--fail-on', 'never')).toMatchObject({ exit: 0 });
  });

  test('an estate of nothing: tables with heads alone, no Parquet, and it says why', async () => {
    const folder = folderWith({ 'plant/liner.trough': '// nothing yet\n' });
    const ran = await tables(folder, '--format', 'parquet', '--format', 'csv');
    expect(ran).toMatchObject({ exit: 0, err: expect.stringContaining('no plant is described') });
    expect(below(path.join(folder, 'fleet'))).toEqual(names.map((name) => `${name}.csv`));
    expect(readFileSync(path.join(folder, 'fleet/points.csv'), 'utf8').split('\r\n')).toHaveLength(2);
    expect(await troughline(['tables', 'plant', '--out', 'fleet'], { cwd: folder })).toMatchObject({
      exit: 2,
      err: expect.stringContaining('--as-of'),
    });
  });

  test('a link in the folder that leads elsewhere is not followed', async () => {
    const folder = folderWith({ ...works(), 'elsewhere/kept': '' });
    mkdirSync(path.join(folder, 'fleet'));
    symlinkSync(path.join(folder, 'elsewhere'), path.join(folder, 'fleet/points'));
    expect(await tables(folder)).toMatchObject({ exit: 2, err: expect.stringContaining('leads out of') });
    expect(below(path.join(folder, 'elsewhere')).filter((name) => name !== 'kept')).toEqual([]);
  });
});

describe('a set with folders', () => {
  const set = (words: string): { name: string; content: string }[] =>
    ['a/x.csv', 'a/b/y.csv', 'z.csv'].map((name) => ({ name, content: words }));

  test('is back as it was when any of its moves fails, and leaves nothing beside it', () => {
    for (let failing = 0; failing < 3; failing++) {
      const folder = folderWith({});
      writeFiles(folder, set('old'));
      let moves = 0;
      expect(() =>
        writeFiles(folder, set('new'), () => {
          if (moves++ === failing) throw new Error('held');
        }),
      ).toThrow('could not write');
      expect(below(folder)).toEqual(['a/b/y.csv', 'a/x.csv', 'z.csv']);
    }
  });

  test('that a killed run left in the middle is finished by the next', () => {
    const folder = folderWith({});
    writeFiles(folder, set('old'));
    writeFileSync(path.join(folder, 'a/b/y.csv.1.part'), 'new');
    const moves = [
      ['a/b/y.csv.1.part', 'a/b/y.csv'],
      ['../out.csv.1.part', '../out.csv'],
    ];
    writeFileSync(path.join(folder, '.troughline-set.json'), JSON.stringify(moves));
    writeFiles(folder, [{ name: 'z.csv', content: 'newer' }]);
    expect(readFileSync(path.join(folder, 'a/b/y.csv'), 'utf8')).toBe('new');
    expect(below(folder)).toEqual(['a/b/y.csv', 'a/x.csv', 'z.csv']);
  });

  test('whose names lead up or away is refused before anything is written', () => {
    const folder = folderWith({});
    for (const name of ['../x', 'a/../../x', '/x', 'a//x', 'a/./x', 'a/..'])
      expect(() => writeFiles(path.join(folder, 'in'), [{ name, content: '' }]), name).toThrow(
        'lies outside',
      );
    expect(below(folder)).toEqual([]);
  });
});
