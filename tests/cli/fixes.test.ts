// `check --fix` on files: several mends in a file, in several files, and one that would change what another changes.

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

  test('needs files', async () => {
    const ran = await troughline(['check', '-', '--fix'], { stdin: 'plant A {\n  risk 2,5 %\n}\n' });
    expect(ran.exit).toBe(2);
    expect(ran.err).toContain('--fix needs files, not standard input');
  });
});
