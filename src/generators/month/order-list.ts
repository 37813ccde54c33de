// What liner is to be ordered, by when, for which outage? One row a conveyor that has an order to place, the most urgent first:
// for whoever buys, beside the report that says why.

import type { Programme } from '../../domain/decision/programme.js';
import type { CalendarDay } from '../../domain/units/calendar.js';
import { csvTable } from '../remaining-life/csv-cells.js';
import type { ConveyorLife, RemainingLife } from '../remaining-life/remaining-life.js';

export interface OrderRow {
  readonly plant: string;
  readonly conveyor: string;
  readonly liner: string;
  readonly scope: string;
  readonly outage: string;
  readonly orderBy: CalendarDay;
  /** The day has passed: order now, and see the report for what can still be done. */
  readonly late: boolean;
  /** Undefined where no lead time is declared. */
  readonly leadDays: number | undefined;
}

/** Scope, outage and day are the programme's where it chose a reline, so that the two agree. */
export function orderRows({ conveyors, programmes, asOf }: RemainingLife): readonly OrderRow[] {
  const chosen = new Map(
    (programmes ?? []).flatMap((answer) =>
      answer.kind === 'programme'
        ? answer.programme.lines.map((line) => choiceOf(answer.programme, line))
        : [],
    ),
  );
  return conveyors
    .flatMap((life) => rowOf(life, chosen.get(life.conveyor.name), asOf))
    .sort((a, b) => a.orderBy - b.orderBy || (a.conveyor < b.conveyor ? -1 : 1));
}

interface Choice {
  readonly scope: string;
  readonly outage: string;
  readonly orderBy: CalendarDay;
  readonly onShelf: boolean;
}

function choiceOf(
  { problem }: Programme,
  { conveyor, choice }: Programme['lines'][number],
): readonly [string, Choice | undefined] {
  if (choice.kind !== 'reline') return [conveyor, undefined];
  const { scope, outage, orderBy, onShelf, fromShelf } = choice.candidate;
  const name = problem.outages[outage]?.name ?? '';
  return [conveyor, { scope, outage: name, orderBy, onShelf: onShelf || fromShelf !== undefined }];
}

function rowOf(
  { conveyor, decision, attention }: ConveyorLife,
  choice: Choice | undefined,
  asOf: CalendarDay | undefined,
): readonly OrderRow[] {
  // As on the first page: where nothing is to be relined nothing is to be ordered.
  const order = decision?.orderBy && attention.outage;
  if (!decision || choice?.onShelf) return [];
  const head = {
    plant: conveyor.plant.name,
    conveyor: conveyor.name,
    liner: conveyor.liner.name,
    leadDays: decision.leadTime.declared ? decision.leadTime.days : undefined,
  };
  if (choice) {
    const { scope, outage, orderBy } = choice;
    return [{ ...head, scope, outage, orderBy, late: asOf !== undefined && orderBy < asOf }];
  }
  return order
    ? [
        {
          ...head,
          scope: 'the whole conveyor',
          outage: order.name,
          orderBy: order.orderBy,
          late: order.orderIsLate,
        },
      ]
    : [];
}

export function orderListCsv(report: RemainingLife): string {
  return csvTable(
    ['plant', 'conveyor', 'liner', 'scope', 'outage', 'order_by', 'is_late', 'lead_time_days'],
    orderRows(report).map((row) => [
      row.plant,
      row.conveyor,
      row.liner,
      row.scope,
      row.outage,
      { day: row.orderBy },
      row.late,
      row.leadDays,
    ]),
  );
}
