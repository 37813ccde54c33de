// Can the sound velocity be that of a polyethylene? LDPE has about 2080 m/s, HDPE about 2460 by gauge tables; PE-UHMW lies somewhere
// there, and only a block of the liner tells. Steel has 5900 and is what most gauges are left at.

import { gaugeShows, soundVelocity } from '../../../domain/geometry/gauge.js';
import type { LinerSpecification } from '../../../domain/model/specifications.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { isPlausible } from '../../evidence/plausible.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const soundVelocityNotOfPe: Rule = {
  code: 'TL250',
  title: 'Sound velocity that is not of PE',
  severity: 'warning',
  restsOn: [],
  why: 'An ultrasonic gauge shows a thickness in proportion to its velocity: set for steel it shows nearly three times the liner there is.',
  todo: 'Calibrate on an offcut of known thickness at site temperature and write down that velocity.',
  given: 'liner',
  example: '  sound velocity «5900 m/s|2040 m/s»',
  cases: [
    { name: 'as gauge tables have HDPE', text: '  sound velocity 2460 m/s' },
    { name: 'as gauge tables have LDPE', text: '  sound velocity 2080 m/s' },
    { name: 'just below', text: '  sound velocity «1899 m/s»' },
  ],
  check: each(
    (estate) => estate.liners,
    function* (liner) {
      const velocity = liner.soundVelocity?.nominal;
      if (!velocity || !/^PE/i.test(liner.material)) return;
      if (velocity.value >= soundVelocity.from && velocity.value <= soundVelocity.to) return;
      yield {
        origin: velocity.origin,
        message:
          `The sound velocity of ${liner.name} is ${velocity.text}, and polyethylenes have ${soundVelocity.from} to ` +
          `${soundVelocity.to} m/s${shown(liner, velocity.value)}.`,
      };
    },
  ),
};

/** What a gauge so set makes of the new liner. */
function shown(liner: LinerSpecification, set: number): string {
  const thickness = liner.thickness.value;
  if (!isPlausible('liner thickness', thickness) || !(set > 0)) return '';
  const [most, least] = [soundVelocity.from, soundVelocity.to].map((real) =>
    gaugeShows(thickness, real, set),
  );
  return `: a gauge set so shows ${lengthOn({ liner }, least ?? 0)} to ${lengthOn({ liner }, most ?? 0)} of a new liner of ${lengthOn({ liner }, thickness)}`;
}
