// Is the life that is left shorter than the time it takes to get a new liner? Hand arithmetic, dates by the duty, against the
// newest record of the estate; silent where a job relines the conveyor already.

import { wearTotal } from '../../../domain/model/liner-sets.js';
import { dayAt, momentOn } from '../../../domain/model/history.js';
import { originOf } from '../../../domain/model/records.js';
import { ordersOn } from '../../../domain/model/shelf.js';
import { formatHours, formatNumber } from '../../../domain/units/format.js';
import { firstToGo } from '../../evidence/hand-lives.js';
import type { Rule } from '../../rule.js';
import { todayOf } from '../../telling/today.js';

export const orderTheLinerNow: Rule = {
  code: 'TL503',
  title: 'Liner to be ordered now',
  severity: 'warning',
  restsOn: ['looks', 'history', 'jobs'],
  why: 'A liner ordered later than this arrives after the old one has reached its limit.',
  todo: 'Order it and plan a job for it; the report shows how sure the rate is.',
  given: 'estate',
  example: `
inspection DG1 2027-03-08 meter 17000 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  «P1 thickness 3.4 mm|P1 thickness 5.9 mm»
}`,
  byTheCalendar: true,
  *check(input) {
    const { estate } = input;
    const newest = todayOf(input);
    if (newest === undefined) return;
    const planned = new Set(estate.jobs.filter((job) => job.relines.length > 0).map((job) => job.conveyor));
    for (const { place, history, set, row, result, unit, end } of firstToGo(estate)) {
      const { conveyor } = place;
      const lead = conveyor.plant.leadTimes.find(({ item }) => item === 'liner');
      const day = dayAt(history, end);
      if (!lead || planned.has(conveyor) || day === undefined || day - lead.time.value / 24 >= newest)
        continue;
      const now = momentOn(history, newest);
      const total = wearTotal(history, now);
      const left = total === undefined ? result.remaining : Math.max(0, end - total);
      const coming = ordersOn(conveyor.plant, set.liner, newest, estate.relines);
      if (coming.some(({ item, arrives }) => item !== 'fixings' && arrives.day <= day)) continue;
      const say = (value: number): string =>
        unit === 't' ? `${formatNumber(Math.round(value))} t` : formatHours(Math.round(value));
      yield {
        origin: originOf(estate.readings, row),
        message:
          `${place.name} of ${conveyor.name} has about ${say(left)} left to its condemn limit, ` +
          `${formatNumber(Math.max(0, Math.round((day - newest) / 7)))} weeks at its duty, ` +
          `and a liner takes ${lead.time.text}.`,
        related: [{ origin: lead.origin, message: 'the lead time' }],
      };
    }
  },
};
