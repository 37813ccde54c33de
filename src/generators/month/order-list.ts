// What liner is to be ordered, by when, for which outage? One row a conveyor and liner that has an order to place, the most urgent
// first: for whoever buys, beside the report that says why. Like for like: each panel of the liner that lies there.

import { isOrderLate } from '../../domain/decision/order-call.js';
import type { ProgrammeAnswer } from '../../domain/decision/programme.js';
import { isBought } from '../../domain/decision/supply.js';
import type { CalendarDay } from '../../domain/units/calendar.js';
import { csvTable } from '../remaining-life/csv-cells.js';
import { orderDay } from '../remaining-life/decision-words.js';
import type { ConveyorLife, RemainingLife } from '../remaining-life/remaining-life.js';

export interface OrderRow {
  readonly plant: string;
  readonly conveyor: string;
  readonly liner: string;
  readonly scope: string;
  /** Undefined where none is declared. */
  readonly outage: string | undefined;
  /** The report's day where it is to be ordered now; undefined where no lead time says by when. */
  readonly orderBy: CalendarDay | undefined;
  /** The day for its outage has passed: see the report for what can still be done. */
  readonly late: boolean;
  /** Undefined where no lead time is declared. */
  readonly leadDays: number | undefined;
  /** How many of this liner the scope takes; undefined where no work was planned. */
  readonly panels: number | undefined;
}

/** Scope, outage and day are the programme's where it chose a reline, so that the two agree. */
export function orderRows({ conveyors, programmes }: RemainingLife): readonly OrderRow[] {
  const scopes = new Map((programmes ?? []).flatMap(chosenScopes));
  return conveyors
    .flatMap((life) => rowsOf(life, scopes.get(life.conveyor.name)))
    .sort(
      (a, b) =>
        (a.orderBy ?? Infinity) - (b.orderBy ?? Infinity) ||
        (a.conveyor === b.conveyor ? 0 : a.conveyor < b.conveyor ? -1 : 1),
    );
}

function chosenScopes(answer: ProgrammeAnswer): readonly (readonly [string, string])[] {
  if (answer.kind === 'none') return [];
  return answer.programme.lines.flatMap(({ conveyor, choice }): readonly (readonly [string, string])[] =>
    choice.kind === 'reline' ? [[conveyor, choice.candidate.scope]] : [],
  );
}

function rowsOf(
  { conveyor, decision, order, lying }: ConveyorLife,
  chosen: string | undefined,
): readonly OrderRow[] {
  if (!order || order.kind === 'on the shelf' || order.kind === 'ordered') return [];
  const works = decision?.scopes?.works ?? [];
  const part = works.find((each) => each.work.scope === chosen);
  // What lies on the shelf is not bought: then it is the whole that cannot wait.
  const there = part && decision?.supplies.get(part)?.ways.some(isBought);
  const work = (there === true ? works.at(-1) : (part ?? works.at(-1)))?.work;
  const liners = work
    ? work.pieces.map(({ liner, lengths }) => ({ liner: liner.name, panels: lengths.length }))
    : [...new Set(lying.map(({ liner }) => liner.name))].map((liner) => ({ liner, panels: undefined }));
  return liners.map((liner) => ({
    plant: conveyor.plant.name,
    conveyor: conveyor.name,
    scope: work?.scope ?? 'the whole conveyor',
    outage: order.outage,
    orderBy: orderDay(order),
    late: isOrderLate(order),
    leadDays: decision?.leadTime.declared === true ? decision.leadTime.days : undefined,
    ...liner,
  }));
}

export function orderListCsv(report: RemainingLife): string {
  return csvTable(
    ['plant', 'conveyor', 'liner', 'scope', 'outage', 'order_by', 'is_late', 'lead_time_days', 'panels'],
    orderRows(report).map((row) => [
      row.plant,
      row.conveyor,
      row.liner,
      row.scope,
      row.outage,
      { day: row.orderBy },
      row.late,
      row.leadDays,
      row.panels,
    ]),
  );
}
