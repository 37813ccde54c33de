// Working time with tests of the air in it, minute by minute: shifts of 100 minutes, tests of 10 that must not be older than 30.
//
//   shift 1   test of the order ends at 20, then 30 of work | test 50–60 | 30 of work | test 90–100 would end with the shift: out
//   shift 2   test 100–110 | 30 of work | test 140–150 | 30 of work | test 180–190 | 10 of work to the end

import { describe, expect, it, test } from 'vitest';
import type { Step } from '../../../src/domain/model/job.js';
import { groundOf } from '../../../src/domain/order/ground.js';
import { airTestsOf, handBackOf } from '../../../src/domain/plan/air-tests.js';
import type { Way } from '../../../src/domain/plan/teams.js';
import { workAxis, type AirTests } from '../../../src/domain/plan/work-axis.js';
import { job, line, step, worldOf } from '../order/stories.js';

const nights = [
  { at: 100, length: 900 },
  { at: 200, length: 900 },
];
const air: AirTests = { first: 20, length: 10, every: 30 };
const tests = (of: AirTests | undefined, until = 200): readonly unknown[] =>
  workAxis(nights, of)
    .tests.filter(({ from }) => from < until)
    .map(({ from, to, why }) => [from, to, why]);

describe('without tests', () => {
  const plain = workAxis(nights, undefined);
  it('net time is working time', () => {
    expect([plain.breaks, plain.pauses, plain.tests, plain.lost, plain.longest]).toEqual([
      [100, 200],
      nights,
      [],
      [],
      100,
    ]);
    expect([0, 50, 100, 150].map((at) => plain.toWork(at, 'start'))).toEqual([0, 50, 100, 150]);
    expect([0, 50, 100, 150].map(plain.toNet)).toEqual([0, 50, 100, 150]);
    expect(plain.nights).toBe(nights);
  });
  it('goes on behind the last night, and no shift ends where there is none', () => {
    expect(plain.toWork(5000, 'finish')).toBe(5000);
    expect(plain.toNet(5000)).toBe(5000);
    const endless = workAxis([], undefined);
    expect([endless.longest, endless.breaks, endless.toWork(70, 'start')]).toEqual([Infinity, [], 70]);
  });
  it('the longest of several shifts', () => {
    expect(
      workAxis(
        [
          { at: 100, length: 1 },
          { at: 250, length: 1 },
          { at: 300, length: 1 },
        ],
        undefined,
      ).longest,
    ).toBe(150);
  });
});

describe('tests at their interval and after nights', () => {
  it('the first of the order is none of them; those after it by the watch', () => {
    expect(tests(air)).toEqual([
      // 20 + 30; a second at 90 would end with the shift, and nobody could work after it.
      [50, 60, 'interval'],
      [100, 110, 'break'],
      [140, 150, 'interval'],
      [180, 190, 'interval'],
    ]);
  });
  it('in net time: work stands still while the air is tested, and so do the minutes that are lost', () => {
    const axis = workAxis(nights, air);
    // Shift 1: 100 − 10 of test − 10 lost from 90 on. Shift 2: 100 − 3 tests.
    expect(axis.breaks).toEqual([80, 150]);
    expect(axis.longest).toBe(80);
    expect(axis.lost).toEqual([{ from: 90, to: 100 }]);
    expect(axis.pauses.slice(0, 5)).toEqual([
      { at: 50, length: 10 },
      // 900 of night, 10 lost before it; the test of the morning after it has its own place only where the first was before it.
      { at: 80, length: 900 + 10 + 10 },
      { at: 110, length: 10 },
      { at: 140, length: 10 },
      { at: 150, length: 900 + 10 },
    ]);
  });
  test.each<[number, number, number]>([
    // Net; work as a start, as a finish.
    [0, 0, 0],
    [49, 49, 49],
    [50, 60, 50],
    [51, 61, 61],
    [80, 110, 90],
    [81, 111, 111],
    [110, 150, 140],
    [150, 210, 200],
  ])('net %d is %d for a start and %d for a finish', (net, start, finish) => {
    const axis = workAxis(nights, air);
    expect([axis.toWork(net, 'start'), axis.toWork(net, 'finish')]).toEqual([start, finish]);
  });
  test.each<[number, number]>([
    [0, 0],
    [49, 49],
    [50, 50],
    [55, 50],
    [60, 50],
    [61, 51],
    [95, 80],
    [105, 80],
    [110, 80],
    [111, 81],
  ])('work %d is net %d', (work, net) => {
    expect(workAxis(nights, air).toNet(work)).toBe(net);
  });

  it.each<[string, AirTests, readonly unknown[]]>([
    ['after nights only', { first: 20, length: 10, every: undefined }, [[100, 110, 'break']]],
    [
      'none before the first of the order, which is in the second shift',
      { first: 120, length: 10, every: 30 },
      [[150, 160, 'interval']],
    ],
    [
      'the first of the order ends with the first shift',
      { first: 100, length: 10, every: 60 },
      [
        [100, 110, 'break'],
        [170, 180, 'interval'],
      ],
    ],
    ['none where a test is as long as the shift', { first: 20, length: 100, every: 30 }, []],
    ['one that is nearly so long', { first: 20, length: 99, every: undefined }, [[100, 199, 'break']]],
    [
      'one that ends a minute before the shift still leaves work; one that ends with it does not',
      { first: 20, length: 10, every: 69 },
      [
        [89, 99, 'interval'],
        [100, 110, 'break'],
        [179, 189, 'interval'],
      ],
    ],
    [
      'one that would end with the shift',
      { first: 20, length: 10, every: 70 },
      [
        [100, 110, 'break'],
        [180, 190, 'interval'],
      ],
    ],
  ])('%s', (_, of, expected) => {
    expect(tests(of)).toEqual(expected);
  });

  it('an interval that reaches over the end of the shift loses nothing', () => {
    expect(workAxis(nights, { first: 20, length: 10, every: 90 }).lost).toEqual([]);
    // 20 + 75 = 95: the last five minutes nobody may be inside.
    expect(workAxis(nights, { first: 20, length: 10, every: 75 }).lost).toEqual([{ from: 95, to: 100 }]);
  });

  it('a night is longer by the test of the morning where the first of the order was before it', () => {
    const pauses = (first: number) =>
      workAxis(nights, { first, length: 10, every: undefined }).pauses.map(({ at, length }) => [at, length]);
    expect(pauses(20)).toEqual([
      [100, 910],
      [190, 910],
    ]);
    expect(pauses(100)).toEqual([
      [100, 910],
      [190, 910],
    ]);
    expect(pauses(101)).toEqual([
      [100, 900],
      [200, 910],
    ]);
  });

  it('goes on behind the last night', () => {
    const [first] = workAxis([], air).tests;
    expect(first).toEqual({ net: 50, from: 50, to: 60, why: 'interval' });
    expect(workAxis([], air).tests[1]).toEqual({ net: 80, from: 90, to: 100, why: 'interval' });
  });
});

describe('when the air of a job is tested', () => {
  const of = (confinedSpace: boolean) => job(line([4], [0, 0], { confinedSpace }), ['all']);
  const way = (...minutes: readonly number[]): readonly Way[] =>
    minutes.map((each) => ({ crews: [], people: 1, unit: undefined, place: '', minutes: each, teams: [] }));
  function tested(
    lines: readonly string[],
    ways: readonly (readonly Way[])[],
    waits: readonly (readonly number[])[],
    { enclosed = true, whole = false, ends = [] as readonly number[] } = {},
  ): AirTests | undefined {
    const steps = lines.map((text) => step(text));
    const made = of(enclosed);
    return airTestsOf(groundOf(made, steps, worldOf(made)), steps, ways, waits, () => whole, ends);
  }
  it('never in an open trough, nor where nothing tests it', () => {
    expect(tested(['gas test all'], [way(10)], [[]], { enclosed: false })).toBeUndefined();
    expect(tested(['isolate'], [way(10)], [[]])).toBeUndefined();
  });
  it('first as early as what comes before it allows, by the shortest ways', () => {
    // 20 of isolating (the quicker of two ways), 5 of proving, then the longer of both, then 10 of testing.
    expect(
      tested(
        ['isolate', 'prove dead', 'gas test all every 2 h'],
        [way(30, 20), way(5), way(10)],
        [[], [], [0, 1]],
      ),
    ).toEqual({ first: 30, length: 10, every: 120 });
  });
  it('the earliest of several, at the shortest of their intervals', () => {
    expect(
      tested(
        ['gas test all every 2 h', 'gas test all every 1 h', 'gas test all'],
        [way(40), way(10), way(15)],
        [[], [], []],
      ),
    ).toEqual({ first: 10, length: 10, every: 60 });
    expect(tested(['gas test all'], [way(12)], [[]])).toEqual({ first: 12, length: 12, every: undefined });
  });
  it('after the night where it may not be split by it', () => {
    expect(
      tested(['isolate', 'gas test all'], [way(95), way(10)], [[], [0]], { ends: [100], whole: true })?.first,
    ).toBe(110);
    expect(tested(['isolate', 'gas test all'], [way(95), way(10)], [[], [0]], { ends: [100] })?.first).toBe(
      105,
    );
  });
  it('by the longer of two roads from the same step', () => {
    const lines = ['isolate', 'empty', 'prove dead', 'gas test all'];
    // 20 and 5, or 20 and 30; then 10.
    expect(tested(lines, [way(20), way(5), way(30), way(10)], [[], [0], [0], [1, 2]])?.first).toBe(60);
  });
  it('an interval of nothing is none', () => {
    expect(tested(['gas test all every 0 h'], [way(12)], [[]])?.every).toBeUndefined();
    expect(
      tested(['gas test all every 0 h', 'gas test all every 3 h'], [way(12), way(9)], [[], []])?.every,
    ).toBe(180);
  });
  it('an order that goes in a circle comes to an end', () => {
    expect(tested(['isolate', 'gas test all'], [way(5), way(10)], [[1], [0]])?.length).toBe(10);
  });
});

describe('the steps at the end for which nobody tests', () => {
  const inside = (each: Step): boolean => each.action === 'clean';
  const tail = (lines: readonly string[], waits: readonly (readonly number[])[]): readonly number[] =>
    handBackOf(
      lines.map((text) => step(text)),
      waits,
      inside,
    );
  it.each<[string, readonly string[], readonly (readonly number[])[], readonly number[]]>([
    [
      'all in line behind the last inside',
      ['clean all', 'remove isolation', 'run empty', 'run loaded'],
      [[], [0], [1], [2]],
      [1, 2, 3],
    ],
    ['none where the last is inside', ['isolate', 'clean all'], [[], [0]], []],
    [
      'only behind where two come together',
      ['clean all', 'remove isolation', 'gate open', 'run empty'],
      [[], [0], [0], [1, 2]],
      [3],
    ],
    ['none where two end it', ['clean all', 'run empty', 'run loaded'], [[], [0], [0]], []],
    [
      'what is waited for twice counts once',
      ['clean all', 'remove isolation', 'run empty'],
      [[], [0, 0], [1, 0]],
      [1, 2],
    ],
    ['all of it where nobody goes inside', ['isolate', 'run empty'], [[], [0]], [0, 1]],
    ['nothing of nothing', [], [], []],
  ])('%s', (_, lines, waits, expected) => {
    expect(tail(lines, waits)).toEqual(expected);
  });
});
