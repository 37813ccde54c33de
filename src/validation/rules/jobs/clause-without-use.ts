// Does a step say something that has no meaning for what it does?

import type { Step } from '../../../domain/model/job.js';
import { atTheMachine } from '../../../domain/order/side-by-side.js';
import { disturbs } from '../../../domain/order/rest.js';
import { sayStep } from '../../../domain/order/words.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const clauseWithoutUse: Rule = {
  code: 'TL486',
  title: 'Measure on a step that has no use for it',
  severity: 'warning',
  restsOn: [],
  why: 'It reads as if something were safe, and nothing follows from it: the measure was meant for another step.',
  todo: 'Move it to the step it belongs to: hot work where it is done, `every` on the gas test, `cut to fit` on the fit.',
  given: 'job',
  bad: but(soundOrder, ['  strip run above Gate by Alpha', '  «strip» run above Gate cut to fit by Alpha']),
  good: but(soundOrder, ['starting at head by Alpha', 'starting at head cut to fit by Alpha']),
  *check({ estate }) {
    for (const { order, relines, screwChange } of estate.jobs) {
      for (const step of order?.steps ?? []) {
        const what = useless(step, relines.length === 0 && screwChange === undefined);
        if (what === undefined) continue;
        yield { origin: step.actionOrigin, message: `"${sayStep(step)}" ${what}.` };
      }
    }
  },
};

/** `nowhere`: the job has no scope that a step without a stretch could mean. */
function useless(step: Step, nowhere: boolean): string | undefined {
  if (step.cutToFit && step.action !== 'fit') return 'has no closing panel to cut to fit';
  if (step.every && step.action !== 'gas test') return 'is no test that could be repeated';
  if (step.rest && !disturbs(step)) return `lays hands on no place that ${step.rest.kind}`;
  if (step.start && step.action !== 'fit') return 'fits nothing that could start at an end';
  if (step.heat?.kind === 'hot' && !atTheMachine(step))
    return 'is not done at the machine, and cannot be hot work';
  if (step.heat?.kind === 'hot' && !step.stretch && nowhere)
    return 'is hot work without a place: the job has no scope, and the step names no stretch';
  return undefined;
}
