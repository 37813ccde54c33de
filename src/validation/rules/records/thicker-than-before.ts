// Did a spot grow thicker between two readings of one liner, by more than 3σ√2 of their errors, or by more than 2 of them where
// it should have lost so much that the reading lies 4 of them above what was to be expected (evidence/growth.ts)?

import { originOf } from '../../../domain/model/records.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { Place } from '../../../domain/model/records.js';
import { expectedLoss } from '../../evidence/expected-loss.js';
import { isOnAJoint } from '../../../domain/model/on-a-joint.js';
import { growthsOf } from '../../evidence/growth.js';
import { dayOfRow, readingWords } from '../../telling/reading-words.js';
import { runAt } from '../../../domain/model/runs.js';
import { panelWords, relinesByNumber, takenWords } from '../../telling/panel-words.js';
import type { Rule } from '../../rule.js';

export const thickerThanBefore: Rule = {
  code: 'TL306',
  title: 'Reading thicker than the one before',
  severity: 'warning',
  restsOn: ['history'],
  why:
    'A liner does not grow: the panel was replaced, the wrong point was read, ' +
    'or one of the two is misread; until it is known which, the forecast leans on a contradiction.',
  todo: 'Read the spot again; if the panel was replaced, write the reline down.',
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness ‹8.1|10.9› mm
}
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  «P1 thickness 9.8 mm»
}`,
  cases: [
    {
      name: 'by less than the two can tell, though it should have lost 2 mm',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 8.4 mm
}
inspection DG1 2025-03-10 meter 5600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  «P1 thickness 9.1 mm»
}`,
    },
    {
      name: 'the same within two days, in which it loses nothing',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 8.4 mm
}
inspection DG1 2024-09-11 meter 3630 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.1 mm
}`,
    },
  ],
  *check({ estate }) {
    for (const growth of growthsOf(estate)) {
      if (growth.kinds !== 'thickness' || isOnAJoint(estate, growth.place)) continue;
      const { row, before, place, liner } = growth;
      const todo = anotherStretch(estate, place, before, row);
      yield {
        origin: originOf(estate.readings, row),
        ...(todo === undefined ? {} : { todo }),
        message:
          `${place.name} of ${place.conveyor.name} reads ${readingWords(estate, row, liner)}, ` +
          `and read ${readingWords(estate, before, liner)} on ${dayOfRow(estate, before)}: ` +
          `${lengthOn(place.conveyor, (estate.readings.value[row] ?? 0) - (estate.readings.value[before] ?? 0))} more of the same liner` +
          `${lossWords(estate, place, before, row)}${panelOfRow(estate, place, row)}${copyWords(estate, row)}.`,
        related: [
          {
            origin: originOf(estate.readings, before),
            message: `the reading of ${dayOfRow(estate, before)}`,
          },
        ],
      };
    }
  },
};

/** What it should have lost, where that is more than the gauge could miss. */
function lossWords(estate: Estate, place: Place, before: number, row: number): string {
  const loss = expectedLoss(estate, place, before, row)?.middle ?? 0;
  return loss < 0.5
    ? ''
    : `, where about ${lengthOn(place.conveyor, Math.round(loss * 10) / 10)} less was to be expected`;
}

/** As it lay when that was read: the panel that a reline would have to name. */
function panelOfRow(estate: Estate, place: Place, row: number): string {
  const look = estate.inspections[estate.readings.inspection[row] ?? -1];
  return look ? panelWords(estate, place, look.date.day) : '';
}

/** A reline between the two that counts its panels may have renewed this one, where they lie otherwise than reckoned. */
function anotherStretch(estate: Estate, place: Place, before: number, row: number): string | undefined {
  const run = runAt(place.conveyor, place.at);
  const [from, to] = [before, row].map(
    (each) => estate.inspections[estate.readings.inspection[each] ?? -1]?.date.day,
  );
  const reline =
    run &&
    relinesByNumber(estate, run).find(
      ({ date }) => date.day >= (from ?? Infinity) && date.day <= (to ?? -Infinity),
    );
  return (
    reline &&
    `${takenWords(estate, reline)}: if it renewed this spot, write the stretch (\`scope from … to …\`), or the panels ` +
      'as they lie. Else read the spot again.'
  );
}

/** The line above says the same of another spot: a figure copied along with its line is as likely as a panel that grew. */
function copyWords({ readings, places }: Estate, row: number): string {
  const above = row - 1;
  const other = places[readings.place[above] ?? -1];
  const alike =
    other !== undefined &&
    readings.inspection[above] === readings.inspection[row] &&
    readings.place[above] !== readings.place[row] &&
    readings.kind[above] === readings.kind[row] &&
    readings.value[above] === readings.value[row];
  return alike ? `; the line above, ${other.name}, says the same figure` : '';
}
