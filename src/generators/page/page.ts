// The skeleton of every printed document: one self-contained HTML file, no scripts, nothing fetched, the same bytes for the
// same input. It prints on A4 or Letter with repeated table heads, unsplit rows and page numbers, and reads on a screen.

import { element, escapeHtml, type Markup } from './markup.js';

export type Paper = 'A4' | 'Letter';

export interface PageOptions {
  readonly title: string;
  readonly body: Markup;
  /** Style sheet text of the document, after the shared one. Written in our code, never taken from a file. */
  readonly styles?: string;
  readonly paper?: Paper;
  readonly orientation?: 'portrait' | 'landscape';
  /** At most so wide on a screen, mm; 210 where left out. */
  readonly width?: number;
  /** Printed at the foot of every page, left of the page number. */
  readonly footer?: string;
}

/** A whole document, ending in a newline. */
export function htmlPage(options: PageOptions): string {
  const { title, body, styles = '', paper = 'A4', orientation = 'portrait', width = 210 } = options;
  const { footer = title } = options;
  return [
    '<!DOCTYPE html>',
    '<html lang="en-GB">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    // The file may be opened from anywhere: nothing in it may load or run.
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">`,
    `<title>${escapeHtml(title)}</title>`,
    `<style>${pageRules(paper, orientation, footer)}${sharedStyles(document, width)}${styles}</style>`,
    '</head>',
    `<body>${body.html}</body>`,
    '</html>',
    '',
  ].join('\n');
}

/** A page inside another one: its style sheet, and the sheet of paper as one element. */
export interface EmbeddedPage {
  readonly styles: string;
  readonly body: string;
}

/** For a view that has a document, and a theme, of its own: everything that styles the whole page styles the sheet instead. */
export function embeddedPage({ body, styles = '', orientation, width = 210 }: PageOptions): EmbeddedPage {
  // A document has one main part, which the page may have brought along.
  const tag = body.html.includes('<main') ? 'div' : 'main';
  const sheet = element(tag, { class: `sheet ${orientation ?? 'portrait'}`, id: 'sheet' }, body);
  return { styles: sharedStyles(embedded, width) + styles, body: sheet.html };
}

/** A table whose head repeats on every page. Cells are text or markup; numbers go right. */
export function table(options: {
  readonly caption?: string;
  readonly class?: string;
  readonly columns: readonly {
    readonly head: string | Markup;
    readonly number?: boolean;
    readonly class?: string;
  }[];
  readonly rows: readonly (readonly (string | Markup | undefined)[])[];
  /** Class of each row, by index. */
  readonly rowClass?: (row: number) => string | undefined;
}): Markup {
  const { columns, rows } = options;
  const cellClass = (column: number): string | undefined => {
    const spec = columns[column];
    return [spec?.number ? 'number' : '', spec?.class ?? ''].filter(Boolean).join(' ') || undefined;
  };
  return element(
    'table',
    { class: options.class },
    options.caption !== undefined && element('caption', {}, options.caption),
    element(
      'thead',
      {},
      element(
        'tr',
        {},
        columns.map((column, i) => element('th', { scope: 'col', class: cellClass(i) }, column.head)),
      ),
    ),
    element(
      'tbody',
      {},
      rows.map((row, r) =>
        element(
          'tr',
          { class: options.rowClass?.(r) },
          row.map((cell, i) => element('td', { class: cellClass(i) }, cell ?? '–')),
        ),
      ),
    ),
  );
}

/** A picture with its caption and, folded on screen and left out on paper unless asked, its data as a table. */
export function figure(options: {
  readonly drawing: Markup;
  readonly caption: string | Markup;
  readonly data?: Markup;
  readonly class?: string;
}): Markup {
  return element(
    'figure',
    { class: options.class },
    options.drawing,
    element('figcaption', {}, options.caption),
    options.data &&
      element('details', { class: 'data' }, element('summary', {}, 'The data of this figure'), options.data),
  );
}

function pageRules(paper: Paper, orientation: string, footer: string): string {
  const text = footer.replace(/[\\"]/g, '\\$&').replace(/[\n\r<>]/g, ' ');
  return `
@page { size: ${paper} ${orientation}; margin: 14mm 13mm 16mm;
  @bottom-left { content: "${text}"; font: 8pt sans-serif; color: #595959; }
  @bottom-right { content: "Page " counter(page) " of " counter(pages); font: 8pt sans-serif; color: #595959; } }
`;
}

/** What the rules for the whole page are put on, and how high the page is at least. */
interface Root {
  readonly root: string;
  readonly html: string;
  readonly body: string;
  readonly fill: string;
}
const document: Root = { root: ':root', html: 'html', body: 'body', fill: ' min-height: 100vh;' };
const embedded: Root = { root: '.sheet', html: '.sheet', body: '.sheet', fill: '' };

const sharedStyles = ({ root, html, body, fill }: Root, width: number): string => `
${root} { color-scheme: light; }
* { box-sizing: border-box; }
${html} { font: 10.5pt/1.42 "Helvetica Neue", "Liberation Sans", Arial, "DejaVu Sans", sans-serif; color: #000; background: #fff;
  font-variant-numeric: tabular-nums; -webkit-print-color-adjust: exact; print-color-adjust: exact; }
${body} { margin: 0 auto; padding: 8mm; max-width: ${width}mm; }
h1 { font-size: 21pt; line-height: 1.15; margin: 0 0 1.5mm; letter-spacing: -0.01em; }
h2 { font-size: 14.5pt; line-height: 1.2; margin: 8mm 0 2mm; }
h3 { font-size: 11.5pt; margin: 5mm 0 1.5mm; }
h1, h2, h3 { break-after: avoid; }
p { margin: 0 0 2mm; orphans: 3; widows: 3; }
ul, ol { margin: 0 0 2mm; padding-left: 5mm; }
li { margin: 0 0 0.8mm; }
small, .small { font-size: 8.8pt; }
.muted { color: #595959; }
.nowrap { white-space: nowrap; }
table { border-collapse: collapse; width: 100%; margin: 1mm 0 3mm; font-size: 9.4pt; line-height: 1.3; }
caption { text-align: left; font-weight: bold; padding: 0 0 1mm; break-after: avoid; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th { text-align: left; vertical-align: bottom; border-bottom: 1.2pt solid #000; padding: 0.8mm 1.6mm; font-weight: bold; }
td { text-align: left; vertical-align: top; border-bottom: 0.5pt solid #b0b0b0; padding: 0.9mm 1.6mm; }
th:first-child, td:first-child { padding-left: 0; }
th:last-child, td:last-child { padding-right: 0; }
th.number, td.number { text-align: right; white-space: nowrap; }
figure { margin: 2mm 0 4mm; break-inside: avoid; }
figcaption { font-size: 8.8pt; color: #333; margin-top: 1mm; }
svg.drawing { display: block; width: 100%; height: auto; font-family: inherit; }
svg.drawing text { font-family: "Helvetica Neue", "Liberation Sans", Arial, "DejaVu Sans", sans-serif; }
details.data { font-size: 9pt; margin-top: 1mm; }
details.data summary { cursor: pointer; color: #333; }
.page { break-before: page; }
.keep { break-inside: avoid; }
.caution { border: 1.2pt solid #000; border-left-width: 5pt; padding: 2mm 3mm; margin: 3mm 0; break-inside: avoid; }
@media print { ${body} { padding: 0; max-width: none; } details.data { display: none; } a { color: inherit; text-decoration: none; } }
@media screen and (max-width: 190mm) { ${body} { padding: 4mm; min-width: 150mm; } }
@media screen { ${body} { box-shadow: 0 0 0 1px #ddd;${fill} } .page { border-top: 1px dashed #b0b0b0; margin-top: 10mm; padding-top: 8mm; } }
`;
