// Does the window of a job lie in a planned outage of its plant?

import type { Outage } from '../../../domain/model/plant.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { replace } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';
import { todayOf } from '../../telling/today.js';
import { list } from '../../telling/wording.js';

export const windowOutsideTheOutages: Rule = {
  code: 'TL431',
  title: 'Job window outside every outage',
  severity: 'warning',
  restsOn: ['conditions', 'history', 'machine', 'jobs'],
  why: 'Outside an outage the conveyor is needed, and the crew that arrives will not get it.',
  todo: 'Name the outage instead of the days, or add the outage to the plant.',
  given: 'estate',
  around: { conveyor: 'access Floor at 0 m to 12 m ground' },
  example: `
job J1 {
  conveyor DG1
  «window 2027-05-03 to 2027-05-07|window 2027-04-12 to 2027-04-16»
  reline run above Gate
  crews Alpha
}`,
  byTheCalendar: true,
  *check(input) {
    const { estate } = input;
    const newest = todayOf(input);
    for (const { name, window, conveyor } of estate.jobs) {
      const { outages } = conveyor.plant;
      if (!window || window.outage || outages.length === 0 || window.from.day > window.to.day) continue;
      if (newest !== undefined && window.to.day < newest) continue; // a window that is over has its own finding
      if (outages.some((outage) => outage.from.day > outage.to.day)) continue; // which days are meant is not known
      if (outages.some((outage) => outage.from.day <= window.from.day && window.to.day <= outage.to.day))
        continue;
      const distance = (outage: Outage): number =>
        Math.max(outage.from.day - window.to.day, window.from.day - outage.to.day);
      const nearest = outages.reduce((a, b) => (distance(b) < distance(a) ? b : a));
      const days = outages.map(
        (outage) => `${outage.name} (${formatDay(outage.from.day)} to ${formatDay(outage.to.day)})`,
      );
      yield {
        origin: window.origin,
        message: `Job ${name} is planned for ${formatDay(window.from.day)} to ${formatDay(window.to.day)}, and ${conveyor.plant.name} stops for ${list(days)}.`,
        fixes: [replace(window.origin, `outage ${nearest.name}`)],
      };
    }
  },
};
