// Is a spot read on the joint between an old liner and a newer one (model/on-a-joint.ts)? Told once a spot, at its first reading
// since the newer one went in; that it is thicker than before, or than its liner was new, is then not told (TL305, TL306).

import { isAfter } from '../../../domain/model/liner-sets.js';
import { historyOf, momentOf } from '../../../domain/model/history.js';
import { originOf } from '../../../domain/model/records.js';
import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { jointAt, type SetJoint } from '../../../domain/model/on-a-joint.js';
import { eachSeen } from '../../evidence/seen-sets.js';
import type { Found } from '../../finding.js';
import type { Rule } from '../../rule.js';

const records = (reading: string): string => `
reline DG1 2024-10-07 meter 3900 h {
  liner TwoLayer12
  scope from 3.4 m to 4.6 m
}
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  ${reading}
}`;

export const readOnAJoint: Rule = {
  code: 'TL377',
  title: 'Spot on the joint between an old liner and a newer one',
  severity: 'warning',
  restsOn: ['history'],
  why:
    'Nobody can say which of the two sheets the gauge stood on: the old one seems as new, or the new one worn. ' +
    'At a point the forecast follows; at any other spot it is left out.',
  todo: 'Read a hand’s breadth to either side of the joint, and write both with their chainages.',
  given: 'estate',
  example: records('«at 4.6 m clock 7:30 thickness 11.2 mm|at 4.5 m clock 7:30 thickness 11.2 mm»'),
  cases: [
    { name: 'the lower end', text: records('«at 3.4 m clock 7:30 thickness 11.2 mm»') },
    { name: 'a hand’s breadth off', text: records('at 3.3 m clock 7:30 thickness 11.2 mm') },
  ],
  check({ estate }) {
    const { readings, places } = estate;
    const found: Found[] = [];
    const joints: (SetJoint | undefined | null)[] = [];
    eachSeen(estate, (row, index, _, inspection) => {
      const place = places[index];
      if (!place || joints[index] === null) return;
      const joint = (joints[index] ??= jointAt(estate, place));
      if (!joint) {
        joints[index] = null;
        return;
      }
      const { conveyor } = place;
      const { fitted } = joint.younger;
      if (!fitted || !isAfter(momentOf(historyOf(estate, conveyor), inspection), fitted)) return;
      joints[index] = null;
      found.push({
        origin: originOf(readings, row),
        message:
          `${place.name} of ${conveyor.name} lies on the joint at ${chainageOn(conveyor, joint.at)}, ` +
          `where the liner fitted on ${formatDay(fitted.day)} ${joint.at === joint.younger.from ? 'begins' : 'ends'}; what is read there may be of either.`,
      });
    });
    return found;
  },
};
