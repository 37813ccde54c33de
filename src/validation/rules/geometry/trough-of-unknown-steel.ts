// Is the trough of a steel that is known here? What it is made of decides how much a liner grows against it, and what welding asks.

import { troughSteel } from '../../../domain/model/trough-steel.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const troughOfUnknownSteel: Rule = {
  code: 'TL263',
  title: 'Trough of a steel that is not known here',
  severity: 'information',
  restsOn: [],
  why:
    'A liner grows against its trough, and stainless steel grows a third more than carbon steel: joint gaps, bolts and ' +
    'closing panels are reckoned as for carbon steel where the name says nothing. A welder needs the name too.',
  todo: 'Write the designation on the drawing or the plate, `S235`, `1.4301`, `316L`, or the kind: `carbon`, `galvanised`, `stainless`.',
  given: 'conveyor',
  bad: '  «trough inside radius 226 mm side height 260 mm plate 4 mm material sheet»',
  good: '  trough inside radius 226 mm side height 260 mm plate 4 mm material S235',
  cases: [
    {
      name: 'by its number',
      text: '  trough inside radius 226 mm side height 260 mm plate 4 mm material "1.4404"',
    },
    {
      name: 'by its trade number',
      text: '  trough inside radius 226 mm side height 260 mm plate 4 mm material "316L"',
    },
    {
      name: 'a number of no steel',
      text: '  «trough inside radius 226 mm side height 260 mm plate 4 mm material "9.1"»',
    },
  ],
  check: each(
    (estate) => estate.conveyors,
    function* ({ name, trough }) {
      if (trough.material === undefined || troughSteel(trough.material).named) return;
      yield {
        origin: trough.origin,
        message: `The trough of ${name} is of ${trough.material}, which is no steel that is known here: carbon steel is taken.`,
      };
    },
  ),
};
