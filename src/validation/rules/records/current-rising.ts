// Does the drive draw a quarter more than it used to [judgement]? The newest current against the median of at least two before,
// empty and loaded each on its own.

import type { Inspection } from '../../../domain/model/records.js';
import type { Stated } from '../../../domain/model/stated.js';
import { looksOfThisMotor } from '../../evidence/looks-of-this-motor.js';
import { formatValue } from '../../../domain/units/format.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';
import { againstUsual } from '../../telling/against-usual.js';

const threshold: RuleThreshold = {
  usual: '25 %',
  dimension: 'ratio',
  what: 'Rise of the motor current above the median before.',
  basis: 'judgement',
};

export const currentRising: Rule = {
  code: 'TL323',
  title: 'Motor current well above what it was',
  severity: 'warning',
  restsOn: ['history'],
  why: 'The spiral drags on something: a lifted panel edge, a bolt head, a failing bearing or build-up; each gets worse quickly.',
  todo: 'Isolate and look along the spiral and at the bearing before the next long run.',
  threshold,
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  current empty 4.0 A
}
inspection DG1 2025-03-10 meter 6200 h {
  current empty 4.2 A
}
inspection DG1 2025-09-08 meter 9000 h {
  current empty «5.9 A|4.4 A»
}`,
  cases: [
    {
      name: 'up by a quarter exactly',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  current empty 4.0 A
}
inspection DG1 2025-03-10 meter 6200 h {
  current empty 4.0 A
}
inspection DG1 2025-09-08 meter 9000 h {
  current empty 5 A
}`,
    },
    {
      name: 'just more',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  current empty 4.0 A
}
inspection DG1 2025-03-10 meter 6200 h {
  current empty 4.0 A
}
inspection DG1 2025-09-08 meter 9000 h {
  current empty «5.1 A»
}`,
    },
    {
      name: 'of two before, their middle is usual',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  current empty 4.0 A
}
inspection DG1 2025-03-10 meter 6200 h {
  current empty 5.1 A
}
inspection DG1 2025-09-08 meter 9000 h {
  current empty 5.6 A
}`,
    },
    {
      name: 'one reading before is no usual current',
      text: `
inspection DG1 2025-03-10 meter 6200 h {
  current empty 4.0 A
}
inspection DG1 2025-09-08 meter 9000 h {
  current empty 9 A
}`,
    },
  ],
  *check({ estate }) {
    for (const conveyor of estate.conveyors) {
      const inspections = looksOfThisMotor(estate, conveyor);
      for (const state of ['empty', 'loaded'] as const) {
        const readings = inspections.flatMap((inspection: Inspection) =>
          inspection.currents
            .map((current) => current[state])
            .filter((one): one is Stated<'current'> => one !== undefined),
        );
        const found = againstUsual(readings);
        if (!found) continue;
        const { newest, usual, count } = found;
        if (usual <= 0 || newest.value <= (1 + settled(conveyor.plant, 'TL323', threshold)) * usual) continue;
        yield {
          origin: newest.origin,
          message:
            `The drive of ${conveyor.name} draws ${newest.text} ${state}, ` +
            `and drew ${formatValue(usual, 'current')} before (median of ${count}).`,
        };
      }
    }
  },
};
