// The drivers as git itself calls them: set up in a repository, merged and compared with, and taken out again.

import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { bundledCli } from '../kit/bundled-cli.js';
import { repository, type Repository } from '../kit/repository.js';
import { folderWith, troughline } from './console.js';

const program = await bundledCli();
const command = `"${process.execPath}" "${program}"`;
const look = (date: string, meter: number, thickness: number): string =>
  `\ninspection BR1 ${date} meter ${meter} h {\n  P1 thickness ${thickness} mm\n  P2 thickness 9 mm\n}\n`;
const records = `// Records of BR1.\n${look('2026-01-05', 4000, 8.4).slice(1)}`;

async function setUp(files: Readonly<Record<string, string>>): Promise<Repository> {
  const made = repository(files);
  const ran = await troughline(['git', 'setup', '--command', command], { cwd: made.folder });
  expect(ran).toMatchObject({ exit: 0, err: '' });
  made.commit('Drivers');
  return made;
}

function branches(made: Repository, file: string, [one, other]: readonly [string, string]): void {
  made.git('switch', '--quiet', '-c', 'one');
  made.commit('One', { [file]: one });
  made.git('switch', '--quiet', '-c', 'other', 'main');
  made.commit('Other', { [file]: other });
  made.git('switch', '--quiet', 'one');
}

describe('git merge', () => {
  test('of two branches that add inspections to one file loses and doubles nothing, where git alone has a conflict', async () => {
    const [one, other] = [records + look('2026-02-02', 4500, 8.1), records + look('2026-03-02', 4900, 7.9)];
    const bare = repository({ 'records.trough': records });
    branches(bare, 'records.trough', [one, other]);
    expect(() => bare.git('merge', '--quiet', 'other')).toThrow();

    const made = await setUp({ 'records.trough': records });
    branches(made, 'records.trough', [one, other]);
    made.git('merge', '--quiet', '-m', 'Both', 'other');
    const merged = readFileSync(path.join(made.folder, 'records.trough'), 'utf8');
    expect(merged).toBe(records + look('2026-03-02', 4900, 7.9) + look('2026-02-02', 4500, 8.1));
    expect(made.git('status', '--porcelain')).toBe('');
  });

  test('of one fact changed on both sides stops with markers that check tells', async () => {
    const made = await setUp({ 'records.trough': records });
    branches(made, 'records.trough', [
      records.replace('8.4', '8.3'),
      records.replace('8.4', '8.2').replace('9 mm', '8.8 mm'),
    ]);
    expect(() => made.git('merge', '--quiet', 'other')).toThrow();
    const merged = readFileSync(path.join(made.folder, 'records.trough'), 'utf8');
    expect(merged).toContain('<<<<<<< ours\n  P1 thickness 8.3 mm\n||||||| base\n');
    expect(merged).toContain('>>>>>>> theirs\n  P2 thickness 8.8 mm\n}');
    expect(made.git('status', '--porcelain')).toContain('UU records.trough');
    expect((await troughline(['check'], { cwd: made.folder })).out).toContain('TL131');
  });

  test('of a rebase and of a cherry-pick goes the same way', async () => {
    const made = await setUp({ 'records.trough': records });
    branches(made, 'records.trough', [
      records + look('2026-02-02', 4500, 8.1),
      records + look('2026-03-02', 4900, 7.9),
    ]);
    made.git('rebase', '--quiet', 'other');
    made.git('cherry-pick', '--no-commit', 'HEAD');
    const text = readFileSync(path.join(made.folder, 'records.trough'), 'utf8');
    for (const day of ['2026-01-05', '2026-02-02', '2026-03-02']) expect(text.split(day)).toHaveLength(2);
  });
});

describe('git diff', () => {
  test('shows a reading with the look it belongs to, and nothing for a layout', async () => {
    const made = await setUp({ 'records.trough': records });
    made.write({ 'records.trough': records.replaceAll('  P', '      P') });
    expect(
      made
        .git('diff')
        .split('\n')
        .filter((line) => /^[-+]\w/.test(line)),
    ).toEqual([]);
    made.write({ 'records.trough': records.replace('8.4', '7.4') });
    expect(
      made
        .git('diff')
        .split('\n')
        .filter((line) => /^[-+]\w/.test(line)),
    ).toEqual([
      '-inspection BR1 2026-01-05: P1 thickness 8.4 mm',
      '+inspection BR1 2026-01-05: P1 thickness 7.4 mm',
    ]);
    const half = await troughline(['git', 'textconv', 'x.trough'], {
      cwd: folderWith({ 'x.trough': 'inspection {{' }),
    });
    expect(half).toMatchObject({ exit: 0, out: 'inspection {{' });
  });
});

describe('set-up', () => {
  test('twice is once, and undo leaves what was there before', async () => {
    const own = '*.png binary';
    const made = repository({ '.gitattributes': own, 'a.trough': records });
    const config = readFileSync(path.join(made.folder, '.git/config'), 'utf8');
    for (let i = 0; i < 2; i++) await troughline(['git', 'setup'], { cwd: made.folder });
    const attributes = readFileSync(path.join(made.folder, '.gitattributes'), 'utf8');
    expect(attributes.match(/merge=troughline/g)).toHaveLength(1);
    expect(made.git('check-attr', 'merge', 'x/y.trough')).toContain('merge: troughline');
    expect(made.git('config', 'merge.troughline.driver').trim()).toBe(
      'troughline git merge %O %A %B --path %P',
    );
    const undone = await troughline(['git', 'undo'], { cwd: made.folder });
    expect(undone.exit).toBe(0);
    expect(readFileSync(path.join(made.folder, '.gitattributes'), 'utf8').trimEnd()).toBe(own);
    expect(readFileSync(path.join(made.folder, '.git/config'), 'utf8')).toBe(config);
    expect((await troughline(['git', 'undo'], { cwd: made.folder })).out).toBe('nothing was set up here\n');
  });

  test('in a repository without attributes leaves none behind', async () => {
    const made = repository({ 'a.trough': records });
    await troughline(['git', 'setup'], { cwd: made.folder });
    await troughline(['git', 'undo'], { cwd: made.folder });
    expect(existsSync(path.join(made.folder, '.gitattributes'))).toBe(false);
  });

  test('without a repository is told', async () => {
    for (const what of ['setup', 'undo'])
      expect(await troughline(['git', what], { cwd: folderWith({}) })).toMatchObject({
        exit: 2,
        err: expect.stringContaining('is no working tree of a git repository'),
      });
    const lost = await troughline(['git', 'merge', 'a', 'b', 'c'], { cwd: folderWith({ a: '', b: '' }) });
    expect(lost).toMatchObject({ exit: 2, err: expect.stringContaining('c: no such file') });
  });
});
