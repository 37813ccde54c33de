// Is a panel told to be lifted further than spiral and trough leave room for? Across the trough lie the spiral and the panel itself,
// whatever is worn or lies on one side: what is left of the trough's diameter is all that the panel can rise by.

import { middleOf } from '../../../domain/conditions/kinds.js';
import { firstLinerAt } from '../../../domain/model/first-liner.js';
import { screwSeen } from '../../../domain/model/lying-screw.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { linedSection } from '../../evidence/lined-section.js';
import type { Rule } from '../../rule.js';

export const panelLiftedBeyondTheRoom: Rule = {
  code: 'TL559',
  title: 'Panel lifted further than there is room',
  severity: 'warning',
  restsOn: ['machine'],
  why: 'The spiral turns there: either the figure slipped, or the panel stands up through the flights and is struck at every turn.',
  todo: 'Measure again, from the steel to the outside of the panel; if it is so, the machine is not to turn before a competent person has looked.',
  given: 'inspection',
  example: '  panel lifted «80 mm|15 mm» at 4.2 m',
  cases: [
    // 452 mm across the trough, less 400 mm of spiral and 12 mm of panel.
    { name: 'all the room there is', text: '  panel lifted 40 mm at 4.2 m' },
    { name: 'more', text: '  panel lifted «40.1 mm» at 4.2 m' },
    { name: 'put right', text: '  closed panel lifted 80 mm at 4.2 m' },
  ],
  *check({ estate }) {
    for (const inspection of estate.inspections) {
      const { conveyor, conditions } = inspection;
      for (const line of conditions) {
        const at = middleOf(line);
        if (line.kind !== 'panel lifted' || !line.size || at === undefined || line.answer !== undefined)
          continue;
        const section = linedSection(conveyor, firstLinerAt(conveyor, at));
        const diameter = screwSeen(estate, inspection, at).outsideDiameter.value;
        const room = section && 2 * section.insideRadius - section.thickness - diameter;
        if (room === undefined || room <= 0 || line.size.value <= room) continue;
        yield {
          origin: line.size.origin,
          message:
            `A panel of ${conveyor.name} is told to be lifted by ${line.size.text}, and beside its spiral of ` +
            `${lengthOn(conveyor, diameter)} the trough has room for ${lengthOn(conveyor, room)}.`,
        };
      }
    }
  },
};
