// Does a spot wear twice as fast as it did on average, by more than three standard deviations of its readings?

import { exposureBetween } from '../../../domain/model/exposure.js';
import { momentOf } from '../../../domain/model/history.js';
import { originOf } from '../../../domain/model/records.js';
import { handLives, rateWords } from '../../evidence/hand-lives.js';
import { errorOf } from '../../evidence/reading-error.js';
import { dayOfRow } from '../../telling/reading-words.js';
import type { Rule } from '../../rule.js';

export const wearSpeedingUp: Rule = {
  code: 'TL505',
  title: 'Wear that has become much faster',
  severity: 'warning',
  why: 'Something has changed there: a stone under the spiral, a lifted joint, a bent flight, drier material; the average rate no longer tells how long the liner lasts.',
  todo: 'Look at that spot and at the spiral above it, and shorten the interval to the next look.',
  given: 'estate',
  bad: `
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 11.2 mm
}
inspection DG1 2025-09-08 meter 9000 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  «P1 thickness 8.1 mm»
}`,
  good: `
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
}
inspection DG1 2025-09-08 meter 9000 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 8.8 mm
}`,
  *check({ estate }) {
    for (const lives of handLives(estate).values()) {
      for (const { place, row, before, result, history, set, inspection, unit } of lives) {
        if (result.kind !== 'rate' || result.rules !== 'short-term' || before === undefined) continue;
        const earlier = estate.inspections[estate.readings.inspection[before] ?? -1];
        if (!earlier) continue;
        const now = exposureBetween(history, set, momentOf(history, inspection));
        const then = exposureBetween(history, set, momentOf(history, earlier));
        if (!now.known || !then.known || !(then.value > 0)) continue;
        const average = result.longTerm;
        const faster = result.ruling - average;
        const error = 3 * Math.hypot(errorOf(estate, row), errorOf(estate, before));
        if (result.ruling < 2 * average || faster * (now.value - then.value) <= error) continue;
        yield {
          origin: originOf(estate.readings, row),
          message: `${place.name} of ${place.conveyor.name} lost ${rateWords(result.ruling, unit)} since ${dayOfRow(estate, before)}, and ${rateWords(average, unit)} on average since it was fitted.`,
          related: [
            {
              origin: originOf(estate.readings, before),
              message: `the reading of ${dayOfRow(estate, before)}`,
            },
          ],
        };
      }
    }
  },
};
