// Does the liner end within the trough? Both heights count from the centre line.

import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const linerAboveTheTrough: Rule = {
  code: 'TL264',
  title: 'Liner that stands higher than its trough',
  severity: 'error',
  restsOn: [],
  why: 'Panels cut to it stand above the flange: the covers do not close, and every panel has to be trimmed in the trough.',
  todo: 'Both heights count from the centre line of the trough, to the upper edge of the steel and of the liner: measure again.',
  given: 'conveyor',
  example: '  liner TwoLayer12\n  liner side height «280 mm|220 mm»',
  cases: [{ name: 'level with the trough', text: '  liner TwoLayer12\n  liner side height 260 mm' }],
  check: each(
    (estate) => estate.conveyors,
    function* ({ name, trough, linerSideHeight }) {
      if (!linerSideHeight || linerSideHeight.value <= trough.sideHeight.value) return;
      yield {
        origin: linerSideHeight.origin,
        message: `The liner of ${name} stands ${linerSideHeight.text} above the centre line, and the trough only ${trough.sideHeight.text}.`,
        related: [{ origin: trough.sideHeight.origin, message: 'side of the trough' }],
      };
    },
  ),
};
