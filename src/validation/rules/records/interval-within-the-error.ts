// Was enough time between two rounds for the wear to show beyond the reading error? Judged by each spot's own long-term rate
// (API 570 form: fitted less read, over exposure); told once an inspection, when it holds for every spot read again.

import { exposureBetween, fittedThickness } from '../../../domain/model/exposure.js';
import { historyOf, momentOf } from '../../../domain/model/history.js';
import { ReadingKind, type Inspection } from '../../../domain/model/records.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { formatLength } from '../../../domain/units/format.js';
import { errorOf } from '../../evidence/reading-error.js';
import type { Rule } from '../../rule.js';
import { seenRows } from '../../evidence/seen-sets.js';

export const intervalWithinTheError: Rule = {
  code: 'TL313',
  title: 'Rounds too close together for the gauge',
  severity: 'information',
  why: 'The difference between the two rounds is mostly error: a short-term rate from it may be nought or double, and frightens or lulls.',
  todo: 'Go by the long-term rate, use a finer gauge, or leave more hours between rounds.',
  given: 'estate',
  bad: `
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge depth gauge ± 0.5 mm
  P1 thickness 9.8 mm
}
inspection DG1 «2025-03-24» meter 6420 h {
  view downstream
  gauge depth gauge ± 0.5 mm
  P1 thickness 9.6 mm
}`,
  good: `
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge depth gauge ± 0.5 mm
  P1 thickness 9.8 mm
}
inspection DG1 2025-12-15 meter 10600 h {
  view downstream
  gauge depth gauge ± 0.5 mm
  P1 thickness 8.1 mm
}`,
  *check({ estate }) {
    const { readings } = estate;
    const last = new Int32Array(estate.places.length).fill(-1);
    const lastSet: object[] = [];
    const rounds = new Map<Inspection, { spots: number; close: number; wear: number; error: number; before: Inspection }>();
    for (const { row, inspection, place, placeIndex, set } of seenRows(estate)) {
      if (readings.kind[row] !== ReadingKind.thickness) continue;
      const before = lastSet[placeIndex] === set ? last[placeIndex] ?? -1 : -1;
      last[placeIndex] = row;
      lastSet[placeIndex] = set;
      const earlier = estate.inspections[readings.inspection[before] ?? -1];
      if (!earlier || earlier === inspection || earlier.date.day === inspection.date.day) continue;
      const history = historyOf(estate, place.conveyor);
      const now = exposureBetween(history, set, momentOf(history, inspection));
      const then = exposureBetween(history, set, momentOf(history, earlier));
      if (!now.known || !then.known || now.value <= 0 || now.value <= then.value) continue;
      const worn = fittedThickness(set, place).value - (readings.value[row] ?? 0);
      if (worn <= 0) continue;
      const wear = (worn / now.value) * (now.value - then.value);
      const error = Math.hypot(errorOf(estate, before), errorOf(estate, row));
      const round = rounds.get(inspection) ?? { spots: 0, close: 0, wear: 0, error, before: earlier };
      rounds.set(inspection, { spots: round.spots + 1, close: round.close + (wear < error ? 1 : 0), wear: Math.max(round.wear, wear), error, before: earlier });
    }
    for (const [inspection, { spots, close, wear, error, before }] of rounds) {
      if (close < spots) continue;
      yield {
        origin: inspection.date.origin,
        message: `Since the round of ${formatDay(before.date.day)} at most ${formatLength(wear)} can have worn off on ${inspection.conveyor.name}, and two readings differ by ± ${formatLength(error)} from error alone.`,
        related: [{ origin: before.date.origin, message: 'the round before' }],
      };
    }
  },
};
