// One row a point, for a spreadsheet: RFC 4180 with CRLF, a head row whose names carry the units. A text that a spreadsheet
// could take for a formula gets an apostrophe before it; numbers are written plain.

import { formatClock } from '../../domain/units/clock.js';
import { acceptedBy } from '../../domain/decision/conveyor-decision.js';
import type { CalendarDay } from '../../domain/units/calendar.js';
import { csvTable, type Cell } from './csv-cells.js';
import { shownOutage } from './decision-words.js';
import { disagreementOf } from './parts/hand-against-model.js';
import { disagreementSentence } from './print/change-words.js';
import type { DepthForecast, PointLife, RemainingLife } from './remaining-life.js';
import { lastSeen, seenText } from './print/wording.js';
import type { ConveyorLife } from './parts/conveyor-life.js';

const columns = [
  'as_of',
  'plant',
  'conveyor',
  'point',
  'chainage_m',
  'clock',
  'run',
  'liner',
  'fitted_on',
  'fitted_mm',
  'condemn_mm',
  'exposure_unit',
  'exposure_now',
  'state',
  'last_seen_on',
  'last_seen',
  'thickness_mm',
  'long_term_mm_per_1000',
  'short_term_mm_per_1000',
  'ruling',
  'remaining_by_hand',
  'remaining_from',
  'limit_by_hand',
  'look_again_by',
  'overdue',
  'basis',
  'readings',
  'indicators',
  'not_seen',
  'pool',
  'rate_mm_per_1000_p10',
  'rate_mm_per_1000_p50',
  'rate_mm_per_1000_p90',
  'limit_exposure_p10',
  'limit_exposure_p50',
  'limit_exposure_p90',
  'limit_on_p10',
  'limit_on_p50',
  'limit_on_p90',
  'accepted_limit',
  'accepted_steel',
  'limit_today',
  'steel_today',
  'outage',
  'outage_from',
  'limit_by_outage',
  'steel_by_outage',
  'conveyor_earliest_reline',
  'conveyor_order_by',
  'conveyor_order_is_late',
  'conveyor_liner_arrives',
  'hand_against_model',
] as const;

export function remainingLifeCsv(report: RemainingLife): string {
  const rows = report.conveyors.flatMap((life) => life.points.map((point) => rowOf(report, life, point)));
  return csvTable(columns, rows);
}

function rowOf(report: RemainingLife, life: ConveyorLife, point: PointLife): readonly Cell[] {
  const { hand, model } = point;
  const last = lastSeen(point);
  const condemn = point.milestones.find((m) => m.kind === 'condemn');
  const run = life.runs.find((r) => r.panels.some((p) => p.points.includes(point)));
  const limit: DepthForecast | undefined = model?.condemn;
  const lives = limit?.kind === 'life' ? limit : undefined;
  return [
    { day: report.asOf },
    life.conveyor.plant.name,
    life.conveyor.name,
    point.place.name,
    round(point.place.at / 1000, 3),
    formatClock(point.place.clock),
    run?.run.number,
    point.set?.liner.name,
    { day: point.set?.fitted?.day },
    round(point.fitted.value, 3),
    round(point.condemn, 3),
    life.unit,
    round(point.exposureNow, 1),
    point.state,
    { day: last?.day },
    last && seenText(last.seen),
    last?.seen.kind === 'thickness' ? round(last.seen.thickness, 3) : undefined,
    hand.kind === 'no reading' ? undefined : round(hand.longTerm * 1000, 4),
    hand.kind !== 'no reading' && hand.shortTerm.kind === 'rate'
      ? round(hand.shortTerm.rate * 1000, 4)
      : undefined,
    hand.kind === 'rate' ? hand.rules : undefined,
    hand.kind === 'rate' ? round(hand.remaining, 1) : hand.kind === 'at the limit' ? 0 : undefined,
    { day: hand.kind === 'rate' || hand.kind === 'at the limit' ? point.leftFrom : undefined },
    { day: condemn?.day },
    { day: point.nextLook?.day },
    point.nextLook?.overdue,
    model?.basis,
    model?.readings,
    model?.indicators,
    model?.notSeen,
    model?.pool,
    thousand(model?.rate?.q10),
    thousand(model?.rate?.q50),
    thousand(model?.rate?.q90),
    round(lives?.exposure.q10, 1),
    round(lives?.exposure.q50, 1),
    round(lives?.exposure.q90, 1),
    { day: lives?.days?.q10 },
    { day: lives?.days?.q50 },
    { day: lives?.days?.q90 },
    ...decided(report, life, point),
  ];
}

/** This point's own chances, by the outage that the report shows; what is ordered and when is its conveyor's. */
function decided(report: RemainingLife, life: ConveyorLife, point: PointLife): readonly Cell[] {
  const { decision, attention } = life;
  const outage = shownOutage(life);
  const ordered = attention.outage;
  const accepted = acceptedBy(life.conveyor);
  const by = (depth: DepthForecast | undefined, day: CalendarDay | undefined): number | undefined =>
    depth?.kind === 'reached'
      ? 1
      : depth?.kind === 'life' && day !== undefined
        ? round(depth.chanceBy?.(day), 6)
        : undefined;
  const told = disagreementOf(life, point);
  return [
    round(accepted.condemn, 6),
    round(accepted.contact, 6),
    by(point.model?.condemn, report.asOf),
    by(point.model?.trough, report.asOf),
    outage?.name,
    { day: outage?.from },
    by(point.model?.condemn, outage?.from),
    by(point.model?.trough, outage?.from),
    { day: decision?.earliest?.day },
    { day: ordered?.orderBy },
    ordered?.orderIsLate,
    { day: ordered?.arrives },
    told && disagreementSentence(told),
  ];
}

function thousand(rate: number | undefined): number | undefined {
  return rate === undefined ? undefined : round(rate * 1000, 4);
}

function round(value: number | undefined, digits: number): number | undefined {
  return value === undefined || !Number.isFinite(value) ? undefined : Number(value.toFixed(digits));
}
