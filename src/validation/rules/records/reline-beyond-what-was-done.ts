// Does a reline say more than was done? A scope that takes in runs of which no length was written down, while others were measured,
// or stretches that the job of that window never planned, is how a half-done job enters the records as a whole one.

import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { Job } from '../../../domain/model/job.js';
import { scopeOf } from '../../../domain/model/liner-sets.js';
import type { Origin } from '../../../domain/model/origin.js';
import { panelEnds } from '../../../domain/model/first-panels.js';
import type { Reline } from '../../../domain/model/records.js';
import { findRun, intervalOf, runAt, runsOf, type Run } from '../../../domain/model/runs.js';
import type { Stretch as NamedStretch } from '../../../domain/model/stretch.js';
import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import type { Rule } from '../../rule.js';
import { list } from '../../telling/wording.js';

export const relineBeyondWhatWasDone: Rule = {
  code: 'TL530',
  title: 'Reline that says more than was measured or planned',
  severity: 'warning',
  restsOn: ['block', 'history', 'machine'],
  why: 'A stretch recorded as new that still has its old liner looks years younger than it is, and wears through unwatched.',
  todo: 'Ask the crew how far they came. Keep in the scope only what was fitted, and leave the rest in the job.',
  given: 'estate',
  bad: `
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
  scope run 3
  scope «run 2»
  fitted run 3 panels 1200 mm, 1200 mm, 1200 mm, 900 mm
}`,
  good: `
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
  scope run 3
  fitted run 3 panels 1200 mm, 1200 mm, 1200 mm, 900 mm
}`,
  *check({ estate }) {
    for (const reline of estate.relines) {
      for (const { origin, label } of unmeasured(reline))
        yield {
          origin,
          message:
            `This reline of ${reline.conveyor.name} takes in ${label}, of which no length was written down, ` +
            'while other runs were measured panel by panel.',
        };
      const beyond = beyondThePlan(estate, reline);
      if (beyond)
        yield {
          origin: reline.date.origin,
          message:
            `This reline of ${reline.conveyor.name} takes in ${list(beyond.stretches)}, which ${list(beyond.jobs.map(({ name }) => name))} ` +
            'for the same stop did not plan.',
          related: beyond.jobs.map(({ nameOrigin, name }) => ({
            origin: nameOrigin,
            message: `job ${name}`,
          })),
        };
    }
  },
};

/** Runs named in the scope without a length, where another run has some. */
function unmeasured({
  conveyor,
  scope,
  panelsFitted,
  panelThicknesses,
}: Reline): readonly { readonly origin: Origin; readonly label: string }[] {
  const cut = runsNamed(
    conveyor,
    panelsFitted.map(({ run }) => run),
  );
  if (cut.length === 0) return [];
  const measured = [
    ...cut,
    ...runsNamed(
      conveyor,
      panelThicknesses.map(({ stretch }) => stretch),
    ),
  ];
  return scope.flatMap((stretch) => {
    const run = stretch.kind === 'run' ? findRun(conveyor, stretch.run) : undefined;
    return run && !measured.includes(run) ? [{ origin: stretch.origin, label: run.label }] : [];
  });
}

function runsNamed(conveyor: Conveyor, stretches: readonly NamedStretch[]): readonly Run[] {
  return stretches.flatMap((stretch) => {
    if (stretch.kind === 'run' || stretch.kind === 'panels') return findRun(conveyor, stretch.run) ?? [];
    return stretch.kind === 'chainage'
      ? (runAt(conveyor, (stretch.from.value + stretch.to.value) / 2) ?? [])
      : [];
  });
}

/** Days between a job's window and the reline that it led to [judgement]. */
const sameStop = 14;
/** What a tape and a changed joint leave, mm [judgement]. */
const sameStretch = 100;

function beyondThePlan(
  estate: Estate,
  reline: Reline,
): { readonly stretches: readonly string[]; readonly jobs: readonly Job[] } | undefined {
  const { conveyor, date } = reline;
  const jobs = estate.jobs.filter(
    (job) =>
      job.conveyor === conveyor &&
      job.relines.length > 0 &&
      job.window !== undefined &&
      date.day >= job.window.from.day - sameStop &&
      date.day <= job.window.to.day + sameStop,
  );
  if (jobs.length === 0) return undefined;
  const planned = jobs.flatMap((job) =>
    job.relines.flatMap(({ stretch }) => intervalOf(conveyor, stretch, panelEnds) ?? []),
  );
  const renewed = scopeOf(conveyor, reline, panelEnds);
  const stretches = runsOf(conveyor).flatMap((run) => beyondIn(conveyor, run, renewed, planned));
  return stretches.length > 0 ? { stretches, jobs } : undefined;
}

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** What of a run was renewed and not planned, in words; short ends apart. */
function beyondIn(
  conveyor: Conveyor,
  run: Run,
  renewed: readonly Stretch[],
  planned: readonly Stretch[],
): readonly string[] {
  const ends = [run, ...renewed, ...planned].flatMap(({ from, to }) => [from, to]);
  const cuts = [...new Set(ends)].filter((at) => at >= run.from && at <= run.to).sort((a, b) => a - b);
  const within = (at: number, all: readonly Stretch[]): boolean =>
    all.some(({ from, to }) => at > from && at < to);
  const beyond = cuts.slice(1).flatMap((to, k) => {
    const from = cuts[k] ?? to;
    const middle = (from + to) / 2;
    return to - from > sameStretch && within(middle, renewed) && !within(middle, planned)
      ? [{ from, to }]
      : [];
  });
  return beyond.map(
    ({ from, to }) => `${chainageOn(conveyor, from)} to ${chainageOn(conveyor, to)} of run ${run.number}`,
  );
}
