// What would make a plan shorter: the same steps scheduled again with one more of each thing that may be scarce.

import type { Job, Step } from '../model/job.js';
import { sayStep } from '../order/words.js';
import type { ScheduleProblem } from './schedule-jobs.js';
import { scheduledBefore } from './scheduled-before.js';
import type { Team, Way } from './teams.js';
import type { Extent, TimeRules } from './time-rules.js';

export interface Shorter {
  /** `one more crew like Alpha (4 people)`. */
  readonly what: string;
  /** Working hours. */
  readonly saves: number;
}

/**
 * Steps as activities: who waits for whom, the ways of doing each, pairs that may not overlap, and the clock; in net minutes.
 * Handing back takes no time here: it is laid over the shifts once the rest is known.
 */
export function asProblem(
  steps: readonly Step[],
  ways: readonly (readonly Way[])[],
  waits: readonly (readonly number[])[],
  apart: readonly (readonly [number, number])[],
  teams: readonly Team[],
  rules: TimeRules,
): ScheduleProblem {
  return {
    activities: steps.map((step, i) => {
      if (rules.handBack.includes(i))
        return { name: sayStep(step), after: waits[i] ?? [], modes: [{ duration: 0, uses: [] }] };
      return {
        name: sayStep(step),
        after: waits[i] ?? [],
        modes: (ways[i] ?? []).map((way) => ({
          duration: way.minutes,
          uses: way.teams.map((resource) => {
            const place = placeOf(teams[resource], rules, i);
            return { resource, amount: 1, ...(place ? { place } : {}) };
          }),
        })),
        whole: rules.whole[i] ?? false,
        room: rules.room[i] ?? 0,
      };
    }),
    resources: teams.map((team) => ({
      name: team.name,
      capacity: 1,
      ...(team.kind === 'access unit' ? { move: rules.move } : {}),
      ...(team.kind === 'crane' ? { move: rules.craneMove } : {}),
    })),
    exclusions: apart,
    breaks: rules.axis.breaks,
    pauses: rules.axis.pauses,
    gaps: [...rules.covers, ...rules.watches, ...rules.rests],
  };
}

/** Where a platform or a crane stands for a step; undefined for people. */
function placeOf(team: Team | undefined, { extents, stands }: TimeRules, i: number): Extent | undefined {
  switch (team?.kind) {
    case 'access unit':
      return extents[i];
    case 'crane':
      return stands[i]?.get(team.name);
    default:
      return undefined;
  }
}

/** Most first; only what saves anything. `problemFor` builds the scheduling problem of the job with more to hand; `now` in minutes. */
export function whatShortens(
  job: Job,
  problemFor: (job: Job) => ScheduleProblem,
  now: number,
): readonly Shorter[] {
  const tries: { readonly what: string; readonly job: Job }[] = [];
  const biggest = job.crews.reduce<Job['crews'][number] | undefined>(
    (best, each) => ((each.crew?.size.count ?? 0) > (best?.crew?.size.count ?? 0) ? each : best),
    undefined,
  );
  if (biggest?.crew) {
    const use = { ...biggest.use, name: `another ${biggest.use.name}` };
    tries.push({
      what: `one more crew like ${biggest.use.name} (${biggest.crew.size.count} people)`,
      job: { ...job, crews: [...job.crews, { use, crew: { ...biggest.crew, name: use.name } }] },
    });
  }
  const unit = job.accessUnits[0];
  if (unit?.unit) {
    const use = { ...unit.use, name: `another ${unit.use.name}` };
    tries.push({
      what: `one more access unit like ${unit.use.name}`,
      job: { ...job, accessUnits: [...job.accessUnits, { use, unit: { ...unit.unit, name: use.name } }] },
    });
  }
  return tries
    .flatMap(({ what, job: changed }): Shorter[] => {
      const problem = problemFor(changed);
      const shakes = Math.min(200, Math.round(500_000 / (1 + problem.activities.length ** 2)));
      const shorter = scheduledBefore(problem, { shakes, nodes: 0 });
      const saves = shorter.kind === 'schedule' ? (now - shorter.makespan) / 60 : 0;
      return saves > 0 ? [{ what, saves }] : [];
    })
    .sort((a, b) => b.saves - a.saves);
}
