// Is a panel of the job heavier than its team may lift?

import { handlingGuideline, teamCapability } from '../../../domain/geometry/handling.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { formatMass } from '../../../domain/units/format.js';
import { heaviestPanel, shorterPanels } from '../../evidence/heaviest-panel.js';
import type { Rule } from '../../rule.js';

export const panelBeyondTheTeam: Rule = {
  code: 'TL449',
  title: 'Panel heavier than the team may lift',
  severity: 'warning',
  restsOn: [],
  why: 'The panel has to be lifted all the same: by too few people, or with gear that nobody ordered.',
  todo: "Cut shorter panels, or plan the lifting gear and raise nobody's limit.",
  given: 'job',
  example: '  team lift «12 kg|30 kg»',
  *check({ estate }) {
    const safe = teamCapability(handlingGuideline, 3);
    for (const job of estate.jobs) {
      const { conveyor, teamLift } = job;
      const panel = teamLift && heaviestPanel(job);
      if (!panel || panel.mass <= teamLift.value) continue;
      const { liner, length, mass } = panel;
      yield {
        origin: teamLift.origin,
        message:
          `The team may lift ${teamLift.text}, ` +
          `and a panel of ${liner.name} ${lengthOn(conveyor, length)} long weighs ${formatMass(mass)} on ` +
          `${conveyor.name}.`,
        todo: shorterPanels(job, panel, Math.min(teamLift.value, safe)),
      };
    }
  },
};
