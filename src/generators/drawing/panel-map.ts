// The liner unrolled: chainage along, sheet width across, both at the same scale. Seen from above with the flow from left to
// right, so 9 o'clock lies at the top and 3 o'clock at the bottom. Panels with numbers and lengths, joints, flanges, bolt rows,
// points, the worn sector and the breaks.

import { linerSide } from '../../domain/model/liner-side.js';
import { sheetOffset } from '../../domain/geometry/trough.js';
import { formatClock } from '../../domain/units/clock.js';
import type { LinerSpecification } from '../../domain/model/specifications.js';
import { drawingArea } from './drawing-sheet.js';
import { hatchFill } from './hatch.js';
import { element, type Markup } from '../page/markup.js';
import { blank, circle, letters, lettering, line, lineWidth, rectangle } from '../page/svg.js';
import { freeSpot, spreadLabels, type CoveredMark, type LabelSpot } from './labels.js';
import type { PanelMark, Picture, Pictured } from './picture.js';
import { unitOfMachine } from '../../domain/model/unit-of-machine.js';
import { lengthWords } from '../../domain/units/length-words.js';
import { alongWords, chainageScale, panelWords } from './picture.js';
import { stripsOf } from './strips.js';
import type { Strip } from './strips.js';
import { textWidth } from '../page/text-width.js';

const left = 15;
const head = 9;
/** Paper room of a strip beside the sheet itself: point names above, chainage below. */
const besides = 19;

interface View extends Strip {
  readonly id: string;
  readonly pictured: Pictured;
  readonly liner: LinerSpecification;
  readonly reduction: number;
  x(chainage: number): number;
  /** Paper y of a distance across the sheet from the 6 o'clock line, mm, positive towards 9 o'clock. */
  y(offset: number): number;
  /** Half the sheet's width, mm. */
  readonly half: number;
}

export function panelMap(pictured: Pictured, liner: LinerSpecification): readonly Picture[] {
  const { conveyor } = pictured;
  // Width of the flat sheet, measured along its middle: half circle and two straight sides.
  const half =
    (Math.PI / 2) * (conveyor.trough.insideRadius.value - liner.thickness.value / 2) +
    linerSide(conveyor).value;
  const cuts = pictured.runs.flatMap((run) => [
    run.run.from,
    run.run.to,
    ...run.panels.map((panel) => panel.to),
  ]);
  const heightAt = (reduction: number): number => (2 * half) / reduction + besides;
  const layout = stripsOf(conveyor.length.value, cuts, drawingArea.width - left - 2, (reduction) =>
    Math.floor((drawingArea.height - head) / heightAt(reduction)),
  );
  return layout.sheets.map((strips, sheet) => ({
    title: `${conveyor.name}: liner unrolled`,
    documentType: 'Panel map',
    scale: layout.scale.text,
    description:
      `The liner of ${conveyor.name} unrolled, ` +
      `${alongWords(strips[0]?.from ?? 0, conveyor)} to ${alongWords(strips.at(-1)?.to ?? 0, conveyor)}, ` +
      `part ${sheet + 1} of ${layout.sheets.length}; sheet width ${lengthWords(Math.round(2 * half), unitOfMachine(conveyor))}.`,
    hatches: ['worn', 'dots'],
    height: drawingArea.y + head + strips.length * heightAt(layout.scale.reduction) + 2,
    content(id) {
      const marks = [
        letters(
          [drawingArea.x, drawingArea.y + 4.5],
          `Seen from above, flow from left to right; 9 o’clock above, 3 o’clock below. Sheet width ${lengthWords(Math.round(2 * half), unitOfMachine(conveyor))}. C: closing panel.`,
        ),
      ];
      strips.forEach((strip, index) => {
        const top = drawingArea.y + head + index * heightAt(layout.scale.reduction) + 7;
        const view: View = {
          ...strip,
          id,
          pictured,
          liner,
          half,
          reduction: layout.scale.reduction,
          x: (chainage) => drawingArea.x + left + (chainage - strip.from) / layout.scale.reduction,
          y: (offset) => top + (half - offset) / layout.scale.reduction,
        };
        marks.push(
          ...paintWorn(view),
          ...paintPanels(view),
          ...paintBreaks(view),
          ...paintClockLines(view),
          ...paintJoints(view),
          ...paintPoints(view),
          ...paintChainage(view),
        );
      });
      return marks;
    },
  }));
}

/** Across the sheet from the 6 o'clock line, mm, positive towards 9 o'clock; positions above 9 or 3 stand at the edge of the arc. */
function across(view: View, hours: number): number {
  const radius = view.pictured.conveyor.trough.insideRadius.value - view.liner.thickness.value / 2;
  if (radius <= 0) return 0; // a liner thicker than its trough is told elsewhere, and has no sheet to lay flat
  return -(sheetOffset(radius, Math.min(9, Math.max(3, hours))) ?? 0);
}

function paintPanels(view: View): Markup[] {
  const marks: Markup[] = [];
  const top = view.y(view.half);
  const height = view.y(-view.half) - top;
  for (const { panels } of view.pictured.runs) {
    for (const panel of panels) {
      const span = clipped(view, panel.from, panel.to);
      if (!span) continue;
      const renewed = panel.renewed && view.pictured.scope.length > 0;
      marks.push(
        rectangle(span.from, top, span.to - span.from, height, {
          width: renewed ? lineWidth.border : lineWidth.thin,
        }),
      );
      marks.push(...boltRows(view, panel.from, panel.to));
      marks.push(...panelLabels(view, panel, span));
    }
  }
  return marks;
}

/** The number on the curve and the length on a straight side, clear of the points; a closing panel keeps its C however narrow. */
function panelLabels(view: View, panel: PanelMark, span: { from: number; to: number }): readonly Markup[] {
  const room = span.to - span.from - 1;
  const side = view.y(-view.half) - view.y(across(view, 3));
  const arc = view.y(across(view, 3)) - view.y(0);
  const small = arc < 4.6 || side < 3.6;
  const label = (text: string, at: 'curve' | 'side', size: number): Markup => {
    const spots = small ? smallSpots(view, span, at) : spotsOf(view, span, at, side);
    const width = textWidth(text, size);
    const inside = spots.filter(
      ({ x }) => x - width / 2 >= span.from + 0.4 && x + width / 2 <= span.to - 0.4,
    );
    const spot = freeSpot(
      inside.length > 0 ? inside : spots.slice(0, 1),
      { width, height: size * 0.75 },
      marksOf(view),
    );
    // A length that finds no free place stands in the panel list.
    return spot && (spot.free || at === 'curve')
      ? letters([spot.x, spot.foot], text, { size, anchor: 'middle', bold: at === 'curve', rim: true })
      : blank;
  };
  const length = panelWords(panel.length, view.pictured.conveyor);
  const lengthShown =
    textWidth(length, lettering.normal) <= room ? [label(length, 'side', lettering.normal)] : [];
  const name = panel.closing ? `${panel.number} C` : `${panel.number}`;
  const size = [small ? lettering.normal : lettering.large, lettering.normal].find(
    (each) => textWidth(name, each) <= room,
  );
  if (size !== undefined) return [label(name, 'curve', size), ...lengthShown];
  const number = `${panel.number}`;
  if (!panel.closing)
    return textWidth(number, lettering.normal) <= room
      ? [label(number, 'curve', lettering.normal), ...lengthShown]
      : lengthShown;
  // Number and C below each other, or the C alone.
  const middle = (span.from + span.to) / 2;
  const style = { size: lettering.caption, anchor: 'middle', bold: true, rim: true } as const;
  const foot = view.y(0) - 1;
  return [
    ...(textWidth(number, lettering.caption) <= room ? [letters([middle, foot - 3.2], number, style)] : []),
    letters([middle, foot], 'C', style),
    ...lengthShown,
  ];
}

/** Below six o'clock, above it, and beside the middle of the panel. */
function spotsOf(
  view: View,
  span: { from: number; to: number },
  at: 'curve' | 'side',
  side: number,
): readonly LabelSpot[] {
  const middle = (span.from + span.to) / 2;
  const quarter = (span.to - span.from) / 4;
  const feet =
    at === 'curve'
      ? [(view.y(0) + view.y(across(view, 3))) / 2 + 1.8, (view.y(0) + view.y(across(view, 9))) / 2 + 1.8]
      : [view.y(-view.half) - (side - 2.6) * 0.62, view.y(view.half) + 2.6 + (side - 2.6) * 0.38];
  return feet.flatMap((foot) => [middle, middle - quarter, middle + quarter].map((x) => ({ x, foot })));
}

/** On a small sheet both stand in its middle, one above the other. */
function smallSpots(
  view: View,
  span: { from: number; to: number },
  at: 'curve' | 'side',
): readonly LabelSpot[] {
  const middle = (span.from + span.to) / 2;
  const quarter = (span.to - span.from) / 4;
  const centre = (view.y(view.half) + view.y(-view.half)) / 2;
  const feet = at === 'curve' ? [centre - 0.3, centre - 1.4, centre + 3.9] : [centre + 3.4, centre + 3.9];
  return feet.flatMap((foot) => [middle, middle - quarter, middle + quarter].map((x) => ({ x, foot })));
}

/** The crosses of the points on this strip. */
function marksOf(view: View): readonly CoveredMark[] {
  return view.pictured.conveyor.points.map((point) => ({
    x: view.x(point.at.value),
    y: view.y(across(view, point.clock.hours)),
    half: 1.5,
  }));
}

/** Bolts at the declared pitch in the declared number of rows, the outer rows near the sheet's edges (rows as declared, edge 40 mm assumed). */
function boltRows(view: View, from: number, to: number): Markup[] {
  const rows = view.liner.bolt?.rows?.count;
  const pitch = view.liner.bolt?.pitch?.value;
  if (!rows || !pitch || pitch / view.reduction < 1.2) return [];
  const count = Math.max(2, Math.round((to - from) / pitch));
  const marks: Markup[] = [];
  for (let row = 0; row < rows; row++) {
    const offset = rows === 1 ? 0 : view.half - 40 - (row * (2 * view.half - 80)) / (rows - 1);
    for (let i = 0; i < count; i++) {
      const at = from + ((i + 0.5) * (to - from)) / count;
      if (at >= view.from && at <= view.to)
        marks.push(circle([view.x(at), view.y(offset)], 0.45, { width: 0.2 }));
    }
  }
  return marks;
}

function paintBreaks(view: View): Markup[] {
  return view.pictured.conveyor.breaks.flatMap((gap) => {
    const span = clipped(view, gap.from.value, gap.to.value);
    if (!span || span.to - span.from < 0.3) return [];
    const [top, bottom] = [view.y(view.half), view.y(-view.half)];
    const turned = textWidth(gap.name, lettering.normal) > span.to - span.from - 1;
    const middle = (span.from + span.to) / 2;
    return [
      rectangle(span.from, top, span.to - span.from, bottom - top, {
        width: lineWidth.thin,
        dash: '1.5 1',
        fill: '#fff',
      }),
      line([span.from, top], [span.to, bottom], { width: 0.18 }),
      line([span.from, bottom], [span.to, top], { width: 0.18 }),
      turned
        ? letters([middle + 1.2, (top + bottom) / 2 + textWidth(gap.name, lettering.normal) / 2], gap.name, {
            turn: -90,
            rim: true,
            bold: true,
          })
        : letters([middle, (top + bottom) / 2 + 1.2], gap.name, { anchor: 'middle', rim: true, bold: true }),
    ];
  });
}

function paintWorn(view: View): Markup[] {
  const worn = view.pictured.conveyor.wornSector;
  if (!worn) return [];
  const [a, b] = [across(view, worn.from.hours), across(view, worn.to.hours)];
  return view.pictured.runs.flatMap(({ run }) => {
    const span = clipped(view, run.from, run.to);
    return span
      ? [
          rectangle(
            span.from,
            view.y(Math.max(a, b)),
            span.to - span.from,
            Math.abs(a - b) / view.reduction,
            { width: 0, fill: hatchFill(view.id, 'worn') },
          ),
        ]
      : [];
  });
}

function paintClockLines(view: View): Markup[] {
  const hours = (view.half / view.reduction) * 2 > 26 ? [3, 4, 5, 6, 7, 8, 9] : [3, 6, 9];
  return hours.flatMap((hour) => {
    const y = view.y(across(view, hour));
    const edge = hour === 3 || hour === 9;
    return [
      line([view.x(view.from), y], [view.x(view.to), y], {
        width: 0.18,
        dash: hour === 6 ? '6 1 1 1' : edge ? '3 1' : '0.8 1.2',
      }),
      letters([view.x(view.from) - 1.5, y + 1.2], formatClock(hour), { anchor: 'end', bold: hour === 6 }),
    ];
  });
}

function paintJoints(view: View): Markup[] {
  const [top, bottom] = [view.y(view.half), view.y(-view.half)];
  return view.pictured.conveyor.sections.flatMap((section) => {
    const at = section.start + section.length.value;
    if (at >= view.pictured.conveyor.length.value - 1 || at < view.from || at > view.to) return [];
    return [-0.3, 0.3].map((side) =>
      line([view.x(at) + side, top - 1.5], [view.x(at) + side, bottom + 1.5], { width: 0.25, dash: '2 0.8' }),
    );
  });
}

function paintPoints(view: View): Markup[] {
  const points = view.pictured.conveyor.points
    .filter((point) => point.at.value >= view.from && point.at.value < view.to + 1e-6)
    .sort((a, b) => a.at.value - b.at.value);
  const foot = view.y(view.half) - 2.6;
  const marks: Markup[] = [];
  for (const point of points) {
    const [x, y] = [view.x(point.at.value), view.y(across(view, point.clock.hours))];
    marks.push(
      element(
        'g',
        { class: 'point-mark' },
        line([x - 1.2, y], [x + 1.2, y], { width: lineWidth.thick }),
        line([x, y - 1.2], [x, y + 1.2], { width: lineWidth.thick }),
      ),
    );
  }
  const middles = spreadLabels(
    points.map((point) => ({ at: view.x(point.at.value), width: textWidth(point.name, lettering.normal) })),
    1.4,
    view.x(view.from) - 4,
    drawingArea.x + drawingArea.width,
  );
  if (middles)
    points.forEach((point, index) =>
      marks.push(
        letters([middles[index] ?? 0, foot], point.name, { anchor: 'middle' }),
        line([middles[index] ?? 0, foot + 0.7], [view.x(point.at.value), view.y(view.half)], { width: 0.18 }),
      ),
    );
  return marks;
}

function paintChainage(view: View): Markup[] {
  const y = view.y(-view.half) + 2.2;
  const { spacing, unit, words } = chainageScale(view.pictured.conveyor, view.reduction, 12);
  const marks = [letters([view.x(view.from) - 1.5, y + 5], unit, { anchor: 'end' })];
  for (let at = Math.ceil(view.from / spacing - 1e-9) * spacing; at <= view.to + 1e-6; at += spacing) {
    marks.push(
      line([view.x(at), y - 1], [view.x(at), y + 1], { width: lineWidth.thin }),
      letters([view.x(at), y + 5], words(at), { anchor: 'middle' }),
    );
  }
  return marks;
}

function clipped(view: View, from: number, to: number): { from: number; to: number } | undefined {
  const [start, end] = [Math.max(from, view.from), Math.min(to, view.to)];
  return end > start ? { from: view.x(start), to: view.x(end) } : undefined;
}
