// Does what is ordered come before the job that waits for it?

import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';
import { suppliesOfJob } from '../../../domain/decision/supplies-of-a-job.js';
import { waitedFor } from '../../../domain/decision/supply.js';
import { todayOf } from '../../telling/today.js';
import { soundConveyor } from '../../telling/sound-conveyor.js';

export const orderComesTooLate: Rule = {
  code: 'TL528',
  title: 'Ordered liner that comes after its job begins',
  severity: 'warning',
  restsOn: ['machine'],
  byTheCalendar: true,
  why: 'The crew stands at an open trough and waits, or the outage passes without the liner.',
  todo: 'Ask for an earlier day and write it down, buy what is missing elsewhere, or move the job to a later outage.',
  given: 'specifications',
  example: `
plant Store {
  duty 110 h/week
  crew Alpha 4 people
  outage Spring25 2025-04-07 to 2025-04-18
  ordered TwoLayer12 20 panels on 2025-02-03 arrives ‹2025-04-14|2025-04-07›
}
${soundConveyor('DG9', 'Store', 'isolation Pin gravity', 'point P1 at 4 m clock 7:30')}
inspection DG9 2025-03-03 meter 6000 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9 mm
}
job J9 {
  conveyor DG9
  «outage Spring25»
  reline run above Gate
  crews Alpha
}`,
  *check(input) {
    const { estate } = input;
    const today = todayOf(input);
    if (today === undefined) return;
    for (const job of estate.jobs) {
      const { name, window, relines } = job;
      if (!window || window.from.day < today || relines.length === 0) continue;
      const ways = suppliesOfJob(job, estate, today)?.ways ?? [];
      const order = ways.find(({ by }) => by === 'ordered');
      const inTime = ways.some(({ by, day }) => by !== 'expedited' && day <= window.from.day);
      if (!order || order.day <= window.from.day || inTime) continue;
      yield {
        origin: window.origin,
        message: `Job ${name} starts on ${formatDay(window.from.day)}, and its ${waitedFor(order)} there on ${formatDay(order.day)} (${order.why}).`,
      };
    }
  },
};
