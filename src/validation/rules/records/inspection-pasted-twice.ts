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
    const byPrint = new Map<number, Inspection[]>();
    for (const inspection of estate.inspections) {
      if (inspection.firstRow >= inspection.endRow) continue;
      const print = fingerprint(estate, inspection);
      const alike = byPrint.get(print);
      if (!alike) {
        byPrint.set(print, [inspection]);
        continue;
      }
      const other = alike.find((one) => isCopy(estate, one, inspection));
      alike.push(inspection);
      if (!other) continue;
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

/** Equal for equal readings; different ones are almost never equal, and are then told apart one by one. */
function fingerprint({ readings }: Estate, { firstRow, endRow }: Inspection): number {
  let print = endRow - firstRow;
  for (let row = firstRow; row < endRow; row++) {
    const value = readings.value[row] ?? 0;
    print = (Math.imul(print, 31) + (readings.place[row] ?? 0)) | 0;
    print = (Math.imul(print, 31) + (Number.isNaN(value) ? 7 : Math.round(value * 1000)) + (readings.kind[row] ?? 0)) | 0;
  }
  return print;
}

function isCopy({ readings }: Estate, a: Inspection, b: Inspection): boolean {
  const rows = a.endRow - a.firstRow;
  if (a.conveyor !== b.conveyor || rows !== b.endRow - b.firstRow) return false;
  let thicknesses = 0;
  for (let i = 0; i < rows; i++) {
    const [one, other] = [a.firstRow + i, b.firstRow + i];
    if (readings.kind[one] !== readings.kind[other] || readings.place[one] !== readings.place[other]) return false;
    if (!Object.is(readings.value[one], readings.value[other])) return false;
    if (readings.kind[one] === ReadingKind.thickness) thicknesses++;
  }
  const sameRound = a.date.day === b.date.day && a.meter.hours.value === b.meter.hours.value;
  return sameRound || thicknesses >= 3;
}
