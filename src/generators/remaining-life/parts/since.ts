// What changed since an earlier report? The earlier one is made again from the records known then, and laid beside this one.

import { formatDay, type CalendarDay } from '../../../domain/units/calendar.js';
import { counted, list } from '../../../domain/units/wording.js';
import { changesBeside } from '../changes-beside.js';
import { limitPassed, passedText } from '../passed-words.js';
import type { ConveyorLife } from './conveyor-life.js';

export interface Since {
  readonly day: CalendarDay;
  readonly conveyors: readonly ConveyorSince[];
}

export interface ConveyorSince {
  readonly name: string;
  /** In words, without a full stop; empty where nothing changed. */
  readonly changes: readonly string[];
  /** Middle of the forecast limit, then and now. */
  readonly before: CalendarDay | 'passed' | undefined;
  readonly now: CalendarDay | 'passed' | undefined;
}

interface Lives {
  readonly conveyors: readonly ConveyorLife[];
}

/** Conveyors in the order of the present report. */
export function changesSince(day: CalendarDay, then: Lives, now: Lives): Since {
  return {
    day,
    conveyors: now.conveyors.map((life) => {
      const before = then.conveyors.find((c) => c.conveyor === life.conveyor);
      return {
        name: life.conveyor.name,
        changes: [
          ...recordsSince(life, day),
          ...(before ? changesBeside(before, life) : []),
          ...(before ? forecastChange(before, life) : []),
        ],
        before: middle(before),
        now: middle(life),
      };
    }),
  };
}

function recordsSince(life: ConveyorLife, day: CalendarDay): readonly string[] {
  const { history } = life;
  const inspections = history.inspections.filter((i) => i.inspection.date.day > day);
  const relines = history.relines.filter((r) => r.date.day > day);
  const screws = new Set(
    history.screwSets.flatMap(({ change }) => (change && change.date.day > day ? change : [])),
  );
  const meters = history.hours.knots.filter((k) => k.reading.source === 'meter put in' && k.day > day);
  const duties = history.duties.filter((d) => d.from !== undefined && d.from > day);
  const days = (all: readonly { readonly day: CalendarDay }[]): string =>
    list(all.map((d) => formatDay(d.day)));
  return [
    inspections.length > 0 &&
      `${counted(inspections.length, 'inspection')} (${days(inspections.map((i) => i.inspection.date))})`,
    relines.length > 0 && `${counted(relines.length, 'reline')} (${days(relines.map((r) => r.date))})`,
    screws.size > 0 && `${counted(screws.size, 'screw change')}`,
    meters.length > 0 && `${counted(meters.length, 'meter change')} (${days(meters)})`,
    duties.length > 0 &&
      `duty ${list(duties.map((d) => `${d.text} from ${d.from === undefined ? '' : formatDay(d.from)}`))}`,
  ].filter((text) => text !== false);
}

function forecastChange(before: ConveyorLife, now: ConveyorLife): readonly string[] {
  const changes: string[] = [...limitChange(before, now)];
  if (before.worst?.place.name !== now.worst?.place.name && now.worst)
    changes.push(
      `the limit comes first at ${now.worst.place.name}${before.worst ? `, then at ${before.worst.place.name}` : ''}`,
    );
  if (before.attention.todo !== now.attention.todo) changes.push(`then: ${before.attention.todo}`);
  return changes;
}

/** What is passed is told as passed, on either side; a date is held only against a date. */
function limitChange(before: ConveyorLife, now: ConveyorLife): readonly string[] {
  const [then, today] = [before.model?.forecast, now.model?.forecast];
  const [passedThen, passedNow] = [limitPassed(before), limitPassed(now)];
  const foretold = then?.kind === 'dates' && then.days.q50 !== undefined ? then.days : undefined;
  const present = today?.kind === 'dates' && today.days.q50 !== undefined ? today.days : undefined;
  if (passedThen && passedNow) {
    const [a, b] = [passedText(passedThen), passedText(passedNow)];
    return [a === b ? `the limit was passed then already (${a})` : `limit ${b}; then it was: ${a}`];
  }
  if (passedNow)
    return [
      `limit ${passedText(passedNow)}${foretold?.q50 === undefined ? '' : `; then it was foretold for ${formatDay(foretold.q50)}`}`,
    ];
  if (present?.q50 === undefined) return [];
  if (passedThen)
    return [`limit forecast for ${formatDay(present.q50)} now; then it was: ${passedText(passedThen)}`];
  if (foretold?.q50 === undefined)
    return then?.kind === today?.kind
      ? []
      : [`a forecast of the limit is possible now (${formatDay(present.q50)})`];
  const moved = present.q50 - foretold.q50;
  const inside =
    foretold.q10 !== undefined &&
    present.q50 >= foretold.q10 &&
    (foretold.q90 === undefined || present.q50 <= foretold.q90);
  return Math.abs(moved) < 7
    ? []
    : [
        `limit forecast ${counted(Math.round(Math.abs(moved) / 7), 'week')} ` +
          `${moved < 0 ? 'earlier' : 'later'} than then (${formatDay(foretold.q50)} then, ` +
          `${formatDay(present.q50)} now), ${inside ? 'inside' : 'outside'} the 80 % interval of then`,
      ];
}

function middle(life: ConveyorLife | undefined): CalendarDay | 'passed' | undefined {
  if (life && limitPassed(life)) return 'passed';
  return life?.model?.forecast.kind === 'dates' ? life.model.forecast.days.q50 : undefined;
}
