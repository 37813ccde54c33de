// Is a trough that carries what rots treated as a space in which gas gathers?

import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

/** What gives off hydrogen sulphide or methane, or eats oxygen, when it stands (common knowledge of the trade; not a full list). */
const rotting = /sludge|sewage|food waste|manure|slurry|septage|offal/i;

export const gasWithoutConfinedSpace: Rule = {
  code: 'TL262',
  title: 'Material that rots, and no confined space',
  severity: 'warning',
  restsOn: ['block'],
  why:
    'Such material gives off hydrogen sulphide and uses up the oxygen, most of all when it is disturbed; without ' +
    '`confined space` no gas test is asked for in the order of work and none stands on the sheet.',
  todo: 'Write `confined space`, or allow this with the reason why the trough is open enough; a competent person decides.',
  given: 'conveyor',
  around: { conveyor: '- confined' },
  example: '  «conveys "dewatered sludge"|conveys "bark"»',
  cases: [
    { name: 'with it', text: '  conveys "dewatered sludge"\n  confined space' },
    { name: 'in other words', text: '  «conveys "Shredded food waste"»' },
  ],
  check: each(
    (estate) => estate.conveyors,
    function* ({ name, conveys, confinedSpace }) {
      if (!conveys || confinedSpace || !rotting.test(conveys.material)) return;
      yield {
        origin: conveys.origin,
        message: `${name} carries ${conveys.material}, and nothing says that it is a confined space.`,
      };
    },
  ),
};
