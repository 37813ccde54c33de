// One row a conveyor of the table of decisions: what to do, the chances, what to order by when, with interval and count. As CSV
// for a spreadsheet by the same rules as the table of points (csv.ts).

import { unreadText } from '../../domain/model/unread.js';
import { chance, columnsCsv, day, number, text, whole, yesNo, type DataColumn } from './columns.js';
import type { CalendarDay } from '../../domain/units/calendar.js';
import { firstOption, type DecisionOption } from '../../domain/decision/option.js';
import { isOrderLate } from '../../domain/decision/order-call.js';
import { currencyOf, orderDay, shownOutage } from './decision-words.js';
import { limitPassed } from './passed-words.js';
import type { ConveyorForecast, ConveyorLife, RemainingLife } from './remaining-life.js';

export interface ConveyorRow {
  readonly asOf: CalendarDay | undefined;
  readonly life: ConveyorLife;
  /** 1 needs attention first. */
  readonly rank: number;
  readonly unread: string | undefined;
}

export function conveyorsCsv(report: RemainingLife): string {
  return columnsCsv(conveyorColumns, conveyorRows(report));
}

export function conveyorRows({ asOf, conveyors, estate }: RemainingLife): readonly ConveyorRow[] {
  return conveyors.map((life, i) => ({
    asOf,
    life,
    rank: i + 1,
    unread: unreadText(estate, [life.conveyor]),
  }));
}

const moves = { moves: true } as const;

const first: readonly DataColumn<ConveyorRow>[] = [
  day('as_of', 'the day that all of it counts from', ({ asOf }) => asOf, moves),
  text('plant', 'name of the plant', ({ life }) => life.conveyor.plant.name, { always: true }),
  text('conveyor', 'name of the conveyor', ({ life }) => life.conveyor.name, { always: true }),
  whole('rank', '1 needs attention first', ({ rank }) => rank, { always: true }),
  text('level', 'how urgent it is', ({ life }) => life.attention.level, { always: true }),
  text('todo', 'what to do', ({ life }) => life.attention.todo, { always: true, ...moves }),
  day('limit_on_p10', 'the first panel at its limit, 10 % quantile', ({ life }) => dates(life)?.days.q10),
  day('limit_on_p50', 'the same, the middle', ({ life }) => dates(life)?.days.q50),
  day('limit_on_p90', 'the same, 90 % quantile', ({ life }) => dates(life)?.days.q90),
  whole('panels', 'panels of the liner', ({ life }) => life.decision?.panels),
  whole('panels_seen', 'of these, seen', ({ life }) => life.decision?.panelsSeen),
  text('governing_place', 'what is likeliest to be first', ({ life }) => life.decision?.governing?.place),
];

const chances: readonly DataColumn<ConveyorRow>[] = [
  chance('accepted_limit', 'accepted chance of the limit', ({ life }) => life.decision?.accepted.condemn),
  chance('accepted_steel', 'accepted chance of steel', ({ life }) => life.decision?.accepted.contact),
  day('risk_passed_on', 'day one of them is passed', ({ life }) => life.decision?.passed?.day, moves),
  text('risk_passed_by', 'condemn limit or steel', ({ life }) => life.decision?.passed?.by, moves),
  day('risk_passed_on_seen', 'the same of what was seen', ({ life }) => life.decision?.passedSeen, moves),
  chance('limit_today', 'chance of the limit on the day', ({ life }) => life.decision?.today.condemn, moves),
  chance('limit_today_seen', 'of what was seen', ({ life }) => life.decision?.today.condemnSeen, moves),
  chance('steel_today', 'chance of steel on the day', ({ life }) => life.decision?.today.contact, moves),
  text('outage', 'outage that the report shows', ({ life }) => shownOutage(life)?.name),
  day('outage_from', 'its first day', ({ life }) => shownOutage(life)?.from),
  chance('limit_by_outage', 'chance of the limit by then', ({ life }) => shownOutage(life)?.condemn),
  chance('limit_by_outage_seen', 'of what was seen', ({ life }) => shownOutage(life)?.condemnSeen),
  chance('steel_by_outage', 'chance of steel by then', ({ life }) => shownOutage(life)?.contact),
];

const supplied: readonly DataColumn<ConveyorRow>[] = [
  day(
    'earliest_reline',
    'day before which it cannot be relined',
    ({ life }) => life.decision?.earliest?.day,
    moves,
  ),
  text('earliest_why', 'why', ({ life }) => life.decision?.earliest?.why, moves),
  chance(
    'limit_by_earliest',
    'chance of the limit by then',
    ({ life }) => life.decision?.earliest?.condemn,
    moves,
  ),
  chance(
    'steel_by_earliest',
    'chance of steel by then',
    ({ life }) => life.decision?.earliest?.contact,
    moves,
  ),
  day('order_by', 'day to order the liner by', ({ life }) => orderDay(life.order), moves),
  yesNo('order_is_late', 'that day has passed', ({ life }) => life.order && isOrderLate(life.order), moves),
  day('liner_arrives', 'if ordered today', ({ life }) => life.attention.outage?.arrives, moves),
  day(
    'next_look',
    'day to look by',
    ({ asOf, life: { model } }) =>
      model?.look.kind === 'by' ? model.look.day : model?.look.kind === 'now' ? asOf : undefined,
    moves,
  ),
  text('next_look_because', 'why', ({ life: { model } }) =>
    model?.look.kind === 'by' || model?.look.kind === 'now' ? model.look.because : undefined,
  ),
  text('first_option', 'the best of the ways out', ({ life }) => firstOf(life)?.what, moves),
  day('first_option_day', 'its day', ({ life }) => firstOf(life)?.day, moves),
  chance('first_option_limit', 'chance of the limit by then', ({ life }) => firstOf(life)?.condemn, moves),
  chance('first_option_steel', 'chance of steel by then', ({ life }) => firstOf(life)?.contact, moves),
  number('first_option_cost', 'to be paid', 2, ({ life }) => firstOf(life)?.cost, moves),
  number(
    'first_option_expected',
    'with the chance of steel and the life used up',
    2,
    ({ life }) => firstOf(life)?.expected,
    moves,
  ),
  text('currency', 'of the costs', ({ life }) => life.decision && currencyOf(life.decision)),
  text(
    'jobs',
    'jobs that are written',
    ({ life }) => life.decision?.jobs.map(({ words }) => words).join('; '),
    moves,
  ),
  whole('open_conditions', 'conditions that stand open', ({ life }) => life.conditions.length),
  text('worst_condition', 'the worst of them', ({ life }) => life.conditions[0]?.what),
];

/** New columns stand last, so that what reads the table by place goes on working. */
const machine: readonly DataColumn<ConveyorRow>[] = [
  text('title', 'what it is called', ({ life }) => life.conveyor.title),
  text('liner', 'liner named on the conveyor', ({ life }) => life.conveyor.liner.name),
  number('length_m', 'along the trough', 3, ({ life }) => life.conveyor.length.value / 1000),
  number('incline_deg', 'from the level', 2, ({ life }) => life.conveyor.incline.value),
  text('exposure_unit', 'what wear follows: h or t', ({ life }) => life.unit),
  number('hours_h', 'run since commissioning', 1, ({ life }) => life.now?.hours, moves),
  number('carried_t', 'carried since', 1, ({ life }) => life.now?.tonnes, moves),
  number('duty_per_day', 'h or t a calendar day', 3, ({ life }) => life.duty?.perDay),
  whole('readings', 'thicknesses behind the dates', ({ life }) => dates(life)?.readings),
  whole('indicators', 'colours and steel showing behind the dates', ({ life }) => dates(life)?.indicators),
  whole('pool', 'places and liners they borrow from', ({ life }) => dates(life)?.pool),
];

/** Of the first panel at its limit. */
const past: readonly DataColumn<ConveyorRow>[] = [
  yesNo(
    'limit_passed',
    'the first limit lies behind the day, seen or more likely than not',
    ({ life }) => limitPassed(life) !== undefined,
    moves,
  ),
  day(
    'limit_passed_from',
    'not before that day (seen), or likely not',
    ({ life }) => limitPassed(life)?.from,
    moves,
  ),
  day('limit_passed_to', 'by that day, or likely by it', ({ life }) => limitPassed(life)?.to, moves),
  text('unread', 'what of it could not be read', ({ unread }) => unread),
];

export const conveyorColumns: readonly DataColumn<ConveyorRow>[] = [
  ...first,
  ...chances,
  ...supplied,
  ...machine,
  ...past,
];

/** Undefined where nothing can be done: waiting beyond the risk is no way out. */
function firstOf({ decision }: ConveyorLife): DecisionOption | undefined {
  return decision && firstOption(decision.options);
}

function dates({ model }: ConveyorLife): Extract<ConveyorForecast, { kind: 'dates' }> | undefined {
  return model?.forecast.kind === 'dates' ? model.forecast : undefined;
}
