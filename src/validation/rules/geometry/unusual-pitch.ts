// Is the pitch between 0.3 and 1.5 outside diameters? Standard pitch is one diameter, short pitch a half to two thirds, long
// pitch one and a half (usual practice, as in CEMA 350; from memory).

import { formatNumber } from '../../../domain/units/format.js';
import { each } from '../../telling/each.js';
import { isPlausible } from '../../evidence/plausible.js';
import type { Rule } from '../../rule.js';

export const unusualPitch: Rule = {
  code: 'TL205',
  title: 'Pitch out of proportion to the screw',
  severity: 'warning',
  restsOn: [],
  why: 'Capacity, drive power and the mass of the spiral all go with the pitch; a slip here is carried into every one of them.',
  todo: 'Measure over several turns and divide; the usual pitch is 0.3 to 1.5 outside diameters, and most are near 1.',
  given: 'screw',
  example: '  pitch «100 mm|350 mm»',
  cases: [
    { name: 'one and a half diameters', text: '  pitch 600 mm' },
    { name: 'a little more', text: '  pitch «604 mm»' },
    { name: 'three tenths', text: '  pitch 120 mm' },
    { name: 'a little less', text: '  pitch «119 mm»' },
  ],
  check: each(
    (estate) => estate.screws,
    function* (screw) {
      const ratio = screw.pitch.value / screw.outsideDiameter.value;
      if (!(ratio < 0.3 || ratio > 1.5)) return;
      if (
        !isPlausible('screw pitch', screw.pitch.value) ||
        !isPlausible('outside diameter', screw.outsideDiameter.value)
      )
        return;
      yield {
        origin: screw.pitch.origin,
        message:
          `The pitch of ${screw.name} is ${screw.pitch.text}, ` +
          `${formatNumber(ratio, 2)} of its outside diameter of ${screw.outsideDiameter.text}; 0.3 to 1.5 is usual.`,
        related: [{ origin: screw.outsideDiameter.origin, message: 'the outside diameter' }],
      };
    },
  ),
};
