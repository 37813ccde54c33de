// Does the second colour show before the condemn limit is reached? If not, the colour is no warning.

import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const colourChangesTooLate: Rule = {
  code: 'TL208',
  title: 'Colour that changes after the condemn limit',
  severity: 'warning',
  restsOn: [],
  why: 'The second colour is there to warn; when it shows only after the limit is passed, a glance that sees the first colour proves nothing.',
  todo: 'Check the order of the layers (screw side first) and the limit; if both are right, measure and do not go by colour.',
  given: 'liner',
  example: '  condemn at «7 mm|3 mm»',
  check: each(
    (estate) => estate.liners,
    function* (liner) {
      const first = liner.layers[0];
      if (!first || liner.layers.length < 2 || liner.condemn.value >= liner.thickness.value) return;
      const left = liner.thickness.value - first.thickness.value;
      if (left >= liner.condemn.value) return;
      yield {
        origin: liner.condemn.origin,
        message: `${liner.name} is condemned at ${liner.condemn.text}, and ${first.name} shows until only ${lengthOn({ liner }, left)} are left.`,
        related: [{ origin: first.origin, message: `layer ${first.name}, ${first.thickness.text}` }],
      };
    },
  ),
};
