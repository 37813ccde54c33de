// Applies the fixes that need no question, the same ones the editor offers: the preferred fix of each finding, first come
// first served where two would change the same text.

import type { Analysis } from '../analysis/analyse.js';
import type { EstateText } from './read-estate.js';

interface Change {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** The texts that change, by path, and how many findings were mended. */
export function applyPreferredFixes(
  analysis: Analysis,
  texts: readonly EstateText[],
): { texts: Map<string, string>; count: number } {
  const changes = new Map<string, Change[]>();
  let count = 0;
  for (const finding of analysis.findings) {
    const fix = finding.fixes?.find((candidate) => candidate.preferred);
    if (!fix) continue;
    const placed = fix.edits.map((edit) => ({
      file: analysis.locate(edit.origin).uri,
      start: edit.origin.start,
      end: edit.origin.end,
      text: edit.text,
    }));
    if (placed.some((change) => (changes.get(change.file) ?? []).some((other) => overlaps(change, other))))
      continue;
    for (const { file, ...change } of placed) changes.set(file, [...(changes.get(file) ?? []), change]);
    count++;
  }
  const mended = new Map<string, string>();
  for (const { path, text } of texts) {
    const own = changes.get(path);
    if (own)
      mended.set(
        path,
        own
          .sort((a, b) => b.start - a.start)
          .reduce((t, c) => t.slice(0, c.start) + c.text + t.slice(c.end), text),
      );
  }
  return { texts: mended, count };
}

function overlaps(a: Change, b: Change): boolean {
  return a.start === b.start || (a.start < b.end && b.start < a.end);
}
