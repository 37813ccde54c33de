// Applies fixes to the texts of an estate: those that need no question, the same ones that the editor offers as "everything that
// is certain"; or, where that is asked for, the lines that are offered for lines that cannot be read, each of them told.

import { applyEdits, certainFix, fixesTogether, offeredFix } from '../analysis/fixes-together.js';
import type { Edit, Finding, Fix } from '../validation/finding.js';
import type { EstateText } from './read-estate.js';
import type { Analysis } from '../analysis/analysis.js';

export interface MendedTexts {
  /** The texts that change, by path. */
  readonly texts: ReadonlyMap<string, string>;
  /** How many findings were mended. */
  readonly count: number;
}

export interface OfferTaken {
  readonly file: string;
  /** From 1, in the text as it was. */
  readonly line: number;
  readonly was: string;
  readonly is: string;
}

export function applyCertainFixes(analysis: Analysis, texts: readonly EstateText[]): MendedTexts {
  return apply(analysis, texts, certainFix);
}

/**
 * Lines that cannot be read become the lines that are offered for them. Taken lines stand in the order of files and lines. `later`: those
 * that hang on what the others say, and only those.
 */
export function takeOffers(
  analysis: Analysis,
  texts: readonly EstateText[],
  later: boolean,
): MendedTexts & { readonly taken: readonly OfferTaken[] } {
  const mended = apply(analysis, texts, (finding) => {
    const fix = offeredFix(finding);
    return (fix?.later === true) === later ? fix : undefined;
  });
  const byPath = new Map(texts.map(({ path, text }) => [path, text]));
  const taken = mended.fixes.flatMap(({ edits }) =>
    edits.map((edit) => offerTaken(analysis, byPath.get(analysis.uriOf(edit.origin.source)) ?? '', edit)),
  );
  return { ...mended, taken };
}

function offerTaken(analysis: Analysis, text: string, { origin, text: put }: Edit): OfferTaken {
  const { uri, line } = analysis.locate(origin);
  const from = text.lastIndexOf('\n', origin.start - 1) + 1;
  const next = text.indexOf('\n', origin.end);
  const to = next < 0 ? text.length : next;
  return {
    file: uri,
    line,
    was: text.slice(from, to).trim(),
    is: (text.slice(from, origin.start) + put + text.slice(origin.end, to)).trim(),
  };
}

function apply(
  analysis: Analysis,
  texts: readonly EstateText[],
  fixOf: (finding: Finding) => Fix | undefined,
): MendedTexts & { readonly fixes: readonly Fix[] } {
  const fixes = fixesTogether(analysis.findings, ({ source }) => analysis.uriOf(source), fixOf);
  const edits = fixes.flatMap((fix) => fix.edits);
  const mended = new Map<string, string>();
  for (const { path, text } of texts) {
    const own = edits.filter(({ origin }) => analysis.uriOf(origin.source) === path);
    if (own.length > 0) mended.set(path, applyEdits(text, own));
  }
  return { texts: mended, count: fixes.length, fixes };
}
