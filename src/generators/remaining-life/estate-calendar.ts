// What the report asks for, in a calendar: the day by which each conveyor is to be looked at, the last day to order for the outage it
// is to be relined at, and the plants' outages. Only the outages that somebody is to work in take up their days.

import { isNow, isOrderLate } from '../../domain/decision/order-call.js';
import { formatDay, type CalendarDay } from '../../domain/units/calendar.js';
import { calendarFile, type CalendarEntry } from '../page/calendar-file.js';
import { limitPassed, passedText } from './passed-words.js';
import type { ConveyorLife, RemainingLife } from './remaining-life.js';
import { askedTexts } from './print/sentences.js';
import { unreadIn } from './unread-words.js';

/** An empty calendar for a report without a day. */
export function estateCalendar({ asOf, conveyors, estate }: RemainingLife): string {
  if (asOf === undefined) return calendarFile({ name: 'Conveyors', asOf: 0 as CalendarDay, entries: [] });
  const plants = estate.plants.filter((plant) => conveyors.some(({ conveyor }) => conveyor.plant === plant));
  const unread = unreadIn({ estate, conveyors });
  const entries = [
    ...(unread === undefined ? [] : [unreadEntry(unread, asOf)]),
    ...conveyors.flatMap((life) => [...lookEntry(life, asOf), ...orderEntry(life)]),
    ...plants.flatMap((plant) =>
      plant.outages
        .filter(({ to }) => to.day >= asOf)
        .map((outage): CalendarEntry => {
          const due = conveyors.filter(
            ({ conveyor, attention }) => conveyor.plant === plant && attention.outage?.name === outage.name,
          );
          return {
            id: `${plant.name}-outage-${outage.name}`,
            from: outage.from.day,
            to: outage.to.day,
            summary: `Outage ${outage.name}${due.length > 0 ? `: ${due.map(({ conveyor }) => conveyor.name).join(', ')}` : ''}`,
            description: [
              ...(outage.title === undefined ? [] : [outage.title]),
              ...due.map(({ conveyor, attention }) => `${conveyor.name}: ${attention.todo}.`),
              'Advice only, not a permit.',
            ].join('\n'),
            location: plant.title ?? plant.name,
            busy: due.length > 0,
            remind: due.length > 0 ? [28, 7] : [],
          };
        }),
    ),
  ];
  return calendarFile({ name: `Conveyors as of ${formatDay(asOf)}`, asOf, entries });
}

/** On the day of the report: whoever plans by this calendar has not seen what the check told. */
function unreadEntry(description: string, day: CalendarDay): CalendarEntry {
  return {
    id: 'not-all-was-read',
    from: day,
    to: day,
    summary: 'Not all was read',
    description,
    location: '',
    busy: false,
    remind: [],
  };
}

function placeOf({ conveyor }: ConveyorLife): string {
  return [conveyor.plant.title ?? conveyor.plant.name, conveyor.name].join(', ');
}

/** By the model; where it gives no date, half of the life left by hand. A look that is overdue is for today. */
function lookEntry(life: ConveyorLife, asOf: CalendarDay): readonly CalendarEntry[] {
  const { conveyor, model, points } = life;
  const byHand = points.reduce<CalendarDay | undefined>(
    (least, { nextLook }) =>
      nextLook && (least === undefined || nextLook.day < least) ? nextLook.day : least,
    undefined,
  );
  const look = model?.look;
  const byModel = look?.kind === 'by' ? look.day : look?.kind === 'now' ? asOf : undefined;
  const asked = life.looksAsked[0]?.day;
  const due = byModel ?? (asked !== undefined && (byHand === undefined || asked < byHand) ? asked : byHand);
  if (due === undefined) return [];
  const day = due < asOf ? asOf : due;
  return [
    {
      id: `${conveyor.plant.name}-${conveyor.name}-look`,
      from: day,
      to: day,
      summary: `${conveyor.name}: look by today${day === asOf && look?.kind !== 'by' ? ', it is due' : ''}`,
      description: `${life.attention.todo}.${limitLine(life)}${askedLines(life)}\nThe sheet: troughline sheet ${conveyor.name}.\nAdvice only, not a permit.`,
      location: placeOf(life),
      busy: false,
      remind: [14, 3],
    },
  ];
}

/** Where the limit lies behind the day; a date to come stands in the report, with its interval. */
function limitLine(life: ConveyorLife): string {
  const passed = limitPassed(life);
  return passed ? `\nThe condemn limit is ${passedText(passed)}.` : '';
}

function askedLines(life: ConveyorLife): string {
  return askedTexts(life)
    .map((text) => `\n${text}.`)
    .join('');
}

function orderEntry(life: ConveyorLife): readonly CalendarEntry[] {
  const { conveyor, order } = life;
  if (order?.kind !== 'order') return [];
  const { day, outage, latest } = order;
  return [
    {
      id: `${conveyor.plant.name}-${conveyor.name}-order`,
      from: day,
      to: day,
      summary: `Order liner for ${conveyor.name} ${isNow(order) ? 'now' : 'by today'}`,
      description: [
        order.why === 'no outage in time'
          ? 'No planned outage is early enough.'
          : `Needed for ${outage ?? 'a reline'}.`,
        ...(isOrderLate(order) && latest !== undefined && outage !== undefined
          ? [`For ${outage} it was to be ordered by ${formatDay(latest)}.`]
          : []),
      ].join(' '),
      location: placeOf(life),
      busy: false,
      remind: [14, 3],
    },
  ];
}
