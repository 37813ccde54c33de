// The one kit that every picture is drawn with, charts of the report (units of a pixel) and drawings of the work pack
// (millimetres of paper) alike: lines, areas, lettering, marks told apart by shape, hatches that survive a black-and-white
// printer. Angles turn clockwise as read, as SVG turns them.

import { element, group, plainNumber as n, type Child, type Markup } from './markup.js';
import { textWidth } from './text-width.js';

/** Ink that keeps at least 3:1 contrast on white; from the colour-blind-safe palette of Okabe and Ito (2008). */
export const ink = {
  black: '#000000',
  grey: '#595959',
  rule: '#8c8c8c',
  pale: '#e6e6e6',
  blue: '#0072b2',
  vermilion: '#d55e00',
  green: '#009e73',
} as const;

/** Lettering of a drawing, mm, by ISO 3098: nothing below 2.5. */
export const lettering = { caption: 2.8, normal: 3.5, large: 5, title: 7 } as const;
/** Line widths of a drawing, mm, by ISO 128. */
export const lineWidth = { thin: 0.25, medium: 0.35, thick: 0.5, border: 0.7 } as const;
/** White rim of lettering over lines: in a drawing, mm, and in a chart. */
const drawingRim = 0.9;
export const chartRim = 3;
export const fontFamily = "Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans', sans-serif";

export type PagePoint = readonly [x: number, y: number];

/** How a line or an area is inked. */
export interface Stroke {
  /** Width of the line; 0 for an area without an edge, that of a medium line of a drawing where left out. */
  readonly width?: number;
  readonly dash?: string | undefined;
  readonly colour?: string;
  readonly fill?: string;
  /** Of the fill, 0 to 1. */
  readonly opacity?: number;
}

export interface Lettering {
  readonly size?: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  readonly colour?: string;
  /** Degrees clockwise about the text's own foot. */
  readonly turn?: number;
  /** A white rim, so that the text stays legible over lines: its width, or `true` for that of a drawing. */
  readonly rim?: boolean | number;
}

/** Draws nothing. */
export const blank: Markup = group();

export interface PictureFrame {
  /** Unique on the page; title and description are labelled by it. */
  readonly id: string;
  readonly title: string;
  readonly description: string;
  /** View-box units; about one px on screen, 0.2646 mm at full size. */
  readonly width: number;
  readonly height: number;
}

/** An accessible picture: `role="img"` with title and description; it scales to the width of its container. */
export function drawing(
  { id, title, description, width, height }: PictureFrame,
  ...children: readonly Child[]
): Markup {
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'drawing',
      role: 'img',
      'aria-labelledby': `${id}-title ${id}-desc`,
      viewBox: `0 0 ${n(width)} ${n(height)}`,
      width,
      height,
    },
    element('title', { id: `${id}-title` }, title),
    element('desc', { id: `${id}-desc` }, description),
    ...children,
  );
}

export function line([x1, y1]: PagePoint, [x2, y2]: PagePoint, stroke: Stroke = {}): Markup {
  return element('line', { x1, y1, x2, y2, ...inked(stroke) });
}

export function rectangle(x: number, y: number, width: number, height: number, stroke: Stroke = {}): Markup {
  return element('rect', {
    x,
    y,
    width: Math.max(0, width),
    height: Math.max(0, height),
    ...inked(stroke),
  });
}

export function polygon(points: readonly PagePoint[], stroke: Stroke = {}): Markup {
  return element('polygon', { points: pairs(points), ...inked(stroke) });
}

export function circle([cx, cy]: PagePoint, radius: number, stroke: Stroke = {}): Markup {
  return element('circle', { cx, cy, r: radius, ...inked(stroke) });
}

export function path(d: string, stroke: Stroke = {}): Markup {
  return element('path', { d, ...inked(stroke) });
}

/** Text whose foot stands at a point. */
export function letters([x, y]: PagePoint, text: string, style: Lettering = {}): Markup {
  const { size = lettering.normal, anchor, bold, colour, turn, rim } = style;
  const rimWidth = rim === true ? drawingRim : rim || undefined;
  return element(
    'text',
    {
      x,
      y,
      'font-size': size,
      'text-anchor': anchor === 'start' ? undefined : anchor,
      'font-weight': bold ? 'bold' : undefined,
      fill: colour,
      stroke: rimWidth && '#fff',
      'stroke-width': rimWidth,
      'stroke-linejoin': rimWidth && 'round',
      'paint-order': rimWidth && 'stroke',
      transform: turn ? `rotate(${n(turn)} ${n(x)} ${n(y)})` : undefined,
    },
    text,
  );
}

/** Text on a white ground, for where a line would otherwise run through it. */
export function plaque(at: PagePoint, text: string, style: Lettering = {}): Markup {
  const size = style.size ?? lettering.normal;
  const width = textWidth(text, size) + 1;
  const from =
    style.anchor === 'middle'
      ? at[0] - width / 2
      : style.anchor === 'end'
        ? at[0] - width + 0.5
        : at[0] - 0.5;
  return group(
    rectangle(from, at[1] - size * 0.8, width, size * 1.02, { width: 0, fill: '#fff' }),
    letters(at, text, style),
  );
}

/** Pieces drawn together, moved or cut to a shape. */
export function together(
  content: readonly Child[],
  { transform, clip }: { readonly transform?: string; readonly clip?: string } = {},
): Markup {
  return element('g', { transform, 'clip-path': clip && `url(#${clip})` }, content);
}

/** A filled arrow head at `tip`; `direction` in degrees clockwise, 0 to the right. */
export function arrowHead(tip: PagePoint, direction: number, size = 2.5): Markup {
  const angle = (direction * Math.PI) / 180;
  const back = (side: number): PagePoint => [
    tip[0] - size * Math.cos(angle) - side * size * 0.3 * Math.sin(angle),
    tip[1] - size * Math.sin(angle) + side * size * 0.3 * Math.cos(angle),
  ];
  return polygon([tip, back(1), back(-1)], { fill: ink.black, width: 0 });
}

/** A horizontal dimension line with arrow heads at both ends and its text above the middle. */
export function dimension(from: number, to: number, y: number, text: string): Markup {
  const heads = to - from > 7;
  return group(
    line([from, y], [to, y], { width: lineWidth.thin }),
    heads && [arrowHead([from, y], 180, 2), arrowHead([to, y], 0, 2)],
    letters([(from + to) / 2, y - 0.9], text, { anchor: 'middle', rim: true }),
  );
}

export type MarkShape =
  'disc' | 'ring' | 'square' | 'diamond' | 'triangle up' | 'triangle down' | 'cross' | 'plus';

/** A mark centred on a point; `radius` is about half its height. Told apart by shape first, colour second. */
export function mark(shape: MarkShape, [x, y]: PagePoint, radius: number, stroke: Stroke = {}): Markup {
  const at = (dx: number, dy: number): PagePoint => [x + dx * radius, y + dy * radius];
  const crossed = (...strokes: readonly (readonly [PagePoint, PagePoint])[]): Markup =>
    path(strokes.map(([from, to]) => `M${pairs([from])}L${pairs([to])}`).join(''), { width: 1.6, ...stroke });
  const solid: Stroke = { fill: ink.black, width: 0, ...stroke };
  switch (shape) {
    case 'disc':
      return circle([x, y], radius, solid);
    case 'ring':
      return circle([x, y], radius, { fill: '#ffffff', width: 1.4, ...stroke });
    case 'square':
      return polygon([at(-0.9, -0.9), at(0.9, -0.9), at(0.9, 0.9), at(-0.9, 0.9)], solid);
    case 'diamond':
      return polygon([at(0, -1.25), at(1.1, 0), at(0, 1.25), at(-1.1, 0)], solid);
    case 'triangle up':
      return polygon([at(0, -1.1), at(1.1, 0.9), at(-1.1, 0.9)], solid);
    case 'triangle down':
      return polygon([at(0, 1.1), at(1.1, -0.9), at(-1.1, -0.9)], solid);
    case 'cross':
      return crossed([at(-1, -1), at(1, 1)], [at(1, -1), at(-1, 1)]);
    case 'plus':
      return crossed([at(-1.1, 0), at(1.1, 0)], [at(0, -1.1), at(0, 1.1)]);
  }
}

export type HatchKind = 'diagonal' | 'back diagonal' | 'cross' | 'dots' | 'horizontal' | 'vertical';

/** A pattern to be filled with `fill: hatchFill(id)`; put it in the drawing before its use. */
export function hatch(
  id: string,
  kind: HatchKind,
  options: { readonly colour?: string; readonly spacing?: number; readonly width?: number } = {},
): Markup {
  const { colour = ink.rule, spacing: s = 6, width = 1 } = options;
  const upright = line([s / 2, 0], [s / 2, s], { colour, width });
  const level = line([0, s / 2], [s, s / 2], { colour, width });
  const drawn: Readonly<Record<HatchKind, readonly Markup[]>> = {
    diagonal: [upright],
    'back diagonal': [upright],
    cross: [upright, level],
    dots: [circle([s / 2, s / 2], width, { fill: colour, width: 0 })],
    horizontal: [level],
    vertical: [upright],
  };
  const turns: Partial<Record<HatchKind, number>> = { diagonal: 45, cross: 45, 'back diagonal': -45 };
  const turn = turns[kind];
  return element(
    'pattern',
    {
      id,
      patternUnits: 'userSpaceOnUse',
      width: s,
      height: s,
      patternTransform: turn === undefined ? undefined : `rotate(${turn})`,
    },
    drawn[kind],
  );
}

export function hatchFill(id: string): string {
  return `url(#${id})`;
}

export function definitions(...children: readonly Child[]): Markup {
  return element('defs', {}, ...children);
}

function inked({ width = lineWidth.medium, dash, fill = 'none', colour = ink.black, opacity }: Stroke) {
  return {
    stroke: width > 0 ? colour : undefined,
    'stroke-width': width > 0 ? width : undefined,
    'stroke-dasharray': dash || undefined,
    fill,
    'fill-opacity': opacity,
  };
}

function pairs(points: readonly PagePoint[]): string {
  return points.map(([x, y]) => `${n(x)},${n(y)}`).join(' ');
}
