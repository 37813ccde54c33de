// From a schedule to the rows of a plan: order, names to wait for, floats, tests of the air in between, the chain that counts,
// and the text that is written. Small schedules, reckoned by hand.

import { describe, expect, it, test } from 'vitest';
import type { Step } from '../../../src/domain/model/job.js';
import { byStart, chainOf } from '../../../src/domain/plan/arrange.js';
import { floatsOf, type Placed } from '../../../src/domain/plan/floats.js';
import type { JobPlan, PlannedStep } from '../../../src/domain/plan/job-plan.js';
import { layOver, type Arranged, type LaidOver } from '../../../src/domain/plan/lay-over.js';
import { namedSteps, waitsOf } from '../../../src/domain/plan/named-steps.js';
import { repeatsOf, withRepeatedTests } from '../../../src/domain/plan/repeated-tests.js';
import type { Way } from '../../../src/domain/plan/teams.js';
import type { TimeRules } from '../../../src/domain/plan/time-rules.js';
import { workAxis, type RepeatedTest } from '../../../src/domain/plan/work-axis.js';
import { workCalendar } from '../../../src/domain/plan/work-calendar.js';
import { writeOrder } from '../../../src/domain/plan/write-order.js';
import { on, origin, plant } from '../../kit/estate.js';
import { crew, job, line, plannedStep, step } from '../order/stories.js';

describe('positions by start', () => {
  const laid = (start: readonly number[], finish: readonly number[]): LaidOver => ({
    start,
    finish,
    mode: start.map(() => 0),
    makespan: 0,
    lowerBound: 0,
    tests: [],
  });
  test.each<[string, readonly number[], readonly number[], readonly number[]]>([
    ['by the beginning', [20, 0, 10], [30, 5, 40], [1, 2, 0]],
    ['of those that begin together the first to end', [10, 10, 10], [30, 20, 40], [1, 0, 2]],
    ['of those that are alike as listed', [5, 5, 5], [9, 9, 9], [0, 1, 2]],
  ])('%s', (_, start, finish, order) => {
    expect(byStart(laid(start, finish))).toEqual(order);
  });
});

describe('what a step in a written order waits for', () => {
  const none: readonly (readonly number[])[] = [[], [], []];
  /** Three steps; teams by step. */
  const waits = (
    times: readonly (readonly [number, number])[],
    teams: readonly (readonly number[])[],
    more: {
      readonly stated?: readonly (readonly number[])[];
      readonly apart?: readonly (readonly [number, number])[];
      readonly order?: readonly number[];
    } = {},
  ): number[][] =>
    waitsOf(
      more.order ?? times.map((_, i) => i),
      times.map(([, finish]) => finish),
      times.map(([start]) => start),
      more.stated ?? none,
      more.apart ?? [],
      (i) => teams[i] ?? [],
    );
  const inLine: readonly (readonly [number, number])[] = [
    [0, 10],
    [10, 20],
    [20, 30],
  ];
  test.each<[string, number[][], number[][]]>([
    ['nothing where nobody is shared', waits(inLine, [[0], [1], [2]]), [[], [], []]],
    ['what the same team did before, all of it', waits(inLine, [[0], [0], [0]]), [[], [0], [0, 1]]],
    ['one team in common is enough', waits(inLine, [[0, 3], [1], [2, 3]]), [[], [], [0]]],
    ['what it is said to wait for', waits(inLine, [[0], [1], [2]], { stated: [[], [], [1]] }), [[], [], [1]]],
    [
      'what must not overlap with it, whichever way it is said',
      waits(inLine, [[0], [1], [2]], {
        apart: [
          [2, 0],
          [0, 1],
        ],
      }),
      [[], [0], [0]],
    ],
    [
      'not what overlaps it in time',
      waits(
        [
          [0, 11],
          [10, 20],
          [20, 30],
        ],
        [[0], [0], [1]],
      ),
      [[], [], []],
    ],
    [
      'in their order, however they are said',
      waits(inLine, [[0], [1], [2]], { stated: [[], [], [1, 0]] }),
      [[], [], [0, 1]],
    ],
    [
      'in positions of the order',
      waits(
        [
          [10, 20],
          [0, 10],
          [20, 30],
        ],
        [[0], [0], [0]],
        { order: [1, 0, 2] },
      ),
      [[], [0], [0, 1]],
    ],
  ])('%s', (_, found, expected) => {
    expect(found).toEqual(expected);
  });
  it('of two that take no time the earlier in the order is first', () => {
    expect(
      waits(
        [
          [10, 10],
          [10, 10],
        ],
        [[0], [0]],
      ),
    ).toEqual([[], [0]]);
  });
});

describe('names and `after`, in as few words as will do', () => {
  const steps = ['isolate', 'prove dead', 'clean all', 'strip all'].map((text) => step(text));
  const words = (waits: readonly (readonly number[])[]): readonly string[] =>
    namedSteps(steps.slice(0, waits.length), waits).map(
      ({ name, after }) => `${name ?? ''}<${after.map((use) => use.name).join(',')}`,
    );
  test.each<[string, readonly (readonly number[])[], readonly string[]]>([
    ['one after another: none', [[], [0], [0, 1]], ['<', '<', '<']],
    ['through what it waits for: none', [[], [0], [1]], ['<', '<', '<']],
    ['not waiting for the one above: the name of the one before', [[], [0], [0]], ['s1<', '<', '<s1']],
    ['only the nearest are named', [[], [0], [1], [0, 1]], ['<', 's1<', '<', '<s1']],
    ['two that are both nearest', [[], [], [0], [0, 1]], ['s1<', 's2<', '<s1', '<s1,s2']],
    ['nothing at all: nothing to name, and the second does not wait', [[], []], ['<', '<']],
    [
      'names in the order of the steps, not of who waits first',
      [[], [], [1], [0]],
      ['s1<', 's2<', '<s2', '<s1'],
    ],
  ])('%s', (_, waits, expected) => {
    expect(words(waits)).toEqual(expected);
  });
});

it('a step that nobody waits for by name has none', () => {
  const [first] = namedSteps([step('isolate'), step('prove dead')], [[], [0]]);
  expect(first && 'name' in first).toBe(false);
});

describe('floats, backwards from the end', () => {
  const placed = (
    start: number,
    finish: number,
    after: readonly number[] = [],
    more: Partial<Placed> = {},
  ): Placed => ({
    start,
    finish,
    after,
    whole: false,
    unit: undefined,
    extent: undefined,
    ...more,
  });
  const rules = { nights: [], move: 5 };
  test.each<[string, readonly Placed[], readonly number[]]>([
    ['nothing', [], []],
    ['one step has none', [placed(0, 10)], [0]],
    ['beside a longer one: the difference', [placed(0, 10), placed(0, 4)], [0, 6]],
    ['up to what follows', [placed(0, 4), placed(6, 10, [0])], [2, 0]],
    ['the least of what several leave', [placed(0, 4), placed(6, 10, [0]), placed(5, 9, [0])], [2, 0, 1]],
    ['never negative, though what follows overlaps', [placed(0, 4), placed(3, 10, [0])], [0, 0]],
  ])('%s', (_, steps, expected) => {
    expect(floatsOf(steps, rules)).toEqual(expected);
  });
  it('less the time a platform takes to another place', () => {
    const two = (unit: string, extent: readonly [number, number] | undefined) => [
      placed(0, 4, [], { unit: 'MP1', extent: [0, 10] }),
      placed(12, 20, [0], { unit, extent }),
    ];
    expect(floatsOf(two('MP1', [20, 30]), rules)).toEqual([3, 0]);
    expect(floatsOf(two('MP1', [5, 30]), rules)).toEqual([8, 0]);
    expect(floatsOf(two('MP2', [20, 30]), rules)).toEqual([8, 0]);
    expect(floatsOf(two('MP1', undefined), rules)).toEqual([8, 0]);
    expect(
      floatsOf([placed(0, 4, [], { extent: [0, 10] }), placed(12, 20, [0], { extent: [20, 30] })], rules),
    ).toEqual([8, 0]);
  });
  it('a platform whose first stretch is not known is not moved', () => {
    const steps = [placed(0, 4, [], { unit: 'MP1' }), placed(12, 20, [0], { unit: 'MP1', extent: [20, 30] })];
    expect(floatsOf(steps, rules)).toEqual([8, 0]);
  });
  it('a night after its latest end is not in its way', () => {
    const nights = [
      { at: 10, length: 100 },
      { at: 15, length: 100 },
    ];
    expect(floatsOf([placed(0, 4, [], { whole: true }), placed(12, 20, [0])], { nights, move: 0 })).toEqual([
      6, 0,
    ]);
  });
  it('not across the end of a shift where it may not be split', () => {
    const nights = [{ at: 10, length: 100 }];
    const two = (whole: boolean) => [placed(0, 4, [], { whole }), placed(12, 20, [0])];
    // As late as 8 to 12 it would lie across 10: 6 to 10.
    expect(floatsOf(two(true), { nights, move: 0 })).toEqual([6, 0]);
    expect(floatsOf(two(false), { nights, move: 0 })).toEqual([8, 0]);
    // Ending or beginning with the shift is not across it.
    expect(floatsOf([placed(0, 4, [], { whole: true }), placed(10, 20, [0])], { nights, move: 0 })).toEqual([
      6, 0,
    ]);
    expect(floatsOf([placed(0, 4, [], { whole: true }), placed(14, 20, [0])], { nights, move: 0 })).toEqual([
      10, 0,
    ]);
    // Two ends of shifts in its way: before the first.
    const two2 = [placed(0, 6, [], { whole: true }), placed(13, 20, [0])];
    expect(
      floatsOf(two2, {
        nights: [
          { at: 8, length: 9 },
          { at: 12, length: 9 },
        ],
        move: 0,
      }),
    ).toEqual([2, 0]);
  });
  it('by its own way of reckoning when it must begin', () => {
    expect(
      floatsOf([placed(0, 4, [], { begins: (finish) => finish - 7 }), placed(12, 20, [0])], rules),
    ).toEqual([5, 0]);
  });
  it('less the wait for what dries or cools, by the clock', () => {
    const rests = (clock: number, nights: readonly { at: number; length: number }[] = []) =>
      floatsOf([placed(0, 4), placed(12, 20, [0], { rests: [{ on: 0, clock }] })], { nights, move: 0 });
    expect(rests(5)).toEqual([3, 0]);
    expect(rests(0)).toEqual([8, 0]);
    // A night of 100 at 10 lets it dry: it may end with the shift, at 10.
    expect(rests(50, [{ at: 10, length: 100 }])).toEqual([6, 0]);
  });
});

describe('the chain of which every delay delays the end', () => {
  const isolate = step('isolate');
  const chain = (
    ...rows: readonly (readonly [number, number, readonly number[], boolean?])[]
  ): readonly number[] =>
    chainOf(
      rows.map(([start, finish, after, critical = true]) =>
        plannedStep(isolate, start, finish, { after, critical }),
      ),
    );
  test.each<[string, readonly number[], readonly number[]]>([
    [
      'from the first to the last',
      chain([0, 2, []], [2, 5, [0]], [2, 4, [0], false], [5, 6, [1, 2]]),
      [0, 1, 3],
    ],
    ['back through the latest of what was waited for', chain([0, 4, []], [0, 3, []], [4, 6, [1, 0]]), [0, 2]],
    [
      'of two that end together the one that is listed first',
      chain([0, 4, []], [0, 4, []], [4, 6, [1, 0]]),
      [1, 2],
    ],
    ['a step of no length at the beginning is part of it', chain([0, 0, []], [0, 2, [0]]), [0, 1]],
    [
      'the longer of two that were waited for, were it the first listed',
      chain([0, 5, []], [0, 3, []], [5, 6, [0, 1]]),
      [0, 2],
    ],
    ['the last that ends, were it listed before', chain([0, 2, []], [2, 9, [0]], [2, 3, [0]]), [0, 1]],
    ['not what is not critical', chain([0, 2, [], false], [3, 5, [0]]), [1]],
    ['the first that ends last', chain([0, 5, []], [0, 5, []]), [0]],
    ['nothing of nothing', chain(), []],
  ])('%s', (_, found, expected) => {
    expect(found).toEqual(expected);
  });
});

describe('repeated tests of the air as rows', () => {
  const made = job(line([4], [0, 0], { confinedSpace: true, plant: plant() }), ['all'], {
    crews: [crew('Alpha', 2), crew('Bravo', 2)],
    window: { from: on('2027-02-01'), to: on('2027-02-28'), origin: origin() },
  });
  const calendar = workCalendar(made); // 7:00 to 15:00
  const gas = step('g: gas test run 1 every 2 h', made);
  const at = (from: number, to: number, why: RepeatedTest['why'] = 'interval'): RepeatedTest => ({
    net: from * 60,
    from: from * 60,
    to: to * 60,
    why,
  });
  const clean = step('clean all', made);
  const rows = [
    plannedStep(gas, 0, 0.5, { float: 3 }),
    plannedStep(clean, 0.5, 5, { after: [0], float: 1, crews: ['Bravo'] }),
    plannedStep(clean, 6, 7, { after: [1], float: 2 }),
  ];
  const withTests = (steps: readonly PlannedStep[], ...tests: readonly RepeatedTest[]) =>
    withRepeatedTests(made, steps, { tests }, calendar);

  it('stand where they begin, and positions follow them', () => {
    const { steps, position } = withTests(rows, at(2.5, 3), at(6, 6.5, 'break'));
    expect(steps.map(({ step: of, repeat, start }) => [of.action, repeat, start])).toEqual([
      ['gas test', undefined, 0],
      ['clean', undefined, 0.5],
      ['gas test', 'interval', 2.5],
      // Before what begins with it.
      ['gas test', 'break', 6],
      ['clean', undefined, 6],
    ]);
    expect(position).toEqual([0, 1, 4]);
    expect(steps.map(({ after }) => after)).toEqual([[], [0], [0], [0], [1]]);
  });
  it('have their hours, their crew and why they are made', () => {
    const [, , first, second] = withTests(rows, at(2.5, 3), at(6, 6.5, 'break')).steps;
    expect(first).toMatchObject({
      start: 2.5,
      finish: 3,
      crews: ['Alpha'],
      people: 2,
      unit: undefined,
      critical: false,
    });
    expect([first?.from?.hour, first?.to?.hour]).toEqual([9.5, 10]);
    expect([first?.work.basis, second?.work.basis]).toEqual(['again after 2 h', 'again before work goes on']);
    // No step of the order: neither named nor repeated by itself.
    expect([
      first?.step.name,
      first?.step.every,
      first?.step.after,
      first?.step.crews.map(({ use }) => use.name),
    ]).toEqual([undefined, undefined, [], ['Alpha']]);
  });
  it('after an interval that nobody stated', () => {
    const plain = plannedStep(step('gas test run 1', made), 0, 0.5);
    expect(
      withTests([plain, ...rows.slice(1)], at(2, 2.5)).steps.find(({ repeat }) => repeat)?.work.basis,
    ).toBe('again after its interval');
  });
  it('of the last test before: of all of it where there was more than one', () => {
    const second = plannedStep(step('gas test panel 1 of run 1', made), 1, 1.5, { crews: ['Bravo'] });
    const { steps } = withTests([rows[0] ?? second, second, ...rows.slice(1)], at(1.25, 1.4), at(2, 2.5));
    const repeats = steps.filter(({ repeat }) => repeat);
    expect(repeats.map(({ step: of, crews }) => [of.stretch?.kind, crews])).toEqual([
      ['run', ['Alpha']],
      ['all', ['Bravo']],
    ]);
    // It waits for the last of them alone.
    expect(repeats.map(({ after }) => after)).toEqual([[0], [2]]);
  });
  it('none before the first of the order has ended', () => {
    expect(withTests(rows, at(0.25, 0.5)).steps).toHaveLength(3);
    expect(withTests(rows, at(0.5, 1)).steps).toHaveLength(4);
  });
  it('can be as late as what waits for them', () => {
    const float = (...tests: readonly RepeatedTest[]) =>
      withTests(rows, ...tests).steps.find(({ repeat }) => repeat);
    // Under way at 3, and beginning at 6: 1 and 2.
    expect(float(at(2.5, 3))).toMatchObject({ float: 1, critical: false });
    expect(float(at(5, 5.5))).toMatchObject({ float: 2, critical: false });
    expect(float(at(6, 6.5))).toMatchObject({ float: 2 });
    // Nothing follows.
    expect(float(at(8, 8.5))).toMatchObject({ float: 0, critical: false });
    const tight = [...rows.slice(0, 2), plannedStep(clean, 6, 7, { after: [1], float: 0 })];
    expect(withTests(tight, at(5, 5.5)).steps.find(({ repeat }) => repeat)).toMatchObject({
      float: 0,
      critical: true,
    });
  });
  it('by another crew where all of the first watch for fire', () => {
    const watch = (people: number, start: number, finish: number, who = 'Alpha') =>
      plannedStep(step('fire watch', made), start, finish, { people, crews: [who] });
    const who = (...watches: readonly PlannedStep[]) =>
      withTests([...rows, ...watches], at(2.5, 3)).steps.find(({ repeat }) => repeat)?.crews;
    expect(who(watch(2, 2, 3))).toEqual(['Bravo']);
    expect(who(watch(1, 2, 3))).toEqual(['Alpha']);
    expect(who(watch(1, 2, 3), watch(1, 2, 3))).toEqual(['Bravo']);
    // Over before it begins, and begun when it is over.
    expect(who(watch(2, 2, 2.5))).toEqual(['Alpha']);
    expect(who(watch(2, 3, 4))).toEqual(['Alpha']);
    expect(who(watch(2, 2, 3, 'Bravo'))).toEqual(['Alpha']);
    // Nobody else is free either: whoever tested first.
    expect(who(watch(2, 2, 3), watch(2, 2, 3, 'Bravo'))).toEqual(['Alpha']);
    // Another who works and does not watch.
    expect(
      withTests([...rows, plannedStep(clean, 2, 3, { people: 2 })], at(2.5, 3)).steps.find(
        ({ repeat }) => repeat,
      )?.crews,
    ).toEqual(['Alpha']);
  });
  it('each crew has its own size, and one that nobody knows is never all at the watch', () => {
    const sizes = { ...made, crews: [crew('Alpha', 2), crew('Bravo', 4)] };
    const watch = plannedStep(step('fire watch', made), 2, 3, { people: 3, crews: ['Bravo'] });
    const who = (crews: readonly string[], ...watches: readonly PlannedStep[]): unknown =>
      withRepeatedTests(
        sizes,
        [plannedStep(gas, 0, 0.5, { crews }), ...rows.slice(1), ...watches],
        { tests: [at(2.5, 3)] },
        calendar,
      ).steps.find(({ repeat }) => repeat)?.crews;
    expect(who(['Bravo'], watch)).toEqual(['Bravo']);
    expect(who(['Bravo'], watch, watch)).toEqual(['Alpha']);
    expect(who(['Guests'], { ...watch, crews: ['Guests'] })).toEqual(['Guests']);
    // Two who tested, of whom one watches: whoever is free.
    expect(who(['Bravo', 'Alpha'], watch, watch)).toEqual(['Alpha']);
    expect(who(['Alpha', 'Bravo'], { ...watch, crews: ['Alpha'] })).toEqual(['Bravo']);
  });
  it('are counted, with the shortest interval that is stated', () => {
    const all = withTests(rows, at(2.5, 3), at(6, 6.5)).steps;
    expect(repeatsOf(made, all)).toEqual({ times: 2, every: 2 });
    expect(repeatsOf(made, rows)).toBeUndefined();
    const other = plannedStep(step('gas test run 1 every 1 h', made), 7, 8);
    expect(repeatsOf(made, [...all, other])?.every).toBe(1);
    const unsaid = withTests(
      [plannedStep(step('gas test run 1', made), 0, 0.5), ...rows.slice(1)],
      at(2, 2.5),
    ).steps;
    expect(repeatsOf(made, unsaid)).toStrictEqual({ times: 1 });
  });
  it('are left out of the text of the order', () => {
    const { steps } = withTests(rows, at(2.5, 3));
    expect(writeOrder({ steps } as JobPlan)).toEqual([
      'order {',
      '  g: gas test run 1 every 2 h',
      '  clean all',
      '  clean all',
      '}',
    ]); // its rows are all that is read
  });
});

describe('a schedule laid over the shifts', () => {
  const nights = [
    { at: 100, length: 900 },
    { at: 200, length: 900 },
  ];
  const air = { first: 10, length: 10, every: 40 };
  const way = (...minutes: readonly number[]): readonly Way[] =>
    minutes.map((each) => ({ crews: [], people: 1, unit: undefined, place: '', minutes: each, teams: [] }));
  const rules = (facts: Partial<TimeRules>, tested = true): TimeRules =>
    ({ axis: workAxis(nights, tested ? air : undefined), handBack: [], whole: [], ...facts }) as TimeRules; // what is read of them
  const arranged = (
    start: readonly number[],
    finish: readonly number[],
    facts: Partial<Arranged> = {},
  ): Arranged => ({
    kind: 'schedule',
    makespan: Math.max(0, ...finish),
    start,
    finish,
    mode: start.map(() => 0),
    lowerBound: 0,
    because: '',
    optimal: false,
    nodes: 0,
    tooFarApart: 0,
    ...facts,
  });
  const steps = (...lines: readonly string[]): readonly Step[] => lines.map((text) => step(text));

  it('a beginning goes behind a test at its moment, an end before it', () => {
    // Tested by 10; again 50–60.
    const laid = layOver(
      arranged([0, 10, 50], [10, 50, 60]),
      steps('gas test all', 'clean all', 'strip all'),
      [],
      rules({}),
    );
    expect([laid.start, laid.finish, laid.makespan]).toEqual([[0, 10, 60], [10, 50, 70], 70]);
    expect(laid.tests.map(({ from, to }) => [from, to])).toEqual([[50, 60]]);
  });
  it('no test once the work is done, nor before the first of the order', () => {
    const laid = layOver(arranged([0, 10], [10, 50]), steps('gas test all', 'clean all'), [], rules({}));
    expect([laid.finish, laid.tests]).toEqual([[10, 50], []]);
    const late = layOver(arranged([0, 60], [60, 70]), steps('clean all', 'gas test all'), [], rules({}));
    expect(late.tests).toEqual([]);
    expect(layOver(arranged([0], [60]), steps('clean all'), [], rules({})).tests).toEqual([]);
  });
  it('a fire watch goes on while the air is tested, but not over night', () => {
    const watch = (start: number): readonly number[] =>
      layOver(arranged([0, start], [10, start + 10]), steps('gas test all', 'fire watch'), [], rules({}))
        .start;
    expect(watch(50)).toEqual([0, 50]);
    expect(
      layOver(arranged([0, 50], [10, 60]), steps('gas test all', 'clean all'), [], rules({})).start,
    ).toEqual([0, 60]);
    // Shift 1 has 100 − 10 of test: net 90 is its end; the next begins behind the test of the morning, at 110.
    expect(watch(90)).toEqual([0, 110]);
  });
  it('of two tests in the order the first counts, and one that comes with its end is none of its own', () => {
    const two = layOver(
      arranged([0, 10, 60, 70], [10, 60, 70, 80]),
      steps('gas test all', 'clean all', 'gas test all', 'strip all'),
      [],
      rules({}),
    );
    expect(two.tests.map(({ from }) => from)).toEqual([50]);
    // The repeated test at 50 begins as the first of this order ends: it is told.
    const late = layOver(
      arranged([0, 40, 50], [40, 50, 70]),
      steps('clean all', 'gas test all', 'strip all'),
      [],
      rules({}),
    );
    expect(late.tests.map(({ from }) => from)).toEqual([50]);
  });
  it('what ended before the first test of the order makes no test', () => {
    const laid = layOver(
      arranged([0, 20, 60], [20, 60, 80]),
      steps('clean all', 'gas test all', 'strip all'),
      [],
      rules({}),
    );
    expect(laid.tests.map(({ from }) => from)).toEqual([]);
  });
  it('the bound of handing back keeps the ends of shifts too', () => {
    const laid = layOver(
      arranged([0, 10, 80], [10, 80, 80], { lowerBound: 60 }),
      steps('gas test all', 'clean all', 'remove isolation'),
      [[], [], way(31)],
      rules({ handBack: [2], whole: [false, false, true] }),
    );
    // At best begun at 70: 31 minutes would lie across 100.
    expect([laid.makespan, laid.lowerBound]).toEqual([131, 131]);
    const split = layOver(
      arranged([0, 10, 80], [10, 80, 80], { lowerBound: 60 }),
      steps('gas test all', 'clean all', 'remove isolation'),
      [[], [], way(31)],
      rules({ handBack: [2] }),
    );
    expect([split.start[2], split.makespan, split.lowerBound]).toEqual([90, 121, 101]);
  });
  it('handing back follows, each the quickest way, and not over the end of a shift', () => {
    const of = (whole: readonly boolean[], ways: readonly (readonly Way[])[]) =>
      layOver(
        arranged([0, 10, 80, 80], [10, 80, 80, 80], { lowerBound: 70 }),
        steps('gas test all', 'clean all', 'remove isolation', 'run empty'),
        ways,
        rules({ handBack: [2, 3], whole }),
      );
    // Cleaned by 90 of working time.
    const split = of([false, false, false, false], [[], [], way(8, 5), way(20)]);
    expect([split.start.slice(2), split.finish.slice(2), split.mode, split.makespan]).toEqual([
      [90, 95],
      [95, 115],
      [0, 0, 1, 0],
      115,
    ]);
    const whole = of([false, false, true, true], [[], [], way(8), way(20)]);
    expect([whole.start.slice(2), whole.finish.slice(2)]).toEqual([
      [90, 100],
      [98, 120],
    ]);
    // Of two that end together the first.
    expect(of([], [[], [], way(5, 5), way(20, 20)]).mode).toEqual([0, 0, 0, 0]);
  });
  it('the bound is laid over too, and handing back with it; of what is proven it is the length', () => {
    const of = (facts: Partial<Arranged>) =>
      layOver(
        arranged([0, 10, 80], [10, 80, 80], facts),
        steps('gas test all', 'clean all', 'remove isolation'),
        [[], [], way(5)],
        rules({ handBack: [2] }),
      );
    // 80 of work end at 90; net 60 ends at 70.
    expect(of({ lowerBound: 60 })).toMatchObject({ makespan: 95, lowerBound: 75 });
    expect(of({ lowerBound: 60, optimal: true })).toMatchObject({ makespan: 95, lowerBound: 95 });
    expect(of({ lowerBound: 400 })).toMatchObject({ makespan: 95, lowerBound: 95 });
    expect(layOver(arranged([], []), [], [], rules({}, false))).toMatchObject({
      makespan: 0,
      lowerBound: 0,
      tests: [],
    });
  });
});
