// What the checker says of a few lines put into the sound estate.

import { analyse } from '../../src/analysis/analyse.js';
import { inSoundEstate } from '../../src/validation/example.js';
import type { Finding } from '../../src/validation/finding.js';
import type { Around, Given } from '../../src/validation/rule.js';

export function findingsIn(given: Given, lines: string, around: Around = {}): readonly Finding[] {
  return analyse([{ uri: 'estate.trough', text: inSoundEstate(given, lines, around) }]).findings;
}

/** Codes in the order of the text. */
export function codesIn(given: Given, lines: string): readonly string[] {
  return findingsIn(given, lines).map((finding) => finding.code);
}

/** The message of the one finding of a code. */
export function messageOf(code: string, given: Given, lines: string): string {
  const found = findingsIn(given, lines).filter((finding) => finding.code === code);
  if (found.length !== 1 || !found[0]) throw new Error(`${found.length} findings of ${code}`);
  return found[0].message;
}
