// Is a job's window over, judged by the newest record of its conveyor, and no reline written down in it?

import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';
import { todayOf, todayWords } from '../../telling/today.js';

export const jobAlreadyPast: Rule = {
  code: 'TL436',
  title: 'Job whose window is over',
  severity: 'information',
  restsOn: [],
  why: 'If the work was done and not written down, the new liner counts as the worn one; if it was not done, nobody has a date for it.',
  todo: 'Write the reline or screw change down as it was done, then take the job out; or give it another outage.',
  given: 'estate',
  example: `
inspection DG1 2025-03-10 meter 6200 h {
  P1 colour ivory
}
job J1 {
  conveyor DG1
  «window 2024-09-09 to 2024-09-13|outage Spring27»
  reline run above Gate
  crews Alpha
}`,
  byTheCalendar: true,
  *check(input) {
    const { estate } = input;
    const newest = todayOf(input);
    if (newest === undefined) return;
    for (const { name, window, conveyor } of estate.jobs) {
      if (!window || window.to.day >= newest) continue;
      const done = [...estate.relines, ...estate.screwChanges].some(
        (record) => record.conveyor === conveyor && record.date.day >= window.from.day,
      );
      if (done) continue;
      yield {
        origin: window.origin,
        message: `Job ${name} was planned until ${formatDay(window.to.day)}, ${todayWords(input, newest)}, and none says that it was done.`,
      };
    }
  },
};
