// How is a crew sheet set so that it stays on two pages? Heights are estimated with letters taken a little wide (text-width.ts),
// never measured, so that the same pack gives the same bytes everywhere; a test prints the sheets in a browser and counts pages.
// First the words run on and the drawing shrinks, then the checks stay in the pack; steps go last, and the sheet says so.

import { textWidth, wrapText } from '../../page/text-width.js';
import { sheetSize, titleBlockHeight } from '../../drawing/drawing-sheet.js';
import type { Paper } from '../../page/page.js';
import { standingCaution } from '../parts/cautions.js';
import { mostRepairs } from '../print/stamp.js';
import type { WorkPack } from '../pack.js';
import type { CrewSheet, CrewStep } from './facts.js';

export interface PageSetting {
  /** Type of the steps, pt. */
  readonly type: number;
  /** What, where, who and measures follow each other in one paragraph. */
  readonly runOn: boolean;
  readonly checks: boolean;
  /** At least, mm: what the pages have left it takes. */
  readonly drawingWidth: number;
  readonly obstacles: number;
  readonly repairs: number;
  /** Of a row above and below its words, mm, both together. */
  readonly rowPadding: number;
  /** Room for a name, mm. */
  readonly signHeight: number;
}

export interface Fitted extends PageSetting {
  /** Of the lists of what to carry, mm. */
  readonly carry: readonly number[];
  /** How many of the steps, from the first. */
  readonly steps: number;
}

/** Of the drawing without its title block, mm. */
export const pictureHeight = sheetSize.height - titleBlockHeight;

/** Widths of the columns, mm: number, start, what and where, who, measures, signature. */
export const columns = { number: 10.5, start: 22.5, what: 50, who: 27, sign: 24 } as const;

const open = { rowPadding: 2.3, signHeight: 7 } as const;
const close = { rowPadding: 1.3, signHeight: 6 } as const;

const settings: readonly PageSetting[] = [
  { type: 11, runOn: false, checks: true, drawingWidth: 150, obstacles: 4, repairs: mostRepairs, ...open },
  { type: 10.5, runOn: false, checks: true, drawingWidth: 150, obstacles: 4, repairs: mostRepairs, ...open },
  { type: 10, runOn: true, checks: true, drawingWidth: 140, obstacles: 3, repairs: mostRepairs, ...open },
  { type: 10, runOn: true, checks: false, drawingWidth: 130, obstacles: 3, repairs: 1, ...open },
  { type: 10, runOn: true, checks: false, drawingWidth: 115, obstacles: 3, repairs: 1, ...open },
  { type: 10, runOn: true, checks: false, drawingWidth: 100, obstacles: 2, repairs: 0, ...open },
  { type: 10, runOn: true, checks: false, drawingWidth: 80, obstacles: 2, repairs: 0, ...open },
  { type: 10, runOn: true, checks: false, drawingWidth: 70, obstacles: 2, repairs: 0, ...close },
];

/** Between the margins, mm. */
const room: Readonly<Record<Paper, { readonly width: number; readonly height: number }>> = {
  A4: { width: 184, height: 267 },
  Letter: { width: 189.9, height: 249.4 },
};

/** Left free on the two pages: a row that does not split at the foot of the first, and what the estimate misses. */
const slack = 14;

export function fitted(pack: WorkPack, sheet: CrewSheet, paper: Paper): Fitted {
  const { width, height } = room[paper];
  const carry = carryWidths(sheet, width);
  for (const setting of settings) {
    const rest = 2 * height - slack - fixedHeight(pack, sheet, setting, width);
    const heights = sheet.steps.map((step) => stepHeight(step, setting, width));
    const left = rest - heights.reduce((sum, each) => sum + each, 0);
    if (left >= 0)
      return { ...setting, carry, drawingWidth: wider(setting, left, width), steps: heights.length };
    if (setting !== settings.at(-1)) continue;
    // The line that says where the others stand needs its own.
    let free = rest - 8;
    const over = heights.findIndex((each) => (free -= each) < 0);
    return { ...setting, carry, steps: Math.max(over, 0) };
  }
  throw new Error('No setting of the crew sheet'); // the last one always answers
}

/** The drawing takes what is left, to whole mm. */
function wider({ drawingWidth }: PageSetting, left: number, width: number): number {
  const more = (left * sheetSize.width) / pictureHeight;
  return Math.floor(Math.min(width, drawingWidth + more));
}

/** Height of one line, mm, at 1.25 times the type. */
function lineHeight(type: number): number {
  return ((type * 25.4) / 72) * 1.25;
}

/** text-width.ts takes letters for labels wide by a sixth or more; over whole sentences that adds up. */
const wideBy = 1.2;

function linesOf(text: string, width: number, type: number): number {
  const size = (type * 25.4) / 72 / wideBy;
  // A word wider than its cell is broken anywhere.
  return wrapText(text, width, size).reduce(
    (sum, line) => sum + Math.max(1, Math.ceil(textWidth(line, size) / width)),
    0,
  );
}

export function measuresText(step: CrewStep, setting: PageSetting): string {
  return [...step.measures, setting.checks && step.check !== undefined ? `Check: ${step.check}` : '']
    .filter(Boolean)
    .join(' ');
}

/** All of a step in one paragraph. */
export function runOnWords(step: CrewStep, setting: PageSetting): string {
  return [`${step.what}, ${step.where}.`, `${step.who}.`, measuresText(step, setting)]
    .filter(Boolean)
    .join(' ');
}

function stepHeight(step: CrewStep, setting: PageSetting, width: number): number {
  const { type } = setting;
  const rest = width - columns.number - columns.start - columns.sign - 4;
  const start = step.day === undefined ? 1 : 2;
  const least = step.hold ? setting.signHeight : 0;
  const lines = setting.runOn
    ? linesOf(runOnWords(step, setting), rest * 0.98, type)
    : Math.max(
        1 + linesOf(step.where, columns.what - 3.5, type),
        linesOf(step.who, columns.who - 3.5, type),
        linesOf(measuresText(step, setting), rest - columns.what - columns.who - 3, type),
      );
  return Math.max(least, Math.max(lines, start) * lineHeight(type)) + setting.rowPadding;
}

/** What a hold is, and which steps are one. */
export function stopWords({ holds }: CrewSheet): string {
  return holds.length > 0
    ? `nobody goes on before it is signed. Steps ${holds.join(', ')}. How each step is done and what is checked before it is signed stands in the pack.`
    : 'the steps hold none; the site’s permits may. How each step is done stands in the pack.';
}

/** Everything but the rows of the steps, with the margins that crew-sheet.ts gives each part. */
function fixedHeight(pack: WorkPack, sheet: CrewSheet, setting: PageSetting, width: number): number {
  const head = 11.5 + linesOf(pack.job.title ?? pack.job.name, width, 18) * 8;
  const facts = sheet.head.reduce((sum, { value }) => sum + linesOf(value, width - 30, 10.5) * 5.2 + 0.7, 1);
  const caution =
    9.5 + linesOf(standingCaution, width - 10, 9.4) * 4.2 + linesOf(stopWords(sheet), width - 22, 10.5) * 4.7;
  const widths = carryWidths(sheet, width);
  const lists = sheet.carry.map(({ items }, index) =>
    items.reduce((sum, item) => sum + linesOf(item, (widths[index] ?? width) - 4, 9.6) * 4.3 + 0.5, 21.5),
  );
  const always = sheet.everyPanel.join(' ');
  const every = always === '' ? 0 : linesOf(`For every panel: ${always}`, width, 10.5) * 4.7 + 1.5;
  const tableHeads = 25;
  const drawing = (Math.min(setting.drawingWidth, width) * pictureHeight) / sheetSize.width + 9;
  return (
    head +
    facts +
    caution +
    Math.max(0, ...lists) +
    every +
    tableHeads +
    drawing +
    stampHeight(pack, setting, width)
  );
}

/** Of the lists of what to carry, mm: by what stands in them, so that they end at about one height. */
export function carryWidths({ carry }: CrewSheet, width: number): readonly number[] {
  const least = 40;
  const letters = carry.map(({ items }) => items.join(' ').length);
  const all = letters.reduce((sum, each) => sum + each, 0);
  const room = width - 4 * (carry.length - 1) - least * carry.length;
  return letters.map((each) => Math.floor(least + (room * each) / Math.max(1, all)));
}

function stampHeight({ obstacles }: WorkPack, setting: PageSetting, width: number): number {
  if (obstacles.length === 0) return 0;
  const line = 4.9;
  return obstacles.slice(0, setting.obstacles).reduce((sum, { message, reason, repairs }) => {
    const ways = repairs.slice(0, setting.repairs);
    return (
      sum +
      linesOf(`${message} ${reason}`, (width - 18) * 0.96, 9.6) * line +
      (ways.length > 0 ? line : 0) +
      ways.reduce((all, way) => all + linesOf(way, width - 24, 9.6) * line + 0.8, 0) +
      0.8
    );
  }, 26);
}
