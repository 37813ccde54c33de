// Is there still time to buy? First day of the window less the lead time of the plant, against the newest record of the estate.
// What lies on the shelf need not be bought: the newest count, piece by piece.

import { screwsOrderedOn, spareScrewOn } from '../../../domain/model/spare-screw.js';
import { addDays, formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';
import { suppliesOfJob } from '../../../domain/decision/supplies-of-a-job.js';
import { todayOf, todayWords } from '../../telling/today.js';
import { soundConveyor } from '../../telling/sound-conveyor.js';

export const orderedTooLate: Rule = {
  code: 'TL446',
  title: 'Job sooner than its parts can arrive',
  severity: 'warning',
  restsOn: ['machine'],
  why: 'The outage passes without the liner, and the next one is months away.',
  todo:
    'If the liner is ordered, say so in the plant (`ordered TwoLayer12 9 panels on 2026-08-31 arrives 2026-11-06`); if it is in ' +
    'stock, write down what was counted on the shelf; a screw likewise (`ordered Spiral400 1 spiral on 2026-08-31 arrives 2026-12-17`). ' +
    'Otherwise take a later outage or ask for express delivery.',
  given: 'estate',
  example: `
inspection DG1 ‹2027-03-01|2026-12-01› meter ‹17000|16500› h {
  P1 colour ivory
}
job J1 {
  conveyor DG1
  «outage Spring27»
  reline run above Gate
  crews Alpha
}`,
  byTheCalendar: true,
  cases: [
    {
      name: 'ordered already',
      text: `
plant Store {
  duty 110 h/week
  lead time liner 10 weeks
  outage Spring28 2028-04-03 to 2028-04-07
  ordered TwoLayer12 20 panels on 2027-10-04 arrives 2028-03-06
}
${soundConveyor('DG9', 'Store', 'point P1 at 4 m clock 7:30')}
inspection DG9 2028-03-01 meter 17000 h {
  P1 colour ivory
}
job J9 {
  conveyor DG9
  outage Spring28
  reline run above Gate
}`,
    },
  ],
  *check(input) {
    const { estate } = input;
    const newest = todayOf(input);
    if (newest === undefined) return;
    for (const job of estate.jobs) {
      const { name, window, conveyor, relines, screwChange } = job;
      if (!window || window.from.day < newest) continue; // a window that is over has its own finding
      const needed = conveyor.plant.leadTimes.filter(({ item }) =>
        item === 'screw' ? screwChange !== undefined : relines.length > 0,
      );
      const late = needed.filter(
        ({ time }) => addDays(window.from.day, -Math.ceil(time.value / 24)) < newest,
      );
      const shelf = late.length > 0 ? suppliesOfJob(job, estate, newest) : undefined;
      // What is ordered and comes too late has a finding of its own.
      const there =
        shelf?.ways.some(({ by, day }) => by === 'ordered' || (by === 'shelf' && day <= window.from.day)) ??
        false;
      const spare =
        screwChange && spareScrewOn(conveyor.plant, screwChange.screw, newest, estate.screwChanges);
      const orders = screwChange
        ? screwsOrderedOn(conveyor.plant, screwChange.screw, newest, estate.screwChanges)
        : [];
      const spiral =
        (spare && spare.count.count > 0) || orders.some(({ order }) => order.arrives.day <= window.from.day);
      const missing = late.filter(({ item }) => (item === 'screw' ? !spiral : !there));
      const worst = missing.reduce<(typeof late)[number] | undefined>(
        (a, b) => (!a || b.time.value > a.time.value ? b : a),
        undefined,
      );
      if (!worst) continue;
      yield {
        origin: window.origin,
        message:
          `Job ${name} starts on ${formatDay(window.from.day)}, ` +
          `and the ${worst.item} takes ${worst.time.text}: ` +
          `it had to be ordered by ${formatDay(addDays(window.from.day, -Math.ceil(worst.time.value / 24)))}, and ${todayWords(input, newest)}` +
          `${worst.item === 'screw' && orders[0] ? `; the one ordered is promised for ${formatDay(orders[0].order.arrives.day)}` : ''}` +
          `${shelf && !there && worst.item !== 'screw' ? `; on the shelf: ${shelf.shelf}` : ''}.`,
        related: [{ origin: worst.origin, message: 'the lead time' }],
      };
    }
  },
};
