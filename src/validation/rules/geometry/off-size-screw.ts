// Is the diameter one that screws come in? IS 5563:1985 gives 100 to 1250 mm in steps; inch sizes as in CEMA 350 (from memory).

import { each } from '../../telling/each.js';
import { isPlausible } from '../../evidence/plausible.js';
import type { Rule } from '../../rule.js';

export const offSizeScrew: Rule = {
  code: 'TL227',
  title: 'Screw of no standard size',
  severity: 'information',
  restsOn: [],
  tags: ['advice'],
  why: 'A spiral off the standard sizes is made to order: its lead time is longer, and a slip in the diameter is likelier than a special.',
  todo: 'Measure the diameter over the flight tips; if it is a special, silence this with the drawing number as the reason.',
  given: 'screw',
  example: `
  outside diameter «380 mm|400 mm»
  pitch 350 mm`,
  cases: [
    {
      name: '2 % small, as worn tips are',
      text: `
  outside diameter 392 mm
  pitch 350 mm`,
    },
    {
      name: 'more than that',
      text: `
  outside diameter «391 mm»
  pitch 350 mm`,
    },
    {
      name: 'a size in inches',
      text: `
  outside diameter 16 in
  pitch 350 mm`,
    },
  ],
  check: each(
    (estate) => estate.screws,
    function* (screw) {
      const outside = screw.outsideDiameter.value;
      if (!isPlausible('outside diameter', outside)) return;
      if (metric.some((size) => near(outside, size)) || inch.some((size) => near(outside, size * 25.4)))
        return;
      const below = metric.findLast((size) => size < outside);
      const above = metric.find((size) => size > outside);
      yield {
        origin: screw.outsideDiameter.origin,
        message:
          `${screw.name} is ${screw.outsideDiameter.text} across; ` +
          'the nearest sizes of IS 5563 are ' +
          `${[below, above].filter((size) => size !== undefined).join(' and ')} mm.`,
      };
    },
  ),
};

const metric = [100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250];
const inch = [4, 6, 8, 9, 10, 12, 14, 16, 18, 20, 24, 30, 36];

/** Within 2 %, which is wear at the tips and the tape's error. */
function near(a: number, b: number): boolean {
  return Math.abs(a - b) <= 0.02 * b;
}
