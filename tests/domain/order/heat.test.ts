// What is hot work, what liner its sparks reach, how long it is watched, and which places are left alone for a while.

import { describe, expect, test } from 'vitest';
import type { BreakKind, Conveyor } from '../../../src/domain/model/conveyor.js';
import { stepActions, type Job, type StepAction } from '../../../src/domain/model/job.js';
import {
  isHot,
  isProtected,
  linerInReach,
  usualFireWatch,
  watchAfter,
} from '../../../src/domain/order/heat.js';
import { disturbs, dryingPairs, meet, restAfter, usualCooling } from '../../../src/domain/order/rest.js';
import { mustNotBeSplit } from '../../../src/domain/order/unsplit.js';
import { origin, screw, stated } from '../../kit/estate.js';
import { job, line, step, walked } from './stories.js';

const made = line([2, 2], [10, 10, 10]);
const plain = job(made, ['all']);
const change = (facts: Partial<NonNullable<Job['screwChange']>>): Job =>
  job(made, ['all'], { screwChange: { screw: screw(), origin: origin(), ...facts } });

describe('hot unless the author says otherwise', () => {
  const hot = (of: Job, joins = false): StepAction[] =>
    stepActions.filter((action) => isHot({ job: of, joins }, step(action)));
  test.each<readonly [string, Job, boolean, readonly StepAction[]]>([
    ['a job that changes no spiral', plain, false, ['remove screw', 'patch', 'insert screw', 'join screw']],
    [
      'cut and joined as it comes',
      change({}),
      false,
      ['remove screw', 'patch', 'insert screw', 'join screw'],
    ],
    ['cut cold', change({ cut: 'cold' }), false, ['patch', 'insert screw', 'join screw']],
    ['cut hot', change({ cut: 'hot' }), false, ['remove screw', 'patch', 'insert screw', 'join screw']],
    ['bolted joints', change({ joints: 'bolted' }), false, ['remove screw', 'patch']],
    [
      'welded joints',
      change({ joints: 'welded' }),
      false,
      ['remove screw', 'patch', 'insert screw', 'join screw'],
    ],
    ['joined by steps of their own', change({}), true, ['remove screw', 'patch', 'join screw']],
    ['bolted by steps of their own', change({ joints: 'bolted' }), true, ['remove screw', 'patch']],
  ])('%s', (_, of, joins, expected) => expect(hot(of, joins)).toEqual(expected));

  test('what the step says counts', () => {
    const on = (text: string): boolean => isHot({ job: plain, joins: false }, step(text));
    expect([on('patch cold work'), on('braces off hot work'), on('strip hot work shielded')]).toEqual([
      false,
      true,
      true,
    ]);
  });

  test.each([
    ['patch', false],
    ['patch cold work', false],
    ['patch hot work', false],
    ['patch hot work shielded', false],
    ['patch hot work wet', false],
    ['patch hot work shielded wet', true],
    ['patch hot work shielded wet to be confirmed', true],
  ])('%s: with shields and water: %s', (text, expected) => {
    expect(isProtected(step(text))).toBe(expected);
  });

  test.each([
    ['patch', 1],
    ['patch cold work', 1],
    ['patch hot work', 1],
    ['patch hot work fire watch 90 min', 1.5],
    ['strip', usualFireWatch],
  ])('%s is watched for %s h', (text, expected) => expect(watchAfter(step(text))).toBe(expected));
});

describe('liner in reach of sparks', () => {
  // Runs of two panels at 0, 2.2 and 4.4 m, with breaks of 200 mm between them.
  const three = (incline: number, kind: BreakKind): Conveyor => {
    const all = line([2, 2, 2], [10, 10, 10, 10], { incline: stated('angle', incline) });
    return { ...all, breaks: all.breaks.map((each) => (each.name === 'Gate2' ? { ...each, kind } : each)) };
  };
  test.each<readonly [string, Conveyor, string, readonly string[]]>([
    ['on the level, only under the work', three(0, 'slide gate'), 'run 2', ['2.1', '2.2']],
    ['uphill of it, nothing', three(20, 'slide gate'), 'panel 1 of run 1', ['1.1']],
    [
      'downhill of it, past gates',
      three(20, 'slide gate'),
      'panel 1 of run 3',
      ['1.1', '1.2', '2.1', '2.2', '3.1'],
    ],
    ['downhill, as far as the end plate', three(20, 'end plate'), 'panel 1 of run 3', ['3.1']],
    [
      'below the end plate nothing changes',
      three(20, 'end plate'),
      'panel 2 of run 2',
      ['1.1', '1.2', '2.1', '2.2'],
    ],
    [
      'a falling conveyor: towards the head',
      three(-20, 'slide gate'),
      'panel 2 of run 2',
      ['2.2', '3.1', '3.2'],
    ],
    ['a falling conveyor, to the end plate', three(-20, 'end plate'), 'panel 1 of run 2', ['2.1', '2.2']],
    ['a panel counts where its middle is', three(20, 'end plate'), 'from 5000 mm to 5400 mm', ['3.1']],
    [
      'and where the middle is just at the upper end',
      three(20, 'end plate'),
      'from 4400 mm to 4900 mm',
      ['3.1'],
    ],
    ['not where its middle is above', three(20, 'end plate'), 'from 4400 mm to 4899 mm', []],
    [
      'falling: just at the lower end',
      three(-20, 'end plate'),
      'from 500 mm to 900 mm',
      ['1.1', '1.2', '2.1', '2.2'],
    ],
    [
      'falling: not where its middle is above',
      three(-20, 'end plate'),
      'from 501 mm to 900 mm',
      ['1.2', '2.1', '2.2'],
    ],
  ])('%s', (_, conveyor, where, expected) => {
    const w = walked(job(conveyor, ['all']), [`patch ${where}`]);
    const found = linerInReach(w.ground, w.ground.areas[0] ?? []);
    expect(found.map(({ run, panel }) => `${run?.run.number}.${panel}`)).toEqual(expected);
  });

  test('of two places of work, each counts', () => {
    const of = job(three(20, 'end plate'), ['panel 1 of run 1', 'panel 2 of run 3']);
    const w = walked(of, ['patch']);
    expect(linerInReach(w.ground, w.ground.areas[0] ?? []).map(({ from }) => from)).toEqual([0, 4400, 5400]);
  });
});

describe('a place is left alone', () => {
  const ground = { job: plain, joins: false };
  test.each([
    ['clean dries 2 h', { kind: 'dries', hours: 2, assumed: false }],
    ['patch cools 45 min', { kind: 'cools', hours: 0.75, assumed: false }],
    ['patch dries 1 h cold work', { kind: 'dries', hours: 1, assumed: false }],
    ['patch', { kind: 'cools', hours: usualCooling, assumed: true }],
    ['patch cold work', undefined],
    ['remove screw', undefined],
    ['braces off hot work', undefined],
    ['clean', undefined],
  ])('%s', (text, expected) => expect(restAfter(ground, step(text))).toEqual(expected));

  test('by nobody who lays hands on it', () => {
    expect(stepActions.filter((action) => !disturbs(step(action)))).toEqual([
      'empty',
      'isolate',
      'prove dead',
      'gas test',
      'pause',
      'other work',
      'fire watch',
      'remove isolation',
      'run empty',
      'run loaded',
    ]);
  });

  test.each([
    ['run 1', 'run 2', false],
    ['run 1', 'panel 2 of run 1', true],
    ['from 0 mm to 1000 mm', 'from 1000 mm to 2000 mm', false],
    ['from 0 mm to 1001 mm', 'from 1000 mm to 2000 mm', false],
    ['from 0 mm to 1002 mm', 'from 1000 mm to 2000 mm', true],
    ['run 7', 'run 1', false],
    ['run 1', 'run 7', false],
  ])('%s and %s meet: %s', (a, b, expected) => {
    expect(meet(walked(plain, [`clean ${a}`, `clean ${b}`]).ground, 0, 1)).toBe(expected);
  });

  test('of several stretches, one in common is enough', () => {
    const of = job(made, ['panel 1 of run 1', 'panel 2 of run 2']);
    const w = walked(of, ['clean', 'clean run 2', 'clean panel 2 of run 1']);
    expect([meet(w.ground, 0, 1), meet(w.ground, 1, 0), meet(w.ground, 0, 2)]).toEqual([true, true, false]);
  });

  const pairs = (...lines: readonly string[]): (readonly [number, number, string])[] =>
    dryingPairs(walked(plain, ['d: isolate', ...lines])).map(({ step: at, other, rest }) => [
      at,
      other,
      rest.kind,
    ]);
  test.each<readonly [string, readonly string[], readonly (readonly [number, number, string])[]]>([
    [
      'the later written is told',
      ['a: clean run 1 after d dries 1 h', 'b: strip run 1 after d'],
      [[2, 1, 'dries']],
    ],
    ['whichever it is', ['b: strip run 1 after d', 'a: clean run 1 after d dries 1 h'], [[2, 1, 'dries']]],
    [
      'both ways where both rest',
      ['a: clean run 1 after d dries 1 h', 'b: patch run 1 after d'],
      [
        [2, 1, 'dries'],
        [2, 1, 'cools'],
      ],
    ],
    ['not one after the other', ['a: clean run 1 after d dries 1 h', 'b: strip run 1 after a'], []],
    ['not one before the other', ['b: strip run 1 after d', 'a: clean run 1 after b dries 1 h'], []],
    ['not where nothing rests', ['a: clean run 1 after d', 'b: strip run 1 after d'], []],
    ['not elsewhere', ['a: clean run 1 after d dries 1 h', 'b: strip run 2 after d'], []],
    ['not where it is only watched', ['a: patch run 1 after d', 'b: fire watch run 1 after d'], []],
  ])('%s', (_, lines, expected) => expect(pairs(...lines)).toEqual(expected));
});

test('what may be left half done at the end of a shift', () => {
  expect(stepActions.filter((action) => mustNotBeSplit(step(action)) === false)).toEqual([
    'empty',
    'pause',
    'covers off',
    'braces off',
    'hold-downs off',
    'strip',
    'clean',
    'other work',
    'fit',
    'hold-downs on',
    'braces on',
    'clear up',
    'covers on',
  ]);
  expect(mustNotBeSplit(step('strip hot work'))).toBe(true);
  expect(mustNotBeSplit(step('strip cold work'))).toBe(false);
});
