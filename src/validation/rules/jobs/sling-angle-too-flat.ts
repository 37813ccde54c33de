// Does each sling leg stay within 45° of the vertical? There each carries 0.71 of the load, at 60° all of it (1/(2cos β)).

import { slingLegShare, usualSlingAngle } from '../../../domain/geometry/handling.js';
import { formatPercent } from '../../../domain/units/format.js';
import type { Rule } from '../../rule.js';

export const slingAngleTooFlat: Rule = {
  code: 'TL438',
  title: 'Sling legs too far apart',
  severity: 'warning',
  restsOn: [],
  why: 'The flatter the legs, the more each one pulls: beyond 60 degrees each pulls more than the load itself, and slings and lugs fail.',
  todo: 'Use longer slings or a spreader beam; a competent person plans the lift.',
  given: 'job',
  example: '  sling angle «55 deg|30 deg»',
  *check({ estate }) {
    for (const { slingAngle: angle } of estate.jobs) {
      if (!angle || angle.value <= usualSlingAngle || angle.value >= 89) continue;
      yield {
        origin: angle.origin,
        message:
          `At ${angle.text} from the vertical each of two sling legs pulls ` +
          `${formatPercent(slingLegShare(angle.value))} of the load; ${usualSlingAngle} deg is the usual limit.`,
      };
    }
  },
};
