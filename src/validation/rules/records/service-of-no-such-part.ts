// Can that work be done at that part?

import { belongsTo } from '../../../domain/conditions/service.js';
import type { Service } from '../../../domain/model/records.js';
import type { Rule } from '../../rule.js';

export const serviceOfNoSuchPart: Rule = {
  code: 'TL374',
  title: 'Work that is not done at that part',
  severity: 'warning',
  restsOn: ['machine'],
  why: 'Nobody can tell what was done, and what was wrong there stays open from sheet to sheet.',
  todo:
    'A gearbox has its oil changed or topped up; a bearing or a motor is greased; seals of gearbox and bearings, and each part, can be renewed. ' +
    'A new liner is a `reline`, a new spiral a `screw change`, steel welded in a `patch`.',
  given: 'estate',
  example: `
«serviced DG1 2024-10-07 tail bearing oil changed by "fitter"|serviced DG1 2024-10-07 gearbox oil changed by "fitter"»`,
  cases: [
    {
      name: 'bearings of a bearing, as of a gearbox or a motor',
      text: `
serviced DG1 2024-10-07 tail bearing bearings renewed
serviced DG1 2024-10-07 thrust bearing bearings renewed "new cartridge"
serviced DG1 2024-10-07 gearbox bearings renewed
serviced DG1 2024-10-07 motor bearings renewed`,
    },
  ],
  *check({ estate }) {
    for (const service of estate.services)
      if (!belongsTo(service)) {
        const { origin, part, work } = service;
        yield {
          origin,
          message: `The ${part ?? 'work'} is written down as ${work ?? 'done'}, and ${lacks(part)}.`,
        };
      }
  },
};

function lacks(part: Service['part']): string {
  switch (part) {
    case 'gearbox':
      return 'a gearbox is not greased';
    case 'motor':
      return 'a motor has no oil, and no seal of its own here';
    case 'coupling':
      return 'a coupling has no oil and no seal of its own here';
    case 'liner':
    case 'panel':
      return 'a new liner is a reline, which starts its wear anew';
    case 'spiral':
    case 'flight':
      return 'a new spiral is a screw change';
    case 'trough':
      return 'steel that is welded in is a patch';
    default:
      return 'such a bearing has no oil of its own here';
  }
}
