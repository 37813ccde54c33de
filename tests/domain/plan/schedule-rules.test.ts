// What the clock asks of an order, step by step, and small written orders timed to the minute by hand.

import { describe, expect, it, test } from 'vitest';
import type { Conveyor } from '../../../src/domain/model/conveyor.js';
import type { Job } from '../../../src/domain/model/job.js';
import type { Plant, Shift } from '../../../src/domain/model/plant.js';
import { groundOf } from '../../../src/domain/order/ground.js';
import type { JobPlan } from '../../../src/domain/plan/job-plan.js';
import { planJob } from '../../../src/domain/plan/plan-job.js';
import type { Pause } from '../../../src/domain/plan/scheduling/clock.js';
import { teamsOf, type Way } from '../../../src/domain/plan/teams.js';
import { timeRules, type TimeRules } from '../../../src/domain/plan/time-rules.js';
import { asProblem, whatShortens } from '../../../src/domain/plan/what-shortens.js';
import { workAxis } from '../../../src/domain/plan/work-axis.js';
import { formatDay } from '../../../src/domain/units/calendar.js';
import { mm, on, origin, plant, stated } from '../../kit/estate.js';
import { cover, crew, everywhere, job, line, platform, step, withOrder, worldOf } from '../order/stories.js';

const way = (...minutes: readonly number[]): readonly Way[] =>
  minutes.map((each) => ({ crews: [], people: 1, unit: undefined, place: '', minutes: each, teams: [] }));
const days: readonly Pause[] = [
  { at: 100, length: 900 },
  { at: 200, length: 900 },
];
/** Two runs of 4 m, a gate of 200 mm between. */
const made = (facts: Partial<Conveyor> = {}): Conveyor => line([4, 4], [10, 60, 60], facts);

/** `waits` by position. */
function rules(
  lines: readonly string[],
  ways: readonly (readonly Way[])[],
  waits: readonly (readonly number[])[],
  nights = days,
  of = job(made(), ['all']),
): TimeRules {
  const steps = lines.map((text) => step(text, of));
  return timeRules(of, steps, ways, groundOf(of, steps, worldOf(of)), waits, workAxis(nights, undefined), []);
}

describe('what may not be split by the end of a shift', () => {
  it('lifts and hot work, if a shift is long enough; else they are told', () => {
    const found = rules(
      ['remove screw', 'clean all', 'isolate', 'patch panel 1 of run 1'],
      [way(100), way(900), way(101), way(500, 90)],
      [[], [], [], []],
    );
    expect(found.whole).toEqual([true, false, false, true]);
    expect(found.tooLong).toEqual([2]);
  });
  it('nothing where no shift ends', () => {
    const found = rules(['remove screw', 'isolate'], [way(100), way(5000)], [[], []], []);
    expect([found.whole, found.tooLong]).toEqual([[false, false], []]);
  });
});

describe('the watch after hot work', () => {
  const hot = 'remove screw hot work shielded wet fire watch 60 min';
  it('begins when it ends, and there is room for it in the shift', () => {
    const found = rules([hot, 'fire watch', 'clean all'], [way(30), way(60, 50), way(10)], [[], [0], [0]]);
    expect(found.watches).toEqual([{ first: 0, then: 1, mostClock: 0 }]);
    // By the quickest way of watching.
    expect(found.room).toEqual([50, 0, 0]);
  });
  it('no room is kept where both do not fit into a shift', () => {
    expect(rules([hot, 'fire watch'], [way(51), way(50)], [[], [0]]).room).toEqual([0, 0]);
    expect(rules([hot, 'fire watch'], [way(50), way(50)], [[], [0]]).room).toEqual([50, 0]);
  });
  it('after several: each ends no longer before it than the others take', () => {
    const found = rules([hot, hot, 'fire watch'], [way(20, 30), way(15), way(40)], [[], [], [0, 1]]);
    expect(found.watches).toEqual([
      { first: 0, then: 2, mostClock: 15 },
      { first: 1, then: 2, mostClock: 30 },
    ]);
  });
  it('the first of several watches, not one that waits for another', () => {
    const found = rules([hot, 'fire watch', 'fire watch'], [way(20), way(60), way(60)], [[], [0, 2], [0]]);
    expect(found.watches).toEqual([{ first: 0, then: 2, mostClock: 0 }]);
  });
  it('none of cold work, nor one that does not wait for it', () => {
    expect(rules(['remove screw cold work', 'fire watch'], [way(20), way(60)], [[], [0]]).watches).toEqual(
      [],
    );
    expect(rules(['remove screw', 'fire watch'], [way(20), way(60)], [[], [0]]).watches).toEqual([]);
    expect(rules([hot, 'fire watch'], [way(20), way(60)], [[], []]).watches).toEqual([]);
    expect(rules([hot, 'clean all'], [way(20), way(60)], [[], [0]]).watches).toEqual([]);
  });
});

describe('covers that lie open', () => {
  const w = (count: number): readonly (readonly Way[])[] => Array.from({ length: count }, () => way(10));
  test.each<[string, readonly string[], readonly (readonly number[])[], readonly unknown[]]>([
    [
      'the work under them begins within a shift',
      ['covers off run 1', 'strip run 1'],
      [[], [0]],
      [{ first: 0, then: 1, most: 100 }],
    ],
    [
      'the first work under them',
      ['covers off run 1', 'clean run 1', 'strip run 1'],
      [[], [0], [0]],
      [{ first: 0, then: 2, most: 100 }],
    ],
    [
      'of two alike the first written',
      ['covers off run 1', 'strip panels 1 to 2 of run 1', 'strip panels 3 to 4 of run 1'],
      [[], [0], [0]],
      [{ first: 0, then: 1, most: 100 }],
    ],
    [
      'braces before hold-downs before the spiral before the liner',
      ['covers off all', 'fit run 1', 'restrain screw', 'hold-downs off all', 'braces off all'],
      [[], [0], [0], [0], [0]],
      [{ first: 0, then: 4, most: 100 }],
    ],
    ['not the work at another place', ['covers off run 1', 'strip run 2'], [[], [0]], []],
    ['not what does not wait for them', ['covers off run 1', 'strip run 1'], [[], []], []],
    [
      'not what is no work under them',
      ['covers off run 1', 'gas test run 1', 'covers on run 1'],
      [[], [0], [0]],
      [],
    ],
    [
      'each stretch by itself',
      ['covers off run 1', 'covers off run 2', 'strip run 1', 'strip run 2'],
      [[], [], [0, 1], [0, 1]],
      [
        { first: 0, then: 2, most: 100 },
        { first: 1, then: 3, most: 100 },
      ],
    ],
    [
      'a stretch that only touches is another',
      ['covers off from 0 mm to 2000 mm', 'strip from 2000 mm to 4000 mm'],
      [[], [0]],
      [],
    ],
  ])('%s', (_, lines, waits, expected) => {
    expect(rules(lines, w(lines.length), waits).covers).toEqual(expected);
  });
  it('nothing where no shift ends', () => {
    expect(rules(['covers off run 1', 'strip run 1'], w(2), [[], [0]], []).covers).toEqual([]);
  });
});

describe('what dries or cools', () => {
  const w = (count: number): readonly (readonly Way[])[] => Array.from({ length: count }, () => way(10));
  test.each<[string, readonly string[], readonly (readonly number[])[], readonly unknown[]]>([
    [
      'the next work there waits, in whole minutes',
      ['clean run 1 dries 3 h', 'fit run 1'],
      [[], [0]],
      [{ first: 0, then: 1, leastClock: 180 }],
    ],
    [
      'only the nearest of those who wait',
      ['clean run 1 dries 3 h', 'fit run 1', 'clear up run 1'],
      [[], [0], [0, 1]],
      [{ first: 0, then: 1, leastClock: 180 }],
    ],
    [
      'both that begin by themselves',
      ['clean run 1 dries 3 h', 'fit panels 1 to 2 of run 1', 'fit panels 3 to 4 of run 1'],
      [[], [0], [0]],
      [
        { first: 0, then: 1, leastClock: 180 },
        { first: 0, then: 2, leastClock: 180 },
      ],
    ],
    ['not work at another place', ['clean run 1 dries 3 h', 'fit run 2'], [[], [0]], []],
    [
      'not what lays no hands on it',
      ['clean run 1 dries 3 h', 'gas test run 1', 'isolate'],
      [[], [0], [0]],
      [],
    ],
    ['not what does not wait for it', ['clean run 1 dries 3 h', 'fit run 1'], [[], []], []],
    [
      'a hot patch cools for half an hour',
      ['patch panel 1 of run 1', 'fit run 1'],
      [[], [0]],
      [{ first: 0, then: 1, leastClock: 30 }],
    ],
    ['what needs none', ['clean run 1', 'fit run 1'], [[], [0]], []],
  ])('%s', (_, lines, waits, expected) => {
    expect(rules(lines, w(lines.length), waits).rests).toEqual(expected);
  });
});

describe('where a step is, and how long a platform takes', () => {
  it('from its first millimetre to its last; a gate has a metre to either side', () => {
    const found = rules(
      ['strip run 1', 'isolate', 'gate off Gate1', 'strip all'],
      [way(1), way(1), way(1), way(1)],
      [[], [], [], []],
    );
    expect(found.extents).toEqual([
      [0, 4000],
      [0, 8200],
      [3000, 5200],
      [0, 8200],
    ]);
    // What lies nowhere has no stretch.
    expect(rules(['strip from 2000 mm to 2000 mm'], [way(1)], [[]]).extents).toEqual([undefined]);
  });
  it('an hour where the plant does not say, said to be assumed', () => {
    const plain = rules(['isolate'], [way(1)], [[]]);
    expect([plain.move, plain.moveAssumed]).toEqual([60, true]);
    const own = plant({
      unitTimes: [
        { item: 'access move', time: stated('duration', 0.51), origin: origin() },
      ] as Plant['unitTimes'],
    });
    const stating = rules(['isolate'], [way(1)], [[]], days, job(made({ plant: own }), ['all']));
    expect([stating.move, stating.moveAssumed]).toEqual([31, false]);
  });
});

const shift = (from: number, to: number): Shift => ({
  from: { hours: from, text: '', origin: origin() },
  to: { hours: to, text: '', origin: origin() },
  days: [],
  origin: origin(),
});

describe('a written order, to the minute', () => {
  const window = { from: on('2027-02-01'), to: on('2027-02-05'), origin: origin() };
  const base = (facts: Partial<Job> = {}, of: Partial<Conveyor> = {}): Job =>
    job(made({ plant: plant({ shifts: [shift(7, 15)] }), ...of }), ['all'], {
      crews: [crew('Alpha', 2), crew('Bravo', 3)],
      window,
      ...facts,
    });
  const plan = (of: Job, lines: readonly string[]): JobPlan =>
    planJob(withOrder(of, lines), worldOf(of), { quick: true });
  const rows = (found: JobPlan): readonly unknown[] =>
    found.steps.map(({ step: { action }, crews, start, finish, float, critical, after }) => [
      action,
      crews.join('+'),
      start,
      finish,
      float,
      critical,
      after,
    ]);

  it('two crews beside each other: who waits for whom, and what can be late', () => {
    const found = plan(base(), [
      'i: isolate by Alpha takes 1 h',
      'a: strip run 1 by Alpha takes 3 h',
      'b: strip run 2 by Bravo after i takes 1 h',
      'clean all by Alpha after a, b takes 2 h',
    ]);
    expect(rows(found)).toEqual([
      ['isolate', 'Alpha', 0, 1, 0, true, []],
      ['strip', 'Bravo', 1, 2, 2, false, [0]],
      ['strip', 'Alpha', 1, 4, 0, true, [0]],
      ['clean', 'Alpha', 4, 6, 0, true, [0, 1, 2]],
    ]);
    expect(found.criticalPath).toEqual([0, 2, 3]);
    expect([found.duration, found.lowerBound, found.gap, found.optimal, found.available]).toEqual([
      6,
      6,
      0,
      true,
      40,
    ]);
    expect([found.steps[1]?.from?.hour, found.steps[1]?.to?.hour, found.finish?.hour]).toEqual([8, 9, 13]);
    expect(found.steps.map(({ people }) => people)).toEqual([2, 3, 2, 2]);
  });

  it('over the night, with what may not be split on the next day', () => {
    const found = plan(base(), [
      'strip all by Alpha takes 6 h',
      'isolate by Alpha takes 3 h',
      'clean all by Alpha takes 6 h',
    ]);
    expect(rows(found)).toEqual([
      ['strip', 'Alpha', 0, 6, 2, false, []],
      ['isolate', 'Alpha', 8, 11, 0, true, [0]],
      ['clean', 'Alpha', 11, 17, 0, true, [0, 1]],
    ]);
    expect(found.finish && formatDay(found.finish.day)).toBe('2027-02-03');
    // Half a shift is lost before it: the bound knows.
    expect([found.duration, found.lowerBound]).toEqual([17, 17]);
  });

  it('what is longer than any shift is split, and told', () => {
    const found = plan(base(), ['strip all by Alpha takes 1 h', 'isolate by Alpha takes 9 h']);
    expect(rows(found)[1]).toEqual(['isolate', 'Alpha', 1, 10, 0, true, [0]]);
    expect(found.longerThanShift).toEqual([1]);
  });

  it('a platform takes its time to another run, and its moves are counted', () => {
    const up: Partial<Conveyor> = { access: [{ ...everywhere, kind: 'mobile platform', height: mm(5000) }] };
    const found = plan(base({ accessUnits: [platform('MP1')] }, up), [
      'strip run 1 by Alpha takes 2 h',
      'clean run 1 by Alpha takes 1 h',
      'strip run 2 by Alpha takes 2 h',
    ]);
    expect(found.steps.map(({ unit, start, finish }) => [unit, start, finish])).toEqual([
      ['MP1', 0, 2],
      ['MP1', 2, 3],
      // An hour to the other run.
      ['MP1', 4, 6],
    ]);
    expect(found.accessMoves).toBe(1);
    // The steps say how long they take; how long the platform does, nobody says.
    expect(found.defaults[0]).toBe(
      'Unit times of Tarnholt are not declared for access move: usual ones are taken, a judgement.',
    );
    expect(
      plan(base(), ['strip run 1 by Alpha takes 2 h', 'strip run 2 by Alpha takes 2 h']).accessMoves,
    ).toBe(0);
  });

  it('covers that an order leaves open for more than a shift, and by how much', () => {
    const found = plan(base({}, { covers: [cover(0, 8200)] }), [
      'c: covers off all by Alpha takes 1 h',
      'p: clear up all by Bravo after c takes 7 h',
      'q: pause by Bravo after p takes 3 h',
      'strip all by Alpha after q takes 2 h',
    ]);
    // Off at 1 h; the strip begins at 11: ten hours, of which a shift of eight is let pass.
    expect(found.openTooLong).toBe(2);
  });

  it('a watch that begins the next morning', () => {
    const found = plan(base(), [
      'h: remove screw by Alpha takes 6 h hot work shielded wet fire watch 60 min',
      'c: clean run 1 by Alpha after h takes 2 h',
      'fire watch by Alpha after h, c takes 1 h',
    ]);
    // It ends at 13:00, the watch begins at 7:00: two hours of work and sixteen of night.
    expect(found.watchTooLate).toBe(18);
  });

  it('a watch that begins after a test of the air too: all of it is time in which nobody watches', () => {
    const enclosed = base({}, { confinedSpace: true });
    const found = plan(enclosed, [
      'isolate by Alpha takes 10 min',
      'prove dead by Alpha takes 10 min',
      'g: gas test all by Alpha takes 30 min every 2 h',
      'h: remove screw by Alpha after g takes 1 h hot work shielded wet fire watch 60 min',
      'c: clean run 1 by Alpha after h takes 2 h',
      'fire watch by Alpha after h, c takes 1 h',
    ]);
    const of = (action: string): { start: number; finish: number } =>
      found.steps.find(({ step, repeat }) => step.action === action && !repeat) ?? { start: 0, finish: NaN };
    const [hot, watch] = [of('remove screw'), of('fire watch')];
    expect(
      found.steps.filter(({ repeat, start }) => repeat && start >= hot.finish && start < watch.start),
    ).toHaveLength(1);
    expect(watch.start - hot.finish).toBeCloseTo(2.5, 9);
    expect(found.watchTooLate).toBeCloseTo(watch.start - hot.finish, 9);
  });

  it('in a circle: as listed, one after the other, and told', () => {
    const found = plan(base(), [
      'a: strip run 1 by Alpha after b takes 2 h',
      'b: strip run 2 by Bravo after a takes 3 h',
    ]);
    expect(found.steps.map(({ start, finish }) => [start, finish])).toEqual([
      [0, 2],
      [2, 5],
    ]);
    expect([found.buildable, found.problems[0]?.kind]).toEqual([false, 'order']);
    // Nothing is proven of it, least of all that no plan could be shorter.
    expect([found.optimal, found.lowerBound, found.boundBecause]).toEqual([
      false,
      0,
      'the order goes in a circle, so nothing is proven',
    ]);
  });
  it('in a circle beside other work: all of it as listed, also what could go on side by side', () => {
    const found = plan(base(), [
      'a: strip run 1 by Alpha after b takes 2 h',
      'b: strip run 2 by Bravo after a takes 3 h',
      'clean run 1 by Alpha after a takes 1 h',
      'clean run 2 by Bravo after b takes 1 h',
    ]);
    expect(found.duration).toBe(7);
  });

  it('in an enclosed trough: the tests of the air are rows, and nobody is inside when it is too late for one', () => {
    const of = base({}, { confinedSpace: true });
    const found = plan(of, ['gas test all by Alpha takes 1 h every 3 h', 'strip all by Bravo takes 9 h']);
    // Tested by 1; strip to 4, test, strip to 8 less the test of an hour: 3 + 3 of work; the next morning a test and the rest.
    expect(
      found.steps.map(({ step: { action }, start, finish, repeat }) => [action, start, finish, repeat]),
    ).toEqual([
      ['gas test', 0, 1, undefined],
      ['strip', 1, 12, undefined],
      ['gas test', 4, 5, 'interval'],
      ['gas test', 8, 9, 'break'],
    ]);
    expect(found.repeatGasTests).toEqual({ every: 3, times: 2 });
    expect(found.everybodyOut).toEqual([]);
    const short = plan(of, ['gas test all by Alpha takes 1 h every 2 h', 'strip all by Bravo takes 5 h']);
    // 1–3, test, 4–6, test at 6–7, 7–8.
    expect(short.steps.at(-1)?.repeat).toBe('interval');
    const out = plan(of, ['gas test all by Alpha takes 1 h every 6 h', 'strip all by Bravo takes 8 h']);
    // 1 to 7; a test would end with the shift: everybody is out until the morning.
    expect(out.everybodyOut).toEqual([{ from: 7, to: 8 }]);
    expect(out.steps.find(({ step: { action } }) => action === 'strip')).toMatchObject({
      start: 1,
      finish: 11,
    });
    // Nobody needs to be out where the work is done by then.
    expect(
      plan(of, ['gas test all by Alpha takes 1 h every 6 h', 'strip all by Bravo takes 5 h']).everybodyOut,
    ).toEqual([]);
  });

  it('what dries lets its step be less late, by the clock', () => {
    const three = base({ crews: [crew('Alpha', 2), crew('Bravo', 3), crew('Charlie', 2)] });
    const found = plan(three, [
      'o: pause by Bravo takes 1 h',
      'c: clean run 1 by Alpha after o takes 1 h dries 3 h',
      'f: fit run 1 by Bravo after c takes 2 h',
      's: strip run 2 by Charlie after o takes 8 h',
    ]);
    // Fitted from 5 to 7, and by 9 at the latest: cleaned by 4.
    expect(rows(found).map((row) => (row as unknown[]).slice(0, 5))).toEqual([
      ['pause', 'Bravo', 0, 1, 0],
      ['clean', 'Alpha', 1, 2, 2],
      ['strip', 'Charlie', 1, 9, 0],
      ['fit', 'Bravo', 5, 7, 2],
    ]);
  });

  it('what may not be split can be late to the end of the shift, and no further', () => {
    const found = plan(base(), [
      'o: pause by Alpha takes 1 h',
      'i: isolate by Alpha after o takes 2 h',
      's: clear up all by Bravo after o takes 510 min',
      'p: pause by Bravo after i, s takes 1 h',
    ]);
    // From 6 to 8: from 7.5 to 9.5 it would lie across the night.
    expect(found.steps.map(({ step: { action }, start, float }) => [action, start, float])).toEqual([
      ['pause', 0, 0],
      ['isolate', 1, 5],
      ['clear up', 1, 0],
      ['pause', 9.5, 0],
    ]);
  });

  it('moves are counted in the order of time, not of the list', () => {
    const up: Partial<Conveyor> = { access: [{ ...everywhere, kind: 'mobile platform', height: mm(5000) }] };
    const lines = [
      'o: pause by Alpha takes 1 h',
      'b: strip run 2 by Alpha after a takes 1 h',
      'a: strip run 1 by Alpha after o takes 1 h',
      'c: clean run 1 by Alpha after b takes 1 h',
    ];
    // There, and back.
    expect(plan(base({ accessUnits: [platform('MP1')] }, up), lines).accessMoves).toBe(2);
  });

  it('giving back an enclosed machine is on the chain of which every delay delays the end', () => {
    const found = plan(base({}, { confinedSpace: true }), [
      'g: gas test all by Alpha takes 1 h every 3 h',
      's: strip all by Bravo after g takes 2 h',
      'r: remove isolation by Alpha after s takes 1 h',
      'e: run empty by Alpha after r takes 1 h',
    ]);
    expect(rows(found).map((row) => (row as unknown[]).slice(0, 6))).toEqual([
      ['gas test', 'Alpha', 0, 1, 0, true],
      ['strip', 'Bravo', 1, 3, 0, true],
      ['remove isolation', 'Alpha', 3, 4, 0, true],
      ['run empty', 'Alpha', 4, 5, 0, true],
    ]);
    expect(found.criticalPath).toEqual([0, 1, 2, 3]);
  });

  it('more crews than a plan is made for: a list, one after the other, and nothing is claimed', () => {
    const crowd = base({ crews: Array.from({ length: 201 }, (_, k) => crew(`C${k}`, 2)) });
    const found = planJob(
      withOrder(crowd, ['strip run 1 by C1 takes 2 h', 'strip run 2 by C2 takes 3 h']),
      worldOf(crowd),
    );
    expect(found.steps.map(({ start, finish, crews }) => [start, finish, crews])).toEqual([
      [0, 2, ['C1']],
      [2, 5, ['C2']],
    ]);
    expect([
      found.duration,
      found.lowerBound,
      found.gap,
      found.optimal,
      found.boundBecause,
      found.shorten,
    ]).toEqual([5, 0, 0, false, 'there is too much of it to be scheduled', []]);
    expect(found.problems.map(({ kind }) => kind)).toContain('too many');
    const most = base({ crews: crowd.crews.slice(0, 200) });
    expect(plan(most, ['strip run 1 by C1 takes 2 h']).problems.map(({ kind }) => kind)).not.toContain(
      'too many',
    );
  });

  it('a proposed order says who does it from which platform, and how many it carries', () => {
    const up: Partial<Conveyor> = { access: [{ ...everywhere, kind: 'mobile platform', height: mm(5000) }] };
    const made1 = line([4], [10, 0], { plant: plant({ shifts: [shift(7, 15)] }), ...up });
    const alone = job(made1, ['all'], {
      crews: [crew('Alpha', 4)],
      accessUnits: [platform('MP1', 20_000, 300)],
    });
    const found = planJob(alone, worldOf(alone), { quick: true, shakes: 5, nodes: 0 });
    const strip = found.steps.find(({ step: { action } }) => action === 'strip');
    // 300 kg less 40 of tools and a panel: three people.
    expect([
      strip?.step.crews.map(({ use }) => use.name),
      strip?.step.unit?.use.name,
      strip?.step.aboard?.count,
      strip?.people,
    ]).toEqual([['Alpha'], 'MP1', 3, 3]);
    const isolate = found.steps.find(({ step: { action } }) => action === 'isolate');
    expect([isolate?.step.unit, isolate?.step.aboard, isolate?.unit]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
    expect(found.violations).toEqual([]);
  });

  describe('what was taken because nobody stated it', () => {
    it('unit times, shifts, crews, a sling angle, and what the job leaves out', () => {
      const bare = job(line([4], [10, 0]), ['all'], {
        sawKerf: { ...mm(3), assumed: 'A kerf of 3 mm is taken.' },
      });
      expect(
        planJob(withOrder(bare, ['strip all', 'patch panel 1 of run 1']), worldOf(bare), { quick: true })
          .defaults,
      ).toEqual([
        'Unit times of Tarnholt are not declared for strip, weld: usual ones are taken, a judgement.',
        'No shift is declared: 7:00 to 15:00 every day is taken, a judgement.',
        'The job names no crew: one of 3 people is taken, a judgement.',
        'No sling angle is stated: 45° from the vertical is taken, the usual limit.',
        'A welded patch cools for 0.5 h before anybody works there, a judgement.',
        'A kerf of 3 mm is taken.',
      ]);
    });
    it('nothing where all is stated', () => {
      const own = plant({
        shifts: [shift(7, 15)],
        unitTimes: [{ item: 'strip', time: stated('duration', 1), origin: origin() }] as Plant['unitTimes'],
      });
      const stating = base({ slingAngle: stated('angle', 30) }, { plant: own });
      expect(plan(stating, ['strip all by Alpha']).defaults).toEqual([]);
    });
  });
});

describe('what would make it shorter', () => {
  const two = (facts: Partial<Job>, of: Partial<Conveyor> = {}): Job => job(made(of), ['all'], facts);
  const shorten = (of: Job, lines: readonly string[]): JobPlan['shorten'] =>
    planJob(withOrder(of, lines), worldOf(of)).shorten;
  it('one more crew like the largest, with what it saves', () => {
    const found = shorten(
      two({ crews: [crew('Bravo', 2), crew('Alpha', 4)] }),
      ['x: fit run 1 takes 4 h', 'y: fit run 2 after z takes 4 h', 'z: clean run 1 takes 4 h'].map(
        (text) => text,
      ),
    );
    for (const each of found) expect(each.what).toBe('one more crew like Alpha (4 people)');
    const one = shorten(two({ crews: [crew('Alpha', 4)] }), [
      'p: pause',
      'x: fit run 1 after p takes 4 h',
      'y: fit run 2 after p takes 4 h',
    ]);
    // Side by side instead of one after the other.
    expect(one).toEqual([{ what: 'one more crew like Alpha (4 people)', saves: 4 }]);
  });
  it('one more platform, where it is what is scarce', () => {
    const up: Partial<Conveyor> = { access: [{ ...everywhere, kind: 'mobile platform', height: mm(5000) }] };
    const of = two({ crews: [crew('Alpha', 4), crew('Bravo', 4)], accessUnits: [platform('MP1')] }, up);
    const found = shorten(of, [
      'p: pause',
      'x: fit run 1 after p takes 4 h',
      'y: fit run 2 after p takes 4 h',
    ]);
    // Side by side, and the hour of moving is saved.
    expect(found).toEqual([{ what: 'one more access unit like MP1', saves: 5 }]);
  });
  it('nothing where nothing helps, nor where crew and platform are not known', () => {
    expect(
      shorten(two({ crews: [crew('Alpha', 4)] }), ['fit run 1 takes 4 h', 'fit run 2 takes 4 h']),
    ).toEqual([]);
    const unknown = two({ crews: [{ use: { name: 'Guests', origin: origin() } }] });
    expect(
      shorten(unknown, ['p: pause', 'x: fit run 1 after p takes 4 h', 'y: fit run 2 after p takes 4 h']),
    ).toEqual([]);
  });
  it('like the largest crew, the first of several, under a name of its own; like the first platform', () => {
    const of = two({
      crews: [
        crew('Bravo', 2),
        crew('Alpha', 4),
        crew('Charlie', 4),
        { use: { name: 'Guests', origin: origin() } },
      ],
      accessUnits: [platform('MP1'), platform('MP2')],
    });
    const tried: string[][] = [];
    const found = whatShortens(
      of,
      (more) => {
        tried.push([
          ...more.crews.map(({ use, crew: known }) => `${use.name} ${known?.name} ${known?.size.count}`),
          ...more.accessUnits.map(({ use, unit }) => `${use.name} ${unit?.name}`),
        ]);
        return {
          activities: [{ name: 'all', modes: [{ duration: 30, uses: [] }], after: [] }],
          resources: [],
        };
      },
      60,
    );
    expect(found.map(({ what }) => what)).toEqual([
      'one more crew like Alpha (4 people)',
      'one more access unit like MP1',
    ]);
    expect(tried[0]?.slice(0, 5).at(-1)).toBe('another Alpha another Alpha 4');
    expect(tried[1]?.at(-1)).toBe('another MP1 another MP1');
    expect(tried.map((each) => each.length)).toEqual([7, 7]);
  });
  it('is not looked for in a hurry', () => {
    const of = two({ crews: [crew('Alpha', 4)] });
    const lines = ['p: pause', 'x: fit run 1 after p takes 4 h', 'y: fit run 2 after p takes 4 h'];
    expect(planJob(withOrder(of, lines), worldOf(of), { quick: true }).shorten).toEqual([]);
    expect(planJob(withOrder(of, []), worldOf(of)).shorten).toEqual([]);
  });
  it('most first', () => {
    const of = two({ crews: [crew('Alpha', 4)], accessUnits: [platform('MP1')] });
    const problem = (more: Job): ReturnType<typeof asProblem> => ({
      activities: [
        {
          name: 'all',
          modes: [
            { duration: more.accessUnits.length > 1 ? 30 : more.crews.length > 1 ? 60 : 100, uses: [] },
          ],
          after: [],
        },
      ],
      resources: [],
    });
    expect(whatShortens(of, problem, 120)).toEqual([
      { what: 'one more access unit like MP1', saves: 1.5 },
      { what: 'one more crew like Alpha (4 people)', saves: 1 },
    ]);
    // As long as now is no help.
    expect(whatShortens(of, problem, 60)).toEqual([{ what: 'one more access unit like MP1', saves: 0.5 }]);
  });
});

test('steps as a problem of scheduling: handing back takes no time in it', () => {
  const of = job(made(), ['all'], { crews: [crew('Alpha', 4)], accessUnits: [platform('MP1')] });
  const steps = [step('strip run 1', of), step('run empty', of)];
  const made2: TimeRules = {
    ...rules(['strip run 1', 'run empty'], [way(1), way(1)], [[], []]),
    handBack: [1],
    whole: [true, true],
    room: [7, 7],
    covers: [{ first: 0, then: 1, most: 1 }],
    watches: [{ first: 0, then: 1, mostClock: 2 }],
    rests: [{ first: 0, then: 1, leastClock: 3 }],
  };
  const ways: readonly (readonly Way[])[] = [
    [{ crews: ['Alpha'], people: 4, unit: 'MP1', place: '', minutes: 30, teams: [0, 1] }],
    way(20),
  ];
  const { gaps, breaks, pauses, ...rest } = asProblem(steps, ways, [[], [0]], [[0, 1]], teamsOf(of), made2);
  expect(rest).toEqual({
    activities: [
      {
        name: 'strip run 1',
        after: [],
        modes: [
          {
            duration: 30,
            uses: [
              { resource: 0, amount: 1 },
              { resource: 1, amount: 1, place: [0, 4000] },
            ],
          },
        ],
        whole: true,
        room: 7,
      },
      { name: 'run empty', after: [0], modes: [{ duration: 0, uses: [] }] },
    ],
    resources: [
      { name: 'Alpha', capacity: 1 },
      { name: 'MP1', capacity: 1, move: 60 },
    ],
    exclusions: [[0, 1]],
  });
  expect(gaps).toEqual([...made2.covers, ...made2.watches, ...made2.rests]);
  expect([breaks, pauses]).toEqual([made2.axis.breaks, made2.axis.pauses]);
});
