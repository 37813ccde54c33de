// What is more than a plan is made for still comes back, as a list.

import { expect, test } from 'vitest';
import type { Job } from '../../../src/domain/model/job.js';
import type { JobPlan } from '../../../src/domain/plan/job-plan.js';
import { planJob } from '../../../src/domain/plan/plan-job.js';
import { crew, job, line, withOrder, worldOf } from '../order/stories.js';

const plan = (of: Job): JobPlan => planJob(of, worldOf(of), { quick: true });
const said = (found: JobPlan): string[] => found.problems.map((each) => each.kind);

test('more crews or steps than a plan is made for are said, with the limit, and nothing is claimed', () => {
  const base = line([4], [10, 0]);
  const crowd = plan(
    job(base, ['all'], { crews: Array.from({ length: 3000 }, (_, k) => crew(`Crew${k}`, 3)) }),
  );
  const many = job(base, ['all'], { crews: [crew('Alpha', 3)] });
  const long = plan(
    withOrder(
      many,
      Array.from({ length: 2001 }, () => 'clean run 1'),
    ),
  );
  for (const found of [crowd, long]) {
    const problem = found.problems.find((each) => each.kind === 'too many');
    expect(problem?.stops).toBe(true);
    expect(problem?.message).toContain('at most 2000 steps and 200 crews and units');
    expect([found.optimal, found.lowerBound, found.buildable]).toEqual([false, 0, false]);
  }
  expect(said(plan(withOrder(many, ['isolate', 'clean run 1'])))).not.toContain('too many');
});
