// Is a panel of the new layout shorter than the shortest piece the job accepts?

import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { groundOf } from '../../../domain/order/ground.js';
import { hasSizesToPlanWith } from '../../evidence/sizes-to-plan-with.js';
import type { Rule } from '../../rule.js';

export const closingPieceTooShort: Rule = {
  code: 'TL480',
  title: 'Closing piece shorter than the job accepts',
  severity: 'warning',
  restsOn: [],
  why: 'A short piece holds too few bolts: it lifts under the spiral and is torn out.',
  todo: 'Accept a shorter piece if it can be bolted, choose other panel lengths, or close the run elsewhere.',
  given: 'job',
  example: `
reline run 1
minimum closing piece «400 mm|300 mm»`,
  *check({ estate }) {
    for (const job of estate.jobs) {
      if (!hasSizesToPlanWith(job) || job.relines.length === 0) continue;
      const ground = groundOf(job, job.order?.steps ?? [], estate);
      const least = job.minimumClosingPiece;
      for (const { run, panels } of ground.runs) {
        const whole = ground.scope.some((area) => area.from <= run.from + 1 && area.to >= run.to - 1);
        // A piece longer than any panel is a slip of its own.
        if (
          !whole ||
          job.relines.some(({ liner }) => liner.panelLengths.every((each) => each.value < least.value))
        )
          continue;
        const shortest = Math.min(...panels.map(({ length }) => length));
        if (shortest >= least.value - 1) continue;
        yield {
          origin: least.assumed === undefined ? least.origin : job.nameOrigin,
          message: `${run.label} needs a piece of ${lengthOn(job.conveyor, shortest)}, and job ${job.name} accepts none below ${least.text}.`,
        };
      }
    }
  },
};
