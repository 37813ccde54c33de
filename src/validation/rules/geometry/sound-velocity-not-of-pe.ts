// Is the sound velocity that of PE1000? Data sheets give 2030 to 2060 m/s at room temperature; cold and warm sheets differ by
// some per cent. Steel has 5900 and is what most gauges are left at.

import { soundVelocity } from '../../../domain/geometry/gauge.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const soundVelocityNotOfPe: Rule = {
  code: 'TL250',
  title: 'Sound velocity that is not of PE',
  severity: 'warning',
  why: 'An ultrasonic gauge shows a thickness in proportion to its velocity: set for steel it shows nearly three times the liner there is.',
  todo: 'Calibrate on an offcut of known thickness at site temperature and write down that velocity.',
  given: 'liner',
  example: '  sound velocity «5900 m/s|2040 m/s»',
  check: each(
    (estate) => estate.liners,
    function* (liner) {
      const velocity = liner.soundVelocity?.nominal;
      if (!velocity || !/^PE/i.test(liner.material)) return;
      if (velocity.value >= 0.9 * soundVelocity.from && velocity.value <= 1.15 * soundVelocity.to) return;
      yield {
        origin: velocity.origin,
        message: `The sound velocity of ${liner.name} is ${velocity.text}, and ${liner.material} has about ${soundVelocity.from} to ${soundVelocity.to} m/s.`,
      };
    },
  ),
};
