// The conveyor laid out along its axis, strip below strip: covers, braces, hold-downs, trough with its flanges, panels with
// their numbers, breaks, runs with the way they are fitted, points, access and the chainage scale. Lengths are to scale;
// heights of the rows are not.

import { formatClock, clockAsSeen } from '../../domain/units/clock.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import type { PanelMark, Picture, Pictured } from './picture.js';
import { alongWords, chainageScale, comesOff, panelWords } from './picture.js';
import { unitOfMachine } from '../../domain/model/unit-of-machine.js';
import { drawingArea } from './drawing-sheet.js';
import { hatchFill } from './hatch.js';
import { group, type Markup } from '../page/markup.js';
import {
  arrowHead,
  blank,
  letters,
  lettering,
  line,
  lineWidth,
  plaque,
  polygon,
  rectangle,
} from '../page/svg.js';
import { spreadLabels } from './labels.js';
import { stripsOf } from './strips.js';
import type { Strip } from './strips.js';
import { textWidth } from '../page/text-width.js';

const captionWidth = 21;
const gapBetweenStrips = 2.2;

/** Title, row caption and painter of one row; rows that would stay empty along the whole conveyor are left out. */
interface Row {
  readonly caption: string;
  readonly height: number;
  paint(view: View, y: number): Markup[];
}

interface View extends Strip {
  /** Prefix of the hatches' ids. */
  readonly id: string;
  readonly pictured: Pictured;
  readonly reduction: number;
  /** Paper x of a chainage. */
  x(chainage: number): number;
}

export function alongTheTrough(pictured: Pictured): readonly Picture[] {
  const { conveyor } = pictured;
  const rows = rowsFor(pictured);
  const height = rows.reduce((sum, row) => sum + row.height, 0) + gapBetweenStrips;
  const head = 7;
  const cuts = pictured.runs.flatMap((run) => [
    run.run.from,
    run.run.to,
    ...run.panels.map((panel) => panel.to),
  ]);
  const layout = stripsOf(conveyor.length.value, cuts, drawingArea.width - captionWidth, () =>
    Math.max(1, Math.floor((drawingArea.height - head) / height)),
  );
  return layout.sheets.map((strips, sheet) => ({
    title: `${conveyor.name}: along the trough`,
    documentType: 'Layout along the axis',
    scale: `${layout.scale.text} along`,
    description:
      `${conveyor.name} laid out along its axis from ${alongWords(strips[0]?.from ?? 0, conveyor)} to ` +
      `${alongWords(strips.at(-1)?.to ?? 0, conveyor)} of chainage, part ${sheet + 1} of ${layout.sheets.length}.`,
    hatches: ['worn'],
    content(id) {
      const marks = [
        letters(
          [drawingArea.x, drawingArea.y + 4.5],
          pictured.look === undefined
            ? 'Seen from the right (3 o’clock) side; flow from left to right.'
            : `Seen from the right (3 o’clock) side; flow from left to right. Clock positions as you see them looking ${pictured.look.toUpperCase()}.`,
          {},
        ),
        renewedKey(id, drawingArea.x + drawingArea.width, drawingArea.y + 4.5, pictured.scope.length > 0),
      ];
      strips.forEach((strip, index) => {
        const left = drawingArea.x + captionWidth;
        const view: View = {
          ...strip,
          id,
          pictured,
          reduction: layout.scale.reduction,
          x: (chainage) => left + (chainage - strip.from) / layout.scale.reduction,
        };
        let y = drawingArea.y + head + index * height;
        for (const row of rows) {
          marks.push(
            letters([drawingArea.x, y + row.height / 2 + 1.2], row.caption, {}),
            ...row.paint(view, y),
          );
          y += row.height;
        }
      });
      return marks;
    },
  }));
}

function renewedKey(id: string, right: number, y: number, job: boolean): Markup {
  if (!job) return blank;
  const renewed = textWidth('renewed', lettering.normal);
  const off = textWidth('comes off', lettering.normal);
  const middle = right - renewed - 14;
  return group(
    letters([right - renewed, y], 'renewed'),
    rectangle(right - renewed - 9, y - 3.3, 7, 4, { width: lineWidth.thick, fill: hatchFill(id, 'worn') }),
    letters([middle - off, y], 'comes off'),
    rectangle(middle - off - 9, y - 3.3, 7, 4, { width: lineWidth.thick }),
  );
}

function rowsFor(pictured: Pictured): readonly Row[] {
  const { conveyor } = pictured;
  const rows: Row[] = [];
  if (conveyor.covers.length > 0) rows.push({ caption: 'covers', height: 6, paint: paintCovers });
  if (conveyor.braces.length > 0) rows.push({ caption: 'braces', height: 6, paint: paintBraces });
  if (conveyor.holdDowns.length > 0) rows.push({ caption: 'hold-downs', height: 6.2, paint: paintHoldDowns });
  rows.push({ caption: 'trough', height: 8, paint: paintTrough });
  rows.push({ caption: 'panels', height: 8, paint: paintPanels });
  rows.push({ caption: 'runs', height: 7, paint: paintRuns });
  if (conveyor.points.length > 0) rows.push({ caption: 'points', height: 7.2, paint: paintPoints });
  if (
    conveyor.isolations.some((item) => item.at) ||
    conveyor.liftingPoints.length > 0 ||
    conveyor.hatches.length > 0
  )
    rows.push({ caption: 'other', height: 6.8, paint: paintOthers });
  if (conveyor.access.length > 0) rows.push({ caption: 'access', height: 6, paint: paintAccess });
  rows.push({
    caption: unitOfMachine(conveyor) === 'mm' ? 'metres' : 'feet',
    height: 7.4,
    paint: paintChainage,
  });
  return rows;
}

function paintCovers(view: View, y: number): Markup[] {
  return boxes(view, y + 0.6, 4.8, view.pictured.conveyor.covers, 'C');
}

function paintBraces(view: View, y: number): Markup[] {
  return symbols(
    view,
    view.pictured.conveyor.braces,
    'B',
    (x, off) => [
      line([x - 1, y + 1], [x + 1, y + 1], { width: off ? lineWidth.thick : lineWidth.thin }),
      line([x, y + 1], [x, y + 5.4], { width: off ? lineWidth.thick : lineWidth.thin }),
      line([x - 1, y + 5.4], [x + 1, y + 5.4], { width: off ? lineWidth.thick : lineWidth.thin }),
    ],
    y + 4.6,
  );
}

function paintHoldDowns(view: View, y: number): Markup[] {
  return symbols(
    view,
    view.pictured.conveyor.holdDowns,
    'H',
    (x, off) => [
      polygon(
        [
          [x - 1.3, y + 3],
          [x + 1.3, y + 3],
          [x, y + 5.8],
        ],
        { width: lineWidth.thin, fill: off ? '#000' : '#fff' },
      ),
    ],
    y + 4.4,
  );
}

function paintTrough(view: View, y: number): Markup[] {
  const { conveyor } = view.pictured;
  const top = y + 0.8;
  const bottom = y + 7.2;
  const marks = [
    line([view.x(view.from), top], [view.x(view.to), top], { width: lineWidth.medium }),
    line([view.x(view.from), bottom], [view.x(view.to), bottom], { width: lineWidth.thick }),
  ];
  for (const end of [0, conveyor.length.value])
    if (inView(view, end))
      marks.push(line([view.x(end), top - 0.8], [view.x(end), bottom + 0.8], { width: 1 }));
  for (const section of conveyor.sections) {
    const to = section.start + section.length.value;
    if (to < conveyor.length.value - 1 && inView(view, to)) {
      marks.push(
        ...[-0.4, 0.4].map((side) =>
          line([view.x(to) + side, top - 0.8], [view.x(to) + side, bottom + 0.8], {
            width: lineWidth.medium,
          }),
        ),
      );
    }
    const shown = clipped(view, section.start, to);
    if (shown)
      marks.push(
        fitted(
          `${section.name} ${alongWords(section.length.value, view.pictured.conveyor)}`,
          section.name,
          shown,
          y + 5.3,
        ),
      );
  }
  return marks;
}

function paintPanels(view: View, y: number): Markup[] {
  const marks: Markup[] = [];
  for (const { panels } of view.pictured.runs) {
    for (const panel of panels) {
      const shown = clipped(view, panel.from, panel.to);
      if (!shown) continue;
      marks.push(
        rectangle(shown.from, y + 1, shown.to - shown.from, 6.5, {
          width: panel.renewed ? lineWidth.thick : lineWidth.thin,
          fill: panel.renewed && view.pictured.scope.length > 0 ? hatchFill(view.id, 'worn') : '#fff',
        }),
      );
      marks.push(panelLabel(panel, shown, y, view.pictured.conveyor));
    }
  }
  for (const gap of view.pictured.conveyor.breaks) {
    const shown = clipped(view, gap.from.value, gap.to.value);
    if (!shown || shown.to - shown.from < 0.3) continue;
    marks.push(
      rectangle(shown.from, y + 1, shown.to - shown.from, 6.5, {
        width: lineWidth.thin,
        dash: '1 0.7',
        fill: '#fff',
      }),
      line([shown.from, y + 1], [shown.to, y + 7.5], { width: lineWidth.thin }),
      line([shown.from, y + 7.5], [shown.to, y + 1], { width: lineWidth.thin }),
    );
  }
  return marks;
}

function paintRuns(view: View, y: number): Markup[] {
  const marks: Markup[] = [];
  for (const { run, fitFrom } of view.pictured.runs) {
    const shown = clipped(view, run.from, run.to);
    if (!shown) continue;
    const middle = y + 4.2;
    marks.push(
      line([shown.from, middle], [shown.to, middle], { width: lineWidth.thin }),
      line([shown.from, y + 1], [shown.from, y + 7], { width: lineWidth.thin }),
      line([shown.to, y + 1], [shown.to, y + 7], { width: lineWidth.thin }),
    );
    const wordings = [
      ...(fitFrom
        ? [
            `run ${run.number}, fit from the ${fitFrom} (${run.tailBreak.name} to ${run.headBreak.name}, ${alongWords(run.length, view.pictured.conveyor)})`,
            `run ${run.number}, fit from the ${fitFrom}`,
          ]
        : []),
      `run ${run.number} (${run.tailBreak.name} to ${run.headBreak.name}, ${alongWords(run.length, view.pictured.conveyor)})`,
      `run ${run.number}`,
    ];
    const text = wordings.find(
      (wording) => textWidth(wording, lettering.normal) < shown.to - shown.from - (fitFrom ? 14 : 2),
    );
    const clear = text ? textWidth(text, lettering.normal) / 2 + 2 : 0;
    const centre = (shown.from + shown.to) / 2;
    if (fitFrom) {
      for (let x = shown.from + 5; x < shown.to - 3; x += 20) {
        if (x > centre - clear - 3 && x < centre + clear + 3) continue;
        marks.push(
          arrowHead([fitFrom === 'tail' ? x + 1.5 : x - 1.5, middle], fitFrom === 'tail' ? 0 : 180, 3),
        );
      }
    }
    if (text) marks.push(plaque([centre, y + 5.4], text, { anchor: 'middle' }));
  }
  const named = view.pictured.conveyor.breaks.filter(
    (gap) => gap.to.value > gap.from.value && clipped(view, gap.from.value, gap.to.value),
  );
  for (const gap of named) {
    const shown = clipped(view, gap.from.value, gap.to.value);
    if (shown) marks.push(fitted(gap.name, gap.name, shown, y + 5.4));
  }
  return marks;
}

function paintPoints(view: View, y: number): Markup[] {
  const points = view.pictured.conveyor.points
    .filter((point) => inView(view, point.at.value))
    .sort((a, b) => a.at.value - b.at.value);
  const { look = 'downstream' } = view.pictured;
  const labels = points.map((point) => `${point.name} ${formatClock(clockAsSeen(point.clock.hours, look))}`);
  return spreadOut(
    view,
    points.map((point) => point.at.value),
    labels,
    points.map((point) => point.name),
    y + 6.6,
    (x) => [
      line([x - 0.9, y + 1.2], [x + 0.9, y + 1.2], { width: lineWidth.medium }),
      line([x, y + 0.3], [x, y + 2.1], { width: lineWidth.medium }),
    ],
    y + 2.3,
  );
}

function paintOthers(view: View, y: number): Markup[] {
  const { conveyor } = view.pictured;
  const items = [
    ...conveyor.isolations.flatMap((item) =>
      item.at ? [{ at: item.at.value, label: `isolation ${item.name}` }] : [],
    ),
    ...conveyor.liftingPoints.map((item) => ({
      at: item.at.value,
      label: `lift ${item.name} ${Math.round(item.limit.value)} kg`,
    })),
    ...conveyor.hatches.map((item) => ({
      at: (item.from.value + item.to.value) / 2,
      label: `hatch ${item.name ?? ''}`.trim(),
    })),
  ]
    .filter((item) => inView(view, item.at))
    .sort((a, b) => a.at - b.at);
  return spreadOut(
    view,
    items.map((item) => item.at),
    items.map((item) => item.label),
    items.map((item) => item.label.split(' ')[1] ?? ''),
    y + 6,
    (x) => [
      polygon(
        [
          [x, y + 0.3],
          [x + 1, y + 1.3],
          [x, y + 2.3],
          [x - 1, y + 1.3],
        ],
        { width: lineWidth.thin, fill: '#000' },
      ),
    ],
    y + 2.3,
  );
}

function paintAccess(view: View, y: number): Markup[] {
  const marks: Markup[] = [];
  for (const zone of view.pictured.conveyor.access) {
    const shown = clipped(view, zone.from.value, zone.to.value);
    if (!shown) continue;
    marks.push(
      rectangle(shown.from, y + 0.8, shown.to - shown.from, 5, {
        width: lineWidth.thin,
        dash: accessDash[zone.kind],
        fill: '#fff',
      }),
    );
    const name = zone.name ?? zone.kind;
    marks.push(
      fitted(
        `${name}: ${zone.kind}${zone.height ? `, ${alongWords(zone.height.value, view.pictured.conveyor)} up` : ''}`,
        name,
        shown,
        y + 4.6,
      ),
    );
  }
  return marks;
}

const accessDash = {
  ground: '',
  stairs: '',
  platform: '',
  'mobile platform': '2 1',
  scaffold: '0.6 0.6',
} as const;

function paintChainage(view: View, y: number): Markup[] {
  const { spacing, words } = chainageScale(view.pictured.conveyor, view.reduction, 12);
  const marks = [line([view.x(view.from), y + 1.5], [view.x(view.to), y + 1.5], { width: lineWidth.medium })];
  const minor = spacing / 5;
  for (let at = Math.ceil(view.from / minor - 1e-9) * minor; at <= view.to + 1e-6; at += minor) {
    const major = Math.abs(at / spacing - Math.round(at / spacing)) < 1e-6;
    marks.push(line([view.x(at), y + 1.5], [view.x(at), y + (major ? 3.4 : 2.4)], { width: lineWidth.thin }));
    if (major) marks.push(letters([view.x(at), y + 7], words(at), { anchor: 'middle' }));
  }
  return marks;
}

interface Spanning {
  readonly name?: string;
  readonly from: { readonly value: number };
  readonly to: { readonly value: number };
}

/** Number and length where they fit; a closing panel keeps its C however narrow it is. */
function panelLabel(
  panel: PanelMark,
  room: { from: number; to: number },
  y: number,
  conveyor: Conveyor,
): Markup {
  const { number, closing, renewed } = panel;
  const name = closing ? `${number} C` : `${number}`;
  const fits = (text: string, size: number): boolean =>
    textWidth(text, size) * (renewed ? 1.06 : 1) <= room.to - room.from - 1;
  if (!closing || fits(name, lettering.normal))
    return fitted(`${name} · ${panelWords(panel.length, conveyor)}`, name, room, y + 5.5, renewed);
  const style = { anchor: 'middle', bold: renewed, rim: true, size: lettering.caption } as const;
  const middle = (room.from + room.to) / 2;
  return fits(`${number}`, lettering.caption)
    ? group(letters([middle, y + 3.9], `${number}`, style), letters([middle, y + 6.9], 'C', style))
    : letters([middle, y + 5.3], 'C', style);
}

function boxes(view: View, y: number, height: number, spans: readonly Spanning[], letter: string): Markup[] {
  // Letter and number where that fits the narrowest box, else numbers alone, so that one row reads one way.
  const narrowest = Math.min(...spans.map((span) => (span.to.value - span.from.value) / view.reduction));
  const lettered = textWidth(`${letter}${spans.length}`, lettering.normal) * 1.06 + 1 <= narrowest;
  return spans.flatMap((span, index) => {
    const shown = clipped(view, span.from.value, span.to.value);
    if (!shown) return [];
    const off = comesOff(view.pictured, span.from.value, span.to.value);
    const name = span.name ?? (lettered ? `${letter}${index + 1}` : `${index + 1}`);
    return [
      rectangle(shown.from, y, shown.to - shown.from, height, {
        width: off ? lineWidth.thick : lineWidth.thin,
        fill: '#fff',
      }),
      fitted(name, `${index + 1}`, shown, y + height - 1.2, off),
    ];
  });
}

/** Point-like parts with numbers to the right of the symbol; numbers thin out before they touch. */
function symbols(
  view: View,
  spans: readonly Spanning[],
  letter: string,
  paint: (x: number, off: boolean) => Markup[],
  foot: number,
): Markup[] {
  const marks: Markup[] = [];
  let free = -Infinity;
  spans.forEach((span, index) => {
    const at = (span.from.value + span.to.value) / 2;
    if (!inView(view, at)) return;
    const x = view.x(at);
    marks.push(...paint(x, comesOff(view.pictured, span.from.value, span.to.value)));
    const name = span.name ?? `${letter}${index + 1}`;
    const width = textWidth(name, lettering.normal);
    const next = spans.slice(index + 1).find((other) => other.from.value > at);
    const room = next && inView(view, next.from.value) ? view.x(next.from.value) - 1.6 : Infinity;
    if (x + 1.7 < free || x + 1.7 + width > room) return;
    free = x + 1.7 + width + 1;
    marks.push(letters([x + 1.7, foot], name));
  });
  return marks;
}

/** Labels below their symbols, moved aside where they would touch, shortened or left to their symbols where too many. */
function spreadOut(
  view: View,
  at: readonly number[],
  long: readonly string[],
  short: readonly string[],
  foot: number,
  paint: (x: number) => Markup[],
  stem: number,
): Markup[] {
  const marks = at.flatMap((chainage) => paint(view.x(chainage)));
  for (const texts of [long, short]) {
    const middles = spreadLabels(
      texts.map((text, index) => ({ at: view.x(at[index] ?? 0), width: textWidth(text, lettering.normal) })),
      1.5,
      view.x(view.from) - 2,
      Math.max(view.x(view.to), drawingArea.x + drawingArea.width - 2),
    );
    if (!middles) continue;
    texts.forEach((text, index) => {
      const x = view.x(at[index] ?? 0);
      const middle = middles[index] ?? x;
      if (Math.abs(middle - x) > 1)
        marks.push(line([x, stem], [middle, foot - 2.9], { width: lineWidth.thin }));
      marks.push(letters([middle, foot], text, { anchor: 'middle' }));
    });
    break;
  }
  return marks;
}

function inView(view: View, chainage: number): boolean {
  return chainage >= view.from - 1e-6 && chainage <= view.to + 1e-6;
}

/** Paper x of the part of a span that this strip shows. */
function clipped(view: View, from: number, to: number): { from: number; to: number } | undefined {
  const start = Math.max(from, view.from);
  const end = Math.min(to, view.to);
  return end > start ? { from: view.x(start), to: view.x(end) } : undefined;
}

/** The long text where it fits, else the short one, else nothing. */
function fitted(
  long: string,
  short: string,
  room: { from: number; to: number },
  foot: number,
  bold = false,
): Markup {
  const width = room.to - room.from - 1;
  const text = [long, short].find(
    (wording) => textWidth(wording, lettering.normal) * (bold ? 1.06 : 1) <= width,
  );
  return text
    ? letters([(room.from + room.to) / 2, foot], text, { anchor: 'middle', bold, rim: true })
    : blank;
}
