// The programme as an iCalendar file (RFC 5545): a whole-day entry a reline and one for each last day to order, fixed ids and
// stamps, so that importing it again moves the entries instead of adding others.

import ical from 'ical-generator';
import type { ProgrammeAnswer } from '../../domain/decision/programme.js';
import { addDays, formatDay, type CalendarDay } from '../../domain/units/calendar.js';

export function programmeCalendar(answers: readonly ProgrammeAnswer[], asOf: CalendarDay): string {
  const calendar = ical({
    name: 'Programme of relines',
    prodId: { company: 'Troughline', product: 'Troughline', language: 'EN' },
  });
  const add = (
    id: string,
    from: CalendarDay,
    to: CalendarDay,
    summary: string,
    description: string,
  ): void => {
    calendar.createEvent({
      id: `${id}@troughline`.toLowerCase(),
      stamp: dayStart(asOf),
      allDay: true,
      start: dayStart(from),
      end: dayStart(addDays(to, 1)),
      summary,
      description,
    });
  };
  for (const answer of answers) {
    if (answer.kind === 'none') continue;
    const { plant, lines, problem } = answer.programme;
    for (const { conveyor, choice, reason } of lines) {
      if (choice.kind !== 'reline') continue;
      const { candidate } = choice;
      const outage = problem.outages[candidate.outage];
      if (!outage) continue;
      const where = `${plant}-${conveyor}-${outage.name}`;
      add(
        `${where}-reline`,
        outage.from,
        outage.to,
        `${conveyor}: reline ${candidate.scope}`,
        [
          `${candidate.crews.join(' and ')}, ${candidate.hours.toFixed(1)} h.`,
          ...(reason ? [`${reason}.`] : []),
          'Advice only, not a permit.',
        ].join('\n'),
      );
      if (!candidate.fromShelf)
        add(
          `${where}-order`,
          candidate.orderBy < asOf ? asOf : candidate.orderBy,
          candidate.orderBy < asOf ? asOf : candidate.orderBy,
          `Order liner for ${conveyor} by today`,
          `Needed for ${outage.name} (${formatDay(outage.from)}).`,
        );
    }
  }
  return `${calendar.toString()}\r\n`.replace(/(\r\n)+$/, '\r\n');
}

/** The encoder writes a whole day from a date's UTC parts, wherever it runs. */
function dayStart(day: CalendarDay): Date {
  return new Date(`${formatDay(day)}T00:00:00Z`);
}
