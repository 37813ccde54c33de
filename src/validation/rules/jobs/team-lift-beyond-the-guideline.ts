// May the team lift more than three people should? 25 kg each, half of the sum for three (HSE, L23).

import { handlingGuideline, teamCapability } from '../../../domain/geometry/handling.js';
import { formatMass } from '../../../domain/units/format.js';
import { heaviestPanel, shorterPanels } from '../../evidence/heaviest-panel.js';
import type { Rule } from '../../rule.js';

export const teamLiftBeyondTheGuideline: Rule = {
  code: 'TL445',
  title: 'Team lift beyond the guideline',
  severity: 'warning',
  restsOn: [],
  why: 'People on a slope, at a height and with gloves on lift less than on the flat, not more; backs and fingers pay for it.',
  todo: 'Lower the limit and let lifting gear do the rest; a competent person assesses the lift on site.',
  given: 'job',
  example: '  team lift «60 kg|30 kg»',
  *check({ estate }) {
    const most = teamCapability(handlingGuideline, 3);
    for (const job of estate.jobs) {
      const { name, teamLift } = job;
      if (!teamLift || teamLift.value <= most) continue;
      const panel = heaviestPanel(job);
      yield {
        origin: teamLift.origin,
        message:
          `Job ${name} lets the team lift ${teamLift.text}; ` +
          `three people who could lift ${formatMass(handlingGuideline)} each lift ${formatMass(most)} together.`,
        // Lowered alone it would only bring TL449.
        ...(panel && panel.mass > most && { todo: shorterPanels(job, panel, most) }),
      };
    }
  },
};
