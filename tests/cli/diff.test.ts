// `troughline diff` on real repositories: what the two words name, what the exit code says, and what stops a comparison.

import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, test } from 'vitest';
import { gitEnvironment, repository } from '../kit/repository.js';
import { estateTexts, nextLook } from '../kit/small-estate.js';
import { folderWith, silentConsole, troughline, type Ran } from './console.js';
import { comparedSides } from '../../src/cli/compared-sides.js';
import { photoEdits } from '../../src/generators/change-summary/photo-edits.js';
import { execFileSync } from 'node:child_process';

const small = readFileSync(new URL('../../examples/1-first-conveyor/first.trough', import.meta.url), 'utf8');
const later = (meter: number, thickness: number): string =>
  `inspection BR1 2026-03-02 meter ${meter} h {\n  view downstream\n  gauge depth gauge ± 0.5 mm\n  P1 thickness ${thickness} mm\n}\n`;
const diff = (cwd: string, ...args: readonly string[]): Promise<Ran> =>
  troughline(['diff', ...args], { cwd });

describe('which states', () => {
  test('the working tree against HEAD where none is named: 0 the same, 1 different', async () => {
    const { folder, write } = repository({ 'a.trough': small });
    expect(await diff(folder)).toMatchObject({
      exit: 0,
      err: '',
      out: expect.stringContaining('nothing differs'),
    });
    write({ 'new.trough': later(6200, 7.1) });
    const ran = await diff(folder);
    expect(ran).toMatchObject({ exit: 1, err: '' });
    expect(ran.out).toContain('HEAD → working tree');
    expect(ran.out).toContain('BR1, inspection of 2026-03-02 (meter 6200 h, 1 reading) [new.trough:1]');
  });

  test('two revisions, A..B, and what a branch adds since it left main', async () => {
    const { folder, git, commit } = repository({ 'a.trough': small });
    git('switch', '--quiet', '-c', 'round');
    commit('A look', { 'new.trough': later(6200, 7.1) });
    git('switch', '--quiet', 'main');
    commit('Meanwhile', { 'a.trough': small.replace('duty 60', 'duty 61') });
    for (const states of [['main~1', 'round'], ['main~1..round'], ['main...round']]) {
      const { out, exit } = await diff(folder, ...states);
      expect([exit, out.includes('1 inspection added'), out.includes('duty')]).toEqual([1, true, false]);
    }
    expect((await diff(folder, 'main', 'round')).out).toContain(
      'plant Tarnholt: duty 61 h/week → duty 60 h/week',
    );
  });

  test('an estate below a repository, read from there and from elsewhere, and two folders without git', async () => {
    const { folder } = repository({ 'plant/a.trough': small, 'other/b.trough': 'plant Other {\n}\n' });
    const changed = folderWith({ 'a.trough': small.replace('7.9 mm', '6.9 mm') });
    expect((await diff(path.join(folder, 'plant'))).exit).toBe(0);
    expect((await diff(folder, '--estate', 'plant')).exit).toBe(0);
    const ran = await diff(path.join(folder, 'plant'), '.', changed, '--fail-on', 'history');
    expect(ran.exit).toBe(1);
    expect(ran.err).toContain(
      'history edited: BR1, inspection of 2025-09-08: P1 thickness 7.9 mm → P1 thickness 6.9 mm (a.trough:',
    );
  });

  test('a photo that was exchanged under its name is told, from the disk, a revision and a large-file store', async () => {
    const named = small.replace('P1 thickness 7.9 mm', 'P1 thickness 7.9 mm photo "photos/p1.png"');
    const files = { 'plant/a.trough': named, 'plant/photos/p1.png': 'one picture' };
    const { folder, write, commit } = repository(files);
    const cwd = path.join(folder, 'plant');
    expect(await diff(cwd)).toMatchObject({ exit: 0 });
    write({ 'plant/photos/p1.png': 'another one' });
    const ran = await diff(cwd);
    expect(ran.exit).toBe(1);
    const told = 'photo photos/p1.png, 11 bytes → another picture under that name, 11 bytes';
    expect(ran.out).toContain(`BR1, inspection of 2025-09-08: ${told}`);
    // No number rests on it, so it is no edit of the history.
    expect(ran.out).not.toContain('HISTORY EDITED');
    const console = silentConsole(cwd);
    const edits = async (...given: readonly string[]): Promise<readonly (string | undefined)[]> => {
      const [before, after] = await comparedSides(given, '.', console);
      return before.kind === 'estate' && after.kind === 'estate'
        ? photoEdits(before.photos, after.photos, after.ledger).map((edit) => edit.before)
        : ['no estates'];
    };
    const exchanged = ['photo photos/p1.png, 11 bytes'];
    commit('Another picture');
    expect(await edits('main~1', 'main')).toEqual(exchanged);
    expect(await edits('main')).toEqual([]);
    const elsewhere = folderWith({ 'a.trough': named, 'photos/p1.png': 'a third' });
    expect(await edits('.', elsewhere)).toEqual(exchanged);
    const sum = createHash('sha256').update('another one').digest('hex');
    commit('Kept elsewhere', {
      'plant/photos/p1.png': `version https://git-lfs.github.com/spec/v1\noid sha256:${sum}\nsize 11\n`,
    });
    write({ 'plant/photos/p1.png': 'another one' });
    expect(await edits()).toEqual([]);
    write({ 'plant/photos/p1.png': 'one picture' });
    expect(await edits()).toEqual(exchanged);
  });

  test('a report that was saved, with its records', async () => {
    const cwd = folderWith({ 'a.trough': small });
    await troughline(['report', '--out', 'saved', '--format', 'json'], { cwd });
    expect(await diff(cwd, 'saved/report.json')).toMatchObject({ exit: 0, err: '' });
    const edited = folderWith({
      'a.trough': small.replace('meter 4710 h', 'meter 4510 h'),
      'report.json': readFileSync(path.join(cwd, 'saved/report.json')),
    });
    const ran = await diff(edited, 'report.json', '--fail-on', 'history');
    expect([ran.exit, ran.out]).toEqual([1, expect.stringContaining('meter 4710 h → meter 4510 h')]);
  });

  test('several forms in one run', async () => {
    const { folder, write } = repository({ 'a.trough': small });
    write({ 'new.trough': later(6200, 7.1) });
    await diff(folder, '-f', 'markdown=out/c.md', '-f', 'html=out/c.html', '-f', 'json=out/c.json');
    expect(readFileSync(path.join(folder, 'out/c.md'), 'utf8')).toMatch(/^### 1 inspection added/);
    expect(JSON.parse(readFileSync(path.join(folder, 'out/c.json'), 'utf8'))).toMatchObject({
      kind: 'change summary',
    });
    expect(readFileSync(path.join(folder, 'out/c.html'), 'utf8')).toContain('<!DOCTYPE html>');
  });
});

describe('what to fail on', () => {
  test('history: a branch that edits an old reading fails for that reason, one that adds a look does not', async () => {
    const { folder, git, commit } = repository(estateTexts);
    git('switch', '--quiet', '-c', 'look');
    commit('A look', { 'looks/new.trough': nextLook });
    git('switch', '--quiet', '-c', 'edit', 'main');
    commit('Tidy', {
      'looks/BR1-2025-09.trough': estateTexts['looks/BR1-2025-09.trough']?.replace('8.4', '7.4') ?? '',
    });
    const look = await diff(folder, 'main...look', '--format', 'markdown', '--fail-on', 'history');
    expect(look).toMatchObject({ exit: 0, err: '' });
    expect(look.out.trimEnd().split('\n').length).toBeLessThan(10);
    expect(look.out).toMatch(
      /BR1 \(inspected\): limit by \w+ [\d.<]+ ?%? .*steel .*order .*limit expected .*action: /,
    );
    const edit = await diff(folder, 'main...edit', '--fail-on', 'history');
    expect(edit.exit).toBe(1);
    expect(edit.err).toBe(
      'troughline: history edited: BR1, inspection of 2025-09-15: P1 thickness 8.4 mm → P1 thickness 7.4 mm (looks/BR1-2025-09.trough:5) (--fail-on history)\n',
    );
  });

  test('risk, action and findings, each named; never is never', async () => {
    const { folder, write } = repository({
      'a.trough': small.replace(
        'duty 60 h/week',
        'duty 60 h/week\n  risk 5 %\n  outage May26 2026-05-04 to 2026-05-08',
      ),
    });
    write({ 'new.trough': `${later(6200, 2.6)}plant Other {\n  risk 5 kg\n}\n` });
    const ran = await diff(folder, ...['risk', 'action', 'finding'].flatMap((what) => ['--fail-on', what]));
    expect(ran.exit).toBe(1);
    for (const reason of [
      'the change raises the risk of the limit at BR1 by May26 from 18 % to',
      'what to do changes at BR1',
      'new finding',
    ])
      expect(ran.err).toContain(reason);
    expect((await diff(folder, '--fail-on', 'never')).exit).toBe(0);
    expect((await diff(folder, '--fail-on', 'tuesday')).exit).toBe(2);
  });
});

describe('trouble is told in words and ends with 2', () => {
  const expectTrouble = (ran: Ran, ...words: readonly string[]): void => {
    expect([ran.exit, ran.out]).toEqual([2, '']);
    for (const word of words) expect(ran.err).toContain(word);
  };

  test('no such revision, no commit yet, no repository, too many words', async () => {
    const { folder } = repository({ 'a.trough': small });
    expectTrouble(
      await diff(folder, 'no-such'),
      'no-such: this repository has no such revision, and there is no such file',
    );
    expectTrouble(await diff(folder, '--', '--upload-pack=x'), 'names no revision');
    expectTrouble(await diff(repository().folder), 'no commit yet');
    expectTrouble(
      await diff(folderWith({ 'a.trough': small })),
      'is no git repository',
      'compare two folders',
    );
    expectTrouble(await diff(folder, 'a', 'b', 'c'), 'at most two');
    expectTrouble(await diff(folder, '--threshold', 'x'), 'a number from 0');
  });

  test('a word that is a folder and a revision', async () => {
    const { folder, git } = repository({ 'plant/a.trough': small });
    git('branch', 'plant');
    expectTrouble(await diff(folder, 'plant'), 'is a folder and a revision: write ./plant');
    expect((await diff(folder, './plant', 'refs/heads/plant', '--estate', 'plant')).exit).toBe(0);
  });

  test('a shallow clone says how to get the rest', async () => {
    const { folder, commit, git } = repository({ 'a.trough': small });
    commit('More', { 'b.trough': later(6200, 7.1) });
    git('branch', 'base', 'HEAD~1');
    const clone = folderWith({});
    execFileSync('git', ['clone', '--quiet', '--depth', '1', pathToFileURL(folder).href, 'c'], {
      cwd: clone,
      env: gitEnvironment,
    });
    const cwd = path.join(clone, 'c');
    expectTrouble(await diff(cwd, 'base'), 'shallow clone', 'fetch-depth: 0');
    execFileSync('git', ['fetch', '--quiet', '--depth', '1', 'origin', 'base:base'], {
      cwd,
      env: gitEnvironment,
    });
    expectTrouble(await diff(cwd, 'base...HEAD'), 'no common beginning', 'shallow clone');
  });

  test('a conflict nobody settled, on either side; a text that is none; a file that is no report', async () => {
    const conflict = small.replace(
      '  P1 thickness 7.9 mm\n',
      '<<<<<<< a\n  P1 thickness 7.9 mm\n=======\n  P1 thickness 7.8 mm\n>>>>>>> b\n',
    );
    const { folder, commit, write } = repository({ 'a.trough': small });
    write({ 'a.trough': conflict });
    expectTrouble(await diff(folder), 'a.trough in working tree holds a merge conflict');
    commit('Oops');
    expectTrouble(await diff(folder, 'HEAD', 'HEAD~1'), 'a.trough in HEAD holds a merge conflict');
    write({ 'a.trough': 'plant \0' });
    expectTrouble(await diff(folder, 'HEAD~1'), 'NUL byte');
    write({ 'a.trough': small, 'x.json': '{}' });
    expectTrouble(await diff(folder, 'x.json'), 'x.json is no remaining-life report');
    expectTrouble(await diff(folder, 'HEAD~1', 'x.json'), 'x.json is no remaining-life report');
  });

  test('two estates that are not one', async () => {
    const other = folderWith({
      'a.trough': small
        .replaceAll('BR1', 'ZZ9')
        .replaceAll(/1[01](\.\d)? m/g, '9 m')
        .replaceAll('20 deg', '4 deg'),
    });
    const ran = await diff(folderWith({ 'machine.trough': estateTexts['machine.trough'] ?? '' }), '.', other);
    expectTrouble(ran, 'no conveyor in common (BR1, BR2; ZZ9)');
  });
});

describe('a side that does not parse', () => {
  test('is compared as far as it goes, and that is said', async () => {
    const { folder, write } = repository({ 'a.trough': small, 'b.trough': later(6200, 7.1) });
    write({ 'b.trough': later(6200, 7.1).replace('{', '{ %%') });
    const ran = await diff(folder);
    expect(ran.exit).toBe(1);
    expect(ran.out).toContain('b.trough does not parse in working tree');
    expect(ran.out).toContain('inspection of 2026-03-02: taken out (meter 6200 h, 1 reading)');
  });

  test('one without any text says that everything is new', async () => {
    const { folder, write } = repository({ 'README.md': 'To come.\n' });
    write({ 'a.trough': small });
    const ran = await diff(folder);
    expect([ran.exit, ran.out]).toEqual([
      1,
      expect.stringContaining('HEAD holds no .trough text: everything counts as new'),
    ]);
  });
});
