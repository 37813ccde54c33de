// One row a conveyor of the table of decisions, for a spreadsheet: what to do, the chances, what to order by when. Same rules as
// the table of points (csv.ts): RFC 4180, units in the head row, days in ISO 8601, missing is an empty cell.

import { csvTable, type Cell } from './csv-cells.js';
import { currencyOf, shownOutage } from './decision-words.js';
import type { ConveyorLife, RemainingLife } from './remaining-life.js';

const columns = [
  'as_of',
  'plant',
  'conveyor',
  'rank',
  'level',
  'todo',
  'limit_on_p10',
  'limit_on_p50',
  'limit_on_p90',
  'panels',
  'panels_seen',
  'governing_place',
  'accepted_limit',
  'accepted_steel',
  'risk_passed_on',
  'risk_passed_by',
  'risk_passed_on_seen',
  'limit_today',
  'limit_today_seen',
  'steel_today',
  'outage',
  'outage_from',
  'limit_by_outage',
  'limit_by_outage_seen',
  'steel_by_outage',
  'earliest_reline',
  'earliest_why',
  'limit_by_earliest',
  'steel_by_earliest',
  'order_by',
  'order_is_late',
  'liner_arrives',
  'next_look',
  'next_look_because',
  'first_option',
  'first_option_day',
  'first_option_limit',
  'first_option_steel',
  'first_option_cost',
  'first_option_expected',
  'currency',
  'jobs',
  'open_conditions',
  'worst_condition',
] as const;

export function conveyorsCsv(report: RemainingLife): string {
  return csvTable(
    columns,
    report.conveyors.map((life, i) => rowOf(report, life, i + 1)),
  );
}

function rowOf(report: RemainingLife, life: ConveyorLife, rank: number): readonly Cell[] {
  const { decision, attention, model } = life;
  const forecast = model?.forecast.kind === 'dates' ? model.forecast : undefined;
  const outage = shownOutage(life);
  const ordered = attention.outage;
  const look = model?.look;
  const option = decision?.options[0];
  return [
    { day: report.asOf },
    life.conveyor.plant.name,
    life.conveyor.name,
    rank,
    attention.level,
    attention.todo,
    { day: forecast?.days.q10 },
    { day: forecast?.days.q50 },
    { day: forecast?.days.q90 },
    decision?.panels,
    decision?.panelsSeen,
    decision?.governing?.place,
    share(decision?.accepted.condemn),
    share(decision?.accepted.contact),
    { day: decision?.passed?.day },
    decision?.passed?.by,
    { day: decision?.passedSeen },
    share(decision?.today.condemn),
    share(decision?.today.condemnSeen),
    share(decision?.today.contact),
    outage?.name,
    { day: outage?.from },
    share(outage?.condemn),
    share(outage?.condemnSeen),
    share(outage?.contact),
    { day: decision?.earliest?.day },
    decision?.earliest?.why,
    share(decision?.earliest?.condemn),
    share(decision?.earliest?.contact),
    { day: ordered?.orderBy },
    ordered?.orderIsLate,
    { day: ordered?.arrives },
    { day: look?.kind === 'by' ? look.day : look?.kind === 'now' ? report.asOf : undefined },
    look?.kind === 'by' || look?.kind === 'now' ? look.because : undefined,
    option?.what,
    { day: option?.day },
    share(option?.condemn),
    share(option?.contact),
    money(option?.cost),
    money(option?.expected),
    decision && currencyOf(decision),
    decision?.jobs.map(({ words }) => words).join('; '),
    life.conditions.length,
    life.conditions[0]?.what,
  ];
}

function share(chance: number | undefined): number | undefined {
  return chance === undefined || !Number.isFinite(chance) ? undefined : Number(chance.toFixed(6));
}

function money(amount: number | undefined): number | undefined {
  return amount === undefined || !Number.isFinite(amount) ? undefined : Number(amount.toFixed(2));
}
