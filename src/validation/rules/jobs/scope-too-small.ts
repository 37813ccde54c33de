// Told by the planner (domain/plan) for jobs without a written order: panels in the middle of a run.

import type { Job } from '../../../domain/model/job.js';
import { findRun, panelsText } from '../../../domain/model/runs.js';
import type { Fix } from '../../finding.js';
import { replace } from '../../telling/fixes.js';
import { onPlan } from '../../telling/on-plan.js';
import type { Rule } from '../../rule.js';
import type { JobPlan } from '../../../domain/plan/job-plan.js';

export const scopeTooSmall: Rule = {
  code: 'TL463',
  title: 'Scope that leaves a hole between old panels',
  severity: 'error',
  restsOn: ['machine'],
  why: 'Between two panels that stay the hole is never exactly one panel long: the last new panel does not go in.',
  todo:
    'Take the panels up to the next break into the scope; or write the order of work and let the last panel be cut to the gap as ' +
    'measured (`fit … cut to fit`).',
  given: 'estate',
  example: `
job «J1» {
  conveyor DG1
  outage Spring27
  reline panels ‹2|1› to 3 of run above Gate
  crews Alpha
}`,
  check: onPlan('scope too small', widen),
};

/** The scope as it must be, in place of the one stretch that lies in that run. */
function widen(job: Job, plan: JobPlan): readonly Fix[] {
  return plan.runs.flatMap(({ run, first, last, beyond }) => {
    const inRun = job.relines.filter(
      ({ stretch }) => stretch.kind === 'panels' && findRun(job.conveyor, stretch.run) === run,
    );
    const [only, another] = inRun;
    if (!beyond || !only || another) return [];
    const text = panelsText(first, last, run.number);
    return [replace(only.stretch.origin, text, { title: `Reline ${text} instead` })];
  });
}
