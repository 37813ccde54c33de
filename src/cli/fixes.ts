// Applies the fixes that need no question, the same ones the editor offers as "everything that is certain".
import { applyEdits, fixesTogether } from '../analysis/fixes-together.js';
import type { EstateText } from './read-estate.js';
import type { Analysis } from '../analysis/analysis.js';

/** The texts that change, by path, and how many findings were mended. */
export function applyPreferredFixes(
  analysis: Analysis,
  texts: readonly EstateText[],
): { texts: Map<string, string>; count: number } {
  const fixes = fixesTogether(analysis.findings, ({ source }) => analysis.uriOf(source));
  const edits = fixes.flatMap((fix) => fix.edits);
  const mended = new Map<string, string>();
  for (const { path, text } of texts) {
    const own = edits.filter(({ origin }) => analysis.uriOf(origin.source) === path);
    if (own.length > 0) mended.set(path, applyEdits(text, own));
  }
  return { texts: mended, count: fixes.length };
}
