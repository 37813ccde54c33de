// The pack in Markdown, for a pull request or a wiki: the same words and tables as the print; drawings are named, not shown.

import type { WorkPack } from './pack.js';
import type { CautionWords, PrintBlock } from './print/blocks.js';
import { packBlocks, packTitle } from './print/pack-blocks.js';

export function workPackMarkdown(pack: WorkPack): string {
  const lines: string[] = [
    `# ${text(packTitle(pack))}`,
    '',
    `${text(pack.plant)}, as of ${pack.asOf}. Advice only, not a permit.`,
    '',
  ];
  if (pack.obstacles.length > 0) {
    lines.push('> **NOT BUILDABLE AS IT STANDS**', '>');
    pack.obstacles.forEach((obstacle, index) =>
      lines.push(
        `> ${index + 1}. **${text(obstacle.message)}** ` +
          `${text(obstacle.reason)}${obstacle.repairs.length > 0 ? ` What would do: ${obstacle.repairs.map((repair) => text(repair.replace(/\.$/, ''))).join('; or ')}.` : ''}`,
      ),
    );
    lines.push('');
  }
  for (const block of packBlocks(pack)) lines.push(...blockLines(block), '');
  return `${lines
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trimEnd()}\n`;
}

function blockLines(block: PrintBlock): readonly string[] {
  switch (block.kind) {
    case 'heading':
      return [`${'#'.repeat(block.level)} ${text(block.text)}`];
    case 'text':
      return [block.strong ? `**${text(block.text)}**` : text(block.text)];
    case 'list':
      return block.items.map((item) => `- ${text(item)}`);
    case 'caution':
      return cautionLines(block);
    case 'cautions':
      return block.cautions.flatMap((caution) => [...cautionLines(caution), '']);
    case 'code':
      return ['```', block.text, '```'];
    case 'drawing':
      return [`*Drawing: ${text(block.drawing.title)}. ${text(block.drawing.description)}*`];
    case 'table':
      return tableLines(block);
  }
}

function cautionLines({ heading, text: lines, sources }: CautionWords): readonly string[] {
  return [
    `> **${text(heading)}**`,
    ...lines.flatMap((line) => ['>', `> ${text(line)}`]),
    ...(sources === undefined
      ? []
      : ['>', `> Usually met: ${text(sources)}. What applies here is for the site to say.`]),
  ];
}

function tableLines(block: Extract<PrintBlock, { kind: 'table' }>): readonly string[] {
  const cell = (raw: string): string =>
    raw
      .split('\n')
      .map((line) => text(line).replace(/\|/g, '\\|'))
      .join('<br>');
  const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  const strong = new Set(block.strong);
  return [
    ...(block.caption === undefined ? [] : [`**${text(block.caption)}**`, '']),
    row(block.columns.map((column) => cell(column.head))),
    `| ${block.columns.map((column) => (column.number ? '--:' : '---')).join(' | ')} |`,
    ...block.rows.map((cells, index) =>
      row(
        block.columns.map((_, at) =>
          strong.has(index) && cells[at] ? `**${cell(cells[at])}**` : cell(cells[at] ?? ''),
        ),
      ),
    ),
  ];
}

/** Text from a file must not become markup: the characters that Markdown and HTML act on are escaped. */
function text(raw: string): string {
  return raw
    .replace(/[\r\n]+/g, ' ')
    .replace(/[\\`*_[\]#]/g, '\\$&')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;');
}
