// Does a job ask for a crew to which its order gives nothing to do? A step that names no crew is done by any of them, so then none is.

import type { StepAction } from '../../../domain/model/job.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

const everyStep = but(
  soundOrder.replaceAll(/^ {2}(isolate|prove|gas|covers|hold|remove|run)(.*)$/gm, '  $1$2 by Alpha'),
  ['\norder {', '\ncrews Alpha, Bravo, «Solo»\norder {'],
);

export const crewWithoutAStep: Rule = {
  code: 'TL548',
  title: 'Crew of a job that none of its steps asks for',
  severity: 'information',
  restsOn: ['block'],
  why: 'The crew is kept free for the job and stands about, or the step that it was asked for has been forgotten.',
  todo: 'Write the step that it is there for (`by …`, or `attended by …`), or take it out of the crews of the job.',
  given: 'job',
  bad: everyStep,
  good: everyStep.replace('gas test run above Gate by Alpha', 'gas test run above Gate by Solo'),
  cases: [
    {
      name: 'where it stands by',
      text: everyStep.replace(/«(Solo)»/, '$1').replace('attended by Bravo', 'attended by Solo'),
    },
    {
      name: 'a step that names nobody may be its',
      text: everyStep.replace(/«(Solo)»/, '$1').replace('prove dead by Alpha', 'prove dead'),
    },
  ],
  *check({ estate }) {
    for (const { name, crews, order } of estate.jobs) {
      const steps = order?.steps ?? [];
      if (steps.length === 0 || steps.some((step) => !isForNobody(step.action) && step.crews.length === 0))
        continue;
      const asked = new Set(
        steps.flatMap((step) => [...step.crews, ...(step.attendants ?? [])]).map(({ use }) => use.name),
      );
      for (const { use, crew } of crews)
        if (crew && !asked.has(use.name))
          yield {
            origin: use.origin,
            message: `No step of job ${name} is by ${use.name}, and none is attended by it.`,
          };
    }
  },
};

/** Time that passes takes no crew. */
function isForNobody(action: StepAction): boolean {
  return action === 'pause';
}
