// Can a screw carry anything up so steep a slope?

import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

/**
 * Degrees (judgement). Guides give a half of the level capacity at 25° and losses of 10 to 70 % at 30°; beyond 35° material without
 * a core flight falls back between the turns, beyond 45° it is another machine.
 */
const steepest = { open: 35, withCore: 45 } as const;

export const inclineBeyondSense: Rule = {
  code: 'TL258',
  title: 'Incline beyond what the screw carries',
  severity: 'warning',
  why:
    'Material falls back between the turns faster than it is lifted: the trough fills, the drive trips, and what ' +
    'does arrive has worn the liner many times over.',
  todo: 'Check the incline against the drawing; a steep conveyor needs an inner flight, a short pitch, or a shafted screw in a tube.',
  given: 'conveyor',
  example: '  incline «40 deg|24 deg»',
  cases: [
    { name: 'the steepest without a core', text: '  incline 35 deg' },
    { name: 'just steeper', text: '  incline «35.5 deg»' },
    { name: 'downward', text: '  incline -10 deg' },
  ],
  check: each(
    (estate) => estate.conveyors,
    function* ({ name, incline, screw }) {
      const open = screw.kind.kind === 'shaftless' && screw.innerFlight === undefined;
      const most = open ? steepest.open : steepest.withCore;
      if (incline.value <= most) return;
      yield {
        origin: incline.origin,
        message:
          `${name} rises at ${incline.text}, and ${open ? 'a spiral with an open core' : 'a screw in a trough'} carries ` +
          `up to about ${most} deg.`,
        related: [{ origin: screw.nameOrigin, message: `the screw, ${screw.name}` }],
      };
    },
  ),
};
