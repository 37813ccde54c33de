// From which end panels go in, and what carries them there: every kind of end, on either slope, at the borders.

import { describe, expect, test } from 'vitest';
import type { BreakKind, Conveyor } from '../../../src/domain/model/conveyor.js';
import { runsOf, type Run } from '../../../src/domain/model/runs.js';
import {
  canStartAt,
  holdsPanels,
  isSlippery,
  restsAt,
  startOf,
  uphillEnd,
  usualStartOf,
  type End,
} from '../../../src/domain/order/start.js';
import { gap, mm, origin, stated } from '../../kit/estate.js';
import { line, step } from './stories.js';

const on = (
  incline: number,
  facts: Partial<Conveyor> = {},
  allowances: readonly number[] = [10, 10],
): Conveyor => line([2], allowances, { incline: stated('angle', incline), ...facts });
const runOf = (conveyor: Conveyor, at = 0): Run => {
  const run = runsOf(conveyor)[at];
  if (!run) throw new Error('The story has a run.');
  return run;
};

// tan 8.53° = 0.15: friction of polyethylene on dry steel, towards the low end of data sheets.
test.each([
  [0, 'head', false],
  [8.5, 'head', false],
  [8.6, 'head', true],
  [90, 'head', true],
  [-8.5, 'tail', false],
  [-8.6, 'tail', true],
])('at %s° the %s is up, and a loose panel slides: %s', (incline, end, slippery) => {
  expect([uphillEnd(on(incline)), isSlippery(on(incline))]).toEqual([end, slippery]);
});

describe('the custom', () => {
  test.each<readonly [string, Conveyor, End, string]>([
    ['level', on(0), 'head', 'from the head: the custom where nothing is said'],
    ['a slope', on(20), 'head', 'from the head: top down on an incline'],
    ['a fall', on(-20), 'tail', 'from the tail: top down on an incline'],
    [
      'only the head takes up the error',
      on(20, {}, [0, 10]),
      'tail',
      'from the tail: only Head takes up the length error at the end',
    ],
    [
      'on a fall, only the tail does',
      on(-20, {}, [10, 0]),
      'head',
      'from the head: only Tail takes up the length error at the end',
    ],
  ])('%s', (_, conveyor, start, assumed) => {
    expect(usualStartOf(runOf(conveyor))).toEqual({ start, assumed });
    expect(startOf(step('fit'), runOf(conveyor))).toEqual({ start, assumed });
  });
  test('what the step says goes first', () => {
    expect(startOf(step('fit starting at tail'), runOf(on(20)))).toEqual({ start: 'tail' });
    expect(startOf(step('fit starting at head'), runOf(on(-20)))).toEqual({ start: 'head' });
  });
});

test.each<readonly [BreakKind, number, boolean]>([
  ['end plate', 10, true],
  ['joint ring', 10, true],
  ['slide gate', 10, false],
  ['slide gate', 0, true],
  ['inlet', 1, false],
  ['discharge', 0, true],
])('a %s that takes up %s mm carries panels: %s', (kind, allowance, expected) => {
  expect(holdsPanels(gap('X', kind, 0, 0, allowance))).toBe(expected);
});

describe('from the lower end', () => {
  const ends = (incline: number, kind: BreakKind, facts: Partial<Conveyor> = {}): readonly boolean[] => {
    const made = on(incline, facts);
    const run = runOf({ ...made, breaks: made.breaks.map((each) => ({ ...each, kind })) });
    return [canStartAt(run, 'tail'), canStartAt(run, 'head')];
  };
  test.each<readonly [string, number, BreakKind, readonly [boolean, boolean]]>([
    ['on a slope, off an inlet', 20, 'inlet', [false, true]],
    ['on a slope, off a plate', 20, 'end plate', [true, true]],
    ['on a fall, off an inlet', -20, 'inlet', [true, false]],
    ['on a fall, off a plate', -20, 'end plate', [true, true]],
    ['on a gentle slope', 5, 'inlet', [true, true]],
    ['on the level', 0, 'inlet', [true, true]],
  ])('%s, [tail, head] will do: %j', (_, incline, kind, expected) => {
    expect(ends(incline, kind)).toEqual(expected);
  });

  const rest = (at: number): Partial<Conveyor> => ({
    rests: [{ from: mm(at), to: mm(at), origin: origin() }],
  });
  // A stop carries the first panel from a millimetre before the break to 51 mm inside the run.
  test.each([
    [20, 0, [true, true]],
    [20, 51, [true, true]],
    [20, 52, [false, true]],
    [20, 2000, [false, true]],
    [-20, 2000, [true, true]],
    [-20, 1949, [true, true]],
    [-20, 1948, [true, false]],
    [-20, 0, [true, false]],
  ])('at %s° with a stop at %s mm: %j', (incline, at, expected) => {
    expect(ends(incline, 'inlet', rest(at))).toEqual(expected);
  });

  test.each<readonly [number, End, boolean]>([
    [1998, 'tail', false],
    [1999, 'tail', true],
    [2200, 'tail', true],
    [2251, 'tail', true],
    [2252, 'tail', false],
    [1948, 'head', false],
    [1949, 'head', true],
    [2201, 'head', true],
    [2202, 'head', false],
  ])('across a gate of 200 mm at 2 m, a stop at %s mm carries from the %s: %s', (at, start, expected) => {
    const two = line([2, 2], [10, 10, 10], rest(at));
    // The run above the gate starts at its tail there, the run below at its head.
    expect(restsAt(runOf(two, start === 'tail' ? 1 : 0), start)).toBe(expected);
  });
});
