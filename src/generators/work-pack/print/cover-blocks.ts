// Page 1 of a pack: what is to be done, when, by whom, what speaks against it, and who signs that it was read.

import { percent } from '../../../domain/decision/option-setting.js';
import { counted } from '../../../domain/units/wording.js';
import { formatHours, formatMass } from '../../../domain/units/format.js';
import { lengthWords } from '../../../domain/units/length-words.js';
import type { PanelRow, StandingFacts, WorkPack } from '../pack.js';
import { standingCaution } from '../parts/cautions.js';
import type { PrintBlock } from './blocks.js';
import { conditionBlocks } from './condition-blocks.js';

export function coverBlocks(pack: WorkPack): PrintBlock[] {
  const { window } = pack;
  const renewed = pack.panels.filter((panel) => panel.renewed);
  const rows: string[][] = [
    [
      'Plant, conveyor',
      `${pack.plant}; ${[pack.conveyor.name, pack.conveyor.title].filter(Boolean).join(': ')}`,
    ],
    [
      'Window',
      window
        ? `${window.from} to ${window.to}, ${window.days} days${window.name ? ` (${[window.name, window.title].filter(Boolean).join(': ')})` : ''}`
        : 'not given: agree it before anything is ordered',
    ],
    [
      'Crews',
      pack.crews.length > 0
        ? pack.crews
            .map(
              (crew) =>
                `${crew.name}${crew.size === undefined ? ' (not declared at the plant)' : `, ${counted(crew.size, 'person', 'people')}${crew.skills.length > 0 ? ` (${crew.skills.join(', ')})` : ''}`}` +
                (crew.idle ? ', in no step' : ''),
            )
            .join('; ')
        : 'none named',
    ],
    ...standingRows(pack),
    ['Time', timeWords(pack)],
    [
      'Access',
      pack.accessUnits.length > 0
        ? pack.accessUnits
            .map((unit) =>
              [
                unit.name,
                unit.title,
                unit.reach === undefined ? '' : `reach ${lengthWords(unit.reach, pack.unit)}`,
                unit.limit === undefined ? '' : `platform load ${formatMass(unit.limit)}`,
                unit.people === undefined ? '' : `at most ${counted(unit.people, 'person', 'people')}`,
              ]
                .filter(Boolean)
                .join(', '),
            )
            .join('; ')
        : 'none named',
    ],
    ...pack.rescue.map(({ name, value }) => [name, value]),
    ['Order by', orderWords(pack)],
    ['Panels', panelWords(renewed)],
  ];
  return [
    ...(pack.job.doc ? [{ kind: 'text' as const, text: pack.job.doc }] : []),
    {
      kind: 'list',
      strong: true,
      items:
        pack.scope.length > 0 ? pack.scope : ['This job names nothing to reline and no screw to change.'],
    },
    { kind: 'table', columns: [{ head: 'What', width: 26 }, { head: 'As planned' }], rows },
    { kind: 'caution', heading: 'Read first', text: [standingCaution] },
    ...restsOnBlocks(pack),
    ...(pack.warnings.length > 0
      ? [
          {
            kind: 'table' as const,
            caption: 'To be settled before the job',
            columns: [{ head: 'What' }, { head: 'What would do' }],
            rows: pack.warnings.map((warning) => [warning.message, warning.todo]),
          },
        ]
      : []),
    ...conditionBlocks(pack),
    {
      kind: 'table',
      caption: 'The machine',
      halves: true,
      columns: [{ head: 'Part', width: 22 }, { head: 'As declared and recorded' }],
      rows: pack.conveyor.facts.map((fact) => [fact.name, fact.value]),
    },
    {
      kind: 'table',
      caption: 'Issued and accepted',
      form: true,
      columns: [
        { head: 'Role' },
        { head: 'Name', write: 45 },
        { head: 'Signature', write: 40 },
        { head: 'Date and time', write: 35 },
      ],
      rows: [
        'Planned by',
        'Site safety / permit office',
        'Person in charge of the isolation',
        'Crew leader',
      ].map((role) => [role, '', '', '']),
    },
  ];
}

function panelWords(renewed: readonly PanelRow[]): string {
  if (renewed.length === 0) return 'none';
  const known = renewed.every((panel) => panel.mass !== undefined);
  return (
    `${renewed.length} new, ${renewed.filter((panel) => panel.closing).length} of them cut to close; ` +
    (known ? `${formatMass(sum(renewed))} in all` : 'mass not known')
  );
}

function restsOnBlocks({ restsOn = [] }: WorkPack): PrintBlock[] {
  if (restsOn.length === 0) return [];
  return [
    {
      kind: 'table',
      caption:
        'This pack rests on earlier jobs that are planned and not done: if one is put off, make it again',
      columns: [{ head: 'Job' }, { head: 'Window' }, { head: 'What it changes here (planned, not done)' }],
      origins: restsOn.map(({ origin }) => origin),
      rows: restsOn.map(({ job, conveyor, window, changes }) => [
        `${job} on ${conveyor}`,
        window,
        changes.join('; '),
      ]),
    },
  ];
}

function standingRows({ standing }: WorkPack): string[][] {
  return standing ? [['Liner', standingWords(standing)]] : [];
}

/** The numbers of the report of the same day; they say why the job is done, and whether it does enough. */
export function standingWords({
  day,
  condemn,
  contact,
  condemnSeen,
  contactSeen,
  accepted,
  panels,
  panelsSeen,
  governing,
}: StandingFacts): string {
  const seen =
    panels === panelsSeen || condemnSeen === undefined || contactSeen === undefined
      ? ''
      : ` (of what was seen ${percent(condemnSeen)} and ${percent(contactSeen)}; ${panelsSeen} of ${counted(panels, 'panel')} seen)`;
  const place =
    governing &&
    `${governing.place}${governing.seen ? `, panel ${governing.panel} of run ${governing.run}` : ', which nobody has seen'}`;
  return [
    `On ${day}: chance of the condemn limit ${percent(condemn)}, of steel ${percent(contact)}${seen}; ` +
      `accepted ${percent(accepted.condemn)} and ${percent(accepted.contact)}.`,
    place === undefined
      ? ''
      : `Governs: ${place}. ${governing?.covered ? 'This job renews it.' : 'THIS JOB DOES NOT RENEW IT.'}`,
    governing?.before === undefined
      ? ''
      : `Job ${governing.before} before it renews it too (planned, not done): the chances are those without it.`,
  ]
    .filter(Boolean)
    .join(' ');
}

function orderWords(pack: WorkPack): string {
  const known = pack.orderBy.map(({ item, date, leadTime, latest }) =>
    latest === undefined
      ? `${item} ${date} (lead time ${leadTime})`
      : `${item} now (for this window by ${latest}, lead time ${leadTime})`,
  );
  const kinds = [
    ...new Set(
      pack.materials
        .filter((row) => row.kind !== 'consumable' && row.toOrder > 0 && row.orderBy === undefined)
        .map((row) => row.kind),
    ),
  ];
  const open =
    pack.window === undefined
      ? 'no window, so no date'
      : kinds.length > 0
        ? `no lead time declared for ${kinds.join(' and ')}`
        : '';
  const there = [...new Set(pack.materials.map((row) => row.kind))].filter((kind) => {
    const rows = pack.materials.filter((row) => row.kind === kind);
    return kind !== 'consumable' && rows.every(({ toOrder }) => toOrder === 0);
  });
  const onOrder = (kind: string): boolean =>
    pack.materials.some(
      (row) => row.kind === kind && (row.ordered ?? 0) > 0 && (row.onShelf ?? 0) < row.needed,
    );
  const shelf = [
    there.some((kind) => !onOrder(kind))
      ? `${there.filter((kind) => !onOrder(kind)).join(' and ')} on the shelf`
      : '',
    there.some(onOrder) ? `${there.filter(onOrder).join(' and ')} ordered already` : '',
  ]
    .filter(Boolean)
    .join('; ');
  return [...known, open, shelf].filter(Boolean).join('; ') || 'nothing to order';
}

function timeWords({ schedule }: WorkPack): string {
  const bound = schedule.optimal
    ? 'no plan can be shorter'
    : `no plan can be shorter than ${formatHours(schedule.lowerBound)}`;
  const window =
    schedule.available === undefined ? '' : ` of ${formatHours(schedule.available)} in the window`;
  return `${formatHours(schedule.duration)} of shift time${window}${schedule.finish ? `, done by ${schedule.finish}` : ''} (${bound})`;
}

function sum(panels: readonly PanelRow[]): number {
  return panels.reduce((total, panel) => total + (panel.mass ?? 0), 0);
}
