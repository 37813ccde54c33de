// How the machine stands at a moment of a plan, and what the hours of a plan say, by rows written by hand.

import { describe, expect, it, test } from 'vitest';
import type { Conveyor } from '../../../src/domain/model/conveyor.js';
import type { Job } from '../../../src/domain/model/job.js';
import { groundOf } from '../../../src/domain/order/ground.js';
import {
  hourByHour,
  stateAt,
  worked,
  type MachineState,
  type PlanHour,
} from '../../../src/domain/plan/hour-by-hour.js';
import type { JobPlan, PlannedStep } from '../../../src/domain/plan/job-plan.js';
import { on, origin, plant, screw } from '../../kit/estate.js';
import { brace, cover, crew, holdDown, job, line, plannedStep, step, worldOf } from '../order/stories.js';

/** Two runs of 4 m, a gate of 200 mm between; two covers, two braces, four hold-downs. */
const made = (facts: Partial<Conveyor> = {}): Conveyor =>
  line([4, 4], [20, 20, 20], {
    covers: [cover(0, 4100), cover(4100, 8200)],
    braces: [1000, 6000].map(brace),
    holdDowns: [500, 2500, 5000, 7000].map(holdDown),
    ...facts,
  });
const of = (facts: Partial<Job> = {}, conveyor: Partial<Conveyor> = {}): Job =>
  job(made(conveyor), ['all'], {
    crews: [crew('Alpha', 2)],
    window: { from: on('2027-02-01'), to: on('2027-02-05'), origin: origin() },
    ...facts,
  });

type Row = readonly [text: string, start: number, finish: number, more?: Partial<PlannedStep>];
function planOf(rows: readonly Row[], job: Job = of(), facts: Partial<JobPlan> = {}): JobPlan {
  const steps = rows.map(([text, start, finish, more]) => plannedStep(step(text, job), start, finish, more));
  return {
    job,
    steps,
    duration: Math.max(0, ...rows.map(([, , finish]) => finish)),
    everybodyOut: [],
    ...facts,
  } as unknown as JobPlan; // what is read of it
}
const state = (
  rows: readonly Row[],
  at: number,
  job: Job = of(),
  facts: Partial<JobPlan> = {},
): MachineState => {
  const plan = planOf(rows, job, facts);
  return stateAt(
    plan,
    groundOf(
      job,
      plan.steps.map((each) => each.step),
      worldOf(job),
    ),
    at,
  );
};
/** Every row an hour, one after the other. */
const inLine = (...texts: readonly string[]): readonly Row[] => texts.map((text, k) => [text, k, k + 1]);

describe('how the machine stands', () => {
  it('before anything is done', () => {
    expect(state(inLine('isolate', 'strip run 1'), 0)).toEqual({
      power: 'live',
      airTested: undefined,
      covers: 0,
      braces: 0,
      holdDowns: { places: 0, blocks: 0 },
      gates: [],
      drive: 'bolted',
      spiral: 'in',
      runs: [],
      run: 'not yet',
      resting: [],
    });
  });

  const enclosed = of({}, { confinedSpace: true });
  test.each<[string, readonly Row[], number, Partial<MachineState>, Job?]>([
    ['live while it is being isolated', inLine('isolate', 'prove dead'), 0.99, { power: 'live' }],
    ['isolated', inLine('isolate', 'prove dead'), 1, { power: 'isolated' }],
    ['proved dead', inLine('isolate', 'prove dead'), 2, { power: 'proved dead' }],
    ['live again', inLine('isolate', 'prove dead', 'remove isolation'), 3, { power: 'live' }],
    [
      'an enclosed trough before its air is tested',
      inLine('gas test all'),
      0.5,
      { airTested: false },
      enclosed,
    ],
    ['and after', inLine('gas test all'), 1, { airTested: true }, enclosed],
    ['a gate that is shut', inLine('gate shut Gate1'), 1, { gates: [{ name: 'Gate1', is: 'shut' }] }],
    ['one that is stripped', inLine('gate off Gate1'), 1, { gates: [{ name: 'Gate1', is: 'stripped' }] }],
    ['one that is open again', inLine('gate shut Gate1', 'gate open Gate1'), 2, { gates: [] }],
    ['one that is on again', inLine('gate off Gate1', 'gate on Gate1'), 2, { gates: [] }],
    ['run empty', inLine('run empty', 'run loaded'), 1, { run: 'empty' }],
    ['run loaded', inLine('run empty', 'run loaded'), 2, { run: 'loaded' }],
  ])('%s', (_, rows, at, expected, job = of()) => {
    expect(state(rows, at, job)).toMatchObject(expected);
  });

  test.each<[number, number]>([
    // Two covers in two hours: one after the first.
    [0.5, 0],
    [1, 1],
    [1.9, 1],
    [2, 2],
    [5, 2],
  ])('parts come off one by one: after %d h %d covers', (at, covers) => {
    expect(state([['covers off all', 0, 2]], at).covers).toBe(covers);
  });
  test.each<[number, Partial<MachineState>]>([
    [2, { holdDowns: { places: 2, blocks: 4 }, braces: 1 }],
    [4, { holdDowns: { places: 4, blocks: 8 }, braces: 2 }],
    [5, { holdDowns: { places: 3, blocks: 6 }, braces: 2 }],
    [8, { holdDowns: { places: 0, blocks: 0 }, braces: 0 }],
  ])('and go on one by one: after %d h %j', (at, expected) => {
    const rows: readonly Row[] = [
      ['hold-downs off all', 0, 4],
      ['braces off all', 0, 4],
      ['hold-downs on all', 4, 8],
      ['braces on all', 5, 7],
    ];
    expect(state(rows, at)).toMatchObject(expected);
  });

  test.each<[number, readonly unknown[]]>([
    // Panels, bare, clean, fitted of run 1: four panels, an hour each.
    [0.5, []],
    [1, [1, 4, 1, 0, 0]],
    [4, [1, 4, 4, 0, 0]],
    [6, [1, 4, 4, 2, 0]],
    [8, [1, 4, 4, 4, 0]],
    [9.5, [1, 4, 3, 3, 1]],
    [12, [1, 4, 0, 0, 4]],
  ])('panels are stripped, cleaned and fitted one by one: after %d h %j', (at, expected) => {
    const rows: readonly Row[] = [
      ['strip run 1', 0, 4],
      ['clean run 1', 4, 8],
      ['fit run 1 starting at head', 8, 12],
    ];
    const { runs } = state(rows, at);
    expect(
      runs.flatMap(({ run, panels, bare, clean, fitted }) => [run.number, panels, bare, clean, fitted]),
    ).toEqual(expected);
  });
  it('only runs that are touched are told, each by itself', () => {
    expect(
      state([['strip panels 1 to 2 of run 2', 0, 2]], 2).runs.map(({ run, bare }) => [run.number, bare]),
    ).toEqual([[2, 2]]);
  });

  const change = of({ screwChange: { screw: screw(), origin: origin() } });
  test.each<[string, readonly Row[], number, Partial<MachineState>]>([
    ['bolted', inLine('restrain screw', 'unbolt drive'), 0.5, { drive: 'bolted', spiral: 'in' }],
    ['restrained', inLine('restrain screw', 'unbolt drive'), 1, { drive: 'restrained' }],
    ['unbolted', inLine('restrain screw', 'unbolt drive'), 2, { drive: 'unbolted', spiral: 'in' }],
    [
      'half of it out',
      inLine('remove screw from 0 mm to 4000 mm', 'remove screw from 4000 mm to 8200 mm'),
      1,
      { spiral: 'partly out' },
    ],
    [
      'all of it out',
      inLine('remove screw from 0 mm to 4000 mm', 'remove screw from 4000 mm to 8200 mm'),
      2,
      { spiral: 'out' },
    ],
    ['the new one in', inLine('remove screw', 'insert screw'), 2, { spiral: 'new' }],
    [
      'laid in, to be joined',
      inLine(
        'remove screw',
        'insert screw',
        'join screw from 0 mm to 4000 mm',
        'join screw from 4000 mm to 8200 mm',
      ),
      2,
      { spiral: 'laid in' },
    ],
    [
      'one joint made',
      inLine(
        'remove screw',
        'insert screw',
        'join screw from 0 mm to 4000 mm',
        'join screw from 4000 mm to 8200 mm',
      ),
      3,
      { spiral: 'laid in' },
    ],
    [
      'all joints made',
      inLine(
        'remove screw',
        'insert screw',
        'join screw from 0 mm to 4000 mm',
        'join screw from 4000 mm to 8200 mm',
      ),
      4,
      { spiral: 'new' },
    ],
    ['what has no parts is done when it is done', [['remove screw', 0, 4]], 3.9, { spiral: 'in' }],
  ])('a screw change: %s', (_, rows, at, expected) => {
    expect(state(rows, at, change)).toMatchObject(expected);
  });

  it('of steps that end together the one listed last counts', () => {
    const rows: readonly Row[] = [
      ['gate shut Gate1', 0, 1],
      ['gate open Gate1', 0, 1],
    ];
    expect(state(rows, 1).gates).toEqual([]);
    expect(state([...rows].reverse(), 1).gates).toHaveLength(1);
    // Listed first and ended last.
    expect(
      state(
        [
          ['gate shut Gate1', 0, 2],
          ['gate open Gate1', 0, 1],
        ],
        2,
      ).gates,
    ).toHaveLength(1);
  });
});

describe('places that dry', () => {
  const rows: readonly Row[] = [
    ['clean run 1 dries 3 h', 0, 2],
    ['strip run 2', 0, 8],
  ];
  test.each<[number, readonly number[]]>([
    [1.9, []],
    [2, [0]],
    [4.9, [0]],
    [5, []],
  ])('after %d h: %j', (at, resting) => {
    expect(state(rows, at).resting).toEqual(resting);
  });
  test.each<[number, readonly number[]]>([
    // Cleaned by 14:00 of the first day, dry after twenty hours: at 10:00 of the second, eleven hours of work in.
    [7, [0]],
    [8, [0]],
    [10.9, [0]],
    [11, []],
  ])('a night counts: after %d h %j', (at, resting) => {
    expect(
      state(
        [
          ['clean run 1 dries 20 h', 0, 7],
          ['strip run 2', 0, 20],
        ],
        at,
      ).resting,
    ).toEqual(resting);
  });
  it('a night before it began does not', () => {
    const second: readonly Row[] = [
      ['clean run 1 dries 3 h', 8, 10],
      ['strip run 2', 0, 20],
    ];
    expect([state(second, 11).resting, state(second, 12.9).resting, state(second, 13).resting]).toEqual([
      [0],
      [0],
      [],
    ]);
  });
  it('one that ends with the shift dries through the night', () => {
    // Sixteen hours of night.
    const at = (hours: number, time: number): readonly number[] =>
      state(
        [
          [`clean run 1 dries ${hours} h`, 0, 8],
          ['strip run 2', 0, 20],
        ],
        time,
      ).resting;
    expect([at(16, 8), at(16, 8.5), at(17, 8.5), at(17, 9)]).toEqual([[0], [], [0], []]);
  });
});

describe('how long a step is worked on between two moments', () => {
  const rows: readonly Row[] = [
    ['strip run 1', 1, 9],
    ['gas test all', 3, 4, { repeat: 'interval' }],
    ['fire watch', 2, 6],
  ];
  const plan = planOf(rows, of(), { everybodyOut: [{ from: 7, to: 8 }] });
  const hours = (k: number, from: number, to: number): number => {
    const each = plan.steps[k];
    if (!each) throw new Error('no such row');
    return worked(plan, each, from, to);
  };
  test.each<[string, number, number, number, number]>([
    // 8 h less a test and an hour out.
    ['in all', 0, 0, 99, 6],
    ['before it begins', 0, 0, 1, 0],
    ['its first hour', 0, 0, 2, 1],
    ['while the air is tested', 0, 3, 4, 0],
    ['half of it tested', 0, 3.5, 5, 1],
    ['while everybody is out', 0, 7, 8, 0],
    ['after its end', 0, 9, 12, 0],
    ['the test itself', 1, 0, 99, 1],
    ['part of the test', 1, 3.5, 99, 0.5],
    ['a fire watch goes on meanwhile', 2, 0, 99, 4],
  ])('%s', (_, k, from, to, expected) => {
    expect(hours(k, from, to)).toBe(expected);
  });
});

describe('hour by hour', () => {
  const hourly = (rows: readonly Row[], facts: Partial<JobPlan> = {}): readonly PlanHour[] => {
    const plan = planOf(rows, of(), facts);
    return hourByHour(
      plan,
      groundOf(
        plan.job,
        plan.steps.map((each) => each.step),
        worldOf(plan.job),
      ),
    );
  };
  it('an hour each, cut at the end of a shift and at the end of the plan, with its time of day', () => {
    // Shifts of 8 h from 7:00; 7.5 h, then 1 h and a half the next day.
    const hours = hourly([
      ['strip run 1', 0, 7.5],
      ['clean run 1', 7.5, 9.25],
    ]);
    expect(hours.slice(6).map(({ from, to, begins, ends }) => [from, to, begins?.hour, ends?.hour])).toEqual([
      [6, 7, 13, 14],
      [7, 8, 14, 15],
      [8, 9, 7, 8],
      [9, 9.25, 8, 8.25],
    ]);
    expect(hours.map(({ from }) => from).slice(0, 3)).toEqual([0, 1, 2]);
    expect(
      hours[7]?.doing.map(({ step: row, crews, people, unit, hours: time }) => [
        row,
        crews,
        people,
        unit,
        time,
      ]),
    ).toEqual([
      [0, ['Alpha'], 2, undefined, 0.5],
      [1, ['Alpha'], 2, undefined, 0.5],
    ]);
    // At the end of each hour.
    expect(hours.map(({ stands }) => stands.runs[0]?.clean ?? 0)).toEqual([0, 0, 0, 0, 0, 0, 0, 1, 3, 4]);
  });
  it('hours in which nobody may be inside', () => {
    const hours = hourly([['strip run 1', 0, 4]], { everybodyOut: [{ from: 1.5, to: 2 }] });
    expect(hours.map(({ everybodyOut }) => everybodyOut)).toEqual([false, true, false, false]);
    expect(hours[1]?.doing.map(({ hours: time }) => time)).toEqual([0.5]);
    const twice = hourly([['strip run 1', 0, 4]], {
      everybodyOut: [
        { from: 0.5, to: 1 },
        { from: 3, to: 3.5 },
      ],
    });
    expect(twice.map(({ everybodyOut }) => everybodyOut)).toEqual([true, false, false, true]);
    expect(
      hourly([['strip run 1', 0, 4]], { everybodyOut: [{ from: 1, to: 2 }] }).map(
        ({ doing }) => doing.length,
      ),
    ).toEqual([1, 0, 1, 1]);
  });
  it('a shift that does not end on the hour', () => {
    const short = {
      from: { hours: 7, text: '', origin: origin() },
      to: { hours: 9.5, text: '', origin: origin() },
      days: [],
      origin: origin(),
    };
    const plan = planOf([['strip run 1', 0.5, 4]], of({}, { plant: plant({ shifts: [short] }) }));
    const hours = hourByHour(
      plan,
      groundOf(
        plan.job,
        plan.steps.map((each) => each.step),
        worldOf(plan.job),
      ),
    );
    expect(hours.map(({ from, to, begins }) => [from, to, begins?.hour])).toEqual([
      [0, 1, 7],
      [1, 2, 8],
      [2, 2.5, 9],
      [2.5, 3.5, 7],
      [3.5, 4, 8],
    ]);
    expect(hours[0]?.doing[0]?.hours).toBe(0.5);
  });
  it('nothing of nothing', () => expect(hourly([])).toEqual([]));
});
