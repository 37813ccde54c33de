// A crane takes time between its stands, worked out by hand: chart of 4 t to 6 m, stands 4 m beside the trough.

import { describe, expect, it } from 'vitest';
import type { CranePlace, Job } from '../../../src/domain/model/job.js';
import type { JobPlan } from '../../../src/domain/plan/job-plan.js';
import { standsAlong } from '../../../src/domain/order/lifting-gear.js';
import { planJob } from '../../../src/domain/plan/plan-job.js';
import { hours, mm, origin, plant, screw, stated, use } from '../../kit/estate.js';
import { crew, job, line, withOrder, worldOf } from '../order/stories.js';

const stand = (chainage: number, name = 'C1'): CranePlace => ({
  use: use(name),
  crane: {
    name,
    chart: [{ radius: mm(6000), load: stated('mass', 4000) }],
    origin: origin(),
    nameOrigin: origin(),
  },
  at: mm(chainage),
  offset: mm(4000),
  origin: origin(),
});
const spiral = screw({ flight: { width: mm(80), thickness: mm(25), origin: origin() } });
const of = (cranes: readonly CranePlace[], declared?: number): Job => {
  const unitTimes =
    declared === undefined ? [] : [{ item: 'crane move' as const, time: hours(declared), origin: origin() }];
  const made = line([12], [20, 20], { screw: spiral, plant: plant({ unitTimes }) });
  return job(made, [], {
    crews: [crew('Alpha', 4), crew('Bravo', 4)],
    cranes,
    screwChange: { screw: spiral, cut: 'cold', joints: 'bolted', origin: origin() },
  });
};
const plan = (made: Job, lines: readonly string[]): JobPlan =>
  planJob(withOrder(made, lines), worldOf(made), { quick: true, shakes: 20, nodes: 200 });
const times = (found: JobPlan): readonly (readonly number[])[] =>
  found.steps.map(({ start, finish }) => [start, finish]);
const low = 'remove screw from 0 mm to 6000 mm by Alpha takes 2 h';
const high = 'remove screw from 6000 mm to 12000 mm by Alpha takes 2 h';

describe('a crane', () => {
  it('of two stands takes an hour between them, or as long as is declared', () => {
    const two = [stand(3000), stand(9000)];
    expect(times(plan(of(two), [low, high]))).toEqual([
      [0, 2],
      [3, 5],
    ]);
    expect(times(plan(of(two, 2.5), [low, high]))).toEqual([
      [0, 2],
      [4.5, 6.5],
    ]);
    expect(plan(of(two), [low, high]).defaults.join()).toContain('crane move');
    expect(plan(of(two, 2.5), [low, high]).defaults.join()).not.toContain('crane move');
  });
  it('of one stand does not move, nor do two cranes', () => {
    for (const cranes of [[stand(6000)], [stand(3000), stand(9000, 'C2')], []])
      expect(times(plan(of(cranes), [low, high]))).toEqual([
        [0, 2],
        [2, 4],
      ]);
    expect(plan(of([stand(6000)]), [low, high]).defaults.join()).not.toContain('crane move');
  });
  it('of two stands moves within a step that needs both, unless the step says how long it takes', () => {
    const whole = (text: string, cranes: readonly CranePlace[], declared?: number): number =>
      plan(of(cranes, declared), [text]).duration;
    const one = whole('remove screw by Alpha', [stand(6000)]);
    expect(whole('remove screw by Alpha', [stand(3000), stand(9000)])).toBeCloseTo(one + 1, 6);
    expect(whole('remove screw by Alpha', [stand(3000), stand(9000)], 2.5)).toBeCloseTo(one + 2.5, 6);
    expect(whole('remove screw by Alpha takes 3 h', [stand(3000), stand(9000)])).toBe(3);
  });
  it('leaves what comes before its move no more time than that', () => {
    const found = plan(of([stand(3000), stand(9000)]), [
      `a: ${low}`,
      `b: ${high.replace('by Alpha takes', 'by Bravo after a takes')}`,
    ]);
    expect(found.steps.map(({ float }) => float)).toEqual([0, 0]);
    expect(found.duration).toBe(5);
  });
});

describe('stands along a stretch', () => {
  it.each([
    [0, 6000, [0]],
    [6000, 12_000, [1]],
    [0, 12_000, [0, 1]],
    [4000, 8000, [0, 1]],
    [9000, 9000, [1]],
  ])('from %s to %s', (from, to, expected) => {
    expect(standsAlong(of([stand(3000), stand(9000)]), [{ from, to }])).toEqual(new Map([['C1', expected]]));
  });
  it('none where nothing reaches, and none of a job without cranes', () => {
    expect(standsAlong(of([stand(30_000)]), [{ from: 0, to: 12_000 }]).size).toBe(0);
    expect(standsAlong(of([]), [{ from: 0, to: 12_000 }]).size).toBe(0);
  });
});
