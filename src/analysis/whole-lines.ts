// A mend that takes out all there is on a line takes out the line: rules know only where a fact stands, not what is around
// it in the text, and nobody wants blank lines left behind.

import type { Edit, Finding } from '../validation/finding.js';

export function wholeLines(
  findings: readonly Finding[],
  textOf: (source: number) => string | undefined,
): Finding[] {
  return findings.map((finding) => {
    if (!finding.fixes?.some((fix) => fix.edits.some(({ text }) => text === ''))) return finding;
    return {
      ...finding,
      fixes: finding.fixes.map((fix) => ({
        ...fix,
        edits: fix.edits.map((edit) => widened(edit, textOf(edit.origin.source))),
      })),
    };
  });
}

function widened(edit: Edit, text: string | undefined): Edit {
  if (edit.text !== '' || text === undefined) return edit;
  const { source, start, end } = edit.origin;
  const lineStart = text.lastIndexOf('\n', start - 1) + 1;
  const newline = text.indexOf('\n', end);
  const lineEnd = newline < 0 ? text.length : newline;
  const alone = (text.slice(lineStart, start) + text.slice(end, lineEnd)).trim() === '';
  return alone && end > start
    ? { ...edit, origin: { source, start: lineStart, end: newline < 0 ? lineEnd : lineEnd + 1 } }
    : edit;
}
