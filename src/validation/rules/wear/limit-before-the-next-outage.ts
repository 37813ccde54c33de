// Does the thinnest spot last until the next planned outage? Hand arithmetic in the form of API 570: the larger of long-term
// and short-term rate, what is left above the condemn limit, over that rate; running hours until the outage by the duty.

import { rateWords } from '../../../domain/units/length-words.js';
import { wearTotal } from '../../../domain/model/liner-sets.js';
import { momentOn } from '../../../domain/model/history.js';
import { originOf } from '../../../domain/model/records.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { unitOfMachine, lengthOn } from '../../../domain/model/unit-of-machine.js';
import { formatNumber, formatHours } from '../../../domain/units/format.js';
import { firstToGo, onTheMeter } from '../../evidence/hand-lives.js';
import type { Rule } from '../../rule.js';
import { todayOf } from '../../telling/today.js';

export const limitBeforeTheNextOutage: Rule = {
  code: 'TL501',
  title: 'Condemn limit reached before the next outage',
  severity: 'warning',
  restsOn: ['looks', 'history'],
  why: 'At the rate of its own readings the liner is at its limit before anyone can get at it; what follows is an unplanned stop or a cut trough.',
  todo: 'Look at the remaining-life report for how sure this is; find an earlier stop, or inspect again soon and often.',
  given: 'estate',
  example: `
inspection DG1 2025-10-06 meter 9300 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  «P1 thickness 4.6 mm|P1 thickness 8.4 mm»
}`,
  byTheCalendar: true,
  *check(input) {
    const { estate } = input;
    const newest = todayOf(input);
    if (newest === undefined) return;
    for (const life of firstToGo(estate)) {
      const { place, history, row, result, unit, end, overruled, inspection } = life;
      const { conveyor } = place;
      const outage = conveyor.plant.outages
        .filter((one) => one.from.day >= newest)
        .sort((a, b) => a.from.day - b.from.day)[0];
      if (!outage) continue;
      const then = momentOn(history, outage.from.day);
      const total = wearTotal(history, then);
      if (total === undefined || end >= total) continue;
      const now = wearTotal(history, momentOn(history, newest));
      if (now === undefined) continue;
      // What overruled a thickness was seen after it.
      const isOld = inspection.date.day < newest && !overruled;
      const left = onTheMeter(history, unit, now, end);
      const say = (value: number): string =>
        unit === 't' ? `${formatNumber(Math.round(value))} t` : formatHours(Math.round(value));
      yield {
        origin: originOf(estate.readings, row),
        message:
          `${place.name} of ${conveyor.name} ${isOld ? `was read on ${formatDay(inspection.date.day)} to have` : 'has'} ` +
          `${overruled ? 'at most ' : ''}${lengthOn(conveyor, result.last.thickness)} left and loses ` +
          `${rateWords(result.ruling, unit, unitOfMachine(place.conveyor))} (${result.rules}): ` +
          (left > 0
            ? `${say(left)} to its condemn limit`
            : `its condemn limit was passed ${say(-left)} ago`) +
          `, and ${outage.name} (${formatDay(outage.from.day)}) is ${say(onTheMeter(history, unit, now, total))} away.`,
        related: [{ origin: outage.nameOrigin, message: `outage ${outage.name}` }],
      };
    }
  },
};
