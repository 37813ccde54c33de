// Has a spot worn at least twice as fast since the look before the last as until then, by more than three errors? Where its whole
// conveyor sped up (TL510 tells that) only what goes beyond the others counts.

import { unitOfMachine } from '../../../domain/model/unit-of-machine.js';
import { originOf } from '../../../domain/model/records.js';
import { rateWords } from '../../../domain/units/length-words.js';
import { beyond, pacesOf } from '../../evidence/pace.js';
import { dayOfRow } from '../../telling/reading-words.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';
import { spedUpTogether } from './points-speeding-up-together.js';

const threshold: RuleThreshold = {
  usual: '2',
  dimension: 'ratio',
  what: 'How many times as fast as before a spot has to wear.',
  basis: 'judgement; it also has to be beyond three errors of the readings',
};

export const wearSpeedingUp: Rule = {
  code: 'TL505',
  title: 'Wear that has become much faster',
  severity: 'warning',
  restsOn: ['looks', 'history'],
  why:
    'Something has changed there: a stone under the spiral, a lifted joint, a bent flight, ' +
    'drier material; the average rate no longer tells how long the liner lasts.',
  todo: 'Look at that spot and at the spiral above it, and shorten the interval to the next look.',
  threshold,
  given: 'estate',
  example: `
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness ‹11.2|9.8› mm
}
inspection DG1 2025-09-08 meter 9000 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  «P1 thickness 8.1 mm|P1 thickness 8.8 mm»
}`,
  *check({ estate }) {
    for (const [conveyor, pace] of pacesOf(estate)) {
      const common = spedUpTogether(conveyor, pace) ? (pace.together?.others.excess ?? 0) : 0;
      for (const spot of pace.spots) {
        const { place, row, before, rateBefore, rateSince, unit } = spot;
        if (
          rateSince <
            settled(place.conveyor.plant, 'TL505', threshold) * Math.max(0, rateBefore) * (1 + common) ||
          !(beyond(spot, common) > 3)
        )
          continue;
        const day = dayOfRow(estate, before);
        yield {
          origin: originOf(estate.readings, row),
          message:
            `${place.name} of ${place.conveyor.name} lost ${rateWords(rateSince, unit, unitOfMachine(place.conveyor))} since ${day}, ` +
            `and ${rateWords(Math.max(0, rateBefore), unit, unitOfMachine(place.conveyor))} until then.`,
          related: [{ origin: originOf(estate.readings, before), message: `the reading of ${day}` }],
        };
      }
    }
  },
};
