// On a slope, is there anything that does not give for the panels to be butted against?

import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const noFirmEnd: Rule = {
  code: 'TL232',
  title: 'Sloping conveyor without a firm end',
  severity: 'information',
  restsOn: ['block'],
  why: 'On a slope a panel slides until it meets something; where every break and both end plates give, no panel has a place to start from.',
  todo: 'State which end holds the panels: an end plate or break with allowance 0 mm.',
  given: 'conveyor',
  example: `
  break Tail at «0 m» end plate allowance ‹5|0› mm
  break Inlet at 0.3 m to 1.5 m inlet allowance 20 mm
  break Gate at 7 m to 7.5 m slide gate allowance 20 mm
  break Head at 12 m end plate allowance 5 mm`,
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      if (
        Math.abs(conveyor.incline.value) < slope ||
        conveyor.breaks.some((one) => one.allowance.value === 0)
      )
        return;
      const first = conveyor.breaks[0];
      if (!first) return;
      yield {
        origin: first.from.origin,
        message:
          `${conveyor.name} rises at ${conveyor.incline.text}, and all its breaks and end plates give: ` +
          `${conveyor.breaks.map((one) => `${one.name} ${one.allowance.text}`).join(', ')}.`,
      };
    },
  ),
};

/** Degrees from which a panel slides: the friction of polyethylene on steel is about 0.1 to 0.2 (handbooks, from memory). */
const slope = 6;
