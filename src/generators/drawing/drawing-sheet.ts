// One landscape sheet: border, drawing area, and a title block along its foot with the fields of ISO 7200 (legal owner,
// title, identification number, document type, date of issue, creator, approval, sheet). The border is the same on A4
// and on Letter (both hold it within 10 mm margins), so a print at 100 % is to scale on either.

import { element, group, plainNumber as n, type Child, type Markup } from '../page/markup.js';
import { fontFamily, letters, lettering, line, lineWidth, rectangle, together } from '../page/svg.js';
import { fitText } from '../page/text-width.js';
import type { LengthUnit } from '../../domain/units/length-words.js';
import type { HatchPattern } from './hatch.js';
import { hatchDefinitions } from './hatch.js';

export interface TitleBlock {
  readonly owner: string;
  readonly title: string;
  /** Identification number of the whole set, e.g. `DG1-J1`. */
  readonly number: string;
  readonly documentType: string;
  /** ISO 8601 date of issue: the date the records were read at. */
  readonly issued: string;
  readonly sheet: number;
  readonly sheets: number;
  /** What the drawing was made from: a file name or the name of the declaration. */
  readonly drawnFrom: string;
}

export interface Drawing {
  readonly title: string;
  readonly documentType: string;
  /** One sentence for those who cannot see it, and for the alternative text of a print. */
  readonly description: string;
  readonly svg: string;
  /** Not to scale and without a title block: it may be printed at any width. */
  readonly chart: boolean;
}

export const sheetSize = { width: 257, height: 178 } as const;
export const titleBlockHeight = 20;
/** Area left for the drawing inside the border: x and y run from its top left corner. */
export const drawingArea = {
  x: 4,
  y: 4,
  width: sheetSize.width - 8,
  height: sheetSize.height - titleBlockHeight - 8,
} as const;

export interface SheetContent {
  /** Prefix of every id inside, unique on a page. */
  readonly id: string;
  readonly block: TitleBlock;
  readonly scale: string;
  readonly description: string;
  readonly hatches?: readonly HatchPattern[];
  readonly definitions?: Markup | undefined;
  readonly content: readonly Markup[];
}

export function drawingSheet(sheet: SheetContent): Drawing {
  const { width, height } = sheetSize;
  const { title } = sheet.block;
  const svg = framed(
    { ...sheet, title, height },
    rectangle(0.35, 0.35, width - 0.7, height - 0.7, { width: lineWidth.border, fill: '#fff' }),
    sheet.content,
    titleBlock(sheet.block, sheet.scale),
  );
  const { documentType } = sheet.block;
  return { title, documentType, description: sheet.description, svg, chart: false };
}

/** A chart among words: no border and no title block, as high (mm) as what it shows. */
export function chartDrawing(chart: ChartContent): Drawing {
  const { title, documentType, description } = chart;
  return { title, documentType, description, svg: framed(chart, chart.content), chart: true };
}

/** As wide as a sheet; sizes are stated in mm, so that a print is to scale. */
function framed(
  {
    id,
    title,
    description,
    height,
    hatches = [],
    definitions,
  }: Omit<ChartContent, 'content' | 'documentType'>,
  ...children: readonly Child[]
): string {
  const { width } = sheetSize;
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'drawing-sheet',
      width: `${width}mm`,
      height: `${n(height)}mm`,
      viewBox: `0 0 ${width} ${n(height)}`,
      role: 'img',
      'aria-labelledby': `${id}-title ${id}-desc`,
      'font-family': fontFamily,
    },
    element('title', { id: `${id}-title` }, title),
    element('desc', { id: `${id}-desc` }, description),
    element('defs', {}, hatchDefinitions(id, hatches), definitions),
    ...children,
  ).html;
}

export type ChartContent = Omit<SheetContent, 'block' | 'scale'> & ChartSize;

export interface ChartSize {
  readonly title: string;
  readonly documentType: string;
  readonly height: number;
}

interface Field {
  readonly caption: string;
  readonly value: string;
  readonly width: number;
  readonly bold?: boolean;
}

function titleBlock(block: TitleBlock, scale: string): Markup {
  const right = sheetSize.width - 0.35;
  const top = sheetSize.height - titleBlockHeight;
  const rows: readonly (readonly Field[])[] = [
    [
      { caption: 'Legal owner', value: block.owner, width: 62 },
      { caption: 'Title', value: block.title, width: 98, bold: true },
      { caption: 'Document type', value: block.documentType, width: 56 },
      { caption: 'Scale', value: scale, width: 40.3, bold: true },
    ],
    [
      { caption: 'Drawn from', value: block.drawnFrom, width: 62 },
      { caption: 'Identification', value: block.number, width: 58, bold: true },
      { caption: 'Created by', value: 'Troughline', width: 29 },
      { caption: 'Approved by', value: '', width: 41 },
      { caption: 'Issued', value: block.issued, width: 34 },
      { caption: 'Sheet', value: `${block.sheet} of ${block.sheets}`, width: 32.3, bold: true },
    ],
  ];
  const marks: Markup[] = [
    rectangle(0.35, top, right - 0.35, titleBlockHeight - 0.35, { width: lineWidth.thick, fill: '#fff' }),
  ];
  rows.forEach((fields, row) => {
    const y = top + row * 10;
    if (row > 0) marks.push(line([0.35, y], [right, y], { width: lineWidth.thin }));
    let x = 0.35;
    for (const field of fields) {
      if (x > 1) marks.push(line([x, y], [x, y + 10], { width: lineWidth.thin }));
      marks.push(
        letters([x + 1.2, y + 3.4], field.caption, { size: lettering.caption }),
        letters([x + 1.2, y + 8.3], fitText(field.value, field.width - 2, 4), {
          size: 4,
          bold: field.bold ?? false,
        }),
      );
      x += field.width;
    }
  });
  return together(marks);
}

/** A bar that measures the machine whatever size the print came out at, `length` mm of machine in `parts` equal parts. */
export function scaleBar(
  x: number,
  y: number,
  reduction: number,
  room = 50,
  lettered: LengthUnit = 'mm',
): Markup {
  const one = lettered === 'mm' ? 1000 : 304.8;
  const step =
    [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50]
      .map((each) => each * one)
      .find((mm) => (mm * 2) / reduction >= 20 && (mm * 4) / reduction <= room * 2) ?? one;
  const parts = Math.max(1, Math.min(4, Math.floor((room * reduction) / step)));
  const unit = step / reduction;
  const marks: Markup[] = [];
  for (let i = 0; i < parts; i++)
    marks.push(
      rectangle(x + i * unit, y, unit, 1.6, { width: lineWidth.thin, fill: i % 2 === 0 ? '#000' : '#fff' }),
    );
  for (let i = 0; i <= parts; i++)
    marks.push(
      letters([x + i * unit, y - 0.8], n(Number(((i * step) / one).toFixed(3))), { anchor: 'middle' }),
    );
  marks.push(letters([x + parts * unit + 3, y + 1.6], lettered === 'mm' ? 'm' : 'ft'));
  return group(marks);
}
