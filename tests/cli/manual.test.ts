// The manual: every command has one, it says what the command takes as it is, and man can read it.

import { Command } from 'commander';
import { describe, expect, test } from 'vitest';
import { manualFacts } from '../../src/cli/manual/facts.js';
import { manualOf } from '../../src/cli/manual/manual.js';
import { manualRoff } from '../../src/cli/manual/roff.js';
import { manualText } from '../../src/cli/manual/text.js';
import { troughline } from './console.js';

/** Names of all commands, as the manual of the program lists them; below git its own. */
async function commands(): Promise<string[][]> {
  const listed = async (path: readonly string[]): Promise<string[][]> => {
    const { out } = await troughline(['help', ...path]);
    const section = /\nCOMMANDS\n([\s\S]*?)\n\n[A-Z]/.exec(out)?.[1] ?? '';
    return [...section.matchAll(/^ {4}([a-z]+)\b/gm)].map(([, name = '']) => [...path, name]);
  };
  const top = await listed([]);
  const below = await Promise.all(top.map(listed));
  return [...top, ...below.flat()];
}

describe('every command', () => {
  test('has a manual with its sections, options, arguments and ends', async () => {
    const paths = await commands();
    expect(paths.length).toBeGreaterThan(19);
    expect(paths.map((path) => path.join(' ')).sort()).toEqual(Object.keys(manualFacts).sort());
    for (const path of paths) {
      const { exit, out } = await troughline(['help', ...path]);
      expect(exit).toBe(0);
      const heads = out.split('\n').filter((line) => /^[A-Z ]+$/.test(line) && line !== '');
      expect(heads, path.join(' ')).toEqual(
        expect.arrayContaining(['NAME', 'SYNOPSIS', 'DESCRIPTION', 'EXIT STATUS', 'SEE ALSO']),
      );
      const help = (await troughline([...path, '--help'])).out;
      for (const [option] of help.matchAll(/(?<=^ {2}(?:-\w, )?)--[a-z-]+/gm))
        expect(out, `${path.join(' ')} ${option}`).toContain(option);
      for (const [, example = ''] of help.matchAll(/^ {2}(troughline .*)$/gm))
        expect(out).toContain(example.trim());
      expect(out).not.toMatch(/default: (?:\[\]|false)/);
    }
  });

  test('1 stands where a command can end with it, and not at a month', async () => {
    const { out } = await troughline(['help', 'month']);
    expect(out).not.toMatch(/EXIT STATUS[\s\S]*\n {4}1\n/);
    for (const name of ['check', 'format', 'tables', 'diff', 'import'])
      expect((await troughline(['help', name])).out).toMatch(/EXIT STATUS[\s\S]*\n {4}1\n/);
  });
});

test('the program as a whole has the environment and leads on; what is no command is told', async () => {
  const { out } = await troughline(['help']);
  expect(out).toMatch(/ENVIRONMENT\n[\s\S]*SOURCE_DATE_EPOCH/);
  expect(out).toContain('troughline help COMMAND');
  expect(await troughline(['help', 'repot'])).toMatchObject({
    exit: 2,
    err: expect.stringContaining('repot: no such command; one of check, report'),
  });
  expect(await troughline(['help', 'git', 'pull'])).toMatchObject({
    exit: 2,
    err: expect.stringContaining('one of setup'),
  });
});

describe('a page', () => {
  const command = new Command('odd')
    .summary('does \\ things - and "more"')
    .description(`.first a dot, then ${'word '.repeat(40)}`)
    .option('-x, --x-ray <file>', "'quoted' at the start")
    .addHelpText('after', '\nExamples:\n  .hidden --x-ray a\\b\n\nOne note.\n\nTwo:\n  lines');
  const manual = manualOf(command, ['odd'], '1.2');

  test('as text is 78 columns wide, examples and lists as they are', () => {
    const text = manualText(manual);
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(78);
    expect(text).toContain(
      'EXAMPLES\n    .hidden --x-ray a\\b\n\nNOTES\n    One note.\n    Two:\n      lines\n',
    );
  });

  test('as source for man holds no request but ours, and every sign stands for itself', () => {
    const roff = manualRoff(manual);
    const requests = roff.split('\n').filter((line) => /^[.']/.test(line));
    for (const request of requests) expect(request).toMatch(/^\.(?:TH|SH|B|PP|TP|nf|fi)\b/);
    expect(roff).toContain('\\&.first a dot');
    expect(roff).toContain("\\&'quoted' at the start");
    expect(roff).toContain('\\&.hidden \\-\\-x\\-ray a\\eb');
    expect(roff).toContain('odd \\- does \\e things \\- and \\(dqmore\\(dq');
    expect(manualRoff(manualOf(command, ['odd'], '1.2'))).toBe(roff);
  });
});
