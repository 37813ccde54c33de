// `explain` as a manual of the language: every keyword of the grammar is in the list of words, and is found by its name.

import { AstUtils, GrammarAST } from 'langium';
import { expect, test } from 'vitest';
import { TroughlineGrammar } from '../../src/language/generated/grammar.js';
import { wordsCalled } from '../../src/language/word-list.js';
import { troughline } from './console.js';

const keywords = [
  ...new Set(
    AstUtils.streamAllContents(TroughlineGrammar())
      .filter(GrammarAST.isKeyword)
      .map(({ value }) => value)
      .filter((word) => /^[a-z]/.test(word)),
  ),
];

test('every keyword is found by its name', () => {
  expect(keywords.length).toBeGreaterThan(200);
  const missing = keywords.filter(
    (word) => !wordsCalled(word).some(({ entries }) => entries.some((each) => each.word === word)),
  );
  expect(missing).toEqual([]);
});

test('the list has each word with how its line goes', async () => {
  const { exit, out } = await troughline(['explain', 'words']);
  expect(exit).toBe(0);
  expect(out).toMatch(/^Plant\n\nplant Tarnholt/);
  expect(out).toContain('\ncolour ivory\n');
  expect(out).not.toMatch(/\$\{|undefined/);
  expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(120);
});

test.each([
  ['a word of two parts, without quotes', ['gate', 'shut'], /gate shut Gate\n {4}Shut the slide gate/],
  ['a word and those that begin with it', ['gas'], /\ngas test interval 2 h\n[^]*\nJobs\n\ngas test\n/],
  [
    'a word that lines hold and none begins with',
    ['bearing'],
    /\ntail bearing noise\n[^]*\nthrust bearing noise\n/,
  ],
  [
    'a word of the trade for a condition',
    ['seized'],
    /\ncover stuck at [^]*\nhatch stuck at [^]*\ngate stuck at /,
  ],
  ['a part and such a word', ['cover', 'seized'], /Records\n\ncover stuck at [^\n]*\n[^\n]*\n$/],
  ['a word of the trade for another one', ['amps'], /\ncurrent empty /],
  [
    'the trade’s name of a part',
    ['speed', 'switch'],
    /\nzero-speed sensor dead at [^]*\nzero-speed sensor bypassed at /,
  ],
  ['half of a word with a hyphen', ['zero', 'speed'], /\nzero-speed sensor dead at /],
  ['what it is of', ['sensor'], /\nzero-speed sensor dead at /],
  ['a word of a meaning', ['hoist'], /\nspiral held up by /],
  ['a rule', ['TL301'], /TL301/],
])('%s', async (_, words, expected) => {
  const { exit, out } = await troughline(['explain', ...words]);
  expect(exit).toBe(0);
  expect(out).toMatch(expected);
});

test('what nobody can place is said, with the lists', async () => {
  const { exit, err } = await troughline(['explain', 'qwertz']);
  expect(exit).toBe(2);
  expect(err).toMatch(/qwertz: no such rule, word or formula\. Run 'troughline explain'/);
});
