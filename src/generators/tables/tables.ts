// What the estate says, as tables: readings, points, conveyors, ways out, outages, orders, findings, jobs and steps, each with plant,
// conveyor and names to join by. One value for every form, read off the report's own model, so that no table knows better.

import { pointColumns, pointRows, type PointRow } from '../remaining-life/csv.js';
import { conveyorColumns, conveyorRows, type ConveyorRow } from '../remaining-life/csv-conveyors.js';
import type { RemainingLife } from '../remaining-life/remaining-life.js';
import { decisionsKind, decisionsTable } from './decisions.js';
import { findingsKind, findingsTable, type ToldFinding } from './findings.js';
import { ordersKind, ordersTable } from './orders.js';
import { outagesKind, outagesTable } from './outages.js';
import { jobsKind, planTables, stepsKind } from './plans.js';
import { readingsKind, readingsTable } from './readings.js';
import { tableOf, type Kind, type EstateTable } from './table.js';

/** In the order of `tableNames`. */
export function tablesOf(report: RemainingLife, findings: readonly ToldFinding[]): readonly EstateTable[] {
  return [
    conveyorsTable(report),
    pointsTable(report),
    readingsTable(report),
    decisionsTable(report),
    outagesTable(report),
    ordersTable(report),
    findingsTable(report.estate, findings),
    ...planTables(report.estate, report.asOf),
  ];
}

export function conveyorsTable(report: RemainingLife): EstateTable {
  return tableOf(conveyorsKind, conveyorRows(report));
}

export function pointsTable(report: RemainingLife): EstateTable {
  return tableOf(pointsKind, pointRows(report));
}

const conveyorsKind: Kind<ConveyorRow> = {
  name: 'conveyors',
  about: 'a conveyor with what to do about it, that which needs attention first',
  columns: conveyorColumns,
};

const pointsKind: Kind<PointRow> = {
  name: 'points',
  about: 'an inspection point and what is forecast of it',
  columns: pointColumns,
};

/** What each table is, before there are rows. */
export const tableKinds: readonly Omit<EstateTable, 'rows'>[] = [
  conveyorsKind,
  pointsKind,
  readingsKind,
  decisionsKind,
  outagesKind,
  ordersKind,
  findingsKind,
  jobsKind,
  stepsKind,
];
