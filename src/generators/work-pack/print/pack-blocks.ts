// A pack laid out for reading: cover first (scope, window, what speaks against it), then safety, access, what comes off, the
// panels, the steps to sign, the drawings and the check sheets.

import { capital } from '../../../domain/units/wording.js';
import { handlingGuideline } from '../../../domain/geometry/handling.js';
import { formatHours, formatMass, formatNumber, formatPercent } from '../../../domain/units/format.js';
import { chainageWords, lengthWords } from '../../page/lengths.js';
import type { PanelRow, WorkPack } from '../pack.js';
import { standingCaution } from '../parts/cautions.js';
import { recordTemplate } from '../parts/records.js';
import type { PrintBlock } from './blocks.js';

export function packBlocks(pack: WorkPack): readonly PrintBlock[] {
  return [
    ...coverBlocks(pack),
    ...safetyBlocks(pack),
    ...accessBlocks(pack),
    ...takingBlocks(pack),
    ...stepBlocks(pack),
    ...scheduleBlocks(pack),
    ...panelBlocks(pack),
    ...cutBlocks(pack),
    ...liftBlocks(pack),
    ...materialBlocks(pack),
    ...drawingBlocks(pack),
    ...checkBlocks(pack),
    ...recordBlocks(pack),
  ];
}

export function packTitle(pack: WorkPack): string {
  return `Work pack ${pack.number}: ${pack.job.title ?? pack.job.name}`;
}

function coverBlocks(pack: WorkPack): PrintBlock[] {
  const { window } = pack;
  const renewed = pack.panels.filter((panel) => panel.renewed);
  const rows: string[][] = [
    ['Plant', pack.plant],
    ['Conveyor', [pack.conveyor.name, pack.conveyor.title].filter(Boolean).join(': ')],
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
                `${crew.name}${crew.size === undefined ? ' (not declared at the plant)' : `, ${crew.size} people${crew.skills.length > 0 ? ` (${crew.skills.join(', ')})` : ''}`}`,
            )
            .join('; ')
        : 'none named',
    ],
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
              ]
                .filter(Boolean)
                .join(', '),
            )
            .join('; ')
        : 'none named',
    ],
    ['Order by', orderWords(pack)],
    [
      'Panels',
      renewed.length > 0
        ? `${renewed.length} new, ${renewed.filter((panel) => panel.closing).length} of them cut to close; ${renewed.every((panel) => panel.mass !== undefined) ? `${formatMass(sum(renewed))} in all` : 'mass not known'}`
        : 'none',
    ],
  ];
  return [
    ...(pack.job.doc ? [{ kind: 'text' as const, text: pack.job.doc }] : []),
    {
      kind: 'list',
      strong: true,
      items:
        pack.scope.length > 0 ? pack.scope : ['This job names nothing to reline and no screw to change.'],
    },
    { kind: 'table', columns: [{ head: 'What' }, { head: 'As planned' }], rows },
    { kind: 'caution', heading: 'Read first', text: [standingCaution] },
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
    { kind: 'heading', level: 3, text: 'The machine' },
    {
      kind: 'table',
      columns: [{ head: 'Part' }, { head: 'As declared' }],
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

function safetyBlocks(pack: WorkPack): PrintBlock[] {
  return [
    { kind: 'heading', level: 2, text: 'Safety: isolation, permits, cautions' },
    {
      kind: 'table',
      caption: 'Isolation points declared',
      form: true,
      columns: [
        { head: 'Point' },
        { head: 'What' },
        { head: 'Kind' },
        { head: 'Chainage', number: true },
        { head: 'Lock no.', write: 16 },
        { head: 'Isolated by, time', write: 26 },
        { head: 'Proved by, time', write: 26 },
        { head: 'Removed by, time', write: 26 },
      ],
      origins: pack.isolations.map(({ origin }) => origin),
      rows: [
        ...pack.isolations.map((item) => [
          item.name,
          item.title,
          item.kind,
          item.at === undefined ? '' : chainageWords(item.at, pack.unit),
          '',
          '',
          '',
          '',
        ]),
        ['', 'others found on site', '', '', '', '', '', ''],
      ],
    },
    {
      kind: 'table',
      caption: 'Permits and tests',
      columns: [
        { head: 'Permit or test' },
        { head: 'Need' },
        { head: 'Why' },
        { head: 'Ask for' },
        { head: 'No., issued by', write: 32 },
      ],
      rows: pack.permits.map((permit) => [permit.name, permit.need, permit.why, permit.ask, '']),
    },
    {
      kind: 'table',
      caption: 'Gas tests (write every one down)',
      form: true,
      columns: ['Time', 'Place, height', 'O₂ %', '% LFL', 'H₂S ppm', 'CO₂ %', 'Tester', 'Go on?'].map(
        (head) => ({ head, write: 18 }),
      ),
      rows: Array.from(
        { length: Math.min(14, Math.max(5, (pack.schedule.repeatGasTests?.times ?? 0) + 1)) },
        () => ['', '', '', '', '', '', '', ''],
      ),
    },
    ...pack.cautions.map((caution): PrintBlock => ({
      kind: 'caution',
      heading: caution.heading,
      text: caution.text,
      sources: caution.sources,
    })),
  ];
}

function accessBlocks(pack: WorkPack): PrintBlock[] {
  if (pack.access.length === 0)
    return [
      { kind: 'heading', level: 2, text: 'Access' },
      {
        kind: 'text',
        text: 'No access is declared for this conveyor. Settle how each stretch is reached before the job.',
        strong: true,
      },
    ];
  return [
    { kind: 'heading', level: 2, text: 'Access' },
    {
      kind: 'table',
      columns: [
        { head: 'Zone' },
        { head: 'By' },
        { head: 'From', number: true },
        { head: 'To', number: true },
        { head: 'Height', number: true },
        { head: 'Used by this job' },
      ],
      origins: pack.access.map(({ origin }) => origin),
      rows: pack.access.map((zone) => [
        zone.name,
        zone.kind,
        chainageWords(zone.from, pack.unit),
        chainageWords(zone.to, pack.unit),
        zone.height === undefined ? '' : lengthWords(zone.height, pack.unit),
        zone.used ? 'yes' : 'no',
      ]),
    },
  ];
}

function takingBlocks(pack: WorkPack): PrintBlock[] {
  if (pack.takings.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'What comes off and goes back' },
    {
      kind: 'table',
      form: true,
      columns: [
        { head: 'Part' },
        { head: 'Which' },
        { head: 'Off', number: true },
        { head: 'Back', number: true },
        { head: 'Each', number: true },
        { head: 'Counted off', write: 22 },
        { head: 'Counted back', write: 22 },
        { head: 'Signed', write: 24 },
      ],
      rows: pack.takings.map((taking) => [
        `${taking.part}${taking.note ? `\n${taking.note}` : ''}`,
        taking.which,
        `${taking.off}`,
        `${taking.back}`,
        taking.mass === undefined ? '' : formatMass(taking.mass),
        '',
        '',
        '',
      ]),
    },
  ];
}

function stepBlocks(pack: WorkPack): PrintBlock[] {
  return [
    { kind: 'heading', level: 2, text: 'Steps' },
    {
      kind: 'text',
      text:
        pack.order === 'as written'
          ? 'In the order written for this job. ■ marks a hold: nobody goes on before it is signed.'
          : 'Proposed order, as the job writes none. ■ marks a hold: nobody goes on before it is signed.',
    },
    {
      kind: 'table',
      columns: [
        { head: 'No.', number: true, width: 8 },
        { head: 'Step', width: 34 },
        { head: 'Who, access', width: 20 },
        { head: 'What to do, what to check' },
        { head: 'Time', number: true, width: 12 },
        { head: 'Done by, time', write: 22 },
        { head: 'Checked', write: 18 },
      ],
      origins: pack.steps.map(({ origin }) => origin),
      rows: pack.steps.map((step) => [
        `${step.number}`,
        `${step.hold ? '■ ' : ''}${step.action}\n${step.where}${afterWords(step.after, step.number)}`,
        [step.who, step.access].filter(Boolean).join('\n'),
        [...step.measures, step.note, step.work, `Check: ${step.check}`].filter(Boolean).join('\n'),
        timeShort(step.hours),
        '',
        '',
      ]),
    },
  ];
}

/** Said only where a step does not simply follow the one above it. */
function afterWords(after: readonly number[], number: number): string {
  if (after.length === 1 && after[0] === number - 1) return '';
  return after.length > 0 ? `\nafter ${after.join(', ')}` : number > 1 ? '\nany time' : '';
}

function orderWords(pack: WorkPack): string {
  const known = pack.orderBy.map((order) => `${order.item} ${order.date} (lead time ${order.leadTime})`);
  const kinds = [
    ...new Set(
      pack.materials
        .filter((row) => row.kind !== 'consumable' && row.orderBy === undefined)
        .map((row) => row.kind),
    ),
  ];
  const open =
    pack.window === undefined
      ? 'no window, so no date'
      : kinds.length > 0
        ? `no lead time declared for ${kinds.join(' and ')}`
        : '';
  return [...known, open].filter(Boolean).join('; ') || 'nothing to order';
}

/** Below an hour in minutes. */
function timeShort(hours: number): string {
  return hours < 0.995 ? `${Math.round(hours * 60)} min` : formatHours(hours);
}

function timeWords({ schedule }: WorkPack): string {
  // Repeated tests of the air are told but have no time of their own in the plan, so nothing is claimed that counts them.
  const bound = schedule.optimal
    ? `no plan can be shorter${(schedule.repeatGasTests?.times ?? 0) > 0 ? ', repeated gas tests not counted' : ''}`
    : `no plan can be shorter than ${formatHours(schedule.lowerBound)}`;
  const window =
    schedule.available === undefined ? '' : ` of ${formatHours(schedule.available)} in the window`;
  return `${formatHours(schedule.duration)} of shift time${window}${schedule.finish ? `, done by ${schedule.finish}` : ''} (${bound})`;
}

function scheduleBlocks(pack: WorkPack): PrintBlock[] {
  const { schedule } = pack;
  const items = [
    schedule.criticalPath.length === pack.steps.length
      ? 'Every step waits for the one before it: a delay in any delays the end.'
      : `Longest chain: steps ${schedule.criticalPath.join(', ')}. A delay in any of them delays the end.`,
    `Lower bound ${formatHours(schedule.lowerBound)}: ${schedule.boundBecause}.`,
    ...schedule.shorten.map((each) => `With ${each.what} about ${formatHours(each.saves)} less.`),
    ...(schedule.repeatGasTests
      ? [
          `Air tested again every ${formatHours(schedule.repeatGasTests.every)}: ${schedule.repeatGasTests.times} times besides the first.`,
        ]
      : []),
    ...(schedule.accessMoves > 0 ? [`${schedule.accessMoves} moves of mobile platforms.`] : []),
    ...schedule.defaults,
  ];
  return [
    { kind: 'heading', level: 2, text: 'Time' },
    { kind: 'list', items },
    {
      kind: 'table',
      columns: [
        { head: 'Step', number: true },
        { head: 'What' },
        { head: 'Who' },
        { head: 'Start' },
        { head: 'Finish' },
        { head: 'Time', number: true },
        { head: 'Float', number: true },
        { head: 'Person-hours from' },
      ],
      rows: pack.steps.map((step) => [
        `${step.number}`,
        step.action,
        `${step.who}${step.people > 0 ? ` (${step.people})` : ''}`,
        step.startText ?? `hour ${formatNumber(step.start, 1)}`,
        step.finishText ?? `hour ${formatNumber(step.finish, 1)}`,
        timeShort(step.hours),
        step.critical ? 'critical' : timeShort(step.float),
        step.basis,
      ]),
      strong: pack.steps.flatMap((step, index) => (step.critical ? [index] : [])),
    },
  ];
}

function liftBlocks(pack: WorkPack): PrintBlock[] {
  const { lifts } = pack;
  if (lifts.spiral === undefined && lifts.byHand.length === 0) return [];
  const blocks: PrintBlock[] = [
    { kind: 'heading', level: 2, text: 'Lifts and handling' },
    {
      kind: 'text',
      text: 'Masses are calculated from geometry and density; wear and clinging material change them. A competent person plans each lift.',
    },
  ];
  if (lifts.spiral) {
    const { spiral } = lifts;
    blocks.push(
      {
        kind: 'list',
        items: [
          `Out: ${spiral.out}, ${formatNumber(spiral.massOut, 1)} kg/m. In: ${spiral.in}, ${formatNumber(spiral.massIn, 1)} kg/m.`,
          `Unbolted, the whole spiral pulls down the slope with ${formatNumber(spiral.downSlopeForce / 1000, 2)} kN, friction left out: rate the restraint for it.`,
          ...(spiral.springBack === undefined
            ? []
            : [
                `It can spring by about ${lengthWords(Math.round(spiral.springBack), pack.unit)} when the drive plate lets go.`,
              ]),
          `Slings at ${formatNumber(lifts.slingAngle)}° from the vertical.${lifts.slingAngleAssumed ? ` ${lifts.slingAngleAssumed}` : ''}`,
        ],
      },
      {
        kind: 'table',
        form: true,
        caption: 'Spiral, in pieces',
        columns: [
          { head: 'Piece', number: true },
          { head: 'From', number: true },
          { head: 'To', number: true },
          { head: 'Length', number: true },
          { head: 'Mass', number: true },
          { head: 'Limit', number: true },
          { head: 'Hangs from' },
          { head: 'Centre', number: true },
          { head: 'Each sling leg', number: true },
          { head: 'Lifted out', write: 18 },
          { head: 'Lifted in', write: 18 },
        ],
        rows: spiral.pieces.map((piece) => [
          `${piece.number}`,
          chainageWords(piece.from, pack.unit),
          chainageWords(piece.to, pack.unit),
          lengthWords(piece.to - piece.from, pack.unit),
          formatMass(piece.mass),
          piece.limit === undefined ? '' : formatMass(piece.limit),
          `${piece.liftingPoint ?? ''}${piece.withinLimit ? '' : ' OVER LIMIT'}`,
          chainageWords(piece.centre, pack.unit),
          `${formatNumber(piece.legTension / 1000, 2)} kN`,
          '',
          '',
        ]),
        strong: spiral.pieces.flatMap((piece, index) => (piece.withinLimit ? [] : [index])),
      },
    );
  }
  blocks.push({
    kind: 'table',
    caption: 'By hand',
    columns: [
      { head: 'What' },
      { head: 'Number', number: true },
      { head: 'Heaviest', number: true },
      { head: 'Centre of gravity' },
      { head: 'By the usual guideline' },
      { head: 'Limit of this job', number: true },
    ],
    rows: lifts.byHand.map((lift) => [
      lift.what,
      `${lift.count}`,
      formatMass(lift.mass),
      lift.centre,
      handWords(lift.people),
      lift.teamLift === undefined ? '' : formatMass(lift.teamLift),
    ]),
  });
  return blocks;
}

function handWords(people: number | undefined): string {
  return people === undefined
    ? 'not by hand: lifting gear'
    : people === 1
      ? `one, under ${formatMass(handlingGuideline)}`
      : `${people} people`;
}

function panelBlocks(pack: WorkPack): PrintBlock[] {
  const blocks: PrintBlock[] = [
    { kind: 'heading', level: 2, text: 'Panels' },
    {
      kind: 'text',
      text: 'Panels are numbered from the tail end of their run. Masses are calculated from the sheet’s width, thickness and density.',
    },
    ...panelLiftBlocks(pack),
  ];
  for (const run of pack.runs.filter((row) => row.renewed > 0)) {
    const rows = pack.panels
      .filter((panel) => panel.run === run.number && panel.renewed)
      .sort((a, b) => (a.turn ?? 0) - (b.turn ?? 0));
    blocks.push({
      kind: 'table',
      caption: `${capital(run.label)}: ${rows.length} of ${run.panels} panels, ${run.liner}, fitted from the ${run.fitFrom ?? 'head'} end`,
      columns: [
        { head: 'Turn', number: true },
        { head: 'Panel', number: true },
        { head: 'From', number: true },
        { head: 'To', number: true },
        { head: 'Length', number: true },
        { head: 'Mass', number: true },
        { head: 'By hand' },
        { head: 'Note' },
      ],
      rows: rows.map((panel) => [
        `${panel.turn ?? ''}`,
        `${panel.panel}`,
        chainageWords(panel.from, pack.unit),
        chainageWords(panel.to, pack.unit),
        lengthWords(panel.length, pack.unit),
        panel.mass === undefined ? 'not known' : formatMass(panel.mass),
        panel.mass === undefined ? '' : handWords(panel.people),
        panel.closing ? 'closing: cut to the gap as measured' : '',
      ]),
      strong: rows.flatMap((panel, index) => (panel.closing ? [index] : [])),
    });
    if (run.closing) {
      const { at, worst, rootSumSquare, allowance } = run.closing;
      blocks.push({
        kind: 'text',
        text: `Closes at ${at}, which takes ${lengthWords(allowance, pack.unit)}: lengths add up to ±${lengthWords(Math.round(worst * 10) / 10, pack.unit)} at worst, ±${lengthWords(Math.round(rootSumSquare * 10) / 10, pack.unit)} by root-sum-square. Measure the gap before the closing panel is cut.`,
      });
    }
  }
  return blocks;
}

/** Mass, guideline and the NIOSH result with its inputs: numbers to assess a lift by, never leave to make it. */
function panelLiftBlocks({ panelLift, unit }: WorkPack): PrintBlock[] {
  if (!panelLift) return [];
  const { posture, limit, heaviest, index } = panelLift;
  const stance =
    `hands ${lengthWords(posture.reach, unit)} in front of the ankles and ${lengthWords(posture.height, unit)} above the foothold, ` +
    `raised ${lengthWords(posture.travel, unit)}, turned ${posture.twist}°, poor grip ${posture.coupling}, seldom ${posture.frequency}`;
  const result =
    index === undefined
      ? 'gives no load at all: the reach is beyond 63 cm. Use lifting gear.'
      : `gives ${formatMass(limit)}; the heaviest panel is ${formatNumber(index, 2)} times that (lifting index; above 1 the risk of injury grows).`;
  return [
    {
      kind: 'text',
      text: `By hand: the heaviest new panel weighs ${formatMass(heaviest)}. “By hand” below counts people by the guideline of ${formatMass(handlingGuideline)} for one person close to the body (HSE, L23), which leaning over a trough is not. For one person beside this trough (${stance}) the revised NIOSH equation ${result} The posture is assumed; a slope or a narrow foothold is worse. A competent person assesses the lift on site.`,
    },
  ];
}

function drawingBlocks(pack: WorkPack): PrintBlock[] {
  return pack.drawings.map((drawing) => ({ kind: 'drawing', drawing }));
}

function checkBlocks(pack: WorkPack): PrintBlock[] {
  const blocks: PrintBlock[] = [{ kind: 'heading', level: 2, text: 'Check sheets' }];
  for (const run of pack.runs.filter((row) => row.renewed > 0)) {
    const rows = pack.panels
      .filter((panel) => panel.run === run.number && panel.renewed)
      .sort((a, b) => (a.turn ?? 0) - (b.turn ?? 0));
    blocks.push({
      kind: 'table',
      form: true,
      caption: `${capital(run.label)}, in the order of fitting`,
      columns: [
        { head: 'Panel', number: true },
        { head: 'Planned, mm', number: true },
        { head: 'Length as fitted, mm', write: 26 },
        { head: 'Gap to the one before, mm', write: 26 },
        { head: 'Bolts', number: true },
        { head: 'Bolts tight', write: 18 },
        { head: 'Countersink in first colour', write: 24 },
        { head: 'By', write: 20 },
      ],
      rows: rows.map((panel) => [
        `${panel.panel}${panel.closing ? ' C' : ''}`,
        formatNumber(panel.length, 0),
        '',
        '',
        panel.bolts === undefined ? '' : `${panel.bolts}`,
        '',
        '',
        '',
      ]),
    });
  }
  blocks.push({
    kind: 'table',
    form: true,
    caption: `Clearance between screw and liner${pack.clearance ? `, declared ${lengthWords(pack.clearance.from, pack.unit)} to ${lengthWords(pack.clearance.to, pack.unit)}` : ''}`,
    columns: [
      { head: 'Chainage', write: 30 },
      { head: 'At 3 o’clock, mm', write: 30 },
      { head: 'At 9 o’clock, mm', write: 30 },
      { head: 'Top, to the cover, mm', write: 30 },
      { head: 'By', write: 24 },
    ],
    rows: Array.from({ length: 4 }, () => ['', '', '', '', '']),
  });
  const offs = pack.takings.find((taking) => taking.part === 'hold-down');
  if (offs && pack.holdDowns.length > 0) {
    blocks.push({
      kind: 'table',
      form: true,
      caption: 'Hold-down gaps',
      columns: [
        { head: 'Block' },
        { head: 'Chainage', number: true },
        { head: 'Gap before, mm', write: 30 },
        { head: 'Gap after, mm', write: 30 },
        { head: 'Tight', write: 20 },
        { head: 'By', write: 24 },
      ],
      rows: pack.holdDowns.map((block) => [block.name, chainageWords(block.at, pack.unit), '', '', '', '']),
    });
  }
  blocks.push({
    kind: 'table',
    form: true,
    caption: 'Test runs',
    columns: [
      { head: 'Run' },
      { head: 'Current, A', write: 24 },
      { head: 'Turns the right way', write: 24 },
      { head: 'Noise, rubbing at', write: 34 },
      { head: 'By, time', write: 30 },
    ],
    rows: [
      ['empty', '', '', '', ''],
      ['loaded', '', '', '', ''],
    ],
  });
  return blocks;
}

function recordBlocks(pack: WorkPack): PrintBlock[] {
  return [
    { kind: 'heading', level: 2, text: 'As fitted: what goes into the records', newPage: true },
    {
      kind: 'text',
      text: 'Fill in what was measured, not what was planned; leave out lines that nobody measured, and strike the scope of a run that was not fitted: of a part write its panels, as in scope panels 1 to 3 of run 2. Panel lengths run from the tail end of their run. The form for the phone gives back the same text ready to commit.',
    },
    { kind: 'code', text: recordTemplate(pack.asFitted) },
    {
      kind: 'table',
      form: true,
      columns: [
        { head: 'Left undone, or found on the way' },
        { head: 'Reported to', write: 40 },
        { head: 'By, date', write: 34 },
      ],
      rows: [
        ['', '', ''],
        ['', '', ''],
        ['', '', ''],
      ],
    },
  ];
}

function cutBlocks(pack: WorkPack): PrintBlock[] {
  return pack.cutLists.flatMap((list): PrintBlock[] => {
    const items = [
      ...list.toBuy.map((buy) => `New stock: ${buy.count} of ${lengthWords(buy.length, pack.unit)}.`),
      `${lengthWords(list.newStock, pack.unit)} of new stock in all; ${list.optimal ? 'no cutting plan needs less' : `no plan needs less than ${lengthWords(list.lowerBound, pack.unit)}`}. Waste ${formatPercent(list.wasteRatio)}.`,
      ...(list.newStockWithoutKerf < list.newStock
        ? [
            `If the saw took nothing, ${lengthWords(list.newStockWithoutKerf, pack.unit)} would do: sheets a few millimetres over nominal length save whole sheets.`,
          ]
        : []),
      ...list.missing.map(
        (short) => `Stock in hand does not yield ${short.count} of ${lengthWords(short.length, pack.unit)}.`,
      ),
      ...list.tooLong.map(
        (piece) =>
          `Panel ${piece.panel} of run ${piece.run} (${lengthWords(piece.length, pack.unit)}) is longer than any stock.`,
      ),
      ...list.recordedOffcuts.map(
        (offcut) =>
          `On record from ${offcut.date}: ${offcut.count} offcut${offcut.count === 1 ? '' : 's'} of ${lengthWords(offcut.length, pack.unit)} that this job does not list.`,
      ),
    ];
    return [
      { kind: 'heading', level: 2, text: `Cut list: ${list.liner}` },
      { kind: 'list', items },
      {
        kind: 'table',
        columns: [
          { head: 'Stock' },
          { head: 'Length', number: true },
          { head: 'Cut into (run.panel)' },
          { head: 'Rest', number: true },
          { head: 'Rest goes' },
          { head: 'Cut, by', write: 24 },
        ],
        rows: list.sticks.map((stick) => [
          `${stick.name}${stick.offcut ? ' (offcut)' : ''}`,
          lengthWords(stick.length, pack.unit),
          stick.cuts
            .map(
              (cut) =>
                `${cut.run}.${cut.panel}: ${lengthWords(cut.length, pack.unit)}${cut.closing ? ', closing, cut last to the gap as measured' : ''}`,
            )
            .join('; '),
          stick.rest < 0.05 ? '' : lengthWords(stick.rest, pack.unit),
          stick.rest < 0.05 ? '' : stick.keep ? 'to store, as an offcut' : 'to scrap',
          '',
        ]),
      },
    ];
  });
}

function materialBlocks(pack: WorkPack): PrintBlock[] {
  if (pack.materials.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Materials' },
    {
      kind: 'table',
      columns: [
        { head: 'What' },
        { head: 'Needed', number: true },
        { head: 'Spares', number: true },
        { head: 'Together', number: true },
        { head: 'Order by', width: 22 },
        { head: 'Worked out from' },
        { head: 'On site', write: 18 },
      ],
      rows: pack.materials.map((row) => [
        row.what,
        formatNumber(row.needed),
        formatNumber(row.spares),
        counted(row.needed + row.spares, row.unit),
        row.orderBy ?? '',
        row.basis,
        '',
      ]),
    },
  ];
}

function sum(panels: readonly PanelRow[]): number {
  return panels.reduce((total, panel) => total + (panel.mass ?? 0), 0);
}

function counted(number: number, unit: string): string {
  return `${formatNumber(number)} ${number === 1 ? unit.replace(/s$/, '') : unit}`;
}
