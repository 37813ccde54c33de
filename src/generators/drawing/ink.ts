// The few marks our drawings are made of, as SVG text in millimetres of paper. Line widths follow ISO 128 (0.25, 0.35,
// 0.5 and 0.7 mm), lettering ISO 3098: nothing below 2.5 mm. Black only: meaning is carried by hatch, dash and words.

import { escapeHtml, plainNumber as n } from '../page/markup.js';
import { textWidth } from './text-width.js';

export const lettering = { caption: 2.8, normal: 3.5, large: 5, title: 7 } as const;
export const lineWidth = { thin: 0.25, medium: 0.35, thick: 0.5, border: 0.7 } as const;
export const fontFamily = "Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans', sans-serif";

export interface Stroke {
  readonly width?: number;
  readonly dash?: string;
  readonly fill?: string;
  readonly colour?: string;
}

export interface Lettering {
  readonly size?: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  /** Degrees clockwise about the text's own foot, as in page/svg.ts. */
  readonly turn?: number;
  /** A white rim, so that the text stays legible over lines. */
  readonly rim?: boolean;
}

export type PagePoint = readonly [x: number, y: number];

export function line(from: PagePoint, to: PagePoint, stroke: Stroke = {}): string {
  return `<line x1="${n(from[0])}" y1="${n(from[1])}" x2="${n(to[0])}" y2="${n(to[1])}"${strokeOf(stroke)}/>`;
}

export function rectangle(x: number, y: number, width: number, height: number, stroke: Stroke = {}): string {
  return `<rect x="${n(x)}" y="${n(y)}" width="${n(Math.max(0, width))}" height="${n(Math.max(0, height))}"${strokeOf(stroke)}/>`;
}

export function polyline(points: readonly PagePoint[], stroke: Stroke = {}): string {
  return `<polyline points="${points.map(pair).join(' ')}"${strokeOf(stroke)}/>`;
}

export function polygon(points: readonly PagePoint[], stroke: Stroke = {}): string {
  return `<polygon points="${points.map(pair).join(' ')}"${strokeOf(stroke)}/>`;
}

export function circle(centre: PagePoint, radius: number, stroke: Stroke = {}): string {
  return `<circle cx="${n(centre[0])}" cy="${n(centre[1])}" r="${n(radius)}"${strokeOf(stroke)}/>`;
}

export function path(d: string, stroke: Stroke = {}): string {
  return `<path d="${d}"${strokeOf(stroke)}/>`;
}

export function letters(at: PagePoint, text: string, style: Lettering = {}): string {
  const turned = style.turn ? ` transform="rotate(${n(style.turn)} ${n(at[0])} ${n(at[1])})"` : '';
  const anchor = style.anchor && style.anchor !== 'start' ? ` text-anchor="${style.anchor}"` : '';
  const weight = style.bold ? ' font-weight="bold"' : '';
  const rim = style.rim
    ? ' stroke="#fff" stroke-width="0.9" stroke-linejoin="round" paint-order="stroke"'
    : '';
  return `<text x="${n(at[0])}" y="${n(at[1])}" font-size="${n(style.size ?? lettering.normal)}"${anchor}${weight}${rim}${turned}>${escapeHtml(text)}</text>`;
}

/** Text on a white ground, for where a line would otherwise run through it. */
export function plaque(at: PagePoint, text: string, style: Lettering = {}): string {
  const size = style.size ?? lettering.normal;
  const width = textWidth(text, size) + 1;
  const from =
    style.anchor === 'middle'
      ? at[0] - width / 2
      : style.anchor === 'end'
        ? at[0] - width + 0.5
        : at[0] - 0.5;
  return (
    rectangle(from, at[1] - size * 0.8, width, size * 1.02, { width: 0, fill: '#fff' }) +
    letters(at, text, style)
  );
}

export function group(
  content: readonly string[],
  attributes: { readonly transform?: string; readonly clip?: string } = {},
): string {
  const transform = attributes.transform ? ` transform="${attributes.transform}"` : '';
  const clip = attributes.clip ? ` clip-path="url(#${attributes.clip})"` : '';
  return `<g${transform}${clip}>${content.join('')}</g>`;
}

/** A filled arrow head at `tip`, pointing along `direction` (degrees, 0 to the right, anticlockwise as read). */
export function arrowHead(tip: PagePoint, direction: number, size = 2.5): string {
  const angle = (direction * Math.PI) / 180;
  const back = (side: number): PagePoint => [
    tip[0] - size * Math.cos(angle) + side * size * 0.3 * Math.sin(angle),
    tip[1] + size * Math.sin(angle) + side * size * 0.3 * Math.cos(angle),
  ];
  return polygon([tip, back(1), back(-1)], { fill: '#000', width: 0 });
}

/** A horizontal dimension line with arrow heads at both ends and its text above the middle. */
export function dimension(from: number, to: number, y: number, text: string): string {
  const heads = to - from > 7;
  return [
    line([from, y], [to, y], { width: lineWidth.thin }),
    heads ? arrowHead([from, y], 180, 2) + arrowHead([to, y], 0, 2) : '',
    letters([(from + to) / 2, y - 0.9], text, { anchor: 'middle', rim: true }),
  ].join('');
}

function strokeOf({ width = lineWidth.medium, dash, fill = 'none', colour = '#000' }: Stroke): string {
  const drawn = width > 0 ? ` stroke="${colour}" stroke-width="${n(width)}"` : '';
  return `${drawn}${dash ? ` stroke-dasharray="${dash}"` : ''} fill="${fill}"`;
}

function pair(point: PagePoint): string {
  return `${n(point[0])},${n(point[1])}`;
}
