// Is one inspection a copy of another, or of a part of it? The same readings on the same day, or (three thicknesses or more)
// the very same readings under another date: two honest rounds with a gauge never agree to the last tenth.

import type { Estate } from '../../../domain/model/estate.js';
import type { Inspection } from '../../../domain/model/records.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { remove } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';
import { counted } from '../../../domain/units/wording.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';

export const inspectionPastedTwice: Rule = {
  code: 'TL304',
  title: 'Inspection written down twice',
  severity: 'error',
  restsOn: [],
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
    for (const { inspection, other } of [...copiesOfTheDay(estate), ...copiesUnderAnotherDate(estate)]) {
      const sameDay = other.date.day === inspection.date.day;
      yield {
        origin: inspection.date.origin,
        message: sameDay
          ? `This inspection of ${inspection.conveyor.name} on ${formatDay(inspection.date.day)} is written down twice.`
          : `This inspection of ${inspection.conveyor.name} has the same ` +
            `${counted(inspection.endRow - inspection.firstRow, 'reading')} as the one of ` +
            `${formatDay(other.date.day)}, to the last digit.`,
        related: [{ origin: other.date.origin, message: 'the other one' }],
        ...(sameDay ? { fixes: [remove(inspection.origin, 'Take this copy out')] } : {}),
      };
    }
  },
};

interface Copy {
  readonly inspection: Inspection;
  readonly other: Inspection;
}

/** Of one conveyor, day and meter reading: every reading stands in an inspection before it. */
function* copiesOfTheDay(estate: Estate): Iterable<Copy> {
  const { inspections } = estate;
  for (let i = 1; i < inspections.length; i++) {
    const inspection = inspections[i];
    if (!inspection || inspection.firstRow >= inspection.endRow) continue;
    for (let j = i - 1; j >= 0; j--) {
      const other = inspections[j];
      if (!other || other.conveyor !== inspection.conveyor || other.date.day !== inspection.date.day) break;
      if (other.meter.hours?.value !== inspection.meter.hours?.value || !isWithin(estate, inspection, other))
        continue;
      yield { inspection, other };
      break;
    }
  }
}

/** Three thicknesses or more, and all readings the very same. Told apart by a fingerprint first: almost none are alike. */
function* copiesUnderAnotherDate(estate: Estate): Iterable<Copy> {
  const byPrint = new Map<number, Inspection[]>();
  for (const inspection of estate.inspections) {
    if (inspection.endRow - inspection.firstRow < 3) continue;
    const print = fingerprint(estate, inspection);
    const alike = byPrint.get(print);
    if (!alike) {
      byPrint.set(print, [inspection]);
      continue;
    }
    const other = alike.find(
      (one) =>
        one.conveyor === inspection.conveyor &&
        one.date.day !== inspection.date.day &&
        isSame(estate, one, inspection),
    );
    alike.push(inspection);
    if (other) yield { inspection, other };
  }
}

function fingerprint({ readings }: Estate, { firstRow, endRow }: Inspection): number {
  let print = endRow - firstRow;
  for (let row = firstRow; row < endRow; row++) {
    const value = readings.value[row] ?? 0;
    print = (Math.imul(print, 31) + (readings.place[row] ?? 0)) | 0;
    print =
      (Math.imul(print, 31) +
        (Number.isNaN(value) ? 7 : Math.round(value * 1000)) +
        (readings.kind[row] ?? 0)) |
      0;
  }
  return print;
}

function isSame(estate: Estate, a: Inspection, b: Inspection): boolean {
  let thicknesses = 0;
  for (let i = 0; i < a.endRow - a.firstRow; i++) {
    if (!sameReading(estate, a.firstRow + i, b.firstRow + i)) return false;
    if (estate.readings.kind[a.firstRow + i] === ReadingKind.thickness) thicknesses++;
  }
  return thicknesses >= 3;
}

function isWithin(estate: Estate, part: Inspection, whole: Inspection): boolean {
  for (let row = part.firstRow; row < part.endRow; row++) {
    let found = false;
    for (let other = whole.firstRow; other < whole.endRow && !found; other++)
      found = sameReading(estate, row, other);
    if (!found) return false;
  }
  return true;
}

function sameReading({ readings }: Estate, a: number, b: number): boolean {
  const place = readings.place[a];
  return (
    place === readings.place[b] &&
    place !== -1 &&
    readings.kind[a] === readings.kind[b] &&
    Object.is(readings.value[a], readings.value[b])
  );
}
