// Is a panel of the job heavier than its team may lift?

import { panelMass } from '../../../domain/geometry/trough.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { formatMass } from '../../../domain/units/format.js';
import { linedSection } from '../../evidence/lined-section.js';
import { isPlausible } from '../../evidence/plausible.js';
import type { Rule } from '../../rule.js';

export const panelBeyondTheTeam: Rule = {
  code: 'TL449',
  title: 'Panel heavier than the team may lift',
  severity: 'warning',
  why: 'The panel has to be lifted all the same: by too few people, or with gear that nobody ordered.',
  todo: "Cut shorter panels, or plan the lifting gear and raise nobody's limit.",
  given: 'job',
  example: '  team lift «12 kg|30 kg»',
  *check({ estate }) {
    for (const { conveyor, relines, teamLift } of estate.jobs) {
      if (!teamLift) continue;
      for (const { liner } of relines) {
        const section = linedSection(conveyor, liner);
        const longest = liner.panelLengths.reduce((most, length) => Math.max(most, length.value), 0);
        if (!section || !isPlausible('panel length', longest)) continue;
        const mass = panelMass(section, longest, liner.density.value);
        if (mass <= teamLift.value) continue;
        yield {
          origin: teamLift.origin,
          message:
            `The team may lift ${teamLift.text}, ` +
            `and a panel of ${liner.name} ${lengthOn(conveyor, longest)} long weighs ${formatMass(mass)} on ` +
            `${conveyor.name}.`,
        };
        break;
      }
    }
  },
};
