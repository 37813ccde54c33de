// The pack's tables as plain lists for a spreadsheet: figures stay figures, the unit stands in the heading:
// the machine's own, metres and millimetres or feet and inches.

import type { LengthUnit } from '../../../domain/units/length-words.js';
import type { WorkPack } from '../pack.js';
import { standingWords } from './cover-blocks.js';

export interface ListColumn {
  readonly head: string;
  /** Characters. */
  readonly width: number;
  /** Decimals shown; left out for text. */
  readonly digits?: number;
  /** Its cells are ISO 8601 days or minutes, for a workbook to reckon with. */
  readonly time?: 'day' | 'minute';
  /** Added up under the last row. */
  readonly total?: boolean;
}

export interface List {
  readonly name: string;
  readonly columns: readonly ListColumn[];
  readonly rows: readonly (readonly (string | number | undefined)[])[];
}

export function packLists(pack: WorkPack): readonly List[] {
  return [
    coverList(pack),
    stepList(pack),
    panelList(pack),
    takingList(pack),
    cutList(pack),
    liftList(pack),
    materialList(pack),
    isolationList(pack),
    permitList(pack),
  ];
}

function coverList(pack: WorkPack): List {
  const { window } = pack;
  return {
    name: 'Job',
    columns: [
      { head: 'What', width: 22 },
      { head: 'As planned', width: 90 },
    ],
    rows: [
      ['Work pack', pack.number],
      ['As of', pack.asOf],
      ['Plant', pack.plant],
      ['Conveyor', [pack.conveyor.name, pack.conveyor.title].filter(Boolean).join(': ')],
      ['Job', pack.job.title ?? pack.job.name],
      ...pack.obstacles.map((obstacle) => ['NOT BUILDABLE', `${obstacle.message} ${obstacle.reason}`]),
      ...pack.scope.map((line) => ['Scope', line]),
      ...(pack.standing ? [['Liner', standingWords(pack.standing)]] : []),
      ['Window', window ? `${window.from} to ${window.to}` : 'not given'],
      [
        'Crews',
        pack.crews
          .map(
            (crew) =>
              `${crew.name}${crew.size === undefined ? '' : ` (${crew.size})`}${crew.idle ? ', in no step' : ''}`,
          )
          .join('; '),
      ],
      [
        'Caution',
        'Advice only, not a permit. Local law, site permits, makers’ instructions and competent, licensed people come first.',
      ],
    ],
  };
}

function stepList(pack: WorkPack): List {
  return {
    name: 'Steps',
    columns: [
      { head: 'No.', width: 6, digits: 0 },
      { head: 'Step', width: 18 },
      { head: 'Where', width: 40 },
      { head: 'Who', width: 14 },
      { head: 'Access', width: 14 },
      { head: 'Start', width: 17, time: 'minute' },
      { head: 'Finish', width: 17, time: 'minute' },
      // A quarter of an hour is the least that a plan reckons with.
      { head: 'Hours', width: 8, digits: 2, total: true },
      { head: 'Float, h', width: 9, digits: 2 },
      { head: 'Hold', width: 7 },
      { head: 'What to do', width: 70 },
      { head: 'Check', width: 50 },
      { head: 'Done by, time', width: 20 },
    ],
    rows: pack.steps.map((step) => [
      step.number,
      step.action,
      step.where,
      step.who,
      step.access,
      step.startText ?? '',
      step.finishText ?? '',
      step.hours,
      step.float,
      step.hold ? 'hold' : '',
      [...step.measures, step.note, step.work].filter(Boolean).join(' '),
      step.check,
      '',
    ]),
  };
}

function panelList(pack: WorkPack): List {
  const { along, across } = measuresOf(pack.unit);
  return {
    name: 'Panels',
    columns: [
      { head: 'Run', width: 6, digits: 0 },
      { head: 'Panel', width: 7, digits: 0 },
      { head: 'Turn', width: 6, digits: 0 },
      { head: `From, ${along.unit}`, width: 10, digits: 3 },
      { head: `To, ${along.unit}`, width: 10, digits: 3 },
      { head: `Length, ${across.unit}`, width: 11, digits: across.digits, total: true },
      { head: 'Mass, kg', width: 10, digits: 1, total: true },
      { head: 'Closing', width: 9 },
      { head: 'New', width: 7 },
      { head: 'Bolts', width: 7, digits: 0, total: true },
    ],
    rows: pack.panels.map((panel) => [
      panel.run,
      panel.panel,
      panel.turn,
      along.of(panel.from),
      along.of(panel.to),
      across.of(panel.length),
      panel.mass === undefined ? undefined : tenth(panel.mass),
      panel.closing ? 'closing' : '',
      panel.renewed ? 'new' : 'stays',
      panel.bolts,
    ]),
  };
}

interface Measure {
  readonly unit: string;
  readonly digits: number;
  of(mm: number): number;
}

/** In the machine's own units: chainages in m or ft, lengths of parts in mm or in. */
function measuresOf(unit: LengthUnit): { readonly along: Measure; readonly across: Measure } {
  return unit === 'mm'
    ? {
        along: { unit: 'm', digits: 3, of: (mm) => mm / 1000 },
        across: { unit: 'mm', digits: 0, of: tenth },
      }
    : {
        along: { unit: 'ft', digits: 3, of: (mm) => Math.round((mm / 304.8) * 1000) / 1000 },
        across: { unit: 'in', digits: 2, of: (mm) => Math.round((mm / 25.4) * 100) / 100 },
      };
}

function takingList(pack: WorkPack): List {
  return {
    name: 'Off and back',
    columns: [
      { head: 'Part', width: 18 },
      { head: 'Which', width: 40 },
      { head: 'Off', width: 7, digits: 0, total: true },
      { head: 'Back', width: 7, digits: 0, total: true },
      { head: 'Each, kg', width: 10, digits: 1 },
      { head: 'Note', width: 40 },
      { head: 'Counted off', width: 13 },
      { head: 'Counted back', width: 13 },
    ],
    rows: pack.takings.map((taking) => [
      taking.part,
      taking.which,
      taking.off,
      taking.back,
      taking.mass,
      taking.note,
      '',
      '',
    ]),
  };
}

function cutList(pack: WorkPack): List {
  const { across } = measuresOf(pack.unit);
  const digits = Math.max(1, across.digits); // to the tenth of a millimetre, as the list on paper
  return {
    name: 'Cut list',
    columns: [
      { head: 'Liner', width: 16 },
      { head: 'Stock', width: 9 },
      { head: 'From', width: 10 },
      { head: `Stock length, ${across.unit}`, width: 11, digits },
      { head: 'Run', width: 6, digits: 0 },
      { head: 'Panel', width: 7, digits: 0 },
      { head: `Cut to, ${across.unit}`, width: 11, digits, total: true },
      { head: 'Closing', width: 10 },
      { head: `Rest of stock, ${across.unit}`, width: 11, digits },
    ],
    rows: pack.cutLists.flatMap((list) =>
      list.sticks.flatMap((stick) =>
        stick.cuts.map((cut) => [
          list.liner,
          stick.name,
          stick.offcut ? 'offcut' : stick.ordered ? 'ordered' : stick.shelf ? 'shelf' : 'new',
          across.of(stick.length),
          cut.run,
          cut.panel,
          across.of(cut.length),
          cut.closing ? 'closing' : '',
          across.of(stick.rest),
        ]),
      ),
    ),
  };
}

function materialList(pack: WorkPack): List {
  return {
    name: 'Materials',
    columns: [
      { head: 'What', width: 44 },
      { head: 'Kind', width: 12 },
      { head: 'Needed', width: 9, digits: 1 },
      { head: 'Spares', width: 8, digits: 0 },
      { head: 'On the shelf', width: 9, digits: 1 },
      { head: 'To order', width: 9, digits: 1 },
      { head: 'Unit', width: 9 },
      { head: 'Order by', width: 12, time: 'day' },
      { head: 'Worked out from', width: 50 },
    ],
    rows: pack.materials.map((row) => [
      row.what,
      row.kind,
      row.needed,
      row.spares,
      row.onShelf,
      row.toOrder,
      row.unit,
      row.orderBy ?? '',
      row.basis,
    ]),
  };
}

function liftList(pack: WorkPack): List {
  const { along } = measuresOf(pack.unit);
  return {
    name: 'Lifts',
    columns: [
      { head: 'What', width: 26 },
      { head: 'Number', width: 8, digits: 0 },
      { head: `From, ${along.unit}`, width: 9, digits: 2 },
      { head: `To, ${along.unit}`, width: 9, digits: 2 },
      { head: 'Mass, kg', width: 10, digits: 1 },
      { head: 'Limit, kg', width: 10, digits: 0 },
      { head: 'Hangs from', width: 14 },
      { head: 'Heavier sling leg, kN', width: 12, digits: 2 },
    ],
    rows: [
      ...(pack.lifts.spiral?.pieces ?? []).map((piece) => [
        `spiral piece ${piece.number}`,
        1,
        along.of(piece.from),
        along.of(piece.to),
        tenth(piece.mass),
        piece.limit,
        piece.liftingPoint ?? '',
        piece.legTension / 1000,
      ]),
      ...pack.lifts.byHand.map((lift) => [
        lift.what,
        lift.count,
        undefined,
        undefined,
        tenth(lift.mass),
        lift.teamLift,
        'by hand',
        undefined,
      ]),
    ],
  };
}

function isolationList(pack: WorkPack): List {
  const { along } = measuresOf(pack.unit);
  return {
    name: 'Isolation',
    columns: [
      { head: 'Point', width: 12 },
      { head: 'What', width: 34 },
      { head: 'Kind', width: 14 },
      { head: `Chainage, ${along.unit}`, width: 12, digits: 2 },
      { head: 'Lock no.', width: 12 },
      { head: 'Isolated by, time', width: 22 },
      { head: 'Removed by, time', width: 22 },
    ],
    rows: pack.isolations.map((item) => [
      item.name,
      item.title,
      item.kind,
      item.at === undefined ? undefined : along.of(item.at),
      '',
      '',
      '',
    ]),
  };
}

function permitList(pack: WorkPack): List {
  return {
    name: 'Permits',
    columns: [
      { head: 'Permit or test', width: 22 },
      { head: 'Need', width: 20 },
      { head: 'Why', width: 60 },
      { head: 'Ask for', width: 50 },
      { head: 'No., issued by', width: 20 },
    ],
    rows: pack.permits.map((permit) => [permit.name, permit.need, permit.why, permit.ask, '']),
  };
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
