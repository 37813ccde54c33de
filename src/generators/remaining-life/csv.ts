// One row a point: what was read, how fast it wears by hand and by the model, when each limit comes, with interval and count.
// As CSV for a spreadsheet: RFC 4180 with CRLF, a head row whose names carry the units; see columns.ts.

import { unreadText } from '../../domain/model/unread.js';
import { acceptedBy } from '../../domain/decision/conveyor-decision.js';
import type { CalendarDay } from '../../domain/units/calendar.js';
import { clockColumns } from './clock-columns.js';
import { chance, columnsCsv, day, number, text, whole, yesNo, type DataColumn } from './columns.js';
import { isOrderLate } from '../../domain/decision/order-call.js';
import { orderDay, shownOutage } from './decision-words.js';
import { disagreementOf } from './parts/hand-against-model.js';
import { disagreementSentence } from './print/change-words.js';
import { passedAt } from './parts/points.js';
import type { DepthForecast, PointLife, RemainingLife } from './remaining-life.js';
import { lastSeen, seenText } from './print/wording.js';
import type { ConveyorLife } from './parts/conveyor-life.js';
import { metric } from './sizes.js';

export interface PointRow {
  readonly asOf: CalendarDay | undefined;
  readonly life: ConveyorLife;
  readonly point: PointLife;
  readonly unread: string | undefined;
}

export function remainingLifeCsv(report: RemainingLife): string {
  return columnsCsv(pointColumns, pointRows(report));
}

export function pointRows({ asOf, conveyors, estate }: RemainingLife): readonly PointRow[] {
  return conveyors.flatMap((life) => {
    const unread = unreadText(estate, [life.conveyor]);
    return life.points.map((point) => ({ asOf, life, point, unread }));
  });
}

const placed: readonly DataColumn<PointRow>[] = [
  day('as_of', 'the day that all of it counts from', ({ asOf }) => asOf, { moves: true }),
  text('plant', 'name of the plant', ({ life }) => life.conveyor.plant.name, { always: true }),
  text('conveyor', 'name of the conveyor', ({ life }) => life.conveyor.name, { always: true }),
  text('point', 'name of the inspection point, or its place', ({ point }) => point.place.name, {
    always: true,
  }),
  number('chainage_m', 'from the tail end in the direction of flow', 3, ({ point }) => point.place.at / 1000),
  ...clockColumns<PointRow>(({ point }) => point.place.clock),
  whole(
    'run',
    'number of the liner run, from the tail',
    ({ life, point }) => life.runs.find((r) => r.panels.some((p) => p.points.includes(point)))?.run.number,
  ),
  text('liner', 'liner that lies there', ({ point }) => point.set?.liner.name),
  day('fitted_on', 'day it was fitted', ({ point }) => point.set?.fitted?.day),
  number('fitted_mm', 'thickness when fitted', 3, ({ point }) => point.fitted.value),
  number('condemn_mm', 'thickness at which it is to be changed', 3, ({ point }) => point.condemn),
];

const seen: readonly DataColumn<PointRow>[] = [
  text('exposure_unit', 'what wear follows: h or t', ({ life }) => life.unit),
  number('exposure_now', 'of this liner on the day', 1, ({ point }) => point.exposureNow, { moves: true }),
  text('state', 'thickness, colour, not seen, or none', ({ point }) => point.state),
  day('last_seen_on', 'day of the last look that saw it', ({ point }) => lastSeen(point)?.day),
  text('last_seen', 'what that look saw', ({ point }) => {
    const last = lastSeen(point);
    return last && seenText(last.seen, metric);
  }),
  number('thickness_mm', 'thickness read at that look', 3, ({ point }) => {
    const last = lastSeen(point)?.seen;
    return last?.kind === 'thickness' ? last.thickness : undefined;
  }),
];

const byHand: readonly DataColumn<PointRow>[] = [
  number('long_term_mm_per_1000', 'rate since fitting, by hand', 4, ({ point: { hand } }) =>
    hand.kind === 'no reading' ? undefined : hand.longTerm * 1000,
  ),
  number('short_term_mm_per_1000', 'rate between the last two thicknesses', 4, ({ point: { hand } }) =>
    hand.kind !== 'no reading' && hand.shortTerm.kind === 'rate' ? hand.shortTerm.rate * 1000 : undefined,
  ),
  text('ruling', 'which of the two rules', ({ point: { hand } }) =>
    hand.kind === 'rate' ? hand.rules : undefined,
  ),
  number('remaining_by_hand', 'exposure to the condemn limit', 1, ({ point: { hand } }) =>
    hand.kind === 'rate' ? hand.remaining : hand.kind === 'at the limit' ? 0 : undefined,
  ),
  day('remaining_from', 'day that what is left counts from, by colours too', ({ point }) => point.leftFrom),
  day(
    'limit_by_hand',
    'day of the condemn limit at the ruling rate',
    ({ point }) => point.milestones.find((m) => m.kind === 'condemn')?.day,
  ),
  day('look_again_by', 'half of the remaining life by hand', ({ point }) => point.nextLook?.day),
  yesNo('overdue', 'that day has passed', ({ point }) => point.nextLook?.overdue, { moves: true }),
];

const byModel: readonly DataColumn<PointRow>[] = [
  text('basis', 'what the forecast rests on', ({ point }) => point.model?.basis),
  whole('readings', 'thicknesses behind it', ({ point }) => point.model?.readings),
  whole('indicators', 'colours and steel showing behind it', ({ point }) => point.model?.indicators),
  whole('not_seen', 'looks that saw nothing', ({ point }) => point.model?.notSeen),
  whole('pool', 'places and liners it borrows from', ({ point }) => point.model?.pool),
  ...quantiles('rate_mm_per_1000', 'rate', 4, ({ point }) => {
    const rate = point.model?.rate;
    return rate && { q10: rate.q10 * 1000, q50: rate.q50 * 1000, q90: rate.q90 * 1000 };
  }),
  ...quantiles('limit_exposure', 'exposure at the condemn limit', 1, ({ point }) => lifeOf(point)?.exposure),
  day('limit_on_p10', 'day of the condemn limit, 10 % quantile', ({ point }) => lifeOf(point)?.days?.q10),
  day('limit_on_p50', 'the same, the middle', ({ point }) => lifeOf(point)?.days?.q50),
  day('limit_on_p90', 'the same, 90 % quantile', ({ point }) => lifeOf(point)?.days?.q90),
];

/** This point's own chances, by the outage that the report shows; what is ordered and when is its conveyor's. */
const decided: readonly DataColumn<PointRow>[] = [
  chance('accepted_limit', 'accepted chance of the limit', ({ life }) => acceptedBy(life.conveyor).condemn),
  chance('accepted_steel', 'accepted chance of steel', ({ life }) => acceptedBy(life.conveyor).contact),
  chance(
    'limit_today',
    'chance that the limit is reached on the day',
    ({ asOf, point }) => chanceBy(point.model?.condemn, asOf),
    { moves: true },
  ),
  chance(
    'steel_today',
    'chance that steel is touched on the day',
    ({ asOf, point }) => chanceBy(point.model?.trough, asOf),
    { moves: true },
  ),
  text('outage', 'outage that the report shows', ({ life }) => shownOutage(life)?.name),
  day('outage_from', 'its first day', ({ life }) => shownOutage(life)?.from),
  chance('limit_by_outage', 'chance of the limit by then', ({ life, point }) =>
    chanceBy(point.model?.condemn, shownOutage(life)?.from),
  ),
  chance('steel_by_outage', 'chance of steel by then', ({ life, point }) =>
    chanceBy(point.model?.trough, shownOutage(life)?.from),
  ),
  day(
    'conveyor_earliest_reline',
    'day before which the conveyor cannot be relined',
    ({ life }) => life.decision?.earliest?.day,
    { moves: true },
  ),
  day('conveyor_order_by', 'day to order its liner by', ({ life }) => orderDay(life.order), { moves: true }),
  yesNo(
    'conveyor_order_is_late',
    'that day has passed',
    ({ life }) => life.order && isOrderLate(life.order),
    {
      moves: true,
    },
  ),
  day(
    'conveyor_liner_arrives',
    'day it would be there if ordered today',
    ({ life }) => life.attention.outage?.arrives,
    { moves: true },
  ),
  text('hand_against_model', 'where the two differ, and why', ({ life, point }) => {
    const told = disagreementOf(life, point);
    return told && disagreementSentence(told, metric);
  }),
];

/** What a later reading can be held against. */
const wear: readonly DataColumn<PointRow>[] = [
  day('steel_on_p10', 'day that steel is touched, 10 % quantile', ({ point }) => steelOf(point)?.days?.q10),
  day('steel_on_p50', 'the same, the middle', ({ point }) => steelOf(point)?.days?.q50),
  day('steel_on_p90', 'the same, 90 % quantile', ({ point }) => steelOf(point)?.days?.q90),
  number('wear_exposure', 'exposure at the last look', 1, ({ point }) => point.model?.path.at(-1)?.exposure),
  number('wear_mm', 'wear by then, as the model sees it', 3, ({ point }) => point.model?.path.at(-1)?.mean),
  number('wear_error_mm', 'its standard deviation', 3, ({ point }) => point.model?.path.at(-1)?.spread),
];

/** A limit that lies behind the day: more likely than not, or seen. */
const past: readonly DataColumn<PointRow>[] = [
  yesNo(
    'limit_passed',
    'the condemn limit lies behind the day, seen or more likely than not',
    ({ point }) => passedAt(point) !== undefined,
    { moves: true },
  ),
  day(
    'limit_passed_from',
    'not before that day (seen), or likely not',
    ({ point }) => passedAt(point)?.from,
    {
      moves: true,
    },
  ),
  day('limit_passed_to', 'by that day, or likely by it', ({ point }) => passedAt(point)?.to, { moves: true }),
  text('unread', 'what of its conveyor could not be read', ({ unread }) => unread),
];

export const pointColumns: readonly DataColumn<PointRow>[] = [
  ...placed,
  ...seen,
  ...byHand,
  ...byModel,
  ...decided,
  ...wear,
  ...past,
];

interface Three {
  readonly q10: number;
  readonly q50: number;
  readonly q90: number;
}

function quantiles(
  name: string,
  about: string,
  digits: number,
  of: (row: PointRow) => Three | undefined,
): readonly DataColumn<PointRow>[] {
  return [
    number(`${name}_p10`, `${about}, 10 % quantile`, digits, (row) => of(row)?.q10),
    number(`${name}_p50`, 'the same, the middle', digits, (row) => of(row)?.q50),
    number(`${name}_p90`, 'the same, 90 % quantile', digits, (row) => of(row)?.q90),
  ];
}

function lifeOf({ model }: PointLife): Extract<DepthForecast, { kind: 'life' }> | undefined {
  return model?.condemn.kind === 'life' ? model.condemn : undefined;
}

function steelOf({ model }: PointLife): Extract<DepthForecast, { kind: 'life' }> | undefined {
  return model?.trough?.kind === 'life' ? model.trough : undefined;
}

function chanceBy(depth: DepthForecast | undefined, on: CalendarDay | undefined): number | undefined {
  return depth?.kind === 'reached'
    ? 1
    : depth?.kind === 'life' && on !== undefined
      ? depth.chanceBy?.(on)
      : undefined;
}
