import { describe, expect, test } from 'vitest';
import { criticalPath, type CpmActivity } from '../../../src/domain/plan/critical-path.js';

const list = (rows: readonly (readonly [string, number, string])[]): CpmActivity[] =>
  rows.map(([name, duration, after]) => ({ name, duration, after: after === '' ? [] : after.split(' ') }));

// Data of cpp.mod among the examples of GLPK (building a house), which states the optimum 46.
const house = list([
  ['A', 3, ''],
  ['B', 4, 'A'],
  ['C', 3, 'B'],
  ['D', 10, 'B'],
  ['E', 8, 'D'],
  ['F', 4, 'D'],
  ['G', 6, 'D'],
  ['H', 8, 'C E F G'],
  ['I', 5, 'H'],
  ['J', 5, 'H'],
  ['K', 4, 'I'],
  ['L', 2, 'J'],
  ['M', 4, 'K L'],
]);

// A study text's worked example of the method: 16 h, critical A-B-D-E-G, slack 1 for C and F.
const study = list([
  ['A', 6, ''],
  ['B', 2, 'A'],
  ['C', 2, 'A'],
  ['D', 3, 'B'],
  ['F', 2, 'C'],
  ['E', 4, 'D F'],
  ['G', 1, 'E'],
]);

function found(activities: readonly CpmActivity[]) {
  const result = criticalPath(activities);
  if (result.kind !== 'found') throw new Error(result.kind);
  return result;
}

test('GLPK example: 46', () => {
  expect(found(house).duration).toBe(46);
});

test('study text: 16 h, the critical chain, and the slack of the others', () => {
  const result = found(study);
  expect(result.duration).toBe(16);
  expect(result.path).toEqual(['A', 'B', 'D', 'E', 'G']);
  expect(result.times.filter((each) => !each.critical).map((each) => [each.name, each.totalFloat])).toEqual([
    ['C', 1],
    ['F', 1],
  ]);
  expect(result.times.find((each) => each.name === 'C')?.freeFloat).toBe(0);
  expect(result.times.find((each) => each.name === 'F')?.freeFloat).toBe(1);
});

describe('what cannot be timed', () => {
  test('a circle names its members', () => {
    expect(
      criticalPath(
        list([
          ['A', 1, ''],
          ['B', 1, 'C A'],
          ['C', 1, 'B'],
          ['D', 1, 'A'],
        ]),
      ),
    ).toEqual({ kind: 'circular', names: ['B', 'C'] });
  });
  test('a name that nothing has', () => {
    expect(criticalPath(list([['A', 1, 'Z']]))).toEqual({ kind: 'unknown', name: 'A', after: 'Z' });
  });
  test('a negative or missing duration is a fault', () => {
    expect(() => criticalPath(list([['A', -1, '']]))).toThrow(RangeError);
    expect(() => criticalPath(list([['A', NaN, '']]))).toThrow(RangeError);
  });
  test('nothing to do takes no time', () => {
    expect(criticalPath([])).toEqual({ kind: 'found', duration: 0, times: [], path: [] });
  });
});
