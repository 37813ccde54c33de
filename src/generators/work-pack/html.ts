// The pack for paper and screen: one self-contained HTML file, portrait sheets for words and landscape sheets for drawings,
// heads that repeat, rows that do not split, page x of y, legible in black and white, on A4 or Letter.

import type { Origin } from '../../domain/model/origin.js';
import type { Attributes, Markup } from '../page/markup.js';
import { element, group, trusted } from '../page/markup.js';
import type { PageOptions, Paper } from '../page/page.js';
import { htmlPage } from '../page/page.js';
import { placeInText } from '../page/place-in-text.js';
import type { WorkPack } from './pack.js';
import type { CautionWords, Column, PrintBlock } from './print/blocks.js';
import { packBlocks, packTitle } from './print/pack-blocks.js';
import { stamp, stampStyles } from './print/stamp.js';

export interface HtmlOptions {
  readonly paper?: Paper;
}

export function workPackHtml(pack: WorkPack, options: HtmlOptions = {}): string {
  return htmlPage(workPackPage(pack, options));
}

export function workPackPage(pack: WorkPack, options: HtmlOptions = {}): PageOptions {
  const paper = options.paper ?? 'A4';
  const blocks = packBlocks(pack);
  return {
    title: packTitle(pack),
    footer: `${pack.number} · as of ${pack.asOf} · advice only, not a permit`,
    paper,
    // Two units in one cell need a second line.
    styles:
      styles(paper) +
      widthStyles(blocks) +
      (pack.unit === 'in' ? 'td.number { white-space: normal; }\n' : ''),
    body: group(cover(pack), blocks.map(blockMarkup)),
  };
}

function cover(pack: WorkPack): Markup {
  return group(
    element(
      'header',
      { class: 'cover' },
      element('p', { class: 'kicker' }, `${pack.plant} · work pack ${pack.number} · as of ${pack.asOf}`),
      element('h1', placeInText(pack.job.origin), pack.job.title ?? pack.job.name),
    ),
    stamp(pack.obstacles),
  );
}

function blockMarkup(block: PrintBlock): Markup {
  switch (block.kind) {
    case 'heading':
      return element(block.level === 2 ? 'h2' : 'h3', {}, block.text);
    case 'text':
      return element('p', {}, block.strong ? element('strong', {}, block.text) : block.text);
    case 'list':
      return element(
        'ul',
        { class: block.strong ? 'scope' : undefined },
        block.items.map((item) => element('li', {}, item)),
      );
    case 'caution':
      return cautionMarkup(block);
    case 'cautions':
      return element('div', { class: 'cautions' }, block.cautions.map(cautionMarkup));
    case 'code':
      return element('pre', {}, block.text);
    case 'drawing':
      return block.drawing.chart
        ? element('figure', {}, trusted(block.drawing.svg), element('figcaption', {}, block.drawing.title))
        : element('section', { class: 'sheet' }, trusted(block.drawing.svg));
    case 'table':
      return block.halves && block.rows.length > 3 ? halvesMarkup(block) : tableMarkup(block);
  }
}

function cautionMarkup({ heading, text, sources }: CautionWords): Markup {
  return element(
    'section',
    { class: 'caution' },
    element('h3', {}, heading),
    text.map((each) => element('p', {}, each)),
    sources !== undefined &&
      element(
        'p',
        { class: 'small muted' },
        `Usually met: ${sources}. What applies here is for the site to say.`,
      ),
  );
}

/** One narrow table as two beside each other. */
function halvesMarkup(block: Table): Markup {
  const half = splitOf(block.rows);
  const { caption, ...rest } = block;
  return element(
    'section',
    { class: 'keep' },
    caption !== undefined && element('p', { class: 'caption' }, caption),
    element(
      'div',
      { class: 'halves' },
      tableMarkup({ ...rest, rows: block.rows.slice(0, half) }),
      tableMarkup({ ...rest, rows: block.rows.slice(half) }),
    ),
  );
}

/** How many rows go to the left, so that both sides come out about as long; of two as good, the longer left side. */
function splitOf(rows: Table['rows']): number {
  const lines = rows.map((cells) => Math.max(1, ...cells.map((cell) => Math.ceil(cell.length / lineOfHalf))));
  const all = lines.reduce((sum, each) => sum + each, 0);
  let left = 0;
  for (const [k, each] of lines.entries()) {
    if (left + each > all - left) return k;
    left += each;
  }
  return rows.length;
}

/** Letters on a line of the wider column of a half, about. */
const lineOfHalf = 36;

type Table = Extract<PrintBlock, { kind: 'table' }>;

function tableMarkup(block: Table): Markup {
  const strong = new Set(block.strong);
  return element(
    'table',
    {
      class:
        [block.form ? 'form' : '', block.dense ? 'dense' : '', block.rows.length <= shortTable ? 'keep' : '']
          .filter(Boolean)
          .join(' ') || undefined,
    },
    block.caption !== undefined && element('caption', {}, block.caption),
    element(
      'thead',
      {},
      element(
        'tr',
        {},
        block.columns.map((column) =>
          element(
            'th',
            {
              scope: 'col',
              class:
                [column.number ? 'number' : '', widthClass(column)].filter(Boolean).join(' ') || undefined,
            },
            column.head,
          ),
        ),
      ),
    ),
    element(
      'tbody',
      {},
      block.rows.map((row, index) =>
        element(
          'tr',
          { class: strong.has(index) ? 'strong' : undefined, ...placeOf(block.origins?.[index]) },
          block.columns.map((column, at) =>
            element(
              'td',
              {
                class:
                  [column.number ? 'number' : '', column.write === undefined ? '' : 'write']
                    .filter(Boolean)
                    .join(' ') || undefined,
              },
              lines(row[at] ?? ''),
            ),
          ),
        ),
      ),
    ),
  );
}

function placeOf(origin: Origin | undefined): Attributes {
  return origin ? placeInText(origin) : {};
}

/** Tables with so few rows stay on one page. */
const shortTable = 4;

/** Widths are classes: a view with a policy of its own allows no style attribute. */
function widthClass(column: Column): string {
  const width = widthOf(column);
  return width === undefined ? '' : `mm${width}`;
}

function widthStyles(blocks: readonly PrintBlock[]): string {
  const widths = blocks.flatMap((block) => (block.kind === 'table' ? block.columns.map(widthOf) : []));
  const each = [...new Set(widths.filter((width) => width !== undefined))].sort((a, b) => a - b);
  return each.map((width) => `.mm${width} { width: ${width}mm; }\n`).join('');
}

function widthOf(column: Column): number | undefined {
  return column.width ?? column.write;
}

function lines(text: string): Markup {
  return group(text.split('\n').map((line, index) => group(index > 0 && element('br'), line)));
}

function styles(paper: Paper): string {
  return `
@page { margin: 11mm 12mm 12mm; }
@page sheet { size: ${paper} landscape; margin: 10mm; @bottom-left { content: none; } @bottom-right { content: none; } }
.cover .kicker { font-size: 11pt; margin: 0 0 1mm; }
.cover { border-bottom: 2pt solid #000; margin-bottom: 4mm; padding-bottom: 2mm; }
.scope { font-size: 13pt; font-weight: bold; padding-left: 6mm; }
${stampStyles}p, li { font-size: 9.8pt; line-height: 1.32; }
h2 { font-size: 13.5pt; margin: 4mm 0 1mm; }
li { margin: 0 0 0.4mm; }
p { margin: 0 0 1.4mm; }
table { font-size: 9.2pt; line-height: 1.24; margin: 0.5mm 0 2.5mm; }
.caption { font-weight: bold; font-size: 9.2pt; margin: 0 0 1mm; break-after: avoid; }
table.form td { height: 6.6mm; }
table.dense { font-size: 8.4pt; line-height: 1.1; }
table.dense td { padding-top: 0.2mm; padding-bottom: 0.2mm; }
td.write { border-left: 0.5pt solid #b0b0b0; }
th { hyphens: auto; }
tr.strong td { font-weight: bold; }
.caution h3 { margin: 0 0 0.5mm; }
.caution p { margin: 0 0 0.8mm; }
.cautions { columns: 2; column-gap: 4mm; margin: 2mm 0 0; }
.cautions p { font-size: 9.2pt; line-height: 1.26; }
.cautions .caution { break-inside: auto; margin: 0 0 2mm; padding: 1.2mm 2mm; }
.cautions h3 { font-size: 10pt; }
.halves { display: grid; grid-template-columns: 1fr 1fr; gap: 6mm; align-items: start; }
pre { columns: 2; column-gap: 6mm; font: 9.2pt/1.4 "Liberation Mono", "DejaVu Sans Mono", monospace; border: 0.7pt solid #000; padding: 3mm; white-space: pre-wrap; }
.sheet { page: sheet; break-before: page; }
svg.drawing-sheet { display: block; margin: 0 auto; max-width: 100%; height: auto; }
@media print { .sheet svg.drawing-sheet { max-width: none; } }
@media screen { .sheet { overflow-x: auto; margin: 6mm 0; } }
`;
}
