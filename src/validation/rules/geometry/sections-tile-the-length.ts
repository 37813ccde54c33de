// Do the trough sections add up to the length? Counted to the millimetre; half a millimetre is left for rounding inches.

import type { Conveyor } from '../../../domain/model/conveyor.js';
import { chainageOn, lengthOn } from '../../../domain/model/unit-of-machine.js';
import { each } from '../../telling/each.js';
import { replace } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';
import { counted } from '../../../domain/units/wording.js';

export const sectionsTileTheLength: Rule = {
  code: 'TL211',
  title: 'Trough sections that do not add up to the length',
  severity: 'error',
  restsOn: ['block'],
  why: 'Flanged joints, breaks and panel joints would all be drawn and cut at the wrong place from the first wrong section on.',
  todo: 'Measure again: correct the length or the section that is wrong, or add the missing section.',
  given: 'conveyor',
  example: `
  length «12 m»
  section S1 6 m
  section S2 ‹5.8|6› m`,
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      if (conveyor.sections.length === 0) return;
      const sum = conveyor.sections.reduce((total, section) => total + section.length.value, 0);
      const short = conveyor.length.value - sum;
      if (Math.abs(short) <= 0.5) return;
      yield {
        origin: conveyor.length.origin,
        message:
          `${conveyor.name} is ${conveyor.length.text} long, and its ${counted(conveyor.sections.length, 'section')} add up to ${chainageOn(conveyor, sum)}: ` +
          `${lengthOn(conveyor, Math.abs(short))} too ${short > 0 ? 'little' : 'much'}.`,
        related: conveyor.sections.map((section) => ({
          origin: section.origin,
          message: `section ${section.name}, ${section.length.text}`,
        })),
        // Offered only where no part would come to lie beyond the new end.
        fixes:
          farthest(conveyor) <= sum + 0.5
            ? [
                replace(conveyor.length.origin, chainageOn(conveyor, sum), {
                  title: `Write length ${chainageOn(conveyor, sum)}`,
                }),
              ]
            : [],
      };
    },
  ),
};

function farthest({ breaks, access, covers, points }: Conveyor): number {
  const ends = [...breaks.filter((one) => !one.implied), ...access, ...covers].map((part) => part.to.value);
  return Math.max(0, ...ends, ...points.map((point) => point.at.value));
}
