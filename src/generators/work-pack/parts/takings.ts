// What comes off and must go back, counted part by part from the order's own steps, so that a count that does not come out
// is seen before the covers are closed.

import { areasOfAction, within } from '../../../domain/order/ground.js';
import type { Ground, Piece } from '../../../domain/order/ground.js';
import type { StepAction } from '../../../domain/model/job.js';
import { lyingScrew, screwAfter } from '../../../domain/model/lying-screw.js';
import type { LengthUnit } from '../../../domain/units/length-words.js';
import { chainageWords } from '../../../domain/units/length-words.js';
import type { Span } from '../../../domain/model/conveyor.js';
import { countHoldDowns, holdDownWords, type HoldDownCount } from '../../../domain/model/hold-down-count.js';
import { holdDownName } from '../../../domain/model/part-names.js';
import type { PanelRow, Taking } from '../pack.js';

export function takingsFor(ground: Ground, panels: readonly PanelRow[], unit: LengthUnit): readonly Taking[] {
  const { conveyor } = ground.job;
  const renewed = panels.filter((panel) => panel.renewed).length;
  return [
    ...counted(
      unit,
      ground,
      'cover',
      (index) => `C${index + 1}`,
      ground.covers,
      conveyor.covers,
      'covers off',
      'covers on',
      conveyor.covers.find((cover) => cover.mass)?.mass?.value,
    ),
    ...counted(
      unit,
      ground,
      'brace',
      (index) => `B${index + 1}`,
      ground.braces,
      conveyor.braces,
      'braces off',
      'braces on',
      undefined,
    ),
    ...holdDownTakings(ground, unit),
    ...(renewed > 0
      ? [
          {
            part: 'liner panel' as const,
            which: panelWords(panels),
            off: renewed,
            back: renewed,
            mass: undefined,
            note: 'old out, new in',
          },
        ]
      : []),
    ...screwTakings(ground),
  ];
}

/** Which hold-downs this job takes off, as positions in the conveyor's list: only their gaps are measured again. */
export function holdDownsTaken(ground: Ground): readonly number[] {
  const taken = touched(ground, 'hold-downs off', ground.holdDowns);
  return taken.map((piece) => ground.holdDowns.indexOf(piece));
}

function counted(
  unit: LengthUnit,
  ground: Ground,
  part: Taking['part'],
  called: (index: number) => string,
  pieces: readonly Piece[],
  declared: readonly Span[],
  off: StepAction,
  on: StepAction,
  mass: number | undefined,
): Taking[] {
  const taken = touched(ground, off, pieces);
  const returned = touched(ground, on, pieces);
  if (taken.length === 0 && returned.length === 0) return [];
  if (declared.length === 0) {
    return [
      {
        part,
        which: 'not declared for this conveyor',
        off: 0,
        back: 0,
        mass: undefined,
        note: 'count on site: ____ off, ____ back',
      },
    ];
  }
  const numbers = taken.map((piece) => pieces.indexOf(piece));
  return [
    {
      part,
      which: ranges(numbers, (index) => declared[index]?.name ?? called(index)) + placeWords(taken, unit),
      off: taken.length,
      back: returned.length,
      mass,
      note: '',
    },
  ];
}

/** Blocks are what is counted into a box and out of it; the places stand beside them. */
function holdDownTakings(ground: Ground, unit: LengthUnit): Taking[] {
  const { conveyor } = ground.job;
  const declared = conveyor.holdDowns;
  const [row] = counted(
    unit,
    ground,
    'hold-down',
    // As the sheet calls them, which is not as a hatch is called.
    (index) => {
      const block = declared[index];
      return block ? holdDownName(conveyor, block, index) : `H${index + 1}`;
    },
    ground.holdDowns,
    declared,
    'hold-downs off',
    'hold-downs on',
    undefined,
  );
  if (!row || declared.length === 0) return row ? [row] : [];
  const countOf = (action: StepAction): HoldDownCount =>
    countHoldDowns(touched(ground, action, ground.holdDowns));
  const [off, back] = [countOf('hold-downs off'), countOf('hold-downs on')];
  const note =
    off.blocks === back.blocks && off.places === back.places
      ? holdDownWords(off)
      : `${holdDownWords(off)} off, ${holdDownWords(back)} back`;
  return [
    { ...row, off: off.blocks, back: back.blocks, places: { off: off.places, back: back.places }, note },
  ];
}

function touched(ground: Ground, action: StepAction, pieces: readonly Piece[]): readonly Piece[] {
  return within(pieces, areasOfAction(ground, action));
}

function screwTakings(ground: Ground): Taking[] {
  const plate = screwAfter(ground.job).drivePlate ?? lyingScrew(ground.job).drivePlate;
  const count = (action: StepAction): number => ground.steps.filter((step) => step.action === action).length;
  const rows: Taking[] = [];
  if (count('remove screw') + count('insert screw') > 0)
    rows.push({
      part: 'spiral',
      which: 'whole length, in pieces',
      off: Math.min(1, count('remove screw')),
      back: Math.min(1, count('insert screw')),
      mass: undefined,
      note: 'pieces as in the lift table',
    });
  if (plate && count('unbolt drive') + count('bolt drive') > 0)
    rows.push({
      part: 'drive plate bolt',
      which: plate.size,
      off: count('unbolt drive') > 0 ? plate.bolts.count : 0,
      back: count('bolt drive') > 0 ? plate.bolts.count : 0,
      mass: undefined,
      note: 'new locking parts',
    });
  return rows;
}

function panelWords(panels: readonly PanelRow[]): string {
  const runs = [...new Set(panels.filter((panel) => panel.renewed).map((panel) => panel.run))];
  return runs
    .map((run) => {
      const numbers = panels
        .filter((panel) => panel.run === run && panel.renewed)
        .map((panel) => panel.panel);
      return `run ${run}: ${ranges(numbers, (number) => `${number}`)}`;
    })
    .join('; ');
}

function placeWords(pieces: readonly Piece[], unit: LengthUnit): string {
  const first = pieces[0];
  const last = pieces.at(-1);
  if (!first || !last) return '';
  return `, ${chainageWords(first.from, unit)} to ${chainageWords(last.to, unit)}`;
}

/** `C11 to C19`, `H9, H11 to H14`. */
export function ranges(numbers: readonly number[], name: (number: number) => string): string {
  const words: string[] = [];
  let start = 0;
  for (let i = 1; i <= numbers.length; i++) {
    if (numbers[i] === (numbers[i - 1] ?? 0) + 1) continue;
    const [from, to] = [numbers[start], numbers[i - 1]];
    if (from !== undefined && to !== undefined)
      words.push(
        from === to
          ? name(from)
          : to === from + 1
            ? `${name(from)}, ${name(to)}`
            : `${name(from)} to ${name(to)}`,
      );
    start = i;
  }
  return words.join(', ');
}
