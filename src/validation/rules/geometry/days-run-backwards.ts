// Does every outage and every window end on or after the day it starts?

import type { StatedDay } from '../../../domain/model/stated.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Found } from '../../finding.js';
import type { Rule } from '../../rule.js';

export const daysRunBackwards: Rule = {
  code: 'TL245',
  title: 'Outage or window that ends before it starts',
  severity: 'error',
  restsOn: [],
  why: 'No job fits into it, and nothing can be planned for it.',
  todo: 'Check both dates; the last day counts as part of it.',
  given: 'plant',
  example: '  outage Spring27 2027-04-12 to «2027-03-23|2027-04-23»',
  *check({ estate }) {
    for (const { outages } of estate.plants)
      for (const { name, from, to } of outages) yield* judge(`Outage ${name}`, from, to);
    // A window that is an outage is told there.
    for (const { name, window } of estate.jobs)
      if (window && !window.outage) yield* judge(`The window of job ${name}`, window.from, window.to);
  },
};

function* judge(what: string, from: StatedDay, to: StatedDay): Iterable<Found> {
  if (from.day <= to.day) return;
  yield {
    origin: to.origin,
    message: `${what} starts on ${formatDay(from.day)} and ends on ${formatDay(to.day)}.`,
    fixes: [
      {
        title: `Swap: ${formatDay(to.day)} to ${formatDay(from.day)}`,
        edits: [
          { origin: from.origin, text: formatDay(to.day) },
          { origin: to.origin, text: formatDay(from.day) },
        ],
      },
    ],
  };
}
