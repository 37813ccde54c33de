// Was a new spiral laid into a liner that the old one had worn to its own shape?

import { historyOf } from '../../../domain/model/history.js';
import { changedBy } from '../../../domain/model/screw-sets.js';
import { setSeen } from '../../../domain/model/exposure.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

/** Days within which a reline belongs to the change (judgement). */
const together = 60;

const threshold: RuleThreshold = {
  usual: '30 %',
  dimension: 'ratio',
  what: 'Worn share of the liner from which the strip is a groove of its own.',
  basis: 'judgement',
};

const read = `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 6.4 mm
}`;

export const newSpiralOnAnOldCrescent: Rule = {
  code: 'TL521',
  title: 'New spiral on an old crescent',
  severity: 'warning',
  restsOn: ['history'],
  why:
    'A new spiral is larger and straighter than the one that wore the groove: it rides on the groove’s edges until ' +
    'it has cut its own, so the liner wears faster and elsewhere than the records say.',
  todo: 'Reline with the spiral, or exchange the worst panels; else look early, at the edges of the old strip too, and do not go by the old rate.',
  threshold,
  given: 'estate',
  around: { plant: '- outage\n- lead' },
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness ‹6.4|10.4› mm
}
screw change «DG1» 2024-10-07 meter 3900 h {
  screw Spiral400
}`,
  cases: [
    {
      name: 'relined with it, and read on that very day before the old liner came out',
      text: `
inspection DG1 2024-10-07 meter 3900 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 6.4 mm
}
reline DG1 2024-10-07 meter 3900 h {
  liner TwoLayer12
}
screw change DG1 2024-10-07 meter 3900 h {
  screw Spiral400
}`,
    },
    {
      name: 'another length of the spiral',
      text: `${read}
screw change DG1 2024-10-07 meter 3900 h {
  scope from 6 m to 12 m
}`,
    },
    {
      name: 'the length of the spiral that lies there',
      text: `${read}
screw change «DG1» 2024-10-07 meter 3900 h {
  scope from 0 m to 6 m
}`,
    },
    {
      name: 'relined with it',
      text: `${read}
screw change DG1 2024-10-07 meter 3900 h {
  screw Spiral400
}
reline DG1 2024-10-08 meter 3900 h {
  liner TwoLayer12
}`,
    },
  ],
  *check({ estate }) {
    const { readings, places } = estate;
    for (const change of estate.screwChanges) {
      const { conveyor, conveyorUse, date } = change;
      const renewed = changedBy(change);
      const history = historyOf(estate, conveyor);
      let worst: { place: string; left: number; day: string; liner: string } | undefined;
      let share = settled(conveyor.plant, 'TL521', threshold);
      for (const { inspection } of history.inspections) {
        if (inspection.date.day > date.day) continue;
        for (let row = inspection.firstRow; row < inspection.endRow; row++) {
          const place = places[readings.place[row] ?? -1];
          if (!place || readings.kind[row] !== ReadingKind.thickness) continue;
          if (place.at < renewed.from || place.at > renewed.to) continue;
          const set = setSeen(history, place.at, inspection);
          // A set that went out about then took its groove along.
          if (!set || (set.removed && set.removed.day <= date.day + together)) continue;
          const thickness = set.liner.thickness.value;
          const left = readings.value[row] ?? NaN;
          const worn = 1 - left / thickness;
          if (!(worn >= share)) continue;
          share = worn;
          worst = {
            place: place.name,
            left,
            day: formatDay(inspection.date.day),
            liner: set.liner.thickness.text,
          };
        }
      }
      if (!worst) continue;
      yield {
        origin: conveyorUse.origin,
        message:
          `The new ${change.scope ? 'length of the spiral' : 'spiral'} of ${conveyor.name} lies in a liner that ` +
          `had ${lengthOn(conveyor, worst.left)} of ${worst.liner} left at ${worst.place} on ${worst.day}, and that was not relined with it.`,
      };
    }
  },
};
