// What a PDF draws, measured on its paper: straight lines and rectangles of every page, in mm from the lower left corner. Reads the
// path operators of ISO 32000 (cm, q, Q, m, l, re, c, h) of what Chromium writes; letters, clips and colours are passed over.

import { inflateSync } from 'node:zlib';

export interface PaperLine {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

export interface PaperRectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface PaperPage {
  readonly lines: readonly PaperLine[];
  readonly rectangles: readonly PaperRectangle[];
}

type Matrix = readonly [number, number, number, number, number, number];
const pointsToMm = 25.4 / 72;

/** Streams of pages and of the forms in them; what holds no path is left out. */
export function pathsOf(pdf: Buffer): readonly PaperPage[] {
  const text = pdf.toString('latin1');
  const pages: PaperPage[] = [];
  for (const found of text.matchAll(/FlateDecode\s*\/Length (\d+)>>\s*stream\r?\n/g)) {
    const start = found.index + found[0].length;
    const content = inflated(pdf.subarray(start, start + Number(found[1])));
    if (/ (?:l|re)\s/.test(content)) pages.push(pathsIn(content));
  }
  return pages;
}

/** A picture or a font may be packed in another way: it holds no path. */
function inflated(bytes: Buffer): string {
  try {
    return inflateSync(bytes).toString('latin1');
  } catch {
    return '';
  }
}

function pathsIn(content: string): PaperPage {
  const lines: PaperLine[] = [];
  const rectangles: PaperRectangle[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  const stack: Matrix[] = [];
  let numbers: number[] = [];
  let at: readonly [number, number] = [0, 0];
  const place = (x: number, y: number): readonly [number, number] => {
    const [a, b, c, d, e, f] = matrix;
    return [(a * x + c * y + e) * pointsToMm, (b * x + d * y + f) * pointsToMm];
  };
  for (const token of content.replace(/<[0-9A-Fa-f]*>|\((?:\\.|[^\\)])*\)/g, '').split(/\s+/)) {
    const value = Number(token);
    if (token !== '' && !Number.isNaN(value)) {
      numbers.push(value);
      continue;
    }
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = numbers;
    if (token === 'q') stack.push(matrix);
    else if (token === 'Q') matrix = stack.pop() ?? matrix;
    else if (token === 'cm') matrix = times([a, b, c, d, e, f], matrix);
    else if (token === 'm') at = place(a, b);
    else if (token === 'c') at = place(e, f);
    else if (token === 'l') {
      const to = place(a, b);
      lines.push({ from: at, to });
      at = to;
    } else if (token === 're') {
      const [one, other] = [place(a, b), place(a + c, b + d)];
      rectangles.push({
        x: Math.min(one[0], other[0]),
        y: Math.min(one[1], other[1]),
        width: Math.abs(other[0] - one[0]),
        height: Math.abs(other[1] - one[1]),
      });
    }
    numbers = [];
  }
  return { lines, rectangles };
}

/** `own` first, then what stood before. */
function times(own: Matrix, before: Matrix): Matrix {
  const [a, b, c, d, e, f] = own;
  const [g, h, i, j, k, l] = before;
  return [a * g + b * i, a * h + b * j, c * g + d * i, c * h + d * j, e * g + f * i + k, e * h + f * j + l];
}
