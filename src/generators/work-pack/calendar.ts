// The window and the dates that lead up to it as an iCalendar file (RFC 5545): whole days, no alarms, fixed ids and stamps, so
// that importing it again moves the entry instead of adding another.

import ical from 'ical-generator';
import type { CalendarDay } from '../../domain/units/calendar.js';
import { addDays, formatDay, parseDay } from '../../domain/units/calendar.js';
import type { WorkPack } from './pack.js';

/** An empty calendar where the job has no window. */
export function workPackCalendar(pack: WorkPack): string {
  const stamp = new Date(`${pack.asOf}T00:00:00Z`);
  const calendar = ical({
    name: `${pack.plant}: ${pack.number}`,
    prodId: { company: 'Troughline', product: 'Troughline', language: 'EN' },
  });
  const add = (id: string, from: string, to: string, summary: string, description: string): void => {
    const [first, last] = [parseDay(from), parseDay(to)];
    if (first === undefined || last === undefined) return;
    calendar.createEvent({
      id: `${pack.number}-${id}@troughline`.toLowerCase(),
      stamp,
      allDay: true,
      start: dayStart(first),
      end: dayStart(addDays(last, 1)),
      summary,
      description,
      location: [pack.plant, pack.conveyor.name].join(', '),
    });
  };
  if (pack.window) {
    add(
      'window',
      pack.window.from,
      pack.window.to,
      `${pack.conveyor.name}: ${pack.job.title ?? pack.job.name}`,
      [
        ...(pack.obstacles.length > 0 ? ['NOT BUILDABLE AS IT STANDS: see the work pack.'] : []),
        ...pack.scope,
        `Crews: ${pack.crews.map((crew) => crew.name).join(', ') || 'none named'}.`,
        'Advice only, not a permit.',
      ].join('\n'),
    );
  }
  for (const order of pack.orderBy)
    add(
      `order-${order.item}`,
      order.date,
      order.date,
      `Order ${order.item} for ${pack.number} by today`,
      `Lead time ${order.leadTime}; needed for ${pack.window?.from ?? 'the job'}.`,
    );
  return `${calendar.toString()}\r\n`.replace(/(\r\n)+$/, '\r\n');
}

/** The encoder writes a whole day from a date's UTC parts, wherever it runs. */
function dayStart(day: CalendarDay): Date {
  return new Date(`${formatDay(day)}T00:00:00Z`);
}
