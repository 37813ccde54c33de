// Does the countersink stay within the first colour?

import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const countersinkReachesTheNextColour: Rule = {
  code: 'TL218',
  title: 'Countersink that reaches the second colour',
  severity: 'warning',
  restsOn: [],
  why: 'The second colour then shows round every bolt from the first day, and little is left under the head to hold the panel.',
  todo: 'Use a shallower head or a thicker first layer; check the depth on an offcut.',
  given: 'liner',
  example: '  bolt M10 rows 2 pitch 250 mm countersink «6.5 mm|4 mm»',
  check: each(
    (estate) => estate.liners,
    function* (liner) {
      const first = liner.layers[0];
      const countersink = liner.bolt?.countersink;
      if (!first || !countersink || liner.layers.length < 2 || countersink.value < first.thickness.value)
        return;
      yield {
        origin: countersink.origin,
        message: `The bolts of ${liner.name} are countersunk ${countersink.text}, and ${first.name} is ${first.thickness.text} thick.`,
        related: [{ origin: first.origin, message: `layer ${first.name}` }],
      };
    },
  ),
};
