// Is there still time to buy? First day of the window less the lead time of the plant, against the newest record of the estate.
// What lies on the shelf need not be bought: the newest count, piece by piece.

import { suppliesOf, type Supplies } from '../../../domain/decision/supply.js';
import { boltsIn } from '../../../domain/decision/trial-work.js';
import type { Estate } from '../../../domain/model/estate.js';
import { spareScrewOn } from '../../../domain/model/spare-screw.js';
import type { Job } from '../../../domain/model/job.js';
import { groundOf } from '../../../domain/order/ground.js';
import { addDays, formatDay, type CalendarDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';
import { todayOf, todayWords } from '../../telling/today.js';

export const orderedTooLate: Rule = {
  code: 'TL446',
  title: 'Job sooner than its parts can arrive',
  severity: 'warning',
  restsOn: ['machine'],
  why: 'The outage passes without the liner, and the next one is months away.',
  todo: 'If the parts are ordered, silence this with that as the reason; if they are in stock, write down what was counted on the shelf; otherwise take a later outage or ask for express delivery.',
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
      const shelf = late.length > 0 ? shelfFor(job, estate, newest) : undefined;
      const there = shelf?.ways.some(({ by, day }) => by === 'shelf' && day <= window.from.day) ?? false;
      const spare =
        screwChange && spareScrewOn(conveyor.plant, screwChange.screw, newest, estate.screwChanges);
      const missing = late.filter(({ item }) =>
        item === 'screw' ? !(spare && spare.count.count > 0) : !there,
      );
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
          `${shelf && !there && worst.item !== 'screw' ? `; on the shelf: ${shelf.shelf}` : ''}.`,
        related: [{ origin: worst.origin, message: 'the lead time' }],
      };
    }
  },
};

/** What the shelf has of the job's panels and fixings; undefined where nothing of its liner was ever counted there. */
function shelfFor(job: Job, estate: Estate, today: CalendarDay): Supplies | undefined {
  const [liner, other] = [...new Set(job.relines.map((reline) => reline.liner))];
  const { plant } = job.conveyor;
  if (!liner || other || !plant.shelf.some((count) => count.liner.name === liner.name)) return undefined;
  const { runs, scope } = groundOf(job, job.order?.steps ?? [], estate);
  const lengths = runs
    .flatMap(({ panels }) => panels)
    .filter(({ from, to }) => scope.some((area) => area.from < (from + to) / 2 && area.to > (from + to) / 2))
    .map(({ length }) => length);
  return suppliesOf(plant, [{ liner, lengths, fixings: boltsIn(liner, lengths) }], today);
}
