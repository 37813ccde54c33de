// What is lifted, cut and brought: lifts with their masses, the cut list, materials.

import { formatMass, formatNumber, formatPercent } from '../../../domain/units/format.js';
import type { LengthUnit } from '../../../domain/units/length-words.js';
import { chainageWords, lengthWords } from '../../../domain/units/length-words.js';
import type { CutListFacts, WorkPack } from '../pack.js';
import type { PrintBlock } from './blocks.js';
import { handWords } from './panel-blocks.js';

export function liftBlocks(pack: WorkPack): PrintBlock[] {
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
          'Unbolted, the whole spiral pulls down the slope with ' +
            `${formatNumber(spiral.downSlopeForce / 1000, 2)} kN, friction left out: rate the restraint for it.`,
          ...(spiral.springBack === undefined
            ? []
            : [
                `It can spring by about ${lengthWords(Math.round(spiral.springBack), pack.unit)} when the drive plate lets go${stoutness(spiral.springIndex)}.`,
              ]),
          `Slings at ${formatNumber(lifts.slingAngle)}° from the vertical, each piece at the slope of the trough: ` +
            `the leg to its lower end bears more.${lifts.slingAngleAssumed ? ` ${lifts.slingAngleAssumed}` : ''}`,
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
          { head: 'Heavier sling leg', number: true },
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

export function cutBlocks(pack: WorkPack): PrintBlock[] {
  return pack.cutLists.flatMap((list): PrintBlock[] => {
    const items = [
      ...list.shelf.map((stock) => shelfWords(stock, pack.unit)),
      ...list.toBuy.map((buy) => `New stock: ${buy.count} of ${lengthWords(buy.length, pack.unit)}.`),
      `${lengthWords(list.newStock, pack.unit)} of new stock in all; ` +
        `${list.optimal ? 'no cutting plan needs less' : `no plan needs less than ${lengthWords(list.lowerBound, pack.unit)}`}. Waste ${formatPercent(list.wasteRatio)}.`,
      ...(list.newStockWithoutKerf < list.newStock
        ? [
            `If the saw took nothing, ${lengthWords(list.newStockWithoutKerf, pack.unit)} would do: ` +
              'sheets a few millimetres over nominal length save whole sheets.',
          ]
        : []),
      ...list.missing.map(
        (short) => `Stock in hand does not yield ${short.count} of ${lengthWords(short.length, pack.unit)}.`,
      ),
      ...list.tooLong.map((piece) => tooLongWords(piece, pack.unit)),
      ...list.recordedOffcuts.map(
        (offcut) =>
          `On record from ${offcut.date}: ` +
          `${offcut.count} offcut${offcut.count === 1 ? '' : 's'} of ` +
          `${lengthWords(offcut.length, pack.unit)} that this job does not list.`,
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
          { head: 'Cut into (run.panel; C closing: last, to the gap as measured)' },
          { head: 'Rest', number: true },
          { head: 'Rest goes', width: 16 },
          { head: 'Cut, by', write: 24 },
        ],
        rows: stickRows(list, pack.unit),
      },
    ];
  });
}

/** `On the shelf: 4 panels of 1.20 m, counted 2026-08-31; all of them taken.` */
function shelfWords(
  { item, length, count, taken, counted: on, ordered, notThere }: CutListFacts['shelf'][number],
  unit: LengthUnit,
): string {
  const what = count === 1 ? item.replace(/s$/, '') : item;
  if (notThere !== undefined)
    return `Ordered once: ${count} ${what} of ${lengthWords(length, unit)}, promised for ${on}; ${notThere}.`;
  const use =
    count === 0 ? '' : taken === count ? '; taken' : taken === 0 ? '; none serves here' : `; ${taken} taken`;
  return ordered
    ? `Ordered: ${count} ${what} of ${lengthWords(length, unit)}, promised for ${on}${use}.`
    : `On the shelf: ${count} ${what} of ${lengthWords(length, unit)}, counted ${on}${use}.`;
}

function tooLongWords(
  { run, panel, length, longest, order }: CutListFacts['tooLong'][number],
  unit: LengthUnit,
): string {
  return longest === undefined || order === undefined
    ? `Panel ${panel} of run ${run} (${lengthWords(length, unit)}) is longer than any stock.`
    : `Closing panel ${panel} of run ${run} (${lengthWords(length, unit)}): the panels before it may come short, and the gap ` +
        `may be up to ${lengthWords(longest, unit)}. No stock is as long: order a sheet of at least ${lengthWords(order, unit)}.`;
}

/** Sticks that are cut alike stand in one row. */
function stickRows({ sticks }: CutListFacts, unit: LengthUnit): readonly string[][] {
  const alike = new Map<string, CutListFacts['sticks'][number][]>();
  for (const stick of sticks) {
    const key = [
      stick.length,
      stick.offcut,
      stick.shelf,
      stick.ordered,
      stick.keep,
      stick.rest,
      ...stick.cuts.map(cutLength),
    ].join(' ');
    alike.set(key, [...(alike.get(key) ?? []), stick]);
  }
  return [...alike.values()].flatMap((group) => {
    const [first] = group;
    if (!first) return [];
    const { length, offcut, shelf, ordered, rest, keep } = first;
    const whole = rest < 0.05;
    return [
      [
        `${group.map(({ name }) => name).join(', ')}${offcut ? ' (offcut)' : ordered ? ' (ordered)' : shelf ? ' (on the shelf)' : ''}`,
        lengthWords(length, unit),
        // Whole panels are not cut, so nobody has to know which is which.
        whole && first.cuts.length === 1
          ? cutWords(
              group.flatMap(({ cuts }) => cuts),
              unit,
            )
          : group.map(({ cuts }) => cutWords(cuts, unit)).join('\n'),
        whole ? '' : lengthWords(rest, unit),
        whole ? '' : keep ? 'to store' : 'to scrap',
        '',
      ],
    ];
  });
}

function toolBlocks({ tools }: WorkPack): PrintBlock[] {
  if (tools.length === 0) return [];
  const words = tools.map(({ what, count }) => (count > 1 ? `${count} × ${what}` : what));
  return [{ kind: 'text', text: `Tools: ${words.join('; ')}.` }];
}

type Cut = CutListFacts['sticks'][number]['cuts'][number];

function cutLength({ length, closing, longest = length }: Cut): string {
  return `${length} ${longest}${closing ? ' C' : ''}`;
}

/** `1.1, 1.2: 1.20 m each`, or each with its own length. */
function cutWords(cuts: readonly Cut[], unit: LengthUnit): string {
  const words = new Map<string, string[]>();
  for (const cut of cuts) {
    const upTo = cut.longest === undefined ? '' : ` (up to ${lengthWords(cut.longest, unit)})`;
    const length = `${lengthWords(cut.length, unit)}${cut.closing ? ` C${upTo}` : ''}`;
    words.set(length, [...(words.get(length) ?? []), `${cut.run}.${cut.panel}`]);
  }
  return [...words]
    .map(([length, panels]) => `${panels.join(', ')}: ${length}${panels.length > 1 ? ' each' : ''}`)
    .join('; ');
}

export function materialBlocks(pack: WorkPack): PrintBlock[] {
  if (pack.materials.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Materials' },
    {
      kind: 'table',
      caption: `Needed + spare; there: on the shelf as counted; to order: what is ${
        pack.materials.some(({ ordered }) => ordered !== undefined)
          ? 'neither there nor ordered'
          : 'not there'
      }`,
      columns: [
        { head: 'What', width: 50 },
        { head: 'Needed', number: true },
        { head: 'There', number: true },
        { head: 'To order', number: true },
        { head: 'Order by', width: 20 },
        { head: 'Worked out from' },
        { head: 'On site', write: 14 },
      ],
      rows: pack.materials.map((row) => [
        row.what,
        row.spares > 0
          ? `${formatNumber(row.needed)} + ${formatNumber(row.spares)}`
          : formatNumber(row.needed),
        row.onShelf === undefined ? '' : formatNumber(row.onShelf),
        withUnit(row.toOrder, row.unit),
        row.orderBy ?? '',
        row.basis,
        '',
      ]),
    },
    ...toolBlocks(pack),
  ];
}

/** `1 piece`, `3 pieces`, `24.5 m`: a material's number, which may be a length. */
function withUnit(number: number, unit: string): string {
  return `${formatNumber(number)} ${number === 1 ? unit.replace(/s$/, '') : unit}`;
}

/** Below an index of 6 the curvature of the bar matters (texts on springs correct the twist by 1.2 to 1.4 at 4 to 5). */
function stoutness(index: number | undefined): string {
  return index === undefined || index >= 6
    ? ''
    : `, to about a tenth (a stout spiral: mean diameter ${formatNumber(index, 1)} times the width of its bar)`;
}
