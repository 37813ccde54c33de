// The conveyor from the side, drawn truly at its incline: trough with flanges, panels, breaks and runs by name, hold-downs,
// braces, covers, hoppers, isolation and lifting points, drive, access zones, the way panels are fitted, and the chainage. Labels lie
// along the slope. The liner is thinner than a line at these scales, so panels are shown over the whole trough.

import type { Hopper } from '../../domain/model/conveyor.js';
import type { Picture, Pictured } from './picture.js';
import { alongWords, chainageScale } from './picture.js';
import { unitOfMachine } from '../../domain/model/unit-of-machine.js';
import { drawingArea, scaleBar } from './drawing-sheet.js';
import { group, plainNumber as n, type Markup } from '../page/markup.js';
import { hatchFill } from './hatch.js';
import {
  arrowHead,
  blank,
  circle,
  letters,
  lettering,
  line,
  lineWidth,
  path,
  polygon,
  rectangle,
  together,
} from '../page/svg.js';
import { spreadLabels } from './labels.js';
import { scaleOf } from './scale.js';
import type { Scale } from './scale.js';
import { textWidth } from '../page/text-width.js';

/** Paper room above and below the trough for labels, measured square to the slope. */
const above = 24;
const below = 24;
/** Row for panel numbers where the trough is too shallow on paper to hold them. */
const numberRow = 4.6;
const shallow = 3.4;
const reductions = [10, 20, 50, 100, 200, 500, 1000, 2000, 5000] as const;

interface View {
  readonly id: string;
  readonly pictured: Pictured;
  readonly reduction: number;
  /** Paper mm from the tail along the slope. */
  x(chainage: number): number;
  /** Top edge and bottom of the trough, paper mm from its centre line, down positive. */
  readonly top: number;
  readonly bottom: number;
  /** Where dimensions begin: the bottom, or below the panel numbers. */
  readonly foot: number;
}

export function elevation(pictured: Pictured): Picture {
  const { conveyor } = pictured;
  const incline = conveyor.incline.value;
  const { scale, foot } = fit(pictured);
  const { trough } = conveyor;
  return {
    title: `${conveyor.name}: elevation`,
    documentType: 'Elevation',
    scale: scale.text,
    description:
      `${conveyor.name} from the side at its incline of ${degrees(incline)}, ` +
      `${alongWords(conveyor.length.value, conveyor)} long, flow from left to right, with runs, panels, breaks, ` +
      'access and isolation points.',
    hatches: ['worn', 'steel'],
    content(id) {
      const depth =
        (trough.sideHeight.value + trough.insideRadius.value + trough.plate.value) / scale.reduction;
      const bottom = (trough.insideRadius.value + trough.plate.value) / scale.reduction;
      const view: View = {
        id,
        pictured,
        reduction: scale.reduction,
        x: (chainage) => chainage / scale.reduction,
        top: -trough.sideHeight.value / scale.reduction,
        bottom,
        foot: bottom + (depth < shallow ? numberRow : 0),
      };
      return [
        together(
          [
            ...paintAccess(view),
            ...paintChainage(view),
            ...paintRuns(view),
            ...paintTrough(view),
            ...paintPanels(view),
            ...paintFixings(view),
            ...paintDrive(view),
            ...paintNames(view),
          ],
          { transform: `translate(${n(foot[0])} ${n(foot[1])}) rotate(${n(-incline)})` },
        ),
        ...paintIncline(view, foot),
        ...paintKey(view, incline),
      ];
    },
  };
}

/** The largest scale at which the slope and its labels fit, and where the tail then stands on the paper. */
function fit(pictured: Pictured): { scale: Scale; foot: readonly [number, number] } {
  const { conveyor } = pictured;
  const angle = (conveyor.incline.value * Math.PI) / 180;
  const keyHeight = Math.abs(conveyor.incline.value) < 12 ? 24 : 0;
  for (const reduction of reductions) {
    const length = conveyor.length.value / reduction;
    const up = above + conveyor.trough.sideHeight.value / reduction;
    const { insideRadius, sideHeight, plate } = conveyor.trough;
    const down =
      below +
      (insideRadius.value + plate.value) / reduction +
      ((sideHeight.value + insideRadius.value + plate.value) / reduction < shallow ? numberRow : 0);
    const corners = [
      [-5, -up],
      [length + 8, -up],
      [-5, down],
      [length + 8, down],
    ].map(
      ([u = 0, v = 0]) =>
        [u * Math.cos(angle) + v * Math.sin(angle), v * Math.cos(angle) - u * Math.sin(angle)] as const,
    );
    const xs = corners.map(([x]) => x);
    const ys = corners.map(([, y]) => y);
    const width = Math.max(...xs) - Math.min(...xs);
    const height = Math.max(...ys) - Math.min(...ys);
    const room = drawingArea.height - keyHeight;
    if (width > drawingArea.width || height > room) continue;
    const x = drawingArea.x + (drawingArea.width - width) / 2 - Math.min(...xs);
    const y = drawingArea.y + keyHeight + (room - height) / 2 - Math.min(...ys);
    return { scale: scaleOf(reduction), foot: [x, y] };
  }
  return { scale: scaleOf(10_000), foot: [drawingArea.x + 5, drawingArea.y + drawingArea.height / 2] };
}

function paintTrough(view: View): Markup[] {
  const { conveyor } = view.pictured;
  const end = view.x(conveyor.length.value);
  const marks = [
    rectangle(0, view.top, end, view.bottom - view.top, { width: lineWidth.thick, fill: '#fff' }),
    line([-2, 0], [end + 2, 0], { width: 0.18, dash: '5 1 1 1' }),
    line([0, view.top - 0.6], [0, view.bottom + 0.6], { width: 1 }),
    line([end, view.top - 0.6], [end, view.bottom + 0.6], { width: 1 }),
  ];
  for (const section of conveyor.sections) {
    const x = view.x(section.start + section.length.value);
    if (x > end - 0.5) continue;
    for (const side of [-0.35, 0.35])
      marks.push(line([x + side, view.top - 1], [x + side, view.bottom + 1], { width: lineWidth.medium }));
  }
  return marks;
}

function paintPanels(view: View): Markup[] {
  const marks: Markup[] = [];
  const height = view.bottom - view.top;
  for (const { panels } of view.pictured.runs) {
    for (const panel of panels) {
      const from = view.x(panel.from);
      const width = view.x(panel.to) - from;
      if (panel.renewed && view.pictured.scope.length > 0)
        marks.push(rectangle(from, view.top, width, height, { width: 0, fill: hatchFill(view.id, 'worn') }));
      marks.push(
        line([view.x(panel.to), view.top], [view.x(panel.to), view.bottom], { width: lineWidth.thin }),
      );
      const name = panel.closing ? `${panel.number}C` : `${panel.number}`;
      const fits = textWidth(name, lettering.normal) < width - 0.4;
      if (fits || panel.closing) {
        const foot = height >= shallow ? (view.top + view.bottom) / 2 + 1.25 : view.bottom + 3.6;
        marks.push(
          letters([from + width / 2, foot], fits ? name : 'C', {
            anchor: 'middle',
            bold: panel.renewed,
            rim: true,
            // A closing panel keeps its C however narrow it is.
            size: fits || width > 3 ? lettering.normal : lettering.caption,
          }),
        );
      }
    }
  }
  for (const gap of view.pictured.conveyor.breaks) {
    const from = view.x(gap.from.value);
    const to = view.x(gap.to.value);
    if (to - from < 0.3) continue;
    marks.push(
      rectangle(from, view.top, to - from, height, { width: lineWidth.medium, fill: '#fff' }),
      line([from, view.top], [to, view.bottom], { width: lineWidth.thin }),
      line([from, view.bottom], [to, view.top], { width: lineWidth.thin }),
    );
  }
  return marks;
}

/** Covers as a line of boxes on the trough, braces as uprights in it, hold-downs as filled wedges on top. */
function paintFixings(view: View): Markup[] {
  const { conveyor } = view.pictured;
  const base = view.top - 0.5;
  const marks = conveyor.hoppers.map((hopper) => paintHopper(view, hopper));
  for (const cover of conveyor.covers)
    marks.push(
      rectangle(
        view.x(cover.from.value) + 0.15,
        base - 1.5,
        view.x(cover.to.value) - view.x(cover.from.value) - 0.3,
        1.5,
        { width: lineWidth.thin, fill: '#fff' },
      ),
    );
  for (const brace of conveyor.braces) {
    const x = view.x((brace.from.value + brace.to.value) / 2);
    marks.push(
      line([x - 0.9, base - 5], [x + 0.9, base - 5], { width: lineWidth.thick }),
      line([x, base - 5], [x, base - 7.2], { width: lineWidth.thick }),
      line([x - 0.9, base - 7.2], [x + 0.9, base - 7.2], { width: lineWidth.thick }),
    );
  }
  for (const block of conveyor.holdDowns) {
    const x = view.x((block.from.value + block.to.value) / 2);
    marks.push(
      polygon(
        [
          [x - 1, base - 4.6],
          [x + 1, base - 4.6],
          [x, base - 2.2],
        ],
        { width: lineWidth.thin, fill: '#000' },
      ),
    );
  }
  return marks;
}

/** Open upward, narrower where it meets the trough. */
function paintHopper(view: View, { from, to }: Hopper): Markup {
  const [left, right] = [view.x(from.value), view.x(to.value)];
  const foot = view.top - 0.5;
  return polygon(
    [
      [left, foot],
      [left - 2, foot - 7.2],
      [right + 2, foot - 7.2],
      [right, foot],
    ],
    { width: lineWidth.thin, fill: '#fff' },
  );
}

function paintDrive(view: View): Markup[] {
  const { conveyor } = view.pictured;
  if (!conveyor.drive) return [];
  const head = conveyor.drive.end === 'head';
  const x = head ? view.x(conveyor.length.value) : 0;
  const way = head ? 1 : -1;
  return [
    line([x, 0], [x + way * 2, 0], { width: 1 }),
    circle([x + way * 4.4, 0], 2.4, { width: lineWidth.thick, fill: '#fff' }),
    letters([x + way * 4.4, 1.3], 'M', { anchor: 'middle', bold: true }),
  ];
}

/** Breaks, isolation and lifting points by name, moved along the slope until none covers another. */
function paintNames(view: View): Markup[] {
  const { conveyor } = view.pictured;
  const named = [
    ...conveyor.breaks.map((gap) => ({
      at: (gap.from.value + gap.to.value) / 2,
      text: gap.implied || gap.name.toLowerCase() === gap.kind ? gap.name : `${gap.name} (${gap.kind})`,
      short: gap.name,
    })),
    ...conveyor.hoppers.map(({ from, to, name }) => ({
      at: (from.value + to.value) / 2,
      text: name === undefined ? 'hopper' : `${name} (hopper)`,
      short: name ?? 'hopper',
    })),
    ...conveyor.isolations.flatMap((item) =>
      item.at ? [{ at: item.at.value, text: `isolate ${item.name}`, short: item.name }] : [],
    ),
    ...conveyor.liftingPoints.map((item) => ({
      at: item.at.value,
      text: `lift ${item.name} ${Math.round(item.limit.value)} kg`,
      short: item.name,
    })),
    ...(conveyor.drive
      ? [
          {
            at:
              conveyor.drive.end === 'head'
                ? conveyor.length.value + view.reduction * 4
                : -view.reduction * 4,
            text: 'drive',
            short: 'drive',
          },
        ]
      : []),
  ].sort((a, b) => a.at - b.at);
  const top = view.top - 9;
  const marks: Markup[] = [];
  // Neighbours alternate between two lines of lettering, so that twice as many fit before any is shortened.
  for (const tier of [0, 1]) {
    const items = named.filter((_, index) => index % 2 === tier);
    const foot = top - 3.2 - tier * 5.2;
    for (const wording of ['text', 'short'] as const) {
      const middles = spreadLabels(
        items.map((item) => ({ at: view.x(item.at), width: textWidth(item[wording], lettering.normal) })),
        2,
        -6,
        view.x(conveyor.length.value) + 9,
      );
      if (!middles) continue;
      items.forEach((item, index) => {
        const x = view.x(item.at);
        const middle = middles[index] ?? x;
        marks.push(
          line([x, view.top - 0.5], [x, top + 1], { width: lineWidth.thin }),
          line([x, top + 1], [middle, foot + 0.9], { width: lineWidth.thin }),
          letters([middle, foot], item[wording], { anchor: 'middle', rim: true }),
        );
      });
      break;
    }
  }
  return marks;
}

function paintRuns(view: View): Markup[] {
  const y = view.foot + 6.6;
  const marks: Markup[] = [];
  for (const { run, fitFrom } of view.pictured.runs) {
    const from = view.x(run.from);
    const to = view.x(run.to);
    const worked = fitFrom !== undefined;
    marks.push(
      line([from, view.bottom + 0.8], [from, y + 1.2], { width: lineWidth.thin }),
      line([to, view.bottom + 0.8], [to, y + 1.2], { width: lineWidth.thin }),
      line([from, y], [to, y], { width: worked ? lineWidth.thick : lineWidth.thin }),
    );
    if (fitFrom === 'tail') marks.push(arrowHead([to, y], 0, 3.2));
    if (fitFrom === 'head') marks.push(arrowHead([from, y], 180, 3.2));
    const long = worked
      ? `run ${run.number}: ${alongWords(run.length, view.pictured.conveyor)}, fit from the ${fitFrom}`
      : `run ${run.number}: ${alongWords(run.length, view.pictured.conveyor)}`;
    const text = [long, `run ${run.number}`, `${run.number}`].find(
      (wording) => textWidth(wording, lettering.normal) < to - from - 4,
    );
    if (text)
      marks.push(letters([(from + to) / 2, y - 1.2], text, { anchor: 'middle', rim: true, bold: worked }));
  }
  return marks;
}

function paintAccess(view: View): Markup[] {
  const y = view.foot + 17.5;
  return view.pictured.conveyor.access.flatMap((zone) => {
    const from = view.x(zone.from.value);
    const to = view.x(zone.to.value);
    const name = zone.name ?? '';
    const text = [
      `${name}: ${zone.kind}${zone.height ? ` ${alongWords(zone.height.value, view.pictured.conveyor)} up` : ''}`,
      `${name} ${zone.kind}`,
      name,
    ].find((wording) => textWidth(wording, lettering.normal) < to - from - 1);
    return [
      rectangle(from, y, to - from, 5, {
        width: lineWidth.thin,
        dash: zone.kind === 'ground' || zone.kind === 'platform' ? '' : '2 1',
        fill: '#fff',
      }),
      text ? letters([(from + to) / 2, y + 3.8], text, { anchor: 'middle' }) : blank,
    ];
  });
}

function paintChainage(view: View): Markup[] {
  const length = view.pictured.conveyor.length.value;
  const y = view.foot + 9.2;
  const { spacing, unit, words } = chainageScale(view.pictured.conveyor, view.reduction, 14);
  const marks = [line([0, y], [view.x(length), y], { width: lineWidth.thin })];
  for (let at = 0; at <= length + 1e-6; at += spacing / 5) {
    const major = Math.abs(at / spacing - Math.round(at / spacing)) < 1e-6;
    marks.push(line([view.x(at), y], [view.x(at), y + (major ? 1.8 : 1)], { width: lineWidth.thin }));
    if (major)
      marks.push(
        letters([view.x(at), y + 5.6], `${words(at)}${at === 0 ? ` ${unit}` : ''}`, { anchor: 'middle' }),
      );
  }
  return marks;
}

/** The horizontal at the lower end with the angle, and what the conveyor climbs. */
function paintIncline(view: View, foot: readonly [number, number]): Markup[] {
  const { conveyor } = view.pictured;
  const incline = conveyor.incline.value;
  if (Math.abs(incline) < 0.5) return [];
  const angle = (incline * Math.PI) / 180;
  // From the low end of the foot of the labels, where nothing else is drawn.
  const [u, v] = [incline > 0 ? 0 : view.x(conveyor.length.value), view.foot + 23];
  const [x, y] = [
    foot[0] + u * Math.cos(angle) + v * Math.sin(angle),
    foot[1] - u * Math.sin(angle) + v * Math.cos(angle),
  ];
  const way = incline > 0 ? 1 : -1;
  const reach = 34;
  const radius = 26;
  const arc =
    `M${n(x + way * radius)} ${n(y)}A${radius} ${radius} 0 0 ${incline > 0 ? 0 : 1} ` +
    `${n(x + way * radius * Math.cos(angle))} ${n(y - radius * Math.sin(Math.abs(angle)))}`;
  const text =
    `${degrees(Math.abs(incline))}: ` +
    `${incline > 0 ? 'rises' : 'falls'} ${alongWords(Math.abs(conveyor.length.value * Math.sin(angle)), conveyor)} ` +
    `over ${alongWords(conveyor.length.value * Math.cos(angle), conveyor)}`;
  return [
    line([x, y], [x + way * reach, y], { width: 0.18, dash: '4 1.5' }),
    path(arc, { width: 0.18 }),
    letters([x + way * (reach + 2), y + 1.2], text, { anchor: incline > 0 ? 'start' : 'end', rim: true }),
  ];
}

function paintKey(view: View, incline: number): Markup[] {
  const right = incline < 0;
  const x = right ? drawingArea.x + drawingArea.width - 102 : drawingArea.x;
  const y = drawingArea.y;
  const items: readonly (readonly [Markup, string])[] = [
    [
      polygon(
        [
          [x + 1, y + 8.2],
          [x + 3, y + 8.2],
          [x + 2, y + 10.6],
        ],
        { width: lineWidth.thin, fill: '#000' },
      ),
      'hold-down',
    ],
    [
      group(
        line([x + 37, y + 8], [x + 39, y + 8], { width: lineWidth.thick }),
        line([x + 38, y + 8], [x + 38, y + 10.6], { width: lineWidth.thick }),
        line([x + 37, y + 10.6], [x + 39, y + 10.6], { width: lineWidth.thick }),
      ),
      'brace',
    ],
    [
      group(
        line([x + 1.6, y + 13], [x + 1.6, y + 17], { width: lineWidth.medium }),
        line([x + 2.4, y + 13], [x + 2.4, y + 17], { width: lineWidth.medium }),
      ),
      'flanged joint',
    ],
    [rectangle(x + 35.5, y + 13.6, 5, 2.6, { width: lineWidth.thin }), 'cover'],
  ];
  const marks = [letters([x, y + 4.5], 'Seen from the right (3 o’clock) side; flow from left to right.')];
  items.forEach(([symbol, name], index) =>
    marks.push(
      symbol,
      letters([x + (index % 2 === 0 ? 7 : 43), y + 10.7 + Math.floor(index / 2) * 5.7], name),
    ),
  );
  if (view.pictured.scope.length > 0) {
    marks.push(
      rectangle(x + 60, y + 7.7, 6, 3.4, { width: lineWidth.thin, fill: hatchFill(view.id, 'worn') }),
      letters([x + 68, y + 10.7], 'renewed'),
    );
  }
  marks.push(
    letters([x + 60, y + 16.4], 'C closing panel'),
    scaleBar(x + 3, y + 23, view.reduction, 45, unitOfMachine(view.pictured.conveyor)),
  );
  return marks;
}

function degrees(value: number): string {
  return `${Number(value.toFixed(1))}°`;
}
