// The panels in the order they go in, with room for what was measured, and the other check sheets.

import { capital } from '../../../domain/units/wording.js';
import { handlingGuideline } from '../../../domain/geometry/handling.js';
import { formatMass, formatNumber } from '../../../domain/units/format.js';
import { chainageText, chainageWords, lengthWords } from '../../../domain/units/length-words.js';
import type { RunRow, WorkPack } from '../pack.js';
import type { PrintBlock } from './blocks.js';

export function panelBlocks(pack: WorkPack): PrintBlock[] {
  const runs = pack.runs.filter((row) => row.renewed > 0).sort((a, b) => (a.turn ?? 0) - (b.turn ?? 0));
  if (runs.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Panels, in the order of fitting' },
    {
      kind: 'text',
      text:
        'Panels are numbered from the tail end of their run; C marks the closing panel. ' +
        'Masses are calculated from the sheet’s width, thickness and density.' +
        gapWords(pack, runs),
    },
    ...panelLiftBlocks(pack),
    ...heldUpBlocks(pack),
    ...fixingBlocks(pack),
    ...runs.flatMap((run) => runBlocks(pack, run)),
  ];
}

/** Said once: everywhere else a length is the panel's own. */
function gapWords({ unit }: WorkPack, runs: readonly RunRow[]): string {
  const gaps = [...new Set(runs.flatMap(({ gap }) => (gap > 0 ? [lengthWords(gap, unit)] : [])))];
  return gaps.length === 0
    ? ''
    : ` From and to are the middles of the joints; between two panels a gap of ${gaps.join(' or ')} stays open. ` +
        'Length, mass and bolts are of the panel itself.';
}

/** In a narrow column: inches without the metric value beside them, which the drawings and the cut list have. */
function lengthAlone(mm: number, unit: WorkPack['unit']): string {
  return lengthWords(mm, unit).replace(/ \(.*\)$/, '');
}

/** What is planned, and beside it room for what was measured: one table to look at while a panel goes in. */
function runBlocks(pack: WorkPack, run: RunRow): PrintBlock[] {
  const rows = pack.panels
    .filter((panel) => panel.run === run.number && panel.renewed)
    .sort((a, b) => (a.turn ?? 0) - (b.turn ?? 0));
  const heavy = rows.some((panel) => (panel.people ?? 2) !== 1);
  return [
    {
      kind: 'table',
      form: true,
      caption: `${capital(run.label)}: ${rows.length} of ${run.panels} panels, ${run.liner}, fitted from the ${run.fitFrom ?? 'head'} end`,
      columns: [
        { head: 'Turn', number: true },
        { head: 'Panel', number: true },
        { head: 'From', number: true },
        { head: 'To', number: true },
        { head: 'Length', number: true },
        { head: 'Mass', number: true },
        ...(heavy ? [{ head: 'By hand', width: 22 }] : []),
        { head: 'Bolts', number: true },
        { head: 'Length as fitted', write: 20 },
        { head: 'Thickness', write: 17 },
        { head: 'Gap to the one before', write: 20 },
        { head: 'Bolts tight', write: 13 },
        { head: 'Countersink in first colour', write: 21 },
        { head: 'By', write: 15 },
      ],
      rows: rows.map((panel) => [
        `${panel.turn ?? ''}`,
        `${panel.panel}${panel.closing ? ' C' : ''}`,
        chainageText(panel.from, pack.unit),
        chainageText(panel.to, pack.unit),
        lengthAlone(panel.length, pack.unit),
        panel.mass === undefined ? 'not known' : formatMass(panel.mass),
        ...(heavy ? [panel.mass === undefined ? '' : handWords(panel.people)] : []),
        panel.bolts === undefined ? '' : `${panel.bolts}`,
        ...['', '', '', '', '', ''],
      ]),
      strong: rows.flatMap((panel, index) => (panel.closing ? [index] : [])),
    },
    ...closingBlocks(pack, run),
  ];
}

function heldUpBlocks({ heldUp }: WorkPack): PrintBlock[] {
  return heldUp === undefined ? [] : [{ kind: 'text', text: heldUp, strong: true }];
}

function fixingBlocks({ fixings }: WorkPack): PrintBlock[] {
  return fixings.map(({ liner, facts }) => ({
    kind: 'table',
    caption: `Fixing of ${liner}`,
    columns: [{ head: 'What', width: 22 }, { head: 'As declared, and why' }],
    rows: facts.map(({ name, value }) => [name, value]),
  }));
}

function closingBlocks({ unit }: WorkPack, { closing }: RunRow): PrintBlock[] {
  if (!closing) return [];
  const { at, worst, rootSumSquare, allowance } = closing;
  const tenths = (mm: number): string => lengthWords(Math.round(mm * 10) / 10, unit);
  return [
    {
      kind: 'text',
      text:
        `Closes at ${at}, which takes ${lengthWords(allowance, unit)}: ` +
        `lengths add up to ±${tenths(worst)} at worst, ±${tenths(rootSumSquare)} by root-sum-square. ` +
        'Cut the closing panel to the gap as measured.',
    },
  ];
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
      text:
        `By hand: the heaviest new panel weighs ${formatMass(heaviest)}. ` +
        `“By hand” below counts people by the guideline of ${formatMass(handlingGuideline)} for one person ` +
        'close to the body (HSE, L23), which leaning over a trough is not. ' +
        `For one person beside this trough (${stance}) the revised NIOSH equation ${result} The posture is ` +
        'assumed; a slope or a narrow foothold is worse. A competent person assesses the lift on site.',
    },
  ];
}

export function handWords(people: number | undefined): string {
  return people === undefined
    ? 'not by hand: lifting gear'
    : people === 1
      ? `one, under ${formatMass(handlingGuideline)}`
      : `${people} people`;
}

/** With room for what the gauge shows while nothing lies over it. */
function steelBlocks({ steel, unit }: WorkPack): PrintBlock[] {
  if (!steel) return [];
  return [
    {
      kind: 'table',
      form: true,
      caption: `Steel of the trough where this job comes to it: ${steel.plate}`,
      columns: [
        { head: 'Where', width: 34 },
        { head: 'On record' },
        { head: `Read now, ${unit}`, write: 24 },
        { head: 'By', write: 20 },
      ],
      rows: steel.rows.map(({ where, known }) => [where, known, '', '']),
    },
  ];
}

export function checkBlocks(pack: WorkPack): PrintBlock[] {
  const { clearance, unit } = pack;
  const declared = clearance
    ? `, declared ${lengthWords(clearance.from, unit)} to ${lengthWords(clearance.to, unit)}`
    : '';
  const blocks: PrintBlock[] = [
    { kind: 'heading', level: 2, text: 'Check sheets' },
    ...steelBlocks(pack),
    {
      kind: 'table',
      form: true,
      caption: `Clearance between screw and liner${declared}`,
      columns: [
        { head: 'Chainage', write: 30 },
        { head: `At 3 o’clock, ${pack.unit}`, write: 30 },
        { head: `At 9 o’clock, ${pack.unit}`, write: 30 },
        { head: `Top, to the cover, ${pack.unit}`, write: 30 },
        { head: 'By', write: 24 },
      ],
      rows: Array.from({ length: 4 }, () => ['', '', '', '', '']),
    },
  ];
  const offs = pack.takings.find((taking) => taking.part === 'hold-down');
  if (offs && pack.holdDowns.length > 0)
    blocks.push({
      kind: 'table',
      form: true,
      halves: true,
      caption: `Hold-down gaps, ${pack.unit}: ${offs.note}${pack.holdDowns.some(({ blocks }) => blocks > 1) ? '; of a pair the wider gap' : ''}`,
      columns: [
        { head: 'Place' },
        { head: 'Chainage', number: true },
        { head: 'Before', write: 16 },
        { head: 'After', write: 16 },
        { head: 'Tight', write: 12 },
        { head: 'By', write: 14 },
      ],
      rows: pack.holdDowns.map((block) => [block.name, chainageWords(block.at, pack.unit), '', '', '', '']),
    });
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
