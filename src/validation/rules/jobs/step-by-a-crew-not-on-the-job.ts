// Does a step name a crew or an access unit that the job does not have?

import { insertAfter } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const stepByACrewNotOnTheJob: Rule = {
  code: 'TL439',
  title: 'Step by a crew that is not on the job',
  severity: 'warning',
  restsOn: [],
  why: 'The crew has not been asked for and stands on another job that day.',
  todo: 'Add the crew to the job, or give the step to one that is on it.',
  given: 'job',
  bad: but(
    soundOrder,
    ['\norder {', '\ncrews Alpha\norder {'],
    ['  clean run above Gate by Alpha attended by Bravo', '  clean run above Gate by «Bravo» with 2 people'],
  ),
  good: soundOrder,
  *check({ estate }) {
    for (const { name, crews, accessUnits, order } of estate.jobs) {
      for (const step of order?.steps ?? []) {
        for (const { use, crew } of step.crews) {
          if (!crew || crews.length === 0 || crews.some((one) => one.use.name === use.name)) continue;
          const last = crews[crews.length - 1];
          yield {
            origin: use.origin,
            message: `${use.name} is not among the crews of job ${name}.`,
            related: crews.map((one) => ({ origin: one.use.origin, message: `crew ${one.use.name}` })),
            fixes: last
              ? [insertAfter(last.use.origin, `, ${use.name}`, `Add ${use.name} to the crews of the job`)]
              : [],
          };
        }
        const unit = step.unit;
        if (
          !unit?.unit ||
          accessUnits.length === 0 ||
          accessUnits.some((one) => one.use.name === unit.use.name)
        )
          continue;
        yield {
          origin: unit.use.origin,
          message: `${unit.use.name} is not among the access units of job ${name}.`,
        };
      }
    }
  },
};
