// The change summary as a comment on a pull request: one line a fact that matters, the long rest folded, and never longer than
// such a comment may be.

import { visibleLine } from '../../domain/units/visible-text.js';
import { counted } from '../../domain/units/wording.js';
import type { ChangeSummary } from './change-summary.js';
import { headline, sectionsOf, sidesText, type ToldSection } from './words.js';

/** Characters that a comment holds. */
export const longestComment = 65_536;

/** So many lines of a section are shown; the others are counted and stand in the other forms. */
const shownOfSection = 20;

export function changeSummaryMarkdown(summary: ChangeSummary): string {
  const head = `### ${escaped(headline(summary))}\n\n${escaped(sidesText(summary))}\n`;
  let body = head;
  let left = 0;
  for (const section of sectionsOf(summary)) {
    const lines = linesOf(section);
    if (left > 0 || body.length + lines.length > longestComment - 200) left += section.lines.length;
    else body += lines;
  }
  return left > 0 ? `${body}\n${counted(left, 'line')} more: \`troughline diff\` shows them.\n` : body;
}

/** A section of one line needs no title of its own; what was edited in the past always has one. */
function linesOf({ title, sign, lines }: ToldSection): string {
  const shown = lines.slice(0, shownOfSection).map((line) => escaped(line));
  const more = lines.length > shown.length ? [`and ${lines.length - shown.length} more`] : [];
  if (sign === '!') return `\n**⚠ ${escaped(title)}**\n${bullets([...shown, ...more])}`;
  const [only] = shown;
  return lines.length === 1 && only !== undefined
    ? `- **${escaped(title)}**: ${only}\n`
    : `- **${escaped(title)}**\n${bullets([...shown, ...more], '  ')}`;
}

function bullets(lines: readonly string[], indent = ''): string {
  return lines.map((line) => `${indent}- ${line}\n`).join('');
}

function escaped(text: string): string {
  return visibleLine(text.replace(/\r?\n/g, ' ')).replace(
    /[\\`*_{}[\]<>#|]/g,
    (character) => `\\${character}`,
  );
}
