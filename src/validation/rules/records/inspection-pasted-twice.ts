// Is one inspection a copy of another? The same readings on the same day, or (three thicknesses or more) the very same
// readings under another date: two honest rounds with a gauge never agree to the last tenth.

import type { Estate } from '../../../domain/model/estate.js';
import { ReadingKind, type Inspection } from '../../../domain/model/records.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { remove } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';
import { count } from '../../telling/wording.js';

export const inspectionPastedTwice: Rule = {
  code: 'TL304',
  title: 'Inspection written down twice',
  severity: 'error',
  why: 'The same readings would count twice, and under a later date they say that nothing wore in between: the liner is trusted for too long.',
  todo: 'Take the copy out, or write down what was really read on its date.',
  given: 'estate',
  bad: `
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
  P2 thickness 10.1 mm
}
inspection DG1 «2025-03-10» meter 6200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
  P2 thickness 10.1 mm
}`,
  good: `
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
  P2 thickness 10.1 mm
}`,
  *check({ estate }) {
    const first = new Map<string, Inspection>();
    for (const inspection of estate.inspections) {
      if (inspection.firstRow >= inspection.endRow) continue;
      const { text, thicknesses } = contents(estate, inspection);
      const key = `${inspection.conveyorUse.name}|${thicknesses >= 3 ? '' : `${inspection.date.day}|${inspection.meter.hours.value}`}|${text}`;
      const other = first.get(key);
      if (!other) {
        first.set(key, inspection);
        continue;
      }
      const sameDay = other.date.day === inspection.date.day;
      yield {
        origin: inspection.date.origin,
        message: sameDay
          ? `This inspection of ${inspection.conveyor.name} on ${formatDay(inspection.date.day)} is written down twice.`
          : `This inspection of ${inspection.conveyor.name} has the same ${count(inspection.endRow - inspection.firstRow, 'reading')} as the one of ${formatDay(other.date.day)}, to the last digit.`,
        related: [{ origin: other.date.origin, message: 'the other one' }],
        ...(sameDay ? { fixes: [remove(inspection.origin, 'Take this copy out')] } : {}),
      };
    }
  },
};

function contents({ readings }: Estate, { firstRow, endRow }: Inspection): { readonly text: string; readonly thicknesses: number } {
  const parts: string[] = [];
  let thicknesses = 0;
  for (let row = firstRow; row < endRow; row++) {
    const kind = readings.kind[row];
    if (kind === ReadingKind.thickness) thicknesses++;
    parts.push(`${readings.place[row]} ${kind} ${readings.value[row]}`);
  }
  return { text: parts.join(';'), thicknesses };
}
