// The spiral laid along the axis with the cuts, each piece's number, length, mass and centre of gravity, the lifting points and
// what they carry, and what the cuts keep clear of: hold-downs and the edges of access zones. Lengths are to scale.

import type { Conveyor } from '../../domain/model/conveyor.js';
import type { ScrewSpecification } from '../../domain/model/specifications.js';
import { formatMass } from '../../domain/units/format.js';
import { element, plainNumber as n, type Markup } from '../page/markup.js';
import { drawingArea } from './drawing-sheet.js';
import {
  blank,
  circle,
  letters,
  lettering,
  line,
  lineWidth,
  path,
  plaque,
  polygon,
  rectangle,
  together,
} from '../page/svg.js';
import { spreadLabels } from './labels.js';
import type { Picture } from './picture.js';
import { alongWords, chainageScale } from './picture.js';
import type { Strip } from './strips.js';
import { stripsOf } from './strips.js';
import { textWidth } from '../page/text-width.js';

export interface LiftedSpiral {
  readonly number: number;
  /** Chainages, mm. */
  readonly from: number;
  readonly to: number;
  readonly centre: number;
  /** kg. */
  readonly mass: number;
  readonly liftingPoint: string | undefined;
  readonly limit: number | undefined;
  readonly withinLimit: boolean;
}

const left = 14;
const head = 9;
/** Paper heights of a strip's rows, mm. */
const lifts = 13;
const spiral = 17;
const below = 27;
const stripHeight = lifts + spiral + below + 3;

interface View extends Strip {
  /** Prefix of ids, unique on a page. */
  readonly id: string;
  readonly conveyor: Conveyor;
  readonly screw: ScrewSpecification;
  readonly reduction: number;
  readonly top: number;
  x(chainage: number): number;
}

export function spiralLift(
  conveyor: Conveyor,
  screw: ScrewSpecification,
  pieces: readonly LiftedSpiral[],
): readonly Picture[] {
  if (pieces.length === 0) return [];
  const layout = stripsOf(
    conveyor.length.value,
    pieces.map((piece) => piece.to),
    drawingArea.width - left - 2,
    () => Math.floor((drawingArea.height - head) / stripHeight),
  );
  return layout.sheets.map((strips) => ({
    title: `${conveyor.name}: spiral, cuts and lifts`,
    documentType: 'Lift drawing',
    scale: `${layout.scale.text} along`,
    description:
      `Spiral of ${conveyor.name} in ${pieces.length} pieces: ` +
      `${pieces.map((piece) => `${piece.number}, ${alongWords(piece.to - piece.from, conveyor)}, ${formatMass(piece.mass)}`).join('; ')}.`,
    hatches: [],
    content: (id) => [
      letters(
        [drawingArea.x, drawingArea.y + 4.5],
        'Calculated masses without wear or clinging material. Competent lift planning comes first; trial lift; nobody under or beside the load.',
      ),
      ...strips.flatMap((strip, index) =>
        paintStrip(
          {
            ...strip,
            id,
            conveyor,
            screw,
            reduction: layout.scale.reduction,
            top: drawingArea.y + head + index * stripHeight,
            x: (chainage) => drawingArea.x + left + (chainage - strip.from) / layout.scale.reduction,
          },
          pieces,
        ),
      ),
    ],
  }));
}

function paintStrip(view: View, pieces: readonly LiftedSpiral[]): Markup[] {
  const middle = view.top + lifts + spiral / 2;
  return [
    ...paintSpiral(view, middle),
    ...paintPieces(view, pieces, middle),
    ...paintLiftingPoints(view, middle),
    ...paintKeepClear(view, middle),
    ...paintChainage(view),
  ];
}

/** Outer edge of the flight as a wave of the screw's own pitch, its height cut down to the row where the scale would burst it. */
function paintSpiral(view: View, middle: number): Markup[] {
  const half = Math.min(view.screw.outsideDiameter.value / view.reduction, spiral - 3) / 2;
  const pitch = view.screw.pitch.value;
  if (pitch / view.reduction < 1.4)
    return [
      rectangle(view.x(view.from), middle - half, view.x(view.to) - view.x(view.from), 2 * half, {
        width: lineWidth.thin,
      }),
    ];
  const marks: Markup[] = [];
  const wave = (phase: number, width: number, dash = ''): Markup => {
    const first = Math.floor(view.from / pitch) * pitch + phase * pitch;
    let d = '';
    for (let at = first - pitch; at < view.to + pitch; at += pitch / 2) {
      const [x, next] = [view.x(at), view.x(at + pitch / 2)];
      const up = Math.round((at - first) / (pitch / 2)) % 2 === 0 ? -1 : 1;
      const bend = (next - x) * 0.3642;
      d +=
        `${d === '' ? `M${n(x)} ${n(middle + up * half)}` : ''}C${n(x + bend)} ${n(middle + up * half)} ` +
        `${n(next - bend)} ${n(middle - up * half)} ${n(next)} ${n(middle - up * half)}`;
    }
    return path(d, { width, dash });
  };
  const id = `${view.id}-clip-${n(view.from)}`;
  marks.push(
    element(
      'clipPath',
      { id },
      element('rect', {
        x: view.x(view.from),
        y: middle - half - 1,
        width: view.x(view.to) - view.x(view.from),
        height: 2 * half + 2,
      }),
    ),
    together([wave(0, lineWidth.thick), wave(0.12, lineWidth.thin)], { clip: id }),
    line([view.x(view.from), middle - half], [view.x(view.to), middle - half], { width: 0.18, dash: '4 1' }),
    line([view.x(view.from), middle + half], [view.x(view.to), middle + half], { width: 0.18, dash: '4 1' }),
  );
  return marks;
}

function paintPieces(view: View, pieces: readonly LiftedSpiral[], middle: number): Markup[] {
  const marks: Markup[] = [];
  const foot = middle + spiral / 2;
  for (const piece of pieces) {
    for (const [at, end] of [
      [piece.from, false],
      [piece.to, true],
    ] as const) {
      if (
        at < view.from - 1 ||
        at > view.to + 1 ||
        (end && at < view.conveyor.length.value - 1 && pieces.some((other) => other.from === at))
      )
        continue;
      const edge = at <= 1 || at >= view.conveyor.length.value - 1;
      marks.push(
        line([view.x(at), middle - spiral / 2 + 0.5], [view.x(at), foot + 12], {
          width: edge ? lineWidth.medium : lineWidth.border,
          dash: edge ? '' : '2.2 1',
        }),
      );
    }
    if (piece.centre < view.from || piece.centre > view.to) continue;
    const [from, to, x] = [
      view.x(Math.max(piece.from, view.from)),
      view.x(Math.min(piece.to, view.to)),
      view.x(piece.centre),
    ];
    // Centre of gravity: the circle with two opposite quarters filled.
    marks.push(
      circle([x, middle], 2, { width: lineWidth.medium, fill: '#fff' }),
      path(
        `M${n(x)} ${n(middle)}V${n(middle - 2)}A2 2 0 0 1 ${n(x + 2)} ${n(middle)}ZM${n(x)} ${n(middle)}V${n(middle + 2)}A2 2 0 0 1 ${n(x - 2)} ${n(middle)}Z`,
        { width: 0, fill: '#000' },
      ),
    );
    const words = [
      [`piece ${piece.number}`, `${piece.number}`],
      [alongWords(piece.to - piece.from, view.conveyor), ''],
      [`${formatMass(piece.mass)}${piece.withinLimit ? '' : ' OVER LIMIT'}`, formatMass(piece.mass)],
    ];
    words.forEach(([long = '', short = ''], index) => {
      const text = [long, short].find(
        (wording) => textWidth(wording, lettering.normal) * 1.06 <= to - from - 2,
      );
      if (text)
        marks.push(
          letters([(from + to) / 2, foot + 3.6 + index * 4.3], text, {
            anchor: 'middle',
            bold: index !== 1,
            rim: true,
          }),
        );
    });
  }
  return marks;
}

/** Lifting points above with what they carry, each piece's sling dashed to the point it hangs from. */
function paintLiftingPoints(view: View, middle: number): Markup[] {
  const points = view.conveyor.liftingPoints
    .filter((point) => point.at.value >= view.from && point.at.value <= view.to)
    .sort((a, b) => a.at.value - b.at.value);
  const texts = points.map((point) => `${point.name}: ${formatMass(point.limit.value)}`);
  const middles = spreadLabels(
    texts.map((text, index) => ({
      at: view.x(points[index]?.at.value ?? 0),
      width: textWidth(text, lettering.normal),
    })),
    2,
    view.x(view.from),
    drawingArea.x + drawingArea.width,
  );
  return points.flatMap((point, index) => {
    const x = view.x(point.at.value);
    return [
      polygon(
        [
          [x - 1.6, view.top + 6],
          [x + 1.6, view.top + 6],
          [x, view.top + 9],
        ],
        { width: lineWidth.medium, fill: '#fff' },
      ),
      line([x, view.top + 9], [x, middle - spiral / 2 + 1], { width: lineWidth.thin, dash: '1 1' }),
      middles
        ? letters([middles[index] ?? x, view.top + 4.4], texts[index] ?? '', { anchor: 'middle' })
        : blank,
    ];
  });
}

function paintKeepClear(view: View, middle: number): Markup[] {
  const y = middle + spiral / 2 + 14;
  const marks: Markup[] = [];
  for (const block of view.conveyor.holdDowns) {
    const at = (block.from.value + block.to.value) / 2;
    if (at >= view.from && at <= view.to)
      marks.push(
        polygon(
          [
            [view.x(at) - 1, y],
            [view.x(at) + 1, y],
            [view.x(at), y + 2.4],
          ],
          { width: lineWidth.thin, fill: '#000' },
        ),
      );
  }
  for (const zone of view.conveyor.access) {
    const [from, to] = [Math.max(zone.from.value, view.from), Math.min(zone.to.value, view.to)];
    if (to <= from) continue;
    const name = `${zone.name ?? ''} ${zone.kind}`.trim();
    marks.push(
      rectangle(view.x(from), y + 3.2, view.x(to) - view.x(from), 4.8, {
        width: lineWidth.thin,
        fill: '#fff',
      }),
    );
    if (textWidth(name, lettering.normal) < view.x(to) - view.x(from) - 1)
      marks.push(letters([(view.x(from) + view.x(to)) / 2, y + 6.9], name, { anchor: 'middle' }));
  }
  return marks;
}

function paintChainage(view: View): Markup[] {
  const y = view.top + lifts + spiral + below - 4.6;
  const { unit, spacing, words } = chainageScale(view.conveyor, view.reduction, 12);
  const marks = [letters([view.x(view.from) - 1.5, y + 4.4], unit, { anchor: 'end' })];
  for (let at = Math.ceil(view.from / spacing - 1e-9) * spacing; at <= view.to + 1e-6; at += spacing) {
    marks.push(
      line([view.x(at), y - 1], [view.x(at), y + 0.8], { width: lineWidth.thin }),
      plaque([view.x(at), y + 4.4], words(at), { anchor: 'middle' }),
    );
  }
  return marks;
}
