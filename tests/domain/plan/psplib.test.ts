// Schedules against the optima of a public library: a sample of PSPLIB's single-mode sets (source in psplib.json). The whole
// sets are for tests/bench/public/scheduling.ts.

import { describe, expect, test } from 'vitest';
import { scheduleJobs, type ScheduleProblem } from '../../../src/domain/plan/schedule-jobs.js';
import sample from './psplib.json' with { type: 'json' };

type Instance = (typeof sample.instances)[number];

function problemOf({ jobs, capacities }: Instance): ScheduleProblem {
  const rows = jobs.map((job) =>
    job.split('>').map((part) => part.trim().split(' ').filter(Boolean).map(Number)),
  );
  const after: number[][] = rows.map(() => []);
  rows.forEach(([, followers = []], i) => {
    for (const follower of followers) after[follower - 1]?.push(i);
  });
  return {
    activities: rows.map(([[duration = 0, ...amounts] = [] as number[]], i) => ({
      name: `job ${i + 1}`,
      after: after[i] ?? [],
      modes: [
        {
          duration,
          uses: amounts.flatMap((amount, resource) => (amount > 0 ? [{ resource, amount }] : [])),
        },
      ],
    })),
    resources: capacities.map((capacity, r) => ({ name: `R${r + 1}`, capacity })),
  };
}

const of = (set: string): readonly Instance[] => sample.instances.filter(({ name }) => name.startsWith(set));

describe('30 jobs', () => {
  test.each(of('j30'))('$name: $high, proven', (instance) => {
    const result = scheduleJobs(problemOf(instance), { shakes: 300, nodes: 45_000 });
    expect(result).toMatchObject({ makespan: instance.high, lowerBound: instance.high, optimal: true });
  });
});

describe('60 and 120 jobs', () => {
  test.each([...of('j60'), ...of('j120')])(
    '$name: at most 8 % above $high, no bound above it',
    (instance) => {
      const result = scheduleJobs(problemOf(instance), { shakes: 600, nodes: 500 });
      if (result.kind !== 'schedule') throw new Error(result.kind);
      expect(result.makespan).toBeGreaterThanOrEqual(instance.low);
      expect(result.makespan).toBeLessThanOrEqual(Math.floor(instance.high * 1.08));
      expect(result.lowerBound).toBeLessThanOrEqual(instance.high);
      if (result.optimal) expect(result.makespan).toBe(instance.high);
    },
  );
});
