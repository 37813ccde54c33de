// Told by the order checker (domain/order), which also finds the repairs. What it fits beyond the scope is TL536.

import type { Estate } from '../../../domain/model/estate.js';
import type { Job } from '../../../domain/model/job.js';
import { panelsText, sideBySide } from '../../../domain/model/runs.js';
import { areasOfAction, groundOf, within, type Ground } from '../../../domain/order/ground.js';
import { concerns } from '../../../domain/order/layout.js';
import type { Edit, Fix } from '../../finding.js';
import { violationsOf } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { onceAJob } from '../../telling/once-a-job.js';
import { stepsAsTheScope } from '../../telling/scope-and-order.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const scopeNotDone: Rule = {
  code: 'TL424',
  title: 'Scope that no step does',
  severity: 'warning',
  restsOn: [],
  why: 'The records would say that this was renewed when it was not.',
  todo: 'Add the missing steps, or take the stretch out of the scope.',
  given: 'job',
  bad: but(soundOrder, ['\norder {', '\nreline run above Gate\nreline run above Inlet\n«order» {']),
  good: soundOrder,
  *check({ estate }) {
    for (const job of estate.jobs)
      for (const found of violationsOf(job, estate, ['scope not done']))
        yield { ...found, fixes: [...(found.fixes ?? []), ...agreed(job, estate)] };
  },
};

/** The steps as the scope, or the scope as the steps. */
const agreed = onceAJob((job: Job, estate: Estate): readonly Fix[] => {
  const ground = groundOf(job, job.order?.steps ?? [], estate);
  const fitted = areasOfAction(ground, 'fit');
  const short = ground.runs.filter(({ panels }) => {
    const asked = within(panels, ground.scope);
    const done = new Set(within(asked, fitted));
    return done.size > 0 && done.size < asked.length;
  });
  return [...short.flatMap(({ run }) => stepsAsTheScope(job, estate, run)), ...asTheSteps(ground)];
});

/** Each reline with what of it is fitted; none where nothing of the job would be left, or where there is nothing to take out. */
function asTheSteps(ground: Ground): readonly Fix[] {
  const { job, runs } = ground;
  const fitted = areasOfAction(ground, 'fit');
  const lines = job.relines.map(({ stretch, linerUse, origin }, i) => {
    const own = ground.scope.slice(i, i + 1);
    const parts = runs
      .filter(({ run }) => concerns(job, stretch, run))
      .flatMap(({ run, panels }) => {
        const done = within(within(panels, own), fitted).map(({ panel }) => panel);
        if (done.length === panels.length) return [`run ${run.number}`];
        return sideBySide(done).map(({ first, last }) => panelsText(first, last, run.number));
      });
    const isWhole = runs.every(({ panels }) => {
      const asked = within(panels, own);
      return within(asked, fitted).length === asked.length;
    });
    return { parts, isWhole, origin, liner: linerUse ? ` with ${linerUse.name}` : '' };
  });
  if (job.relines.length !== ground.scope.length || lines.every(({ isWhole }) => isWhole)) return [];
  if (lines.every(({ parts }) => parts.length === 0)) return [];
  const edits = lines.flatMap(({ parts, isWhole, origin, liner }): Edit | readonly never[] =>
    isWhole ? [] : { origin, text: parts.map((part) => `reline ${part}${liner}`).join('\n  ') },
  );
  return [{ title: 'Reline only what the order fits', edits }];
}
