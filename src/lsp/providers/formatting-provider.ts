// Formats a whole text; the formatter is the language's own, the same as on the command line.

import type { TextEdit } from 'vscode-languageserver';
import { formatText } from '../../language/format.js';
import type { EstateDocument } from '../document.js';

/** One edit from the first to the last line that changes, so that the cursor and the markers outside it stay where they are. */
export function formatting(document: EstateDocument): TextEdit[] {
  const before = document.text;
  const after = formatText(before);
  if (after === before) return [];
  let start = 0;
  const shorter = Math.min(before.length, after.length);
  while (start < shorter && before[start] === after[start]) start += 1;
  let tail = 0;
  while (tail < shorter - start && before[before.length - 1 - tail] === after[after.length - 1 - tail])
    tail += 1;
  // Whole lines, so that a surrogate pair or a line break is never cut in two.
  start = start === 0 ? 0 : before.lastIndexOf('\n', start - 1) + 1;
  const endBefore = nextLine(before, before.length - tail);
  const endAfter = after.length - (before.length - endBefore);
  return [{ range: document.range(start, endBefore), newText: after.slice(start, endAfter) }];
}

/** After the line break: the protocol has no position between the two signs of a Windows one. */
function nextLine(text: string, from: number): number {
  const end = text.indexOf('\n', from);
  return end < 0 ? text.length : end + 1;
}
