// The window of a job and the dates that lead up to it as a calendar file: the window takes up its days, a last day to order does not.

import { parseDay } from '../../domain/units/calendar.js';
import { calendarFile, type CalendarEntry } from '../page/calendar-file.js';
import type { WorkPack } from './pack.js';

/** An empty calendar where the job has no window. */
export function workPackCalendar(pack: WorkPack): string {
  const location = [pack.plant, pack.conveyor.name].join(', ');
  const asOf = parseDay(pack.asOf);
  if (asOf === undefined) throw new Error(`a pack without a day: ${pack.asOf}`);
  const orders = pack.orderBy.map((order) => ({
    name: `order-${order.item}`,
    from: order.date,
    to: order.date,
    summary: `Order ${order.item} for ${pack.number} ${order.latest === undefined ? 'by today' : 'now'}`,
    description: `Lead time ${order.leadTime}; needed for ${pack.window?.from ?? 'the job'}.`,
    busy: false,
    remind: [14, 3],
  }));
  const entries = [...windowEntry(pack), ...orders].flatMap(
    ({ name, from, to, ...entry }): CalendarEntry[] => {
      const [first, last] = [parseDay(from), parseDay(to)];
      if (first === undefined || last === undefined) return [];
      return [{ ...entry, id: `${pack.number}-${name}`, from: first, to: last, location }];
    },
  );
  return calendarFile({ name: `${pack.plant}: ${pack.number}`, asOf, entries });
}

function windowEntry(pack: WorkPack) {
  const { window } = pack;
  if (!window) return [];
  return [
    {
      name: 'window',
      from: window.from,
      to: window.to,
      summary: `${pack.conveyor.name}: ${pack.job.title ?? pack.job.name}`,
      description: [
        ...(pack.obstacles.length > 0 ? ['NOT BUILDABLE AS IT STANDS: see the work pack.'] : []),
        ...pack.scope,
        `Crews: ${pack.crews.map((crew) => crew.name).join(', ') || 'none named'}.`,
        'Advice only, not a permit.',
      ].join('\n'),
      busy: true,
      remind: [28, 7],
    },
  ];
}
