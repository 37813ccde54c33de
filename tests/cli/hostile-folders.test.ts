// Folders that hold what nobody expects, on a real file system: links in circles, pipes, two names of one file, names that
// forge a line, merge conflicts. Nothing hangs, each file is read once, and what is left out is told.

import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  linkSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { folderWith, troughline } from './console.js';

const first = readFileSync(new URL('../../examples/1-first-conveyor/first.trough', import.meta.url), 'utf8');
const ugly = 'plant A{risk 5%}\n';
const neat = 'plant A {\n  risk 5 %\n}\n';

describe('links and files that are none', () => {
  test('links that lead in circles come to an end, and every file is read once', async () => {
    const cwd = folderWith({ 'plant/first.trough': first });
    symlinkSync('.', path.join(cwd, 'a'));
    symlinkSync('.', path.join(cwd, 'b'));
    symlinkSync('..', path.join(cwd, 'plant/up'));
    const ran = await troughline(['check'], { cwd });
    expect(ran.out).toBe('1 file: no findings\n');
    expect(ran.exit).toBe(0);
    expect(ran.err).toContain('troughline: a: is ., which is read already\n');
  });

  test('a file is called by its own name, not by that of a link that stands before it', async () => {
    const cwd = folderWith({ 'z/a.trough': 'plant A {\n  risk 5 kg\n}\n' });
    symlinkSync('z', path.join(cwd, 'a'));
    const ran = await troughline(['check'], { cwd });
    expect(ran.out).toMatch(/^z\/a\.trough:2:8 /);
    expect(ran.out).toContain('1 file:');
  });

  test('two names of one file are one file, by link and by hard link', async () => {
    const cwd = folderWith({ 'a.trough': first });
    linkSync(path.join(cwd, 'a.trough'), path.join(cwd, 'b.trough'));
    symlinkSync('a.trough', path.join(cwd, 'c.trough'));
    const ran = await troughline(['check'], { cwd });
    expect(ran.out).toBe('1 file: no findings\n');
    expect(ran.err).toContain('b.trough: is a.trough, which is read already');
    expect(ran.err).toContain('c.trough: is a.trough, which is read already');
    expect((await troughline(['check', '.', './a.trough'], { cwd })).exit).toBe(0);
  });

  test.skipIf(process.platform === 'win32')('a pipe and a device are named and not opened', async () => {
    const cwd = folderWith({ 'a.trough': first });
    execFileSync('mkfifo', [path.join(cwd, 'pipe.trough')]);
    symlinkSync('/dev/zero', path.join(cwd, 'zero.trough'));
    const ran = await troughline(['check'], { cwd });
    expect(ran.exit).toBe(2);
    expect(ran.err).toContain('pipe.trough: is a pipe and no file: not read');
    expect(ran.err).toContain('zero.trough: is a device and no file: not read');
    expect(ran.out).toContain('no findings in what was read');
  });

  test('a folder whose name ends in .trough is a folder', async () => {
    const cwd = folderWith({ 'x.trough/a.trough': first });
    const ran = await troughline(['check'], { cwd });
    expect(ran).toEqual({ exit: 0, out: '1 file: no findings\n', err: '' });
  });
});

describe('format', () => {
  test('writes through a symbolic link and leaves the link', async () => {
    const cwd = folderWith({ 'kept/a.trough': ugly });
    symlinkSync('kept/a.trough', path.join(cwd, 'b.trough'));
    expect((await troughline(['format', 'b.trough'], { cwd })).exit).toBe(0);
    expect(lstatSync(path.join(cwd, 'b.trough')).isSymbolicLink()).toBe(true);
    expect(readFileSync(path.join(cwd, 'kept/a.trough'), 'utf8')).toBe(neat);
    expect(readdirSync(path.join(cwd, 'kept'))).toEqual(['a.trough']);
  });

  test('keeps two names one file, longer and shorter', async () => {
    for (const text of [ugly, `plant A {\n\n\n\n\n  risk 5 %          \n\n\n}\n`]) {
      const cwd = folderWith({ 'a.trough': text });
      linkSync(path.join(cwd, 'a.trough'), path.join(cwd, 'b.txt'));
      await troughline(['format'], { cwd });
      expect(readFileSync(path.join(cwd, 'b.txt'), 'utf8')).toBe(neat);
      expect(statSync(path.join(cwd, 'a.trough')).ino).toBe(statSync(path.join(cwd, 'b.txt')).ino);
      expect(readdirSync(cwd)).toEqual(['a.trough', 'b.txt']);
    }
  });

  test.skipIf(process.platform === 'win32')(
    'keeps the mode, and leaves alone what is read-only',
    async () => {
      const cwd = folderWith({ 'a.trough': ugly });
      chmodSync(path.join(cwd, 'a.trough'), 0o640);
      await troughline(['format'], { cwd });
      expect(statSync(path.join(cwd, 'a.trough')).mode & 0o777).toBe(0o640);
      const closed = folderWith({ 'a.trough': ugly });
      chmodSync(path.join(closed, 'a.trough'), 0o444);
      const ran = await troughline(['format'], { cwd: closed });
      expect(ran.exit).toBe(2);
      expect(ran.err).toMatch(/a\.trough: (is read-only|could not write: no permission)/);
      expect(readFileSync(path.join(closed, 'a.trough'), 'utf8')).toBe(ugly);
    },
  );

  test('leaves a text with a merge conflict to the byte, so that git still sees its markers', async () => {
    const text = conflicted('plant A {\n', '  risk 5 %\n', '  risk 8 %\n', '}\n');
    const cwd = folderWith({ 'a.trough': text, 'b.trough': ugly.replace('A', 'B') });
    const ran = await troughline(['format'], { cwd });
    expect(ran.exit).toBe(2);
    expect(ran.err).toContain('a.trough: holds a merge conflict');
    expect(readFileSync(path.join(cwd, 'a.trough'), 'utf8')).toBe(text);
    expect(readFileSync(path.join(cwd, 'b.trough'), 'utf8')).toBe(neat.replace('A', 'B'));
  });
});

describe('a merge conflict', () => {
  const [head, tail] = [
    first.slice(0, first.indexOf('inspection')),
    first.slice(first.indexOf('inspection')),
  ];
  const record = tail.slice(0, tail.indexOf('}') + 2);
  const other = record.replace('7.9 mm', '5.1 mm');

  test('is one error and nothing else, also where the other texts refer to what is in it', async () => {
    const cwd = folderWith({
      'plant.trough': conflicted('', head, head.replace('60 h/week', '84 h/week'), ''),
      'records.trough': record,
    });
    const ran = await troughline(['check', '--format', 'json'], { cwd });
    expect(ran.exit).toBe(1);
    const { findings } = JSON.parse(ran.out) as {
      findings: Record<'code' | 'severity' | 'file' | 'line', unknown>[];
    };
    expect(findings.map(({ code, severity, file, line }) => [code, severity, file, line])).toEqual([
      ['TL131', 'error', 'plant.trough', 1],
    ]);
  });

  test.each([
    ['both markers', conflicted('', record, other, '')],
    ['with the common ancestor', `<<<<<<< a\n${record}||||||| b\n=======\n${other}>>>>>>> c\n`],
    ['Windows line ends', conflicted('', record, other, '').replace(/\n/g, '\r\n')],
    ['a marker left over', `${record}>>>>>>> theirs\n`],
    ['indented by a formatter', conflicted('', record, other, '').replace(/^(?=[<=>])/gm, '  ')],
  ])('%s: no report, pack or sheet is made, and the file is named', async (_, text) => {
    const cwd = folderWith({ 'plant.trough': head, 'records/2025.trough': text });
    for (const args of [
      ['report', '--out', 'o'],
      ['pack', 'all', '--out', 'o'],
      ['sheet', 'BR1', '--out', 'o'],
    ]) {
      const ran = await troughline(args, { cwd });
      expect(ran).toMatchObject({ exit: 2, out: '' });
      expect(ran.err).toContain('records/2025.trough: holds a merge conflict that is not settled');
    }
    expect(readdirSync(cwd)).toEqual(['plant.trough', 'records']);
    expect((await troughline(['check', '--format', 'json'], { cwd })).out).toContain('"error": 1');
  });

  test('is not seen where there is none', async () => {
    const cwd = folderWith({ 'a.trough': first.replace('plant', '/* A\n=======\n<<<< */\nplant') });
    expect((await troughline(['check'], { cwd })).exit).toBe(0);
  });

  test('--fix changes nothing in it', async () => {
    const text = conflicted('', 'plant A {\n  risk 2,5 %\n}\n', 'plant A {\n  risk 3 %\n}\n', '');
    const cwd = folderWith({ 'a.trough': text });
    await troughline(['check', '--fix'], { cwd });
    expect(readFileSync(path.join(cwd, 'a.trough'), 'utf8')).toBe(text);
  });
});

describe('names and texts that would pass for something else', () => {
  test.skipIf(process.platform === 'win32')(
    'a file name with a line end in it cannot forge a line',
    async () => {
      const forged = '::error file=first.trough,line=1::forged';
      const cwd = folderWith({
        [`x\n${forged}.trough`]: 'plant A {\n  risk 5 kg\n}\n',
        [`${forged}.trough`]: ugly,
      });
      for (const args of [
        ['check'],
        ['check', '-f', 'github'],
        ['check', '-f', 'markdown'],
        ['format'],
        ['report'],
      ]) {
        const { out, err } = await troughline(args, { cwd });
        expect(`${out}${err}`.split('\n').filter((line) => line.startsWith('::error file=first'))).toEqual(
          [],
        );
      }
    },
  );

  test('a comment cannot speak to the build service, nor a note to the terminal', async () => {
    const text = 'plant A {\n  risk 5 kg "##[error]forged \u001b[2J\u202Exyz"\n}\n';
    const { out } = await troughline(['check'], { cwd: folderWith({ 'a.trough': text }) });
    expect(out).not.toContain('##[');
    expect(out).not.toMatch(/[\u001b\u202e]/);
    expect(out).toContain('[U+001B][2J[U+202E]xyz');
  });

  test('hidden characters are a finding with a mend, and the marker stands under what is shown', async () => {
    const cwd = folderWith({ 'a.trough': 'plant A "x\u202e\u202cy" {\n}\n' });
    const { out } = await troughline(['check'], { cwd });
    expect(out).toContain(' 1 | plant A "x[U+202E][U+202C]y" {\n   |           ^^^^^^^^^^^^^^^^\n');
    await troughline(['check', '--fix'], { cwd });
    expect(readFileSync(path.join(cwd, 'a.trough'), 'utf8')).toBe('plant A "xy" {\n}\n');
  });

  test('pages, workbook and calendar show them and stay well-formed', async () => {
    const cwd = folderWith({});
    const demo = path.resolve(import.meta.dirname, '../../examples/4-tarnholt');
    for (const file of readdirSync(demo, { recursive: true, encoding: 'utf8' }).filter((name) =>
      name.endsWith('.trough'),
    )) {
      const text = readFileSync(path.join(demo, file), 'utf8');
      const hostile = text.replace(
        /^((?:job|conveyor|plant) \w+) "([^"]*)"/gm,
        '$1 "\u0007\u202e]]> &<b>;, \\\\n =1+1 $2 \uFFFE"',
      );
      folderFile(cwd, file, hostile);
    }
    const ran = await troughline(
      [
        'pack',
        'DG1_Winter27',
        '.',
        '--as-of',
        '2026-10-31',
        '--out',
        'o',
        ...['html', 'xlsx', 'ics', 'markdown'].flatMap((f) => ['-f', f]),
      ],
      { cwd },
    );
    expect(ran.err).not.toContain('fault');
    const html = readFileSync(path.join(cwd, 'o/DG1_Winter27.html'), 'utf8');
    expect(html).toContain('[U+0007][U+202E]]]&gt; &amp;&lt;b&gt;');
    const ics = readFileSync(path.join(cwd, 'o/DG1_Winter27.ics'), 'utf8');
    // RFC 5545, 3.1 and 3.3.11: lines end in CRLF, are at most 75 octets, and text has no control characters.
    for (const line of ics.split('\r\n')) {
      expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
      expect(line).not.toMatch(/[\u0000-\u0008\u000A-\u001F\u007F]/);
    }
    expect(
      ics
        .replace(/\r\n[ \t]/g, '')
        .split('\r\n')
        .filter((line) => line !== '' && !/^[A-Z-]+[:;]/.test(line)),
    ).toEqual([]);
    const { default: readXlsx } = await import('read-excel-file/node');
    const sheets = await readXlsx(path.join(cwd, 'o/DG1_Winter27.xlsx'));
    expect(JSON.stringify(sheets)).not.toMatch(/\\u0007|\ufffe/);
  });
});

function conflicted(before: string, ours: string, theirs: string, after: string): string {
  return `${before}<<<<<<< HEAD\n${ours}=======\n${theirs}>>>>>>> theirs\n${after}`;
}

function folderFile(folder: string, name: string, text: string): void {
  const full = path.join(folder, name);
  mkdirSync(path.dirname(full), { recursive: true });
  writeFileSync(full, text);
}
