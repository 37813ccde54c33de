// The first minutes and the everyday: a first estate, checking while writing, and what is said while it takes long.

import { existsSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { repository } from '../kit/repository.js';
import { folderWith, troughline } from './console.js';

const files = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)).split(path.sep).join('/'))
    .sort();

describe('init', () => {
  test('writes an estate that checks clean, is laid out, and comes with its build files', async () => {
    const cwd = folderWith({});
    const ran = await troughline(['init', 'plant'], { cwd });
    expect(ran.exit).toBe(0);
    expect(files(path.join(cwd, 'plant'))).toEqual([
      '.github/actions/troughline/action.yml',
      '.github/workflows/month.yml',
      '.github/workflows/records.yml',
      '.pre-commit-config.yaml',
      'conveyors/BR1.trough',
      'inspections/BR1/2025-09-08.trough',
      'liners.trough',
      'plant.trough',
      'screws.trough',
    ]);
    expect(await troughline(['check', 'plant'], { cwd })).toMatchObject({
      exit: 0,
      out: '5 files: no findings\n',
    });
    expect((await troughline(['format', '--check', 'plant'], { cwd })).exit).toBe(0);
    expect((await troughline(['report', 'plant', '--as-of', '2026-01-05'], { cwd })).exit).toBe(0);
    const examples = new URL('../../examples/ci/', import.meta.url);
    expect(readFileSync(path.join(cwd, 'plant/.github/actions/troughline/action.yml'), 'utf8')).toBe(
      readFileSync(new URL('github/action.yml', examples), 'utf8'),
    );
  });

  test('a photo that is named and not there is said to be missing, in the page and in the text', async () => {
    const small = readFileSync(
      new URL('../../examples/1-first-conveyor/first.trough', import.meta.url),
      'utf8',
    );
    const cwd = folderWith({
      'a.trough': small.replace('P1 thickness 7.9 mm', 'P1 thickness 7.9 mm photo "photos/gone.png"'),
    });
    await troughline(['report', '--as-of', '2026-01-05', '--out', 'r'], { cwd });
    for (const name of ['r/report.html', 'r/report.md'])
      expect(readFileSync(path.join(cwd, name), 'utf8')).toContain('photos/gone.png (there is no such file)');
    const there = folderWith({
      'a.trough': readFileSync(path.join(cwd, 'a.trough'), 'utf8'),
      'photos/gone.png': 'one picture',
    });
    expect((await troughline(['report', '--as-of', '2026-01-05'], { cwd: there })).out).not.toContain(
      'no such file',
    );
  });

  test('for another build server, or for none', async () => {
    const names = async (ci: string): Promise<readonly string[]> => {
      const cwd = folderWith({});
      await troughline(['init', '--ci', ci], { cwd });
      return files(cwd).filter((name) => !name.endsWith('.trough'));
    };
    expect(await names('gitlab')).toEqual(['.gitlab-ci.yml', '.pre-commit-config.yaml']);
    expect(await names('none')).toEqual([]);
    expect((await names('both')).length).toBe(5);
    expect((await troughline(['init', '--ci', 'tuesday'])).exit).toBe(2);
  });

  test('writes over nothing, and then writes nothing at all', async () => {
    const cwd = folderWith({ 'conveyors/BR1.trough': 'mine' });
    const ran = await troughline(['init'], { cwd });
    expect(ran).toMatchObject({
      exit: 2,
      out: '',
      err: expect.stringContaining('conveyors/BR1.trough: there already; nothing was written'),
    });
    expect(files(cwd)).toEqual(['conveyors/BR1.trough']);
    const file = folderWith({ plant: 'a file' });
    expect(await troughline(['init', 'plant'], { cwd: file })).toMatchObject({
      exit: 2,
      err: expect.stringContaining('nothing was written'),
    });
    expect(files(file)).toEqual(['plant']);
  });

  test('stands in a repository whose first change is reviewed', async () => {
    const { folder, git, write } = repository();
    await troughline(['init', '--ci', 'none'], { cwd: folder });
    git('add', '-A');
    git('commit', '--quiet', '-m', 'Start');
    write({
      'inspections/BR1/2026-03-02.trough':
        'inspection BR1 2026-03-02 meter 6200 h {\n  view downstream\n  P1 thickness 7.2 mm\n}\n',
    });
    expect((await troughline(['diff'], { cwd: folder })).out).toContain('1 inspection added');
  });
});

describe('check --watch', () => {
  test('checks again when a file is changed, added or taken out, and only then', async () => {
    const cwd = folderWith({ 'a.trough': 'plant A {\n}\n' });
    const steps = [
      (): void => undefined,
      (): void => writeFileSync(path.join(cwd, 'a.trough'), 'plant A {\n  risk 5 kg\n}\n'),
      (): void => undefined,
      (): void => writeFileSync(path.join(cwd, 'b.trough'), 'plant B {\n}\n'),
      (): void => rmSync(path.join(cwd, 'a.trough')),
    ];
    const ran = await troughline(['check', '--watch'], {
      cwd,
      wait: async () => {
        const step = steps.shift();
        step?.();
        return step !== undefined;
      },
    });
    expect(ran.out.match(/^\d files?: .*$/gm)).toEqual([
      '1 file: no findings',
      '1 file: 1 error',
      '2 files: 1 error',
      '1 file: no findings',
    ]);
    expect(ran.exit).toBe(0);
    expect((await troughline(['check', '-', '--watch'])).err).toContain('--watch needs files');
  });
});

describe('progress', () => {
  test('says what takes a while, apart from what was asked for', async () => {
    const cwd = folderWith({});
    await troughline(['init', '--ci', 'none'], { cwd });
    const progress: string[] = [];
    const ran = await troughline(['report', '--as-of', '2026-01-05', '--out', 'r'], { cwd, progress });
    expect(progress).toEqual(
      expect.arrayContaining(['reading', 'checking 5 files', 'forecasting 1 conveyor', 'printing html']),
    );
    expect(ran.out + ran.err).not.toContain('forecasting');
    expect(existsSync(path.join(cwd, 'r/report.html'))).toBe(true);
  });
});

test('a check says how many findings wait for a line that cannot be read', async () => {
  const first = readFileSync(
    new URL('../../examples/1-first-conveyor/first.trough', import.meta.url),
    'utf8',
  );
  const cwd = folderWith({ 'a.trough': first.replace('  P1 thickness 7.9 mm', '  P1 thicknes 7.9 mm') });
  const { out } = await troughline(['check', 'a.trough'], { cwd });
  expect(out).toMatch(/^1 file: 1 error.*; \d+ findings? waits? until what cannot be read is mended$/m);
});
