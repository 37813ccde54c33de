// One row a finding: what is wrong, where, why it matters on site, what to do. A finding stands with the conveyor whose block it
// lies in, else with the plant; what is of neither (a liner, a screw, a text alone) stands with the first plant of the estate
// and says so, so that no finding is counted twice over several plants.

import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Estate } from '../../domain/model/estate.js';
import type { Origin } from '../../domain/model/origin.js';
import { text, whole, yesNo, type DataColumn } from '../remaining-life/columns.js';
import { tableOf, type Kind, type EstateTable } from './table.js';

/** A finding as it was told, with its place in words. */
export interface ToldFinding {
  readonly code: string;
  readonly severity: string;
  readonly message: string;
  readonly why: string;
  readonly todo: string;
  readonly origin: Origin;
  readonly file: string;
  /** From 1. */
  readonly line: number;
  /** Stays while lines and files move. */
  readonly fingerprint: string;
  readonly broughtByTheCalendar?: true;
}

interface FindingRow extends ToldFinding {
  readonly plant: string;
  readonly conveyor: string | undefined;
  readonly of: 'conveyor' | 'plant' | 'estate';
}

export function findingsTable(estate: Estate, findings: readonly ToldFinding[]): EstateTable {
  const blocks = blocksOf(estate);
  const [first] = estate.plants;
  const rows = findings.flatMap((finding): readonly FindingRow[] => {
    const block = blocks.find(({ origin }) => holds(origin, finding.origin));
    const plant = block?.plant ?? first?.name;
    if (plant === undefined) return [];
    const of = block ? (block.conveyor === undefined ? 'plant' : 'conveyor') : 'estate';
    return [{ ...finding, plant, conveyor: block?.conveyor, of }];
  });
  return tableOf(findingsKind, rows);
}

interface Block {
  readonly origin: Origin;
  readonly plant: string;
  readonly conveyor: string | undefined;
}

function blocksOf(estate: Estate): readonly Block[] {
  const ofConveyor = ({
    conveyor,
    origin,
  }: {
    readonly conveyor: Conveyor;
    readonly origin: Origin;
  }): Block => ({
    origin,
    plant: conveyor.plant.name,
    conveyor: conveyor.name,
  });
  return [
    ...estate.conveyors.map((conveyor) => ofConveyor({ conveyor, origin: conveyor.origin })),
    ...[
      estate.inspections,
      estate.relines,
      estate.screwChanges,
      estate.meterChanges,
      estate.dutyChanges,
      estate.driveChanges,
      estate.patches,
      estate.corrections,
      estate.amendments,
      estate.panelsMoved,
      estate.services,
      estate.jobs,
    ].flatMap((records) => records.map(ofConveyor)),
    ...estate.plants.map(({ origin, name }) => ({ origin, plant: name, conveyor: undefined })),
  ];
}

function holds(block: Origin, { source, start }: Origin): boolean {
  return block.source === source && block.start <= start && start < block.end;
}

const columns: readonly DataColumn<FindingRow>[] = [
  text('plant', 'name of the plant', ({ plant }) => plant, { always: true }),
  text('conveyor', 'name of the conveyor', ({ conveyor }) => conveyor),
  text(
    'finding_of',
    'conveyor, plant, or estate: what is of no plant stands with the first',
    (row) => row.of,
    { always: true },
  ),
  text('code', 'the rule; permanent', ({ code }) => code, { always: true }),
  text('severity', 'error, warning or information', ({ severity }) => severity, { always: true }),
  text('message', 'what is wrong', ({ message }) => message, { always: true }),
  text('why', 'why it matters on site', ({ why }) => why, { always: true }),
  text('todo', 'what to do', ({ todo }) => todo, { always: true }),
  text('file', 'where it stands', ({ file }) => file, { always: true }),
  whole('line', 'line of the file, from 1', ({ line }) => line, { always: true }),
  text('fingerprint', 'stays while lines and files move', ({ fingerprint }) => fingerprint, { always: true }),
  yesNo(
    'brought_by_calendar',
    'days that passed brought it, and no change of a text',
    ({ broughtByTheCalendar }) => broughtByTheCalendar === true,
    { always: true },
  ),
];

export const findingsKind: Kind<FindingRow> = {
  name: 'findings',
  about: 'a finding of the checker',
  columns,
};
