// Is there still time to buy? First day of the window less the lead time of the plant, against the newest record of the estate.

import { addDays, formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';
import { todayOf, todayWords } from '../../telling/today.js';

export const orderedTooLate: Rule = {
  code: 'TL446',
  title: 'Job sooner than its parts can arrive',
  severity: 'warning',
  why: 'The outage passes without the liner, and the next one is months away.',
  todo: 'If the parts are ordered or in stock, silence this with that as the reason; otherwise take a later outage or ask for express delivery.',
  given: 'estate',
  example: `
inspection DG1 ‹2027-03-01|2026-12-01› meter ‹17000|16500› h {
  P1 colour white
}
job J1 {
  conveyor DG1
  «outage Spring27»
  reline run above Gate
  crews Alpha
}`,
  byTheCalendar: true,
  *check(input) {
    const { estate } = input;
    const newest = todayOf(input);
    if (newest === undefined) return;
    for (const { name, window, conveyor, relines, screwChange } of estate.jobs) {
      if (!window || window.from.day < newest) continue; // a window that is over has its own finding
      const needed = conveyor.plant.leadTimes.filter(({ item }) =>
        item === 'screw' ? screwChange !== undefined : relines.length > 0,
      );
      const late = needed.filter(
        ({ time }) => addDays(window.from.day, -Math.ceil(time.value / 24)) < newest,
      );
      const worst = late.reduce<(typeof late)[number] | undefined>(
        (a, b) => (!a || b.time.value > a.time.value ? b : a),
        undefined,
      );
      if (!worst) continue;
      yield {
        origin: window.origin,
        message:
          `Job ${name} starts on ${formatDay(window.from.day)}, ` +
          `and the ${worst.item} takes ${worst.time.text}: ` +
          `it had to be ordered by ${formatDay(addDays(window.from.day, -Math.ceil(worst.time.value / 24)))}, and ${todayWords(input, newest)}.`,
        related: [{ origin: worst.origin, message: 'the lead time' }],
      };
    }
  },
};
