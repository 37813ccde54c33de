// The index of months as a page and as Markdown: where the sets lie, and how the months compare.

import { element, group, type Markup } from '../page/markup.js';
import { htmlPage, table, type Paper } from '../page/page.js';
import { markdownTable, markdownText } from '../remaining-life/markdown.js';
import { indexTables, type IndexTable } from './index-tables.js';
import type { Months } from './months.js';

const advice =
  'Every month advises; a competent person decides. It does not clear a machine for work or for further running.';

export function monthsHtml(months: Months, options: { readonly paper?: Paper } = {}): string {
  return htmlPage({
    title: 'Months',
    paper: options.paper ?? 'A4',
    orientation: 'landscape',
    width: 297,
    body: element(
      'main',
      {},
      element('h1', {}, 'Months'),
      ...indexTables(months).filter(filled).map(tableMarkup),
      element('p', { class: 'muted' }, advice),
    ),
  });
}

export function monthsMarkdown(months: Months): string {
  const parts = indexTables(months)
    .filter(filled)
    .flatMap(({ title, note, head, rows }) => [
      `## ${markdownText(title)}`,
      markdownText(note),
      markdownTable(
        head.map(markdownText),
        rows.map(({ folder, cells }) =>
          cells.map((cell, i) =>
            i === 0 && folder !== undefined
              ? `[${markdownText(cell)}](${folder}/report.md)`
              : markdownText(cell),
          ),
        ),
      ),
    ]);
  return `${['# Months', ...parts, `> ${advice}`].join('\n\n')}\n`;
}

function filled({ rows }: IndexTable): boolean {
  return rows.length > 0;
}

function tableMarkup({ title, note, head, rows }: IndexTable): Markup {
  return group(
    element('h2', {}, title),
    element('p', { class: 'muted' }, note),
    table({
      columns: head.map((words) => ({ head: words })),
      rows: rows.map(({ folder, cells }) =>
        cells.map((cell, i) =>
          i === 0 && folder !== undefined ? element('a', { href: `${folder}/report.html` }, cell) : cell,
        ),
      ),
    }),
  );
}
