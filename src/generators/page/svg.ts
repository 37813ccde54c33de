// The few SVG pieces that every drawing shares: a titled figure that scales with the page, text, lines, marks that are told
// apart by shape, and hatches that survive a black-and-white printer.

import { element, plainNumber, type Attributes, type Child, type Markup } from './markup.js';

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

export interface DrawingOptions {
  /** Unique on the page; title and description are labelled by it. */
  readonly id: string;
  readonly title: string;
  readonly description: string;
  /** View-box units; about one px on screen, 0.2646 mm at full size. */
  readonly width: number;
  readonly height: number;
  readonly class?: string;
}

/** An accessible drawing: `role="img"` with title and description; it scales to the width of its container. */
export function drawing(options: DrawingOptions, ...children: readonly Child[]): Markup {
  const { id, title, description, width, height } = options;
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: options.class ?? 'drawing',
      role: 'img',
      'aria-labelledby': `${id}-title ${id}-desc`,
      viewBox: `0 0 ${plainNumber(width)} ${plainNumber(height)}`,
      width,
      height,
    },
    element('title', { id: `${id}-title` }, title),
    element('desc', { id: `${id}-desc` }, description),
    ...children,
  );
}

export interface TextOptions {
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly size?: number;
  readonly weight?: 'normal' | 'bold';
  readonly fill?: string;
  /** Degrees clockwise about the text's own place. */
  readonly turn?: number;
  /** A white edge that keeps the text readable over lines. */
  readonly halo?: boolean;
}

/** `y` is the baseline. */
export function svgText(x: number, y: number, text: string, options: TextOptions = {}): Markup {
  return element(
    'text',
    {
      x,
      y,
      'text-anchor': options.anchor,
      'font-size': options.size,
      'font-weight': options.weight,
      fill: options.fill,
      transform:
        options.turn === undefined
          ? undefined
          : `rotate(${plainNumber(options.turn)} ${plainNumber(x)} ${plainNumber(y)})`,
      'paint-order': options.halo ? 'stroke' : undefined,
      stroke: options.halo ? '#ffffff' : undefined,
      'stroke-width': options.halo ? 3 : undefined,
      'stroke-linejoin': options.halo ? 'round' : undefined,
    },
    text,
  );
}

export function line(x1: number, y1: number, x2: number, y2: number, attributes: Attributes = {}): Markup {
  return element('line', { x1, y1, x2, y2, stroke: ink.black, ...attributes });
}

export function rectangle(
  x: number,
  y: number,
  width: number,
  height: number,
  attributes: Attributes = {},
): Markup {
  return element('rect', {
    x,
    y,
    width: Math.max(0, width),
    height: Math.max(0, height),
    fill: 'none',
    ...attributes,
  });
}

export function path(d: string, attributes: Attributes = {}): Markup {
  return element('path', { d, fill: 'none', ...attributes });
}

export type MarkShape =
  'disc' | 'ring' | 'square' | 'diamond' | 'triangle up' | 'triangle down' | 'cross' | 'plus';

/** A mark centred on (x, y); `radius` is about half its height. Told apart by shape first, colour second. */
export function mark(
  shape: MarkShape,
  x: number,
  y: number,
  radius: number,
  attributes: Attributes = {},
): Markup {
  const r = radius;
  const points = (...pairs: readonly (readonly [number, number])[]): string =>
    pairs.map(([dx, dy]) => `${plainNumber(x + dx * r)},${plainNumber(y + dy * r)}`).join(' ');
  switch (shape) {
    case 'disc':
      return element('circle', { cx: x, cy: y, r, fill: ink.black, ...attributes });
    case 'ring':
      return element('circle', {
        cx: x,
        cy: y,
        r,
        fill: '#ffffff',
        stroke: ink.black,
        'stroke-width': 1.4,
        ...attributes,
      });
    case 'square':
      return element('polygon', {
        points: points([-0.9, -0.9], [0.9, -0.9], [0.9, 0.9], [-0.9, 0.9]),
        fill: ink.black,
        ...attributes,
      });
    case 'diamond':
      return element('polygon', {
        points: points([0, -1.25], [1.1, 0], [0, 1.25], [-1.1, 0]),
        fill: ink.black,
        ...attributes,
      });
    case 'triangle up':
      return element('polygon', {
        points: points([0, -1.1], [1.1, 0.9], [-1.1, 0.9]),
        fill: ink.black,
        ...attributes,
      });
    case 'triangle down':
      return element('polygon', {
        points: points([0, 1.1], [1.1, -0.9], [-1.1, -0.9]),
        fill: ink.black,
        ...attributes,
      });
    case 'cross':
      return path(`M${points([-1, -1])}L${points([1, 1])}M${points([1, -1])}L${points([-1, 1])}`, {
        stroke: ink.black,
        'stroke-width': 1.6,
        ...attributes,
      });
    case 'plus':
      return path(`M${points([-1.1, 0])}L${points([1.1, 0])}M${points([0, -1.1])}L${points([0, 1.1])}`, {
        stroke: ink.black,
        'stroke-width': 1.6,
        ...attributes,
      });
  }
}

export type HatchKind = 'diagonal' | 'back diagonal' | 'cross' | 'dots' | 'horizontal' | 'vertical';

/** A pattern to be filled with `fill: hatchFill(id)`; put it in the drawing before its use. */
export function hatch(
  id: string,
  kind: HatchKind,
  options: { readonly colour?: string; readonly spacing?: number; readonly width?: number } = {},
): Markup {
  const s = options.spacing ?? 6;
  const stroke = { stroke: options.colour ?? ink.rule, 'stroke-width': options.width ?? 1 };
  const turn =
    kind === 'diagonal' || kind === 'cross'
      ? 'rotate(45)'
      : kind === 'back diagonal'
        ? 'rotate(-45)'
        : undefined;
  const lines: Child[] =
    kind === 'dots'
      ? [element('circle', { cx: s / 2, cy: s / 2, r: options.width ?? 1, fill: options.colour ?? ink.rule })]
      : kind === 'horizontal'
        ? [line(0, s / 2, s, s / 2, stroke)]
        : kind === 'cross'
          ? [line(s / 2, 0, s / 2, s, stroke), line(0, s / 2, s, s / 2, stroke)]
          : [line(s / 2, 0, s / 2, s, stroke)];
  return element(
    'pattern',
    { id, patternUnits: 'userSpaceOnUse', width: s, height: s, patternTransform: turn },
    ...lines,
  );
}

export function hatchFill(id: string): string {
  return `url(#${id})`;
}

export function definitions(...children: readonly Child[]): Markup {
  return element('defs', {}, ...children);
}
