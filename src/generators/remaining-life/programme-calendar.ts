// The programme as a calendar file: an entry a reline, whose days are taken up, and one for each last day to order.

import { isNow } from '../../domain/decision/order-call.js';
import type { ProgrammeAnswer } from '../../domain/decision/programme.js';
import { formatDay, type CalendarDay } from '../../domain/units/calendar.js';
import { calendarFile, type CalendarEntry } from '../page/calendar-file.js';

export function programmeCalendar(answers: readonly ProgrammeAnswer[], asOf: CalendarDay): string {
  return calendarFile({ name: 'Programme of relines', asOf, entries: programmeEntries(answers) });
}

export function programmeEntries(answers: readonly ProgrammeAnswer[]): readonly CalendarEntry[] {
  const entries: CalendarEntry[] = [];
  for (const answer of answers) {
    if (answer.kind === 'none') continue;
    const { plant, lines, problem } = answer.programme;
    for (const { conveyor, choice, reason } of lines) {
      if (choice.kind !== 'reline') continue;
      const { candidate } = choice;
      const outage = problem.outages[candidate.outage];
      if (!outage) continue;
      const where = `${plant}-${conveyor}-${outage.name}`;
      entries.push({
        id: `${where}-reline`,
        from: outage.from,
        to: outage.to,
        summary: `${conveyor}: reline ${candidate.scope}`,
        description: [
          `${candidate.crews.join(' and ')}, ${candidate.hours.toFixed(1)} h.`,
          ...(reason ? [`${reason}.`] : []),
          'Advice only, not a permit.',
        ].join('\n'),
        location: [plant, conveyor].join(', '),
        busy: true,
        remind: [28, 7],
      });
      const { order } = candidate;
      if (order.kind !== 'order') continue;
      entries.push({
        id: `${where}-order`,
        from: order.day,
        to: order.day,
        summary: `Order liner for ${conveyor} ${isNow(order) ? 'now' : 'by today'}`,
        description: `Needed for ${outage.name} (${formatDay(outage.from)}).`,
        busy: false,
        remind: [14, 3],
      });
    }
  }
  return entries;
}
