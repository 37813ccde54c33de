// One row a liner that is to be ordered: the order list of the month as a table.

import { orderRows, type OrderRow } from '../month/order-list.js';
import { day, text, whole, yesNo, type DataColumn } from '../remaining-life/columns.js';
import type { RemainingLife } from '../remaining-life/remaining-life.js';
import { tableOf, type Kind, type EstateTable } from './table.js';

export function ordersTable(report: RemainingLife): EstateTable {
  return tableOf(ordersKind, orderRows(report));
}

const columns: readonly DataColumn<OrderRow>[] = [
  text('plant', 'name of the plant', ({ plant }) => plant, { always: true }),
  text('conveyor', 'name of the conveyor', ({ conveyor }) => conveyor, { always: true }),
  text('liner', 'liner to order', ({ liner }) => liner, { always: true }),
  text('scope', 'how much of the conveyor', ({ scope }) => scope, { always: true }),
  text('outage', 'outage it is for', ({ outage }) => outage),
  day('order_by', 'day to order by: that of the report where now', ({ orderBy }) => orderBy),
  yesNo('is_late', 'the day for its outage has passed', ({ late }) => late, { always: true, moves: true }),
  whole('lead_time_days', 'as the plant declares it', ({ leadDays }) => leadDays),
  whole('panels', 'of this liner, in that scope', ({ panels }) => panels),
];

export const ordersKind: Kind<OrderRow> = {
  name: 'orders',
  about: 'a liner that is to be ordered, the most urgent first',
  columns,
};
