// Do two breaks share a stretch? The liner is interrupted once there, not twice.

import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const breaksOverlap: Rule = {
  code: 'TL214',
  title: 'Breaks that overlap',
  severity: 'error',
  restsOn: [],
  why: 'There is no lined length between the two, so the runs are numbered wrongly and panels are counted for the wrong place.',
  todo: 'Measure both breaks again, or join them into one.',
  given: 'conveyor',
  example: `
  break Inlet at 0.3 m to 1.5 m inlet allowance 20 mm
  break «Gate» at ‹1.4|7› m to ‹2|7.5› m slide gate allowance 20 mm`,
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      const breaks = conveyor.breaks.filter((one) => !one.implied && one.from.value <= one.to.value);
      for (let i = 1; i < breaks.length; i++) {
        const before = breaks[i - 1]!; // 0 ≤ i − 1 < i < breaks.length
        const after = breaks[i]!;
        const shared = Math.min(before.to.value, after.to.value) - after.from.value;
        if (shared <= 0.5) continue;
        yield {
          origin: after.nameOrigin ?? after.origin,
          message:
            `Break ${after.name} starts at ${after.from.text}, ` +
            `and break ${before.name} reaches to ${before.to.text}: they share ${lengthOn(conveyor, shared)}.`,
          related: [{ origin: before.nameOrigin ?? before.origin, message: `break ${before.name}` }],
        };
      }
    },
  ),
};
