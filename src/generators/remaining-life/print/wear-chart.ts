// Thickness left over exposure at one point: what was measured (discs with their error), what was seen by colour only (bars
// over all that the colour allows), what was looked for and not seen (question marks), the hand arithmetic (dashed), and the
// model's fan with its median. Layers are named at their boundaries; the condemned part is hatched.

import { scaleLinear } from 'd3-scale';
import { formatClock } from '../../../domain/units/clock.js';
import type { CalendarDay } from '../../../domain/units/calendar.js';
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
} from '../../page/svg.js';
import { group, plainNumber as n, type Markup } from '../../page/markup.js';
import type { Quantiles } from '../parts/model.js';
import type { WearPace } from '../parts/wear-change.js';
import { amount, chance, seenText, lastSeen } from './wording.js';
import type { PointLife, ObservedReading } from '../parts/points.js';
import { sizesOf, type Sizes } from '../sizes.js';
import { formatNumber } from '../../../domain/units/format.js';

export interface WearChartOptions {
  readonly id: string;
  readonly size: 'large' | 'small';
  readonly unit: 'h' | 't';
  /** Right end of the axis, h or t, shared by the charts of a conveyor. */
  readonly most: number;
  /** What the looks say of a change, and the exposure of this liner at the look since which it may have come. */
  readonly pace?: WearPace | undefined;
  readonly changedAt?: number | undefined;
  /** First days of calendar years with the exposure then, for the upper axis of the large chart. */
  readonly years?: readonly {
    readonly day: CalendarDay;
    readonly label: string;
    readonly exposure: number;
  }[];
}

interface View {
  readonly x: (exposure: number) => number;
  readonly y: (thickness: number) => number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly large: boolean;
  readonly font: number;
}

export function wearChart(point: PointLife, options: WearChartOptions): Markup {
  const large = options.size === 'large';
  const [width, height] = large ? [700, 276] : [228, 150];
  const margin = large
    ? { top: 30, right: 86, bottom: 40, left: 44 }
    : { top: 20, right: 6, bottom: 20, left: 22 };
  const most = Math.max(options.most, 1);
  const thickest = Math.max(
    point.fitted.value,
    ...point.readings.map((r) => (r.seen.kind === 'thickness' ? r.seen.thickness : 0)),
  );
  const xScale = scaleLinear()
    .domain([0, most])
    .range([margin.left, width - margin.right]);
  const yScale = scaleLinear()
    .domain([0, thickest * 1.04])
    .range([height - margin.bottom, margin.top]);
  const sizes = sizesOf(point.place.conveyor);
  // Round numbers of the machine's own unit, mm.
  const marks = scaleLinear()
    .domain([0, (thickest * 1.04) / sizes.mm])
    .ticks(large ? 6 : 3)
    .map((tick) => tick * sizes.mm);
  const view: View = {
    x: (v) => xScale(Math.min(Math.max(v, 0), most)),
    y: (v) => yScale(Math.max(v, 0)),
    large,
    font: large ? 11 : 9.5,
    left: margin.left,
    right: width - margin.right,
    top: margin.top,
    bottom: height - margin.bottom,
  };
  return drawing(
    { id: options.id, width, height, title: titleOf(point), description: descriptionOf(point, options.unit) },
    definitions(hatch(`${options.id}-hatch`, 'diagonal', { spacing: large ? 7 : 6, colour: '#a6a6a6' })),
    layers(point, view, options.id),
    fan(point, view, most),
    axes(point, view, xScale.ticks(large ? 7 : 3), marks, { ...options, sizes }),
    suspectedChange(options.pace, options.changedAt, view, most, point.condemn),
    today(point, view, most),
    handLine(point, view, most),
    point.readings.map((reading) => readingMark(reading, point, view)),
    heading(point, view),
  );
}

function titleOf(point: PointLife): string {
  return `Thickness left at ${point.place.name}`;
}

function descriptionOf(point: PointLife, unit: 'h' | 't'): string {
  const sizes = sizesOf(point.place.conveyor);
  const readings = point.readings
    .map((r) => `${seenText(r.seen, sizes)} at ${amount(r.exposure)} ${unit}`)
    .join('; ');
  return (
    `${point.place.name}, chainage ${sizes.along(point.place.at)} ${sizes.far}, ` +
    `clock ${formatClock(point.place.clock)}. ` +
    `Fitted ${sizes.size(point.fitted.value)}, condemn limit ${sizes.size(point.condemn)}. ` +
    `${readings === '' ? 'No reading of this liner.' : `Readings: ${readings}.`}`
  );
}

/** Alternate layers tinted, the part below the condemn limit hatched, boundaries dashed and named. */
function layers(point: PointLife, view: View, id: string): Markup {
  const names = point.set?.liner.layers.map((layer) => layer.name) ?? [];
  const full = point.depths.at(-1) ?? point.fitted.value;
  const boundary = (depth: number): number => full - depth;
  const bands = point.depths.slice(0, -1).map((depth, i) => {
    const top = view.y(i === 0 ? Math.max(full, point.fitted.value) : boundary(depth));
    const bottom = view.y(boundary(point.depths[i + 1] ?? full));
    return rectangle(view.left, top, view.right - view.left, bottom - top, {
      fill: i % 2 === 1 ? '#ededed' : '#ffffff',
      width: 0,
    });
  });
  const lines = point.depths.slice(1, -1).map((depth) =>
    line([view.left, view.y(boundary(depth))], [view.right, view.y(boundary(depth))], {
      colour: ink.grey,
      width: 0.8,
      dash: '2 2',
    }),
  );
  const limit = view.y(point.condemn);
  const labels = view.large
    ? names.map((name, i) => {
        const middle = view.y((boundary(point.depths[i] ?? 0) + boundary(point.depths[i + 1] ?? full)) / 2);
        // Clear of the words at the limit.
        const y = Math.abs(middle - limit) < 14 ? limit - 14 : middle;
        return letters([view.right + 6, y + 4], name, { size: view.font });
      })
    : [];
  return group(
    bands,
    lines,
    rectangle(view.left, limit, view.right - view.left, view.bottom - limit, {
      fill: hatchFill(`${id}-hatch`),
      width: 0,
    }),
    line([view.left, limit], [view.right, limit], {
      colour: ink.vermilion,
      width: view.large ? 2 : 1.6,
      dash: '8 3',
    }),
    view.large &&
      letters([view.right + 6, limit + 4], `limit ${sizesOf(point.place.conveyor).size(point.condemn)}`, {
        size: view.font,
        bold: true,
      }),
    labels,
  );
}

/**
 * Model: the wear at each look as the model sees it, bent where the rate changed, and from the last look on the band between the
 * lives at 10 % and 90 %, with the median.
 */
function fan(point: PointLife, view: View, most: number): Markup | undefined {
  const { model, fitted } = point;
  if (!model?.rate) return leastSquares(point, view, most);
  const last = model.path.at(-1);
  const from = { x: last?.exposure ?? 0, y: fitted.value - (last?.mean ?? 0), spread: last?.spread ?? 0 };
  const edges = edgesOf(point, from, model.rate);
  const past = [
    `M${n(view.x(0))} ${n(view.y(fitted.value))}`,
    ...model.path.map(({ exposure, mean }) => `${n(view.x(exposure))} ${n(view.y(fitted.value - mean))}`),
  ].join('L');
  const end = Math.min(most, from.x + from.y / Math.max(-edges.middle.slope, 1e-12));
  return group(
    path(bandPath(edges.slow.at, edges.fast.at, from.x, most, view), {
      fill: ink.blue,
      opacity: 0.22,
      colour: ink.blue,
      width: 0.7,
    }),
    path(`${past}L${n(view.x(end))} ${n(view.y(edges.middle.at(end)))}`, {
      colour: ink.blue,
      width: view.large ? 2 : 1.5,
    }),
  );
}

interface Edge {
  /** mm left at an exposure, not below 0. */
  readonly at: (exposure: number) => number;
  readonly slope: number;
}

/** Straight on from the last look to where the limit is reached, at 10, 50 and 90 %; by the rate where it is passed or far. */
function edgesOf(
  point: PointLife,
  from: { readonly x: number; readonly y: number; readonly spread: number },
  rates: Quantiles,
): { readonly fast: Edge; readonly middle: Edge; readonly slow: Edge } {
  const limit = point.model?.condemn;
  const edge = (life: number | undefined, rate: number, start: number): Edge => {
    const towards = life !== undefined && life > from.x * 1.001 && start > point.condemn;
    const slope = towards ? (point.condemn - start) / (life - from.x) : -rate;
    return { slope, at: (x) => Math.max(0, start + slope * (x - from.x)) };
  };
  const lives = limit?.kind === 'life' ? limit.exposure : undefined;
  return {
    fast: edge(lives?.q10, rates.q90, from.y - 1.2816 * from.spread),
    middle: edge(lives?.q50, rates.q50, from.y),
    slow: edge(lives?.q90, rates.q10, from.y + 1.2816 * from.spread),
  };
}

/** Where no model says anything: the straight line through the thicknesses, from two of them on. */
function leastSquares({ line: fit, fitted }: PointLife, view: View, most: number): Markup | undefined {
  if (!fit || fit.count < 2 || !(fit.slope > 0)) return undefined;
  const stop = Math.min(most, fitted.value / fit.slope);
  return line([view.x(0), view.y(fitted.value)], [view.x(stop), view.y(fitted.value - fit.slope * stop)], {
    colour: ink.grey,
    width: view.large ? 1.4 : 1,
  });
}

/** Sampled, so that where the fan meets zero thickness it follows the axis. */
function bandPath(
  slow: (x: number) => number,
  fast: (x: number) => number,
  from: number,
  most: number,
  view: View,
): string {
  if (!(most > from)) return '';
  const steps = 24;
  const xs = Array.from({ length: steps + 1 }, (_, i) => from + ((most - from) * i) / steps);
  const upper = xs.map((x) => `${n(view.x(x))} ${n(view.y(slow(x)))}`);
  const lower = xs.map((x) => `${n(view.x(x))} ${n(view.y(fast(x)))}`).reverse();
  return `M${upper.join('L')}L${lower.join('L')}Z`;
}

/**
 * Where the rate may have changed: a flag at the look since which it did, and on the limit two brackets, one for each case. Told
 * apart by shape (diamond and ring) and by words.
 */
function suspectedChange(
  pace: WearPace | undefined,
  at: number | undefined,
  view: View,
  most: number,
  condemn: number,
): Markup | undefined {
  if (pace?.kind !== 'changed' && pace?.kind !== 'cannot yet be told') return undefined;
  if (at === undefined || at > most) return undefined;
  const x = view.x(at);
  const flag = view.large ? 7 : 5;
  const words = `${pace.kind === 'changed' ? 'rate changed here' : 'perhaps changed here'}, ${chance(pace.chance)}`;
  const limit = view.y(condemn);
  const bracket = (q: Quantiles, y: number, shape: 'diamond' | 'ring', label: string): Markup => {
    const [a, b, middle] = [view.x(q.q10), view.x(q.q90), view.x(q.q50)];
    return group(
      line([a, y], [b, y], { width: 2.2, ...(shape === 'ring' && { dash: '4 2.5' }) }),
      line([a, y - 4], [a, y + 4], { width: 1.4 }),
      line([b, y - 4], [b, y + 4], { width: 1.4 }),
      mark(shape, [middle, y], 4, { fill: '#ffffff', width: 1.3 }),
      letters([a - 5, y + 4], label, { anchor: 'end', size: view.font, rim: chartRim }),
    );
  };
  return group(
    line([x, view.top], [x, view.bottom], { width: 1.2, dash: '9 3 2 3' }),
    path(`M${n(x)} ${n(view.top)}L${n(x + flag)} ${n(view.top + flag / 2)}L${n(x)} ${n(view.top + flag)}Z`, {
      fill: ink.black,
      width: 0,
    }),
    view.large && letters([x - 4, view.top + 11], words, { anchor: 'end', size: view.font, rim: chartRim }),
    view.large &&
      pace.dates &&
      group(
        bracket(pace.dates.exposureIfChanged, limit - 9, 'diamond', 'if it changed'),
        bracket(pace.dates.exposureIfNot, limit + 11, 'ring', 'if not'),
      ),
  );
}

function axes(
  point: PointLife,
  view: View,
  xTicks: readonly number[],
  yTicks: readonly number[],
  options: WearChartOptions & { readonly sizes: Sizes },
): Markup {
  const { large, font } = view;
  return group(
    line([view.left, view.bottom], [view.right, view.bottom], { width: 1 }),
    line([view.left, view.top], [view.left, view.bottom], { width: 1 }),
    xTicks.map((t) =>
      group(
        line([view.x(t), view.bottom], [view.x(t), view.bottom + 3.5], { width: 1 }),
        letters([view.x(t), view.bottom + (large ? 15 : 12.5)], amount(t), {
          anchor: t === 0 ? 'start' : view.x(t) > view.right - 8 ? 'end' : 'middle',
          size: font,
        }),
      ),
    ),
    yTicks.map((t) =>
      group(
        line([view.left - 3.5, view.y(t)], [view.left, view.y(t)], { width: 1 }),
        letters([view.left - 6, view.y(t) + 3.5], formatNumber(t / options.sizes.mm), {
          anchor: 'end',
          size: font,
        }),
      ),
    ),
    large &&
      letters(
        [view.right, view.bottom + 31],
        options.unit === 'h' ? 'running hours since fitted' : 'tonnes since fitted',
        { anchor: 'end', size: font },
      ),
    large && letters([12, view.top - 6], `${options.sizes.near} left`, { size: font }),
    large &&
      (options.years ?? [])
        .filter((y) => y.exposure >= 0 && y.exposure <= options.most)
        .map((y) =>
          group(
            line([view.x(y.exposure), view.top - 4], [view.x(y.exposure), view.top + 3], {
              colour: ink.grey,
              width: 1,
            }),
            letters([view.x(y.exposure), view.top - 7], y.label, {
              anchor: 'middle',
              size: font,
              colour: ink.grey,
            }),
          ),
        ),
  );
}

function today(point: PointLife, view: View, most: number): Markup | undefined {
  const now = point.exposureNow;
  if (now === undefined || now > most) return undefined;
  return group(
    line([view.x(now), view.top], [view.x(now), view.bottom], { colour: ink.grey, width: 1, dash: '1 2.5' }),
    view.large &&
      letters([view.x(now) + 4, view.top + 11], 'day of report', {
        size: view.font,
        colour: ink.grey,
        rim: chartRim,
      }),
  );
}

/** From the last thickness at the ruling rate down to nothing, or to the edge of the chart. */
function handLine(point: PointLife, view: View, most: number): Markup | undefined {
  const { hand } = point;
  if (hand.kind !== 'rate') return undefined;
  const stop = Math.min(most, hand.last.exposure + hand.last.thickness / hand.ruling);
  return line(
    [view.x(hand.last.exposure), view.y(hand.last.thickness)],
    [view.x(stop), view.y(hand.last.thickness - hand.ruling * (stop - hand.last.exposure))],
    { width: view.large ? 1.6 : 1.2, dash: '5 3' },
  );
}

function readingMark(reading: ObservedReading, point: PointLife, view: View): Markup {
  const x = view.x(reading.exposure);
  const size = view.large ? 4 : 2.8;
  switch (reading.seen.kind) {
    case 'thickness': {
      const { thickness: t, error } = reading.seen;
      return group(
        error !== undefined &&
          line([x, view.y(t + error)], [x, view.y(t - error)], { width: view.large ? 1.4 : 1 }),
        mark('disc', [x, view.y(t)], size),
      );
    }
    case 'colour': {
      const full = point.depths.at(-1) ?? 0;
      const top = view.y(
        reading.seen.layer === 0 ? point.fitted.value : full - (point.depths[reading.seen.layer] ?? 0),
      );
      const bottom = view.y(full - (point.depths[reading.seen.layer + 1] ?? full));
      const cap = size * 0.9;
      const width = view.large ? 1.8 : 1.3;
      return group(
        line([x, top + 1], [x, bottom - 1], { width }),
        line([x - cap, top + 1], [x + cap, top + 1], { width }),
        line([x - cap, bottom - 1], [x + cap, bottom - 1], { width }),
      );
    }
    case 'trough':
      return mark('cross', [x, view.y(0)], size * 1.2, { width: 2.2 });
    case 'not seen':
      return letters([x, view.bottom - 4], '?', {
        anchor: 'middle',
        size: view.large ? 13 : 11,
        bold: true,
        rim: chartRim,
      });
  }
}

function heading(point: PointLife, view: View): Markup | undefined {
  if (view.large) return undefined;
  const last = lastSeen(point);
  return group(
    letters([2, 12], point.place.name, { size: 11, bold: true }),
    letters(
      [view.right, 12],
      last
        ? seenText(last.seen, sizesOf(point.place.conveyor))
        : point.state === 'not seen'
          ? 'looked for, not seen'
          : 'not inspected',
      { anchor: 'end', size: 10 },
    ),
  );
}
