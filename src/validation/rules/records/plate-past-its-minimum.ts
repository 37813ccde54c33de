// Has bare steel come to its minimum since it was read? No liner is there to wear first, and nobody asks for the plate but this.

import { troughState } from '../../../domain/conditions/trough.js';
import { chainageOn, lengthOn } from '../../../domain/model/unit-of-machine.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { formatHours } from '../../../domain/units/format.js';
import type { Rule } from '../../rule.js';

const look = (date: string, meter: number, row: string): string =>
  `inspection DG1 ${date} meter ${meter} h {\n  view downstream\n  ${row}\n}`;

export const platePastItsMinimum: Rule = {
  code: 'TL565',
  title: 'Bare steel past its minimum by its own rate',
  severity: 'warning',
  restsOn: ['looks', 'conditions', 'history', 'machine'],
  why: 'No liner wears first there: the trough leaks or loses its stiffness, and no forecast of the liner says so.',
  todo: 'Measure the plate there at the next stop and write it down; where it is as thin as that, have a competent person judge it and patch it.',
  given: 'estate',
  around: { conveyor: 'minimum plate 1.5 mm' },
  bad: `${look('2024-09-09', 3600, '«plate at 1.2 m thickness 2.0 mm»')}
${look('2025-03-10', 6000, 'P1 colour ivory')}`,
  good: `${look('2024-09-09', 3600, 'plate at 1.2 m thickness 2.0 mm')}
${look('2025-03-10', 6000, 'P1 colour ivory\n  plate at 1.2 m thickness 1.9 mm')}`,
  cases: [
    {
      name: 'under a liner it does not wear',
      text: `${look('2024-09-09', 3600, 'plate at 4.2 m thickness 2.0 mm')}\n${look('2025-03-10', 6000, 'P1 colour ivory')}`,
    },
  ],
  *check({ estate }) {
    for (const conveyor of estate.conveyors)
      for (const { at, readings, passedFor, clock } of troughState(estate, conveyor).places) {
        const last = readings.at(-1);
        if (!last || passedFor === undefined) continue;
        yield {
          origin: last.origin,
          message:
            `${lengthOn(conveyor, last.thickness)} of steel were left at ${chainageOn(conveyor, at)}` +
            `${clock === undefined ? '' : ` ${clock}`} of ${conveyor.name} on ${formatDay(last.day)}; it lies bare, and by the rate so ` +
            `far it came to ${conveyor.minimumPlate.text} ${formatHours(passedFor)} of running ago.`,
        };
      }
  },
};
