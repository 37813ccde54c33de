// Border cases of the rules that keep people safe, told through the whole road from text to finding.

import { describe, expect, test } from 'vitest';
import { but, soundOrder } from '../../src/validation/telling/sound-order.js';
import { codesIn, findingsIn } from './findings-in.js';

const scope = '\n  outage Spring27\n  reline run above Gate\n  crews Alpha';
const two = (first: string, second: string): string =>
  `\njob J1 {\n  conveyor DG1${first}\n  crews Alpha\n}\njob J2 {\n  conveyor DG1${second}\n  crews Bravo\n}`;
const reline = '\n  reline run above Gate';

describe('two jobs on one conveyor', () => {
  test.each([
    ['the same outage', '\n  outage Spring27', '\n  outage Spring27', ['TL477']],
    [
      'one day shared',
      '\n  window 2027-04-12 to 2027-04-14',
      '\n  window 2027-04-14 to 2027-04-23',
      ['TL477'],
    ],
    ['no day shared', '\n  window 2027-04-12 to 2027-04-16', '\n  window 2027-04-17 to 2027-04-23', []],
    ['the second part of the first', '\n  outage Spring27', '\n  outage Spring27\n  part of J1', []],
    ['the first part of the second', '\n  outage Spring27\n  part of J2', '\n  outage Spring27', []],
    ['part of itself', '\n  outage Spring27', '\n  outage Spring27\n  part of J2', ['TL477', 'TL477']],
    ['part of nothing', '\n  outage Spring27', '\n  outage Spring27\n  part of J9', ['TL114', 'TL477']],
  ])('%s', (_, first, second, expected) => {
    const codes = codesIn('estate', two(first + reline, second + reline)).filter((code) =>
      ['TL477', 'TL114'].includes(code),
    );
    expect([...codes].sort()).toEqual(expected);
  });
});

describe('a tool that a step names', () => {
  const order = (note: string): string => {
    const marked = but(soundOrder, [
      'starting at head by Alpha attended by Bravo',
      `starting at head by Alpha attended by Bravo ${note}`,
    ]);
    return `\n  outage Spring27${reline}${marked}`;
  };
  test.each([
    ['is on the list of another job alone', '"with the Rubber mallet"', 'tool "depth gauge"', ['TL498']],
    ['is on both lists', '"with the rubber mallet"', 'tool "rubber mallet, 2 kg"', []],
    ['is on no list', '"with a hammer"', 'tool "depth gauge"', []],
    ['where the job has no list', '"with the rubber mallet"', '', []],
    ['where nothing is noted', '', 'tool "depth gauge"', []],
  ])('%s', (_, note, tools, expected) => {
    const other = '\n  window 2027-06-01 to 2027-06-05\n  reline run above Inlet\n  tool "rubber mallet"';
    const codes = codesIn('estate', two(`\n  ${tools}${order(note)}`, other));
    expect(codes.filter((code) => code === 'TL498')).toEqual(expected);
  });
});

describe('hot work', () => {
  const patched = (clause: string): string[] => [
    ...codesIn(
      'job',
      but(soundOrder, [
        '  strip run',
        `  patch run above Gate by Alpha attended by Bravo${clause}\n  fire watch run above Gate\n  strip run`,
      ]),
    ),
  ];
  test('a note never silences it, whatever words it holds', () => {
    for (const note of ['no shield to hand', 'shielded and wet, fire watch 60 min', 'hot work'])
      expect(patched(` "${note}"`)).toEqual(['TL416']);
  });
  test('what a fix demands is asked about until it is confirmed', () => {
    expect(patched(' hot work shielded wet fire watch 60 min to be confirmed')).toEqual(['TL472']);
    expect(patched(' hot work shielded wet fire watch 60 min')).toEqual([]);
  });
  test('no fix that assures something is taken without asking', () => {
    const [finding] = findingsIn(
      'job',
      but(soundOrder, [
        '  strip run',
        '  patch run above Gate by Alpha attended by Bravo\n  fire watch run above Gate\n  strip run',
      ]),
    );
    expect(finding?.fixes?.map(({ title }) => title)).toContain(
      'Demand shields, water and a fire watch, to be confirmed by the crew',
    );
    for (const fix of finding?.fixes ?? []) {
      const text = fix.edits.map((edit) => edit.text).join('');
      if (/shielded|cold work/.test(text)) expect(fix.preferred).toBeUndefined();
      if (/shielded/.test(text)) expect(text).toContain('to be confirmed');
    }
  });
});

describe('clauses that have no use', () => {
  const spoilt = (from: string, to: string): string[] => [...codesIn('job', but(soundOrder, [from, to]))];
  test.each([
    [
      '  clean run above Gate by Alpha attended by Bravo',
      '  clean run above Gate by Alpha attended by Bravo every 2 h',
    ],
    ['  isolate', '  isolate hot work shielded wet'],
    ['  run empty', '  run empty starting at head'],
  ])('%s', (from, to) => {
    expect(spoilt(from, to)).toContain('TL486');
  });
  test('hot work without a place', () => {
    expect(
      codesIn(
        'estate',
        `\njob J1 {\n  conveyor DG1\n  outage Spring27\n  crews Alpha\n  order {\n    isolate\n    prove dead\n    gas test\n    patch hot work shielded wet\n    fire watch\n    remove isolation\n    run empty\n    run loaded\n  }\n}`,
      ),
    ).toContain('TL486');
  });
});

describe('hatches', () => {
  test.each([
    ['hatch H1 at 9 m', []],
    ['hatch H1 at 9 m to 9.1 m', []],
    ['hatch H1 at 9 m to 9.099 m', ['TL487']],
    ['hatch H1 at 9 m to 10 m width 99 mm', ['TL487']],
    ['hatch H1 at 9 m to 10 m width 100 mm', []],
  ])('%s', (lines, expected) => {
    expect(codesIn('conveyor', lines)).toEqual(expected);
  });
});

describe('the smallest closing piece', () => {
  test.each([
    ['299 mm', []],
    ['301 mm', []],
    ['302 mm', ['TL480']],
  ])('of run 1, 300 mm long, against %s', (least, expected) => {
    expect(codesIn('job', `reline run 1\nminimum closing piece ${least}`)).toEqual(expected);
  });
});

test('a scope given, the job alone is silent', () => {
  expect(codesIn('estate', `\njob J1 {\n  conveyor DG1${scope}\n}`)).toEqual([]);
});
