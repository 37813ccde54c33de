// `check --fix` on files: several mends in a file, in several files, and one that would change what another changes; and
// `--as-offered`, which writes the lines that are offered for lines that cannot be read.

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { folderWith, troughline } from './console.js';

async function fixed(files: Readonly<Record<string, string>>): Promise<{
  readonly texts: Readonly<Record<string, string>>;
  readonly said: string;
  readonly exit: number;
}> {
  const cwd = folderWith(files);
  const { err, exit } = await troughline(['check', '--fix'], { cwd });
  const texts = Object.fromEntries(
    Object.keys(files).map((name) => [name, readFileSync(path.join(cwd, name), 'utf8')]),
  );
  return { texts, said: err, exit };
}

describe('--fix', () => {
  test('two and more mends in one file, each of another length than what it replaces', async () => {
    const { texts, said, exit } = await fixed({
      'a.trough': 'plant A {\n  outage Spring27 30.1.2027 to 31.1.2027\n  risk 2,5 %\n}\n',
    });
    expect(texts['a.trough']).toBe(
      'plant A {\n  outage Spring27 2027-01-30 to 2027-01-31\n  risk 2.5 %\n}\n',
    );
    expect(said).toBe('3 findings mended in 1 file\n');
    expect(exit).toBe(0);
  });

  test('mends in two files; a file without any is left as it is', async () => {
    const sound = 'plant C {\n  risk 3 %\n}\n';
    const { texts, said } = await fixed({
      'a.trough': 'plant A {\n  risk 2,5 %\n}\n',
      'b.trough': 'plant B {\n  risk 3,5 %\n}\n',
      'c.trough': sound,
    });
    expect(texts).toEqual({
      'a.trough': 'plant A {\n  risk 2.5 %\n}\n',
      'b.trough': 'plant B {\n  risk 3.5 %\n}\n',
      'c.trough': sound,
    });
    expect(said).toBe('2 findings mended in 2 files\n');
  });

  test('one mend is told in the singular, none is not told', async () => {
    expect((await fixed({ 'a.trough': 'plant A {\n  risk 2,5 %\n}\n' })).said).toBe(
      '1 finding mended in 1 file\n',
    );
    expect((await fixed({ 'a.trough': 'plant A {\n  risk 2.5 %\n}\n' })).said).toBe('');
  });

  test('a temperature of a bearing reads without its word, one of a cover is told and stays', async () => {
    const written =
      'inspection K1 2026-03-02 meter 100 h {\n  tail bearing 48 degC\n  motor 61 degC slight\n  cover bent 48 degC at 3 m\n}\n';
    const { texts } = await fixed({ 'a.trough': written });
    expect(texts['a.trough']).toBe(written);
    const ran = await troughline(['check', '--format', 'json'], { cwd: folderWith({ 'a.trough': written }) });
    const { findings } = JSON.parse(ran.out) as { findings: { code: string; line: number }[] };
    expect(findings.filter(({ code }) => code === 'TL104').map(({ line }) => line)).toEqual([4]);
  });

  test('needs files', async () => {
    const ran = await troughline(['check', '-', '--fix'], { stdin: 'plant A {\n  risk 2,5 %\n}\n' });
    expect(ran.exit).toBe(2);
    expect(ran.err).toContain('--fix needs files, not standard input');
  });
});

describe('--as-offered', () => {
  const look =
    'inspection K1 2026-03-02 meter 100 h {\n  brace rattles slight\n  nothing else seen\n  at 3 m clok 7\n}\n';

  /** Lines that cannot be read, and how many lines are offered for each. */
  const unread = (json: string): readonly { readonly line: number; readonly offers: number }[] =>
    (
      JSON.parse(json) as { readonly findings: readonly { code: string; line: number; fixes: string[] }[] }
    ).findings.flatMap(({ code, line, fixes }) => (code === 'TL101' ? [{ line, offers: fixes.length }] : []));

  test('writes each line as it is offered and tells it; what nothing is offered for stays and is told', async () => {
    const cwd = folderWith({ 'a.trough': look });
    const before = await troughline(['check', '--format', 'json'], { cwd });
    expect(unread(before.out)).toEqual([
      { line: 2, offers: 1 },
      { line: 3, offers: 1 },
      { line: 4, offers: 0 },
    ]);
    const { err, out } = await troughline(['check', '--as-offered', '--format', 'json'], { cwd });
    const text = readFileSync(path.join(cwd, 'a.trough'), 'utf8');
    expect(text).toBe(
      look
        .replace('brace rattles slight', 'finding brace slight "rattles"')
        .replace('nothing else seen', 'finding "nothing else seen"'),
    );
    expect(err).toContain('a.trough:2: brace rattles slight\n  now: finding brace slight "rattles"\n');
    expect(err).toContain('2 lines written as offered in 1 file; read each of them\n');
    expect(unread(out)).toEqual([{ line: 4, offers: 0 }]);
  });

  test('a second run has nothing to write, and --fix alone takes no offer', async () => {
    const cwd = folderWith({ 'a.trough': look });
    await troughline(['check', '--fix'], { cwd });
    expect(readFileSync(path.join(cwd, 'a.trough'), 'utf8')).toBe(look);
    await troughline(['check', '--as-offered'], { cwd });
    const once = readFileSync(path.join(cwd, 'a.trough'), 'utf8');
    const again = await troughline(['check', '--as-offered'], { cwd });
    expect(again.err).not.toContain('written as offered');
    expect(readFileSync(path.join(cwd, 'a.trough'), 'utf8')).toBe(once);
  });

  test('what is over is written last, by what the other lines open', async () => {
    const first = 'inspection K1 2026-03-02 meter 100 h {\n  panel bowed 20 mm at 6.2 m serious\n}\n';
    const cwd = folderWith({
      'a.trough': 'inspection K1 2026-04-02 meter 200 h {\n  panel bowed at 6.2 m gone\n}\n',
      'b.trough': first,
      'k.trough': 'conveyor K1 {\n  no length\n}\n',
    });
    await troughline(['check', '--as-offered'], { cwd });
    expect(readFileSync(path.join(cwd, 'a.trough'), 'utf8')).toContain(
      'closed finding panel at 6.2 m "bowed gone"',
    );
  });

  test('needs files', async () => {
    const ran = await troughline(['check', '-', '--as-offered'], { stdin: look });
    expect(ran.exit).toBe(2);
    expect(ran.err).toContain('--as-offered needs files, not standard input');
  });
});
