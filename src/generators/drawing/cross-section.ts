// A section through the trough as somebody standing in line with it sees it: clock face, trough, liner layers, screw lying on
// the liner, worn sector and points; beside it the liner's build-up at full size and the sizes that matter. Looking downstream
// 3 o'clock is on the right; looking upstream everything is mirrored and the clock stays the viewer's own.

import { bareAbove, linerSide } from '../../domain/model/liner-side.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import type { LinerSpecification, ScrewSpecification } from '../../domain/model/specifications.js';
import { formatClock, clockAsSeen } from '../../domain/units/clock.js';
import { paintBuildUp } from './build-up.js';
import { sizeWords } from './picture.js';
import { plainNumber as n, type Markup } from '../page/markup.js';
import { drawingArea } from './drawing-sheet.js';
import { hatchFill, hatchOfLayer } from './hatch.js';
import {
  arrowHead,
  circle,
  letters,
  lettering,
  line,
  lineWidth,
  path,
  plaque,
  type PagePoint,
} from '../page/svg.js';
import { spreadLabels } from './labels.js';
import type { Picture } from './picture.js';
import { scaleOf } from './scale.js';
import { wrapText } from '../page/text-width.js';

export type ViewDirection = 'downstream' | 'upstream';

export interface SectionOptions {
  readonly look: ViewDirection;
  readonly liner: LinerSpecification;
  readonly screw: ScrewSpecification;
  /** Where this liner lies, where others lie along the machine too. */
  readonly where?: string;
}

const face = { width: 150, height: drawingArea.height - 15 } as const;
/** Paper room for the clock's numbers outside the trough. */
const ring = 12;

interface View {
  readonly id: string;
  readonly conveyor: Conveyor;
  readonly options: SectionOptions;
  readonly reduction: number;
  /** Paper place of the trough's centre. */
  readonly centre: PagePoint;
}

export function crossSection(conveyor: Conveyor, options: SectionOptions): Picture {
  const { trough } = conveyor;
  const outside = trough.insideRadius.value + trough.plate.value;
  const scale = scaleOf(
    [2, 5, 10, 20, 50].find(
      (reduction) =>
        2 * Math.max(outside / reduction + ring, (outside + 45) / reduction) <= face.width &&
        (outside + trough.sideHeight.value) / reduction + ring + 2 <= face.height,
    ) ?? 100,
  );
  const clocks = pointsByClock(conveyor, options.look);
  return {
    title: `${conveyor.name}: cross-section, looking ${options.look}`,
    documentType: 'Cross-section',
    scale: scale.text,
    description:
      `Section through ${conveyor.name} looking ${options.look}: ` +
      `trough of ${sizeWords(trough.insideRadius.value, conveyor)} inside radius with ` +
      `${options.liner.layers.map((layer) => `${layer.name} ${sizeWords(layer.thickness.value, conveyor)}`).join(', ')} and a screw of ${sizeWords(options.screw.outsideDiameter.value, conveyor)}.`,
    hatches: ['dots', 'left', 'level', 'cross', 'right', 'steel', 'worn'],
    content(id) {
      const view: View = {
        id,
        conveyor,
        options,
        reduction: scale.reduction,
        centre: [
          drawingArea.x + face.width / 2,
          drawingArea.y + 17 + trough.sideHeight.value / scale.reduction,
        ],
      };
      return [
        letters([drawingArea.x, drawingArea.y + 6], `Looking ${options.look.toUpperCase()}`, {
          size: lettering.title,
          bold: true,
        }),
        letters(
          [drawingArea.x, drawingArea.y + 12],
          options.look === 'downstream'
            ? 'The material moves away from you. 3 o’clock is on your right.'
            : 'The material comes towards you. 3 o’clock is on your right.',
        ),
        ...paintTrough(view),
        ...paintClock(view),
        ...paintScrew(view),
        ...paintWorn(view),
        ...paintPoints(view, clocks),
        ...paintBuildUp(conveyor, options.liner, {
          id,
          x: drawingArea.x + face.width + 6,
          y: drawingArea.y,
          ...(options.where === undefined ? {} : { where: options.where }),
        }),
        ...paintSizes(view),
      ];
    },
  };
}

/** Paper place at a radius (mm of machine, plus mm of paper) and the clock position the viewer sees. */
function place(view: View, seen: number, radius: number, extra = 0): PagePoint {
  const angle = ((seen - 3) * Math.PI) / 6;
  const reach = radius / view.reduction + extra;
  return [view.centre[0] + reach * Math.cos(angle), view.centre[1] + reach * Math.sin(angle)];
}

/** A U: straight sides up to `side` above the centre and a half circle below, mm of machine. */
function trace(view: View, radius: number, side: number): string {
  const [x, y] = view.centre;
  const r = radius / view.reduction;
  return `M${n(x - r)} ${n(y - side / view.reduction)}V${n(y)}A${n(r)} ${n(r)} 0 0 0 ${n(x + r)} ${n(y)}V${n(y - side / view.reduction)}`;
}

function band(view: View, inner: number, outer: number, side: number): string {
  const [x, y] = view.centre;
  const [a, b, top] = [inner / view.reduction, outer / view.reduction, y - side / view.reduction];
  return (
    `M${n(x - b)} ${n(top)}V${n(y)}A${n(b)} ${n(b)} 0 0 0 ${n(x + b)} ` +
    `${n(y)}V${n(top)}H${n(x + a)}V${n(y)}A${n(a)} ${n(a)} 0 0 1 ${n(x - a)} ${n(y)}V${n(top)}Z`
  );
}

function paintTrough(view: View): Markup[] {
  const { trough } = view.conveyor;
  const { liner } = view.options;
  const steel = trough.insideRadius.value;
  const side = trough.sideHeight.value;
  const lined = linerSide(view.conveyor).value;
  const marks = [path(band(view, steel, steel + trough.plate.value, side), { width: 0.2, fill: '#000' })];
  let inner = steel - liner.thickness.value;
  liner.layers.forEach((layer, index) => {
    const outer = Math.min(steel, inner + layer.thickness.value);
    marks.push(
      path(band(view, inner, outer, lined), { width: 0.2, fill: hatchFill(view.id, hatchOfLayer(index)) }),
    );
    inner = outer;
  });
  marks.push(path(trace(view, steel - liner.thickness.value, lined), { width: lineWidth.medium }));
  const y = view.centre[1] - side / view.reduction;
  for (const way of [-1, 1])
    marks.push(
      line(
        [view.centre[0] + (way * steel) / view.reduction, y],
        [view.centre[0] + (way * (steel + 45)) / view.reduction, y],
        { width: 0.8 },
      ),
    );
  if (view.conveyor.covers.length > 0) {
    const reach = (steel + 45) / view.reduction;
    marks.push(
      line([view.centre[0] - reach, y - 1.2], [view.centre[0] + reach, y - 1.2], { width: lineWidth.medium }),
      letters([view.centre[0] + reach, y - 2.4], 'cover', { anchor: 'end' }),
    );
  }
  return marks;
}

/** Numbers from 3 to 9 round the curved part, a tick for every half hour, and the two centre lines. */
function paintClock(view: View): Markup[] {
  const outside = view.conveyor.trough.insideRadius.value + view.conveyor.trough.plate.value;
  const marks: Markup[] = [];
  for (let seen = 3; seen <= 9; seen += 0.5) {
    const hour = Number.isInteger(seen);
    marks.push(
      line(place(view, seen, outside, 1.5), place(view, seen, outside, hour ? 5 : 3.5), {
        width: hour ? lineWidth.thick : lineWidth.thin,
      }),
    );
    if (hour) {
      const [x, y] = place(view, seen, outside, 9);
      marks.push(letters([x, y + 1.8], `${seen}`, { size: lettering.large, anchor: 'middle', bold: true }));
    }
  }
  const side = view.conveyor.trough.sideHeight.value / view.reduction;
  marks.push(
    line([view.centre[0], view.centre[1] - side - 3], place(view, 6, outside, 1), {
      width: 0.18,
      dash: '5 1 1 1',
    }),
    line(place(view, 9, outside, 1), place(view, 3, outside, 1), { width: 0.18, dash: '5 1 1 1' }),
    letters([view.centre[0] + 1.2, view.centre[1] - side + 5], '12', {
      size: lettering.large,
      bold: true,
      rim: true,
    }),
  );
  return marks;
}

/** A spiral without a tube lies on the liner: its centre is below the trough's by the difference of the radii. */
function paintScrew(view: View): Markup[] {
  const { screw, liner } = view.options;
  const radius = screw.outsideDiameter.value / 2;
  const room = view.conveyor.trough.insideRadius.value - liner.thickness.value - radius;
  const drop = screw.kind.kind === 'shaftless' ? room : 0;
  const centre: PagePoint = [view.centre[0], view.centre[1] + drop / view.reduction];
  const marks: Markup[] = [];
  const r = radius / view.reduction;
  if (screw.flight) {
    const inner = (radius - screw.flight.width.value) / view.reduction;
    marks.push(
      path(ringPath(centre, inner, r), { width: 0, fill: '#e6e6e6' }),
      circle(centre, inner, { width: lineWidth.thin }),
    );
  }
  marks.push(circle(centre, r, { width: lineWidth.thick }));
  if (screw.innerFlight) {
    const [outside, inside] = [
      screw.innerFlight.outside.value / 2 / view.reduction,
      screw.innerFlight.inside.value / 2 / view.reduction,
    ];
    marks.push(
      path(ringPath(centre, inside, outside), { width: 0, fill: '#e6e6e6' }),
      circle(centre, outside, { width: lineWidth.thin }),
      circle(centre, inside, { width: lineWidth.thin }),
    );
  }
  if (screw.kind.kind === 'shafted')
    marks.push(
      circle(centre, screw.kind.shaft.value / 2 / view.reduction, {
        width: lineWidth.thick,
        fill: hatchFill(view.id, 'steel'),
      }),
    );
  const turns = rotationSeen(view.conveyor, screw, view.options.look);
  if (turns) {
    const reach = r * 0.7;
    const way = turns === 'clockwise' ? 1 : -1;
    const [start, end] = [-60, 60].map((angle): PagePoint => [
      centre[0] + reach * Math.sin((angle * Math.PI) / 180),
      centre[1] - reach * Math.cos((angle * Math.PI) / 180),
    ]);
    if (start && end) {
      const [from, to] = way > 0 ? [start, end] : [end, start];
      marks.push(
        path(
          `M${n(from[0])} ${n(from[1])}A${n(reach)} ${n(reach)} 0 0 ${way > 0 ? 1 : 0} ${n(to[0])} ${n(to[1])}`,
          { width: lineWidth.thick },
        ),
        arrowHead(to, way > 0 ? 60 : 120, 3.4),
        plaque([centre[0], centre[1] - reach + 1.2], 'turns', { anchor: 'middle' }),
      );
    }
  }
  return marks;
}

function ringPath([x, y]: PagePoint, inner: number, outer: number): string {
  const round = (r: number, sweep: 0 | 1): string =>
    `M${n(x - r)} ${n(y)}A${n(r)} ${n(r)} 0 1 ${sweep} ${n(x + r)} ${n(y)}A${n(r)} ${n(r)} 0 1 ${sweep} ${n(x - r)} ${n(y)}Z`;
  return round(outer, 1) + round(Math.max(inner, 0.01), 0);
}

/**
 * The way the screw is seen to turn: as declared, else from its hand. Seen in the direction of flow a right-hand screw that
 * conveys away from the viewer turns counter-clockwise, a left-hand one clockwise; from the other side it is the reverse.
 */
function rotationSeen(
  conveyor: Conveyor,
  screw: ScrewSpecification,
  look: ViewDirection,
): 'clockwise' | 'counter-clockwise' | undefined {
  const inFlow =
    conveyor.rotation?.sense ??
    (screw.hand === undefined ? undefined : screw.hand === 'right' ? 'counter-clockwise' : 'clockwise');
  if (inFlow === undefined || look === 'downstream') return inFlow;
  return inFlow === 'clockwise' ? 'counter-clockwise' : 'clockwise';
}

function paintWorn(view: View): Markup[] {
  const worn = view.conveyor.wornSector;
  if (!worn) return [];
  const seen = [
    clockAsSeen(worn.from.hours, view.options.look),
    clockAsSeen(worn.to.hours, view.options.look),
  ].sort((a, b) => a - b);
  const [from = 6, to = 6] = seen;
  const inner = view.conveyor.trough.insideRadius.value - view.options.liner.thickness.value;
  const at = (clock: number, extra: number): PagePoint => place(view, clock, inner, extra);
  const [a, b, c, d] = [at(from, -0.3), at(to, -0.3), at(to, -3), at(from, -3)];
  const [outer, lower] = [inner / view.reduction - 0.3, inner / view.reduction - 3];
  return [
    path(
      `M${n(a[0])} ${n(a[1])}A${n(outer)} ${n(outer)} 0 0 1 ${n(b[0])} ${n(b[1])}L${n(c[0])} ${n(c[1])}A${n(lower)} ${n(lower)} 0 0 0 ${n(d[0])} ${n(d[1])}Z`,
      { width: lineWidth.thin, fill: hatchFill(view.id, 'worn') },
    ),
  ];
}

interface ClockGroup {
  /** As the viewer sees it, hours. */
  readonly seen: number;
  readonly names: readonly string[];
}

function pointsByClock(conveyor: Conveyor, look: ViewDirection): readonly ClockGroup[] {
  const groups = new Map<number, string[]>();
  for (const point of conveyor.points) {
    const seen = clockAsSeen(point.clock.hours, look);
    groups.set(seen, [...(groups.get(seen) ?? []), point.name]);
  }
  return [...groups].map(([seen, names]) => ({ seen, names })).sort((a, b) => a.seen - b.seen);
}

function paintPoints(view: View, groups: readonly ClockGroup[]): Markup[] {
  const inner = view.conveyor.trough.insideRadius.value - view.options.liner.thickness.value;
  const marks: Markup[] = [];
  const labels = groups.map(({ seen, names }) => {
    // The names stand inside the trough, on the way to its centre, where the clock's numbers are not in the way.
    const [x, y] = place(view, seen, inner, -7);
    return {
      seen,
      text: names.length <= 2 ? names.join(', ') : `${names.length} points`,
      x,
      y,
      side: x < view.centre[0] - 3 ? 'left' : x > view.centre[0] + 3 ? 'right' : 'bottom',
    } as const;
  });
  for (const label of labels)
    marks.push(
      circle(place(view, label.seen, inner), 1.3, { width: lineWidth.thick, fill: '#fff' }),
      circle(place(view, label.seen, inner), 0.5, { width: 0, fill: '#000' }),
    );
  for (const side of ['left', 'right', 'bottom'] as const) {
    const own = labels.filter((label) => label.side === side).sort((a, b) => a.y - b.y);
    const heights =
      spreadLabels(
        own.map((label) => ({ at: label.y, width: 4.4 })),
        0.3,
        view.centre[1] - 40,
        view.centre[1] + inner / view.reduction,
      ) ?? own.map((label) => label.y);
    own.forEach((label, index) => {
      const y = heights[index] ?? label.y;
      marks.push(
        line(place(view, label.seen, inner, -1.4), [label.x, y - (side === 'bottom' ? -1 : 0)], {
          width: lineWidth.thin,
        }),
        letters(
          [label.x + (side === 'left' ? 1 : side === 'right' ? -1 : 0), y + (side === 'bottom' ? -0.5 : 1.2)],
          label.text,
          { anchor: side === 'left' ? 'start' : side === 'right' ? 'end' : 'middle', bold: true, rim: true },
        ),
      );
    });
  }
  return marks;
}

function paintSizes(view: View): Markup[] {
  const { trough } = view.conveyor;
  const { liner, screw, look } = view.options;
  const x = drawingArea.x + face.width + 6;
  const inner = trough.insideRadius.value - liner.thickness.value;
  const turns = rotationSeen(view.conveyor, screw, look);
  const rows: (readonly [string, string])[] = [
    ['Trough inside radius', sized(view, trough.insideRadius.value)],
    ['Straight side above centre', sized(view, trough.sideHeight.value)],
    ...(bareAbove(view.conveyor) > 0
      ? [
          ['Straight side of the liner', sized(view, linerSide(view.conveyor).value)] as const,
          ['Steel bare above it, each side', sized(view, bareAbove(view.conveyor))] as const,
        ]
      : []),
    ['Radius inside the new liner', sized(view, inner)],
    [`Screw ${screw.name}, outside diameter`, sized(view, screw.outsideDiameter.value)],
    ['Pitch, hand', `${screw.pitch.text}${screw.hand ? `, ${screw.hand}` : ''}`],
    ['Liner radius less screw radius', sized(view, inner - screw.outsideDiameter.value / 2)],
  ];
  const worn = view.conveyor.wornSector;
  if (worn)
    rows.push([
      'Worn sector (hatched), as you see it',
      [worn.from.hours, worn.to.hours]
        .map((hours) => clockAsSeen(hours, look))
        .sort((a, b) => a - b)
        .map(formatClock)
        .join(' to '),
    ]);
  if (turns) rows.push(['Turns, seen this way', turns]);
  const groups = pointsByClock(view.conveyor, look);
  let y = drawingArea.y + 58;
  const marks: Markup[] = [];
  const right = drawingArea.x + drawingArea.width;
  for (const [name, value] of rows) {
    marks.push(
      letters([x, y], name),
      letters([right, y], value, { anchor: 'end', bold: true }),
      line([x, y + 1.5], [right, y + 1.5], { width: 0.15 }),
    );
    y += 6;
  }
  if (groups.length > 0) {
    y += 3;
    marks.push(letters([x, y], 'Points by clock position, as you see it', { bold: true }));
    y += 6;
    for (const { seen, names } of groups) {
      const lines = wrapText(names.join(', '), right - x - 16, lettering.normal);
      for (const [index, text] of lines.entries()) {
        if (y > drawingArea.y + drawingArea.height - 2) return marks;
        if (index === 0) marks.push(letters([x, y], formatClock(seen), { bold: true }));
        marks.push(letters([x + 14, y], text));
        y += 5;
      }
    }
  }
  return marks;
}

function sized({ conveyor }: View, mm: number): string {
  return sizeWords(mm, conveyor);
}
