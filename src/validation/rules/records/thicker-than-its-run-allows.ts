// Can a liner that has run still be as thick as new? Told above what it was fitted with by its tolerance and two standard deviations
// of the reading; or above it at all where, with what the slowest spot of its run at such a clock position lost, the reading lies
// three of them too high. What no liner can be at all is TL305, what grew since the spot was read before TL306.

import type { Estate } from '../../../domain/model/estate.js';
import type { ExposedReading } from '../../../domain/model/exposure.js';
import { fittedThickness } from '../../../domain/model/fitted-thickness.js';
import { isImpossible, toleranceOf } from '../../../domain/model/impossible-reading.js';
import type { LinerSet } from '../../../domain/model/liner-sets.js';
import { isOnAJoint } from '../../../domain/model/on-a-joint.js';
import { errorOf } from '../../../domain/model/reading-error.js';
import { originOf, type Place } from '../../../domain/model/records.js';
import { runAt } from '../../../domain/model/runs.js';
import { chainageOn, lengthOn } from '../../../domain/model/unit-of-machine.js';
import { hoursApart } from '../../../domain/units/clock.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';
import { exposedOf } from '../../evidence/expected-loss.js';
import { grownRows } from '../../evidence/growth.js';
import { isPlausible } from '../../evidence/plausible.js';
import { toldTogether, type OfALiner } from '../../telling/told-together.js';
import type { Rule } from '../../rule.js';

/** Hours of the clock within which two spots wear alike (judgement). */
const alike = 1.5;

const other = (value: string): string => `
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
  ${value}
}`;

export const thickerThanItsRunAllows: Rule = {
  code: 'TL571',
  title: 'Reading as new on a liner that has run',
  severity: 'warning',
  restsOn: ['looks', 'history'],
  why:
    'A spot that seems to lose nothing is no good news: it was measured somewhere else, from the other end, or with a gauge that ' +
    'was not zeroed or not set for PE, and the true spot has no reading.',
  todo: 'Ask where it was measured and how the gauge was set; if the panel was replaced, write the reline down; else take it back with a correction.',
  given: 'estate',
  example: other('«at 4.6 m clock 7:30 thickness 12.2 mm|at 4.6 m clock 7:30 thickness 9.9 mm»'),
  cases: [
    {
      name: 'beyond the tolerance by two errors, though nothing tells a rate',
      text: other('«P2 thickness 12.8 mm»'),
    },
    { name: 'within tolerance and gauge, in a run of its own', text: other('P2 thickness 12.2 mm') },
    { name: 'on the side that the screw does not rub', text: other('at 4.6 m clock 4:00 thickness 12.1 mm') },
  ],
  check({ estate }) {
    const grown = grownRows(estate);
    const found: OfALiner[] = [];
    for (const [place, rows] of exposedOf(estate))
      for (const { row, set, exposure } of rows) {
        if (!set || !exposure.known || !(exposure.value > 0) || grown.has(row)) continue;
        if (!isToBeJudged(estate, place, row, set)) continue;
        const value = estate.readings.value[row] ?? NaN;
        const fitted = fittedThickness(set, place);
        const over = value - fitted.value - toleranceOf(set, fitted);
        const error = errorOf(estate, row);
        const isBeyond = over > 2 * error;
        if (!isBeyond && !(value > fitted.value)) continue;
        const slowest = isBeyond ? undefined : slowestOf(estate, place, row, set);
        const loss = (slowest?.rate ?? 0) * exposure.value;
        if (!isBeyond && !(over + loss > 3 * error)) continue;
        found.push({
          alike: set.liner.name,
          conveyor: place.conveyor,
          at: place.at,
          origin: originOf(estate.readings, row),
          message:
            `${place.name} of ${place.conveyor.name} reads ${lengthOn(place.conveyor, value)}, and ${set.liner.name} was ` +
            `${lengthOn(place.conveyor, fitted.value)} thick ${fitted.measured ? 'there when fitted' : 'when new'}` +
            `${slowest ? lossWords(place, slowest.place, loss) : ''}` +
            `${fromTheOtherEnd(place)}.`,
        });
      }
    return toldTogether(found);
  },
};

function isToBeJudged(estate: Estate, place: Place, row: number, set: LinerSet): boolean {
  return (
    estate.readings.kind[row] === ReadingKind.thickness &&
    !estate.readings.bench.has(row) &&
    !isImpossible(estate, row, set, place) &&
    !isOnAJoint(estate, place) &&
    isPlausible('reading thickness', estate.readings.value[row] ?? NaN)
  );
}

function lossWords({ conveyor }: Place, other: Place, loss: number): string {
  return (
    `; at the rate of ${other.name} in its run it should have lost ` +
    `${lengthOn(conveyor, Math.round(loss * 10) / 10)} by then`
  );
}

/** A spot without a name may have been counted from the head. */
function fromTheOtherEnd({ declared, at, conveyor }: Place): string {
  return declared
    ? ''
    : `; counted from the head end it would be ${chainageOn(conveyor, conveyor.length.value - at)}`;
}

/** Of the other spots of that liner in its run, near its clock position: the one that lost least an hour up to that day. */
function slowestOf(
  estate: Estate,
  place: Place,
  row: number,
  set: LinerSet,
): { readonly place: Place; readonly rate: number } | undefined {
  const run = runAt(place.conveyor, place.at);
  const look = estate.inspections[estate.readings.inspection[row] ?? -1];
  if (!run || !look) return undefined;
  const isBefore = ({ inspection }: ExposedReading): boolean => inspection.date.day <= look.date.day;
  const rates = [...exposedOf(estate)].flatMap(([other, rows]) => {
    if (other === place || other.conveyor !== place.conveyor || hoursApart(other.clock, place.clock) > alike)
      return [];
    const last = rows.findLast(
      (each) =>
        each.set?.reline === set.reline &&
        each.set?.liner === set.liner &&
        estate.readings.kind[each.row] === ReadingKind.thickness &&
        isBefore(each),
    );
    if (
      !last?.set ||
      !last.exposure.known ||
      !(last.exposure.value > 0) ||
      runAt(other.conveyor, other.at) !== run
    )
      return [];
    const worn = fittedThickness(last.set, other).value - (estate.readings.value[last.row] ?? NaN);
    return [{ place: other, rate: worn / last.exposure.value }];
  });
  const slowest = rates.reduce<(typeof rates)[number] | undefined>(
    (a, b) => (a && a.rate <= b.rate ? a : b),
    undefined,
  );
  return slowest && slowest.rate > 0 ? slowest : undefined;
}
