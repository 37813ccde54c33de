import { chmodSync, readFileSync, readdirSync, symlinkSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { folderWith, troughline, type Ran } from './console.js';

const first = readFileSync(new URL('../../examples/1-first-conveyor/first.trough', import.meta.url), 'utf8');

/** Whatever the input: never a stack trace, never a fault of ours. */
function isTold({ exit, out, err }: Ran): void {
  expect(exit).not.toBe(70);
  expect(out + err).not.toMatch(/^\s+at .*:\d+:\d+\)?$/m);
  expect(out + err).not.toMatch(/undefined|NaN|\[object/);
}

describe('what cannot be read', () => {
  test('an empty folder is told as such', async () => {
    const ran = await troughline(['check'], { cwd: folderWith({}) });
    isTold(ran);
    expect(ran.exit).toBe(2);
    expect(ran.err).toContain('no .trough file');
  });

  test('a file that is not there is named', async () => {
    const ran = await troughline(['check', 'nowhere.trough']);
    isTold(ran);
    expect(ran.exit).toBe(2);
    expect(ran.err).toContain('nowhere.trough: no such file or folder');
  });

  test('a binary file is told with the place of its first NUL', async () => {
    const ran = await troughline(['check'], {
      cwd: folderWith({ 'a.trough': Uint8Array.of(0x70, 0x0a, 0x71, 0x00, 0x01) }),
    });
    isTold(ran);
    expect(ran.exit).toBe(2);
    expect(ran.err).toContain('a.trough:2:2: a NUL byte');
  });

  test('invalid UTF-8 is told with line and column, and the other files are still checked', async () => {
    const latin1 = Uint8Array.of(...new TextEncoder().encode('plant A {\n}\n// Gr'), 0xf6, 0xdf, 0x65);
    const ran = await troughline(['check'], {
      cwd: folderWith({ 'a.trough': latin1, 'b.trough': 'plant B {\n  duty 5 m\n}\n' }),
    });
    isTold(ran);
    expect(ran.exit).toBe(2);
    expect(ran.err).toContain('a.trough:3:6: byte 0xf6 is not UTF-8');
    expect(ran.out).toContain('b.trough:2:');
  });

  test('a character cut off at the end of the file is not UTF-8 either', async () => {
    const ran = await troughline(['check'], {
      cwd: folderWith({ 'a.trough': Uint8Array.of(0x2f, 0x2f, 0xe2, 0x82) }),
    });
    isTold(ran);
    expect(ran.exit).toBe(2);
    expect(ran.err).toContain('a.trough:1:');
  });

  test('a file of 50 MB is refused by its size, at once', async () => {
    const ran = await troughline(['check'], {
      cwd: folderWith({ 'big.trough': new Uint8Array(50 * 1024 * 1024).fill(0x20) }),
    });
    isTold(ran);
    expect(ran.exit).toBe(2);
    expect(ran.err).toContain('big.trough: 50 MB');
  });

  test('a link that leads to itself is named', async () => {
    const cwd = folderWith({ 'b.trough': first });
    symlinkSync('a.trough', path.join(cwd, 'a.trough'));
    const ran = await troughline(['check'], { cwd });
    isTold(ran);
    expect(ran.exit).toBe(2);
    expect(ran.err).toContain('a.trough: a link that leads to itself');
  });

  test.skipIf(process.getuid?.() === 0)('a folder without rights is named', async () => {
    const cwd = folderWith({ 'closed/a.trough': first });
    chmodSync(path.join(cwd, 'closed'), 0);
    const ran = await troughline(['check'], { cwd });
    chmodSync(path.join(cwd, 'closed'), 0o700);
    isTold(ran);
    expect(ran.exit).toBe(2);
    expect(ran.err).toContain('no permission');
  });
});

describe('text that is unusual but right', () => {
  test('a byte order mark and Windows line ends change nothing', async () => {
    const plain = await troughline(['check', '--format', 'json'], { cwd: folderWith({ 'a.trough': first }) });
    const windows = await troughline(['check', '--format', 'json'], {
      cwd: folderWith({ 'a.trough': '\uFEFF' + first.replace(/\n/g, '\r\n') }),
    });
    isTold(windows);
    expect(JSON.parse(windows.out)).toEqual(JSON.parse(plain.out));
  });
});

describe('text that is wrong', () => {
  test.each([
    ['an unfinished block at the end of the file', 'conveyor A {\n  length '],
    ['a name used twice', 'plant A {\n}\nplant A {\n}\n'],
    ['a unit of the wrong dimension', 'plant A {\n  risk 5 kg\n}\n'],
    [
      'circular nonsense',
      'conveyor A {\n  plant A\n  liner A\n  screw A\n}\nliner A {\n  layer A 1 A\n}\nscrew A {\n  pitch A\n}\n',
    ],
    ['braces without end', '{'.repeat(5000)],
    ['one endless line', `plant ${'a'.repeat(200_000)} {`],
  ])('%s', async (_, text) => {
    const ran = await troughline(['check'], { cwd: folderWith({ 'a.trough': text }) });
    isTold(ran);
    expect(ran.exit).toBe(1);
    expect(ran.out).toMatch(/^a\.trough:\d+:\d+ /m);
  });

  test('ten thousand errors in one file are told, the most of them as a number', async () => {
    const text = `plant A {\n${'  risk 5 kg\n'.repeat(10_000)}}\n`;
    const ran = await troughline(['check'], { cwd: folderWith({ 'a.trough': text }) });
    isTold(ran);
    expect(ran.exit).toBe(1);
    expect(ran.out.split('\n').length).toBeLessThan(20_000);
    expect(ran.out).toMatch(/more/);
  });

  test('report, pack and sheet say so and write nothing half', async () => {
    const cwd = folderWith({ 'a.trough': 'conveyor A {\n  length ' });
    for (const args of [
      ['report', '--out', 'reports'],
      ['pack', 'J', '--out', 'packs'],
      ['sheet', 'A', '--out', 'sheets'],
    ]) {
      const ran = await troughline(args, { cwd });
      isTold(ran);
      expect(ran.exit).toBe(2);
    }
    expect(readdirSync(cwd)).toEqual(['a.trough']);
  });
});

describe('a command line that is wrong', () => {
  test.each([
    [['frobnicate'], /unknown command/],
    [['check', '--frobnicate'], /unknown option/],
    [['check', '--format', 'xml'], /not one of text, json/],
    [['report', '--as-of', '31.10.2026'], /YYYY-MM-DD/],
    [['explain', 'TL999'], /no such rule/],
    [['pack'], /missing required argument/],
    [['completion', 'tcsh'], /not one of bash/],
  ])('%j', async (args, expected) => {
    const ran = await troughline(args);
    isTold(ran);
    expect(ran.exit).toBe(2);
    expect(ran.err).toMatch(expected);
    expect(ran.out).toBe('');
  });
});
