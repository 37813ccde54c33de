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
  todo: 'A gearbox has its oil changed or topped up; a bearing or a motor is greased; seals of gearbox and bearings, and each part, can be renewed.',
  given: 'estate',
  example: `
«serviced DG1 2024-10-07 tail bearing oil changed by "fitter"|serviced DG1 2024-10-07 gearbox oil changed by "fitter"»`,
  *check({ estate }) {
    for (const service of estate.services)
      if (!belongsTo(service)) {
        const { origin, part, work } = service;
        yield { origin, message: `The ${part} is written down as ${work}, and ${lacks(part)}.` };
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
    case 'tail bearing':
    case 'thrust bearing':
      return 'such a bearing has no oil of its own here';
  }
}
