// Is a torque one that the bolt bears? 0.2 · d · 75 % of the proof load, class 8.8 (geometry/fixing.ts), and a tenth on top.

import { boltSize, usualTorque } from '../../../domain/geometry/fixing.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

/** Published torques of one size differ by about so much. */
const leeway = 1.1;

export const boltsOverTightened: Rule = {
  code: 'TL455',
  title: 'Torque that the bolt does not bear',
  severity: 'warning',
  restsOn: [],
  why: 'A bolt that is stretched beyond its limit breaks now or later, and long before that its head sinks through the liner.',
  todo: 'Check number and unit; the maker of the liner says how much the plastic under the head bears.',
  given: 'liner',
  example: '  tightening torque «150 N·m|15 N·m»',
  check: each(
    (estate) => estate.liners,
    function* ({ name, bolt, tighteningTorque: torque }) {
      const size = bolt && boltSize(bolt.size);
      if (!size || !torque) return;
      const most = usualTorque(size);
      if (torque.value <= most * leeway) return;
      yield {
        origin: torque.origin,
        message: `The bolts of ${name} are tightened to ${torque.text}, and ${bolt.size} of class 8.8 bears about ${Math.round(most)} N·m.`,
      };
    },
  ),
};
