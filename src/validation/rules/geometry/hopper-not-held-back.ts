// Does anything that is declared hold back, or empty, the hopper that stands over the screw?

import { hoppersWords } from '../../../domain/model/stands-above.js';
import { unitOfMachine } from '../../../domain/model/unit-of-machine.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

/** A switch, a valve and a pump hold nothing that hangs by its own weight. */
const holds: ReadonlySet<string> = new Set(['material', 'mechanical', 'gravity']);

export const hopperNotHeldBack: Rule = {
  code: 'TL566',
  title: 'Hopper over the screw that nothing holds back',
  severity: 'warning',
  restsOn: ['block'],
  why:
    'What bridges in a hopper hangs there after the machine is locked, and comes down on whoever stands or reaches below it, ' +
    'on a level machine as well.',
  todo:
    'Declare how it is held off or emptied: an isolation point of kind material, mechanical or gravity; the site’s own ' +
    'isolation procedure says which.',
  given: 'conveyor',
  example: `
  «hopper at 0.4 m to 2.2 m volume 2.4 m3»
  isolation V1 "air dump valve" pneumatic at 8 m‹|
  isolation Feed "slide under the hopper, pinned" mechanical at 0.4 m›`,
  cases: [
    {
      name: 'on the level, a dump valve alone',
      text: '  incline 0 deg\n  «hopper Feed at 0.4 m to 2.2 m»\n  isolation Q1 electrical at 8 m',
    },
    { name: 'no isolation point at all is told by itself', text: '  hopper at 0.4 m to 2.2 m' },
  ],
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      const { name, hoppers, isolations } = conveyor;
      const [first] = isolations;
      const [hopper] = hoppers;
      if (!first || !hopper || isolations.some(({ kind }) => holds.has(kind))) return;
      yield {
        origin: hopper.origin,
        message:
          `Over the screw of ${name} stands the ${hoppersWords(conveyor, unitOfMachine(conveyor)).join(' and the ')}, ` +
          'and no isolation point is declared that holds or empties it.',
        related: [{ origin: first.origin, message: 'what is declared' }],
      };
    },
  ),
};
