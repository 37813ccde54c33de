// The liner unrolled, seen from above with the flow from left to right: 9 o'clock at the top, 3 o'clock at the bottom. Runs and
// panels lie between the breaks; panels on which nothing was seen are hatched, and the one whose limit comes first is framed.

import { linerSide } from '../../../domain/model/liner-side.js';
import { formatClock } from '../../../domain/units/clock.js';
import {
  chartRim,
  definitions,
  drawing,
  hatch,
  hatchFill,
  ink,
  line,
  mark,
  path,
  rectangle,
  letters,
  type MarkShape,
} from '../../page/svg.js';
import { group, plainNumber as n, type Markup } from '../../page/markup.js';
import { textWidth } from '../../page/text-width.js';
import type { PointLife } from '../parts/points.js';
import type { PanelLife } from '../parts/runs.js';
import { paceInShort } from './change-words.js';
import { lastSeen, seenText } from './wording.js';
import type { ConveyorLife } from '../parts/conveyor-life.js';
import { sizesOf, type Sizes } from '../sizes.js';
import { formatNumber } from '../../../domain/units/format.js';

const width = 700;
const left = 46;
const right = width - 8;
const top = 34;
const bottom = 150;
const height = 188;
/** Where the last line of words stands, and the flag between tail and head. */
const foot = bottom + 36;
const flag = left + 60;

interface View {
  readonly x: (chainage: number) => number;
  /** By clock position, hours. */
  readonly y: (clock: number) => number;
  readonly id: string;
}

export function linerMap(life: ConveyorLife, id: string): Markup {
  const { conveyor } = life;
  const length = Math.max(conveyor.length.value, 1);
  const radius = conveyor.trough.insideRadius.value;
  const half = (radius * Math.PI) / 2 + linerSide(conveyor).value;
  const across = (clock: number): number => {
    const angle = (clock - 6) * 30;
    const arc = (radius * Math.PI * Math.min(Math.abs(angle), 90)) / 180;
    const side =
      Math.abs(angle) > 90
        ? Math.min(linerSide(conveyor).value, radius * Math.tan(((Math.abs(angle) - 90) * Math.PI) / 180))
        : 0;
    return Math.sign(angle) * (arc + side);
  };
  const view: View = {
    id,
    x: (chainage) => left + ((right - left) * Math.min(Math.max(chainage, 0), length)) / length,
    y: (clock) => (top + bottom) / 2 - (across(clock) / half) * ((bottom - top) / 2),
  };
  const spots = pointSpots(life, view);
  return drawing(
    { id, width, height, title: `${conveyor.name}: the liner unrolled`, description: descriptionOf(life) },
    definitions(
      hatch(`${id}-unseen`, 'diagonal', { spacing: 7, colour: '#8c8c8c' }),
      hatch(`${id}-hidden`, 'dots', { spacing: 6, colour: '#595959', width: 1.1 }),
    ),
    life.runs.flatMap((run) => run.panels.map((panel) => panelShape(panel, view, spots))),
    clockLines(view),
    wornSector(life, view),
    breaks(life, view),
    life.runs.map((run) => runLabel(run.run.number, run.run.from, run.run.to, view)),
    worstPanel(life, view),
    points(spots),
    changedFlag(life),
    chainageAxis(length, view, sizesOf(conveyor)),
  );
}

function descriptionOf(life: ConveyorLife): string {
  const panels = life.runs.flatMap((r) => r.panels);
  const unseen = panels.filter((p) => p.state !== 'seen').length;
  const worst = life.worst ? ` The limit comes first at ${life.worst.place.name}.` : '';
  return `${life.runs.length} runs, ${panels.length} panels, ${unseen} of them with nothing seen, ${life.points.length} points.${worst}`;
}

function panelShape(panel: PanelLife, view: View, spots: readonly PointSpot[]): Markup {
  const x = view.x(panel.from);
  const w = view.x(panel.to) - x;
  const fill =
    panel.state === 'seen'
      ? '#ffffff'
      : panel.state === 'not seen'
        ? hatchFill(`${view.id}-hidden`)
        : hatchFill(`${view.id}-unseen`);
  const number = String(panel.number);
  return group(
    rectangle(x, top, w, bottom - top, { fill, width: 0.8 }),
    textWidth(number, 10) + 2 < w &&
      !spots.some(({ box }) => overlaps(box, boxOf(x + w / 2, bottom - 5, number, 10))) &&
      letters([x + w / 2, bottom - 5], number, {
        anchor: 'middle',
        size: 10,
        colour: ink.grey,
        rim: chartRim,
      }),
  );
}

/** A bracket at the tail end, so that nothing is drawn over the panels. */
function wornSector(life: ConveyorLife, view: View): Markup | undefined {
  const worn = life.conveyor.wornSector;
  if (!worn) return undefined;
  const [a, b] = [view.y(worn.from.hours), view.y(worn.to.hours)];
  const x = left - 3;
  return group(
    rectangle(x - 2, Math.min(a, b), 4, Math.abs(a - b), { fill: ink.vermilion, width: 0 }),
    letters([8, (a + b) / 2], 'worn', { anchor: 'middle', size: 9.5, turn: -90 }),
  );
}

function clockLines(view: View): Markup {
  return group(
    [9, 6, 3].map((hour) =>
      group(
        line([left, view.y(hour)], [right, view.y(hour)], {
          colour: ink.rule,
          width: hour === 6 ? 0.9 : 0.6,
          dash: hour === 6 ? '10 3 2 3' : '2 3',
        }),
        letters([left - 9, view.y(hour) + 3.5], formatClock(hour), { anchor: 'end', size: 10 }),
      ),
    ),
  );
}

function breaks(life: ConveyorLife, view: View): Markup {
  const taken: (readonly [number, number])[] = [];
  return group(
    life.conveyor.breaks.map((gap) => {
      const from = view.x(gap.from.value);
      const to = view.x(gap.to.value);
      const wide = to - from > 2;
      const middle = (from + to) / 2;
      const w = textWidth(gap.name, 10);
      const anchor = middle + w / 2 > right ? 'end' : middle - w / 2 < left ? 'start' : 'middle';
      const start = anchor === 'end' ? right - w : anchor === 'start' ? left : middle - w / 2;
      const fits = !gap.implied && !taken.some(([a, b]) => start < b + 4 && start + w + 4 > a);
      if (fits) taken.push([start, start + w]);
      return group(
        wide &&
          rectangle(from, top - 3, to - from, bottom - top + 6, { fill: '#ffffff', width: 0.8, dash: '3 2' }),
        wide &&
          path(
            `M${n(from)} ${n(top - 3)}L${n(to)} ${n(bottom + 3)}M${n(to)} ${n(top - 3)}L${n(from)} ${n(bottom + 3)}`,
            { colour: ink.rule, width: 0.6 },
          ),
        fits &&
          letters([anchor === 'end' ? right : anchor === 'start' ? left : middle, 12], gap.name, {
            anchor,
            size: 10,
          }),
        fits && line([middle, 15], [middle, top - 3], { colour: ink.rule, width: 0.6 }),
      );
    }),
  );
}

function runLabel(number: number, from: number, to: number, view: View): Markup {
  const a = view.x(from);
  const b = view.x(to);
  const y = 25;
  const label = `run ${number}`;
  const shown = textWidth(label, 10.5) + 12 < b - a;
  const half = shown ? textWidth(label, 10.5) / 2 + 4 : 0;
  const middle = (a + b) / 2;
  return group(
    line([a + 1, y], [middle - half, y], { width: 0.8 }),
    line([middle + half, y], [b - 1, y], { width: 0.8 }),
    line([a + 1, y - 3], [a + 1, y + 3], { width: 0.8 }),
    line([b - 1, y - 3], [b - 1, y + 3], { width: 0.8 }),
    shown && letters([middle, y + 3.8], label, { anchor: 'middle', size: 10.5, bold: true }),
  );
}

function worstPanel(life: ConveyorLife, view: View): Markup | undefined {
  const panel = life.runs
    .flatMap((r) => r.panels)
    .find((p) => life.worst !== undefined && p.points.includes(life.worst));
  if (!panel) return undefined;
  const x = view.x(panel.from);
  return rectangle(x, top, view.x(panel.to) - x, bottom - top, { colour: ink.vermilion, width: 3.2 });
}

interface Box {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
}

interface PointSpot {
  readonly point: PointLife;
  readonly at: readonly [number, number];
  /** Of its words. */
  readonly middle: number;
  readonly name: string;
  readonly value: string;
  /** Baselines of the two; undefined where a neighbour stands in the way: the marks stay and the table has the words. */
  readonly words: { readonly name: number; readonly value: number } | undefined;
  /** Mark and words. */
  readonly box: Box;
}

function boxOf(middle: number, baseline: number, text: string, size: number): Box {
  const half = textWidth(text, size) / 2;
  return { x: [middle - half, middle + half], y: [baseline - 0.8 * size, baseline + 0.2 * size] };
}

function overlaps(a: Box, b: Box): boolean {
  return a.x[0] < b.x[1] && b.x[0] < a.x[1] && a.y[0] < b.y[1] && b.y[0] < a.y[1];
}

/** The name above, the last reading below; both on one side where the other is outside the sheet. */
function wordsAt(y: number): { readonly name: number; readonly value: number } {
  if (y < top + 17) return { name: y + 14, value: y + 26 };
  if (y > bottom - 17) return { name: y - 18, value: y - 7 };
  return { name: y - 7, value: y + 15 };
}

function pointSpots(life: ConveyorLife, view: View): readonly PointSpot[] {
  const inOrder = [...life.points].sort(
    (a, b) => Number(b === life.worst) - Number(a === life.worst) || a.place.at - b.place.at,
  );
  const taken: [number, number][] = [];
  return inOrder.map((point): PointSpot => {
    const x = view.x(point.place.at);
    const y = view.y(point.place.clock);
    const value = valueOf(point);
    const name = point.place.declared ? point.place.name : '';
    const w = Math.max(textWidth(name, 10.5), textWidth(value, 10.5)) + 3;
    // Words stay over the sheet; at its edge clock positions stand.
    const middle = Math.min(Math.max(x, left + w / 2), right - w / 2);
    const clear = !taken.some(([a, b]) => middle + w / 2 > a && middle - w / 2 < b);
    if (clear) taken.push([middle - w / 2, middle + w / 2]);
    const words = clear ? wordsAt(y) : undefined;
    const [high, low] = words ? [Math.min(words.name, y) - 9, Math.max(words.value, y) + 3] : [y - 4, y + 4];
    const wide: Box['x'] = words ? [middle - w / 2, middle + w / 2] : [x - 4, x + 4];
    return { point, at: [x, y], middle, name, value, words, box: { x: wide, y: [high, low] } };
  });
}

function valueOf(point: PointLife): string {
  const last = lastSeen(point);
  if (last === undefined) return '?';
  switch (last.seen.kind) {
    case 'thickness':
      return sizesOf(point.place.conveyor).thickness(last.seen.thickness);
    case 'colour':
      return last.seen.name;
    default:
      return 'steel';
  }
}

function points(spots: readonly PointSpot[]): Markup {
  return group(
    spots.map(({ point, at, middle, name, value, words }) =>
      group(
        mark(shapeOf(point), at, 3.6),
        words &&
          letters([middle, words.name], name, { anchor: 'middle', size: 10.5, bold: true, rim: chartRim }),
        words && letters([middle, words.value], value, { anchor: 'middle', size: 10.5, rim: chartRim }),
      ),
    ),
  );
}

export function shapeOf(point: PointLife): MarkShape {
  const last = lastSeen(point);
  if (!last) return 'ring';
  return last.seen.kind === 'thickness' ? 'disc' : last.seen.kind === 'colour' ? 'square' : 'cross';
}

/** Where a change is told or suspected: a flag below the chainage, for the clock is one for the whole conveyor. */
function changedFlag(life: ConveyorLife): Markup | undefined {
  const words = life.model && paceInShort(life.model.pace);
  return words === undefined
    ? undefined
    : group(
        path(
          `M${n(flag)} ${n(foot)}L${n(flag)} ${n(foot - 10)}L${n(flag + 7)} ${n(foot - 7)}L${n(flag)} ${n(foot - 4)}`,
          { fill: ink.black, width: 1.2 },
        ),
        letters([flag + 11, foot], `wears ${words}`, { size: 10, bold: true, rim: chartRim }),
      );
}

function chainageAxis(length: number, view: View, { far }: Sizes): Markup {
  const one = far === 'm' ? 1000 : 304.8;
  const step =
    [0.5, 1, 2, 5, 10, 20, 50].map((s) => s * one).find((s) => view.x(s) - view.x(0) >= 34) ?? 100 * one;
  const ticks: number[] = [];
  for (let at = 0; at <= length; at += step) ticks.push(at);
  const y = bottom + 10;
  return group(
    line([left, y], [right, y], { width: 1 }),
    ticks.map((at) =>
      group(
        line([view.x(at), y], [view.x(at), y + 4], { width: 1 }),
        letters([view.x(at), y + 15], formatNumber(at / one), {
          anchor: 'middle',
          size: 10,
        }),
      ),
    ),
    letters([left - 6, y + 15], far, { anchor: 'end', size: 10 }),
    letters([left + 8, foot], 'tail', { size: 10, colour: ink.grey }),
    letters([right, foot], 'head, flow this way →', { anchor: 'end', size: 10, colour: ink.grey }),
  );
}

/** The map's data as rows: panel, chainage, what was seen last. */
export function mapRows(life: ConveyorLife): readonly (readonly string[])[] {
  const sizes = sizesOf(life.conveyor);
  return life.runs.flatMap((run) =>
    run.panels.map((panel) => [
      `run ${run.run.number}, panel ${panel.number}`,
      `${sizes.along(panel.from)} to ${sizes.along(panel.to)}`,
      panel.state === 'seen'
        ? panel.points
            .flatMap((p) => {
              const l = lastSeen(p);
              return l ? [`${p.place.name} ${seenText(l.seen, sizes)}`] : [];
            })
            .join(', ')
        : panel.state === 'not seen'
          ? 'looked for, not seen'
          : 'not inspected',
    ]),
  );
}
