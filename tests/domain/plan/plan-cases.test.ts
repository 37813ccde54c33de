// Plans where a small mistake would put the wrong people, platform or hour on the sheet that is worked from. Each by hand.

import { describe, expect, it, test } from 'vitest';
import type { Conveyor } from '../../../src/domain/model/conveyor.js';
import type { Job } from '../../../src/domain/model/job.js';
import type { Plant, Shift } from '../../../src/domain/model/plant.js';
import { arrange, byStart } from '../../../src/domain/plan/arrange.js';
import type { JobPlan, PlannedStep } from '../../../src/domain/plan/job-plan.js';
import type { LaidOver } from '../../../src/domain/plan/lay-over.js';
import { planJob } from '../../../src/domain/plan/plan-job.js';
import { planningBasis, type PlanningBasis } from '../../../src/domain/plan/planning-basis.js';
import type { Way } from '../../../src/domain/plan/teams.js';
import { mm, on, origin, plant, stated } from '../../kit/estate.js';
import {
  brace,
  crew,
  everywhere,
  job,
  line,
  platform,
  step,
  stretch,
  withOrder,
  worldOf,
} from '../order/stories.js';

const shift = (from: number, to: number): Shift => ({
  from: { hours: from, text: '', origin: origin() },
  to: { hours: to, text: '', origin: origin() },
  days: [],
  origin: origin(),
});
const made = (facts: Partial<Job> = {}, of: Partial<Conveyor> = {}): Job =>
  job(line([4, 4], [10, 60, 60], { plant: plant({ shifts: [shift(7, 15)] }), ...of }), ['all'], {
    crews: [crew('Alpha', 2), crew('Bravo', 4)],
    window: { from: on('2027-02-01'), to: on('2027-02-05'), origin: origin() },
    ...facts,
  });
const plan = (of: Job, lines: readonly string[]): JobPlan =>
  planJob(withOrder(of, lines), worldOf(of), { quick: true });
const basisOf = (of: Job, lines: readonly string[]): PlanningBasis => {
  const ordered = withOrder(of, lines);
  return planningBasis(ordered, ordered.order?.steps ?? [], worldOf(of));
};
const proposedBasis = (of: Job, lines: readonly string[]): PlanningBasis =>
  planningBasis(
    of,
    lines.map((text) => step(text, of)),
    worldOf(of),
  );

describe('a schedule as rows', () => {
  const way = (crews: readonly string[], minutes: number, more: Partial<Way> = {}): Way => ({
    crews,
    people: 2,
    unit: undefined,
    place: '',
    minutes,
    teams: crews.map((name) => (name === 'Alpha' ? 0 : 1)),
    ...more,
  });
  /** One way of each step taken, from minute to minute. */
  const rows = (
    basis: PlanningBasis,
    ways: readonly (readonly Way[])[],
    times: readonly (readonly [number, number])[],
    mode: readonly number[],
    rename = false,
  ): PlannedStep[] => {
    const laid: LaidOver = {
      start: times.map(([from]) => from),
      finish: times.map(([, to]) => to),
      mode,
      makespan: 0,
      lowerBound: 0,
      tests: [],
    };
    return arrange({ ...basis, ways }, laid, byStart(laid), rename);
  };
  const up = made(
    { accessUnits: [platform('MP1'), platform('MP2')] },
    { access: [{ ...everywhere, kind: 'mobile platform', height: mm(5000) }] },
  );

  it('names the crew, the people and the platform of the way that was taken, not of another', () => {
    const ways = [[way(['Alpha'], 60), way(['Bravo'], 60, { people: 4, unit: 'MP2', aboard: 3 })]];
    const [row] = rows(basisOf(up, ['strip run 1']), ways, [[0, 60]], [1]);
    expect([row?.crews, row?.people, row?.unit]).toEqual([['Bravo'], 4, 'MP2']);
  });
  it('a proposed step is written with the crew, the platform and the people aboard of its way, and no other', () => {
    const written = (...ways: readonly Way[]): readonly unknown[] => {
      const [row] = rows(proposedBasis(up, ['strip run 1']), [ways], [[0, 60]], [ways.length - 1], true);
      const { crews = [], unit, aboard } = row?.step ?? {};
      return [crews.map(({ use }) => use.name), unit?.use.name, aboard?.count];
    };
    expect(written(way(['Alpha'], 60), way(['Bravo'], 60, { unit: 'MP2', aboard: 3 }))).toEqual([
      ['Bravo'],
      'MP2',
      3,
    ]);
    // All who fit are aboard: no count is written.
    expect(written(way(['Alpha', 'Bravo'], 60, { unit: 'MP1' }))).toEqual([
      ['Alpha', 'Bravo'],
      'MP1',
      undefined,
    ]);
    expect(written(way(['Alpha'], 60))).toEqual([['Alpha'], undefined, undefined]);
    // A count without a platform is of those inside.
    expect(written(way(['Alpha'], 60, { aboard: 3 }))).toEqual([['Alpha'], undefined, 3]);
    // Nobody can do it: it is written with nobody.
    expect(written()).toEqual([[], undefined, undefined]);
  });
  it('a step that nobody can do is a row all the same, with nobody and no platform', () => {
    const found = rows(
      basisOf(made(), ['strip run 1', 'clean run 1']),
      [[], [way(['Bravo'], 60)]],
      [
        [0, 0],
        [0, 60],
      ],
      [0, 0],
    );
    expect(found.map(({ step: { action }, crews, people, unit }) => [action, crews, people, unit])).toEqual([
      ['strip', [], 0, undefined],
      ['clean', ['Bravo'], 2, undefined],
    ]);
  });
  it('a step without a reckoning of its work is left out, and the others keep their place', () => {
    const basis = basisOf(made(), ['strip run 1', 'clean run 1']);
    const found = rows(
      { ...basis, works: basis.works.slice(0, 1) },
      [[way(['Alpha'], 60)], [way(['Alpha'], 60)]],
      [
        [0, 60],
        [60, 120],
      ],
      [0, 0],
    );
    expect(found.map(({ step: { action } }) => action)).toEqual(['strip']);
  });
  it('those that begin and end together stand as listed', () => {
    const laid = { start: [9, 5, 5, 5, 0], finish: [9, 9, 9, 9, 5] };
    expect(byStart({ ...laid, mode: [], makespan: 0, lowerBound: 0, tests: [] })).toEqual([4, 1, 2, 3, 0]);
  });
  it('can be late by what the way that was taken leaves', () => {
    const basis = basisOf(made(), ['i: isolate', 'strip run 1 after i', 'strip run 2 after i']);
    const found = rows(
      basis,
      [[way(['Alpha'], 60)], [way(['Bravo'], 300), way(['Bravo'], 120)], [way(['Alpha'], 300)]],
      [
        [0, 60],
        [60, 180],
        [60, 360],
      ],
      [0, 1, 0],
    );
    expect(found.map(({ float }) => float)).toEqual([0, 3, 0]);
  });
});

describe('how late a step may be', () => {
  const float = (found: JobPlan): readonly unknown[] =>
    found.steps.map(({ step: { action }, start, finish, float }) => [action, start, finish, float]);
  it('what dries holds up the work at its place, and no work elsewhere', () => {
    const found = plan(made(), [
      'i: isolate by Alpha takes 1 h',
      'x: clean run 1 by Alpha after i takes 1 h dries 3 h',
      'strip run 2 by Bravo after i takes 6 h',
      'fit run 1 by Alpha after x takes 1 h',
    ]);
    expect(float(found)).toEqual([
      ['isolate', 0, 1, 0],
      ['clean', 1, 2, 1],
      ['strip', 1, 7, 0],
      ['fit', 5, 6, 1],
    ]);
  });
  it('work that may be split is late over the end of a shift, a lift is not', () => {
    const late = (text: string): unknown =>
      plan(made(), [
        'i: pause by Alpha takes 1 h',
        `${text} by Alpha after i takes 3 h`,
        'clean run 2 by Bravo after i takes 9 h',
      ]).steps.find(({ crews, start }) => crews[0] === 'Alpha' && start > 0)?.float;
    // The end is 10 h, of which a shift has 8: from 7 to 10, or from 5 to 8.
    expect(late('strip run 1')).toBe(6);
    expect(late('prove dead')).toBe(4);
  });
});

describe('what a plan says of itself', () => {
  it('how far it may be from the shortest, where that was not looked for to the end', () => {
    const of = made({}, { plant: plant() });
    const lines = [
      'i: isolate by Alpha takes 1 h',
      ...[3, 3, 2, 2, 2, 7, 5, 5].map(
        (h, k) => `strip panel ${(k % 4) + 1} of run ${k < 4 ? 1 : 2} after i takes ${h} h`,
      ),
    ];
    const found = planJob(withOrder(of, lines), worldOf(of), { quick: true, shakes: 0, nodes: 0 });
    // 29 h shared by two crews, behind an hour: 15.5.
    expect([found.lowerBound, found.optimal]).toEqual([15.5, false]);
    expect(found.duration).toBeGreaterThan(15.5);
    expect(found.gap).toBeCloseTo(found.duration / 15.5 - 1, 12);
  });
  it('that there is too much to be scheduled', () => {
    const crowd = made({ crews: Array.from({ length: 201 }, (_, k) => crew(`Crew${k}`, 2)) });
    const listed = planJob(withOrder(crowd, ['strip run 1 by Crew7']), worldOf(crowd));
    expect([listed.boundBecause, listed.shorten]).toEqual(['there is too much of it to be scheduled', []]);
    const enough = { ...crowd, crews: crowd.crews.slice(0, 200) };
    expect(plan(enough, ['strip run 1 by Crew7']).boundBecause).not.toContain('too much');
  });
});

describe('what a schedule stands on', () => {
  const removes = (of: Job, lines: readonly string[]): readonly (readonly number[])[] => {
    const { waits, steps } = proposedBasis(of, lines);
    return waits.map((list) => list.filter((i) => steps[i]?.action === 'remove screw'));
  };
  test.each<[string, string]>([
    ['a piece at the other end', 'remove screw from 0 mm to 1000 mm'],
    ['unbolted, not burnt', 'remove screw cold work'],
    ['all of it', 'remove screw'],
  ])('proposed: a strip waits for the old spiral that is listed before it: %s', (_, remove) => {
    // Nothing but a strip waits for it here: what comes after waits for the strip.
    expect(
      removes(made(), [
        'isolate',
        'prove dead',
        'covers off all',
        'restrain screw',
        'strip run 1',
        remove,
        'strip run 2',
        'clean run 2',
      ]),
    ).toEqual([[], [], [], [], [], [], [5], []]);
  });
  it('in an enclosed trough tests are counted from where the first of them really ends', () => {
    // What proves it dead is not left half done: it begins on the second day, at 8, and the air is tested from 11 to 12.
    const found = plan(made({}, { confinedSpace: true }), [
      'isolate by Alpha takes 6 h',
      'prove dead by Alpha takes 3 h',
      'gas test all by Alpha takes 1 h every 3 h',
      'strip all by Bravo takes 9 h',
    ]);
    expect(
      found.steps.map(({ step: { action }, start, finish, repeat }) => [action, start, finish, repeat]),
    ).toEqual([
      ['isolate', 0, 6, undefined],
      ['prove dead', 8, 11, undefined],
      ['gas test', 11, 12, undefined],
      ['strip', 12, 24, undefined],
      // 12 to 15 without one: the next would end with the shift.
      ['gas test', 16, 17, 'break'],
      ['gas test', 20, 21, 'interval'],
    ]);
  });
  it('covers over two stretches are covers of the second too, and a step over both reaches over both', () => {
    const of = made();
    const relines = ['run 1', 'run 2'].flatMap((text) =>
      of.relines.map((each) => ({ ...each, stretch: stretch(text) })),
    );
    const { rules } = basisOf({ ...of, relines }, ['covers off', 'strip run 2 takes 9 h', 'unbolt drive']);
    expect(rules.covers).toEqual([{ first: 0, then: 1, most: 480 }]);
    expect(rules.extents).toEqual([
      [0, 8200],
      [4200, 8200],
      // A single place.
      [8199, 8201],
    ]);
  });
  it('in a circle each waits for the others and none for itself', () => {
    const { waits } = basisOf(made(), [
      'a: strip run 1 after c',
      'b: clean run 1 after a',
      'c: strip run 2 after b',
    ]);
    expect(waits.some((list, j) => list.includes(j))).toBe(false);
  });
  test.each([
    // 2 × (30 + 3) = 66 h in shifts of 8: eight ends of shifts before it. With an hour it would be seven.
    [3, 8],
    [0, 7],
  ])('moves of %d h are laid out for', (hours, nights) => {
    const of = made(
      {},
      {
        plant: plant({
          shifts: [shift(7, 15)],
          unitTimes: [
            { item: 'access move', time: stated('duration', hours), origin: origin() },
          ] as Plant['unitTimes'],
        }),
      },
    );
    expect(basisOf(of, ['clean run 1 takes 30 h']).rules.axis.nights).toHaveLength(nights);
  });
  test.each(['braces off all', 'hold-downs off all', 'strip all', 'clean run 1', 'fit run 1'])(
    'covers off wait for no longer than a shift until "%s" begins',
    (text) => {
      const braced = made({}, { braces: [brace(2000), brace(6000)] });
      const { rules } = basisOf(braced, ['covers off all', `${text} takes 9 h`]);
      expect(rules.covers).toEqual([{ first: 0, then: 1, most: 480 }]);
    },
  );
  it('nothing else than covers is put back within a shift', () => {
    expect(basisOf(made(), ['strip run 1', 'clean run 1', 'fit run 1']).rules.covers).toEqual([]);
  });
});
