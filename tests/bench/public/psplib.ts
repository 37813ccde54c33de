// Reads single-mode instances of PSPLIB (Kolisch and Sprecher 1996) in the library's own text form.

import type { ScheduleProblem } from '../../../src/domain/plan/schedule-jobs.js';

/** Throws where the text is none. */
export function readPsplib(text: string): ScheduleProblem {
  const lines = text.split(/\r?\n/);
  const section = (title: string, skip: number): number[][] => {
    const from = lines.findIndex((line) => line.startsWith(title));
    if (from < 0) throw new Error(`No "${title}".`);
    const rows: number[][] = [];
    for (let k = from + skip; k < lines.length && !(lines[k] ?? '').startsWith('*'); k++)
      rows.push((lines[k] ?? '').trim().split(/\s+/).map(Number));
    return rows;
  };
  const precedence = section('PRECEDENCE RELATIONS', 2);
  const requests = section('REQUESTS/DURATIONS', 3);
  const capacities = section('RESOURCEAVAILABILITIES', 2)[0] ?? [];
  const after: number[][] = precedence.map(() => []);
  for (const [job = 0, , , ...followers] of precedence)
    for (const follower of followers) after[follower - 1]?.push(job - 1);
  return {
    activities: requests.map(([job = 0, , duration = 0, ...amounts], i) => ({
      name: `job ${job}`,
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
