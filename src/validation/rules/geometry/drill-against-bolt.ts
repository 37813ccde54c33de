// Does the hole suit its bolt? Wider than the shank, narrower than the head, and through the liner.

import { boltSize } from '../../../domain/geometry/fixing.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const drillAgainstBolt: Rule = {
  code: 'TL456',
  title: 'Hole that does not suit its bolt',
  severity: 'warning',
  restsOn: [],
  why: 'The bolt does not go in, or its head goes through; each means a panel that has to come out again.',
  todo: 'Check drill and bolt; usual holes are 9 mm for M8, 11 mm for M10 and 13.5 mm for M12 (ISO 273, medium).',
  given: 'liner',
  example: '  drill «9.5 mm|11 mm» deep 20 mm',
  cases: [
    { name: 'wider than the head', text: '  drill «20 mm» deep 20 mm' },
    { name: 'just narrower than the head', text: '  drill 19 mm deep 20 mm' },
    { name: 'as wide as the bolt', text: '  drill 10 mm deep 20 mm' },
    { name: 'not through the liner', text: '  drill 11 mm deep «10 mm»' },
    { name: 'just through the liner', text: '  drill 11 mm deep 12 mm' },
  ],
  check: each(
    (estate) => estate.liners,
    function* (liner) {
      const { name, bolt, drill, thickness } = liner;
      if (!drill) return;
      const size = bolt && boltSize(bolt.size);
      const { depth } = drill;
      if (size && drill.size.value < size.diameter)
        yield {
          origin: drill.size.origin,
          message: `${name} is drilled ${drill.size.text} for ${bolt.size} bolts.`,
        };
      else if (size && drill.size.value >= size.head)
        yield {
          origin: drill.size.origin,
          message: `${name} is drilled ${drill.size.text}, and the heads of ${bolt.size} are ${lengthOn({ liner }, size.head)} wide.`,
        };
      if (depth && depth.value < thickness.value)
        yield {
          origin: depth.origin,
          message: `${name} is ${thickness.text} thick and drilled ${depth.text} deep.`,
        };
    },
  ),
};
