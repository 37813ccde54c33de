// Any text → a sheet, whatever it holds: a text that cannot be one of ours is refused with a reason and not parsed.

import type { Problem } from '../domain/model/problem.js';
import { emptySheet, lower } from './lower.js';
import { parseText } from './parse.js';
import type { Sheet } from './sheet.js';

/** UTF-16 code units. About a hundred thousand readings: years of inspections of a whole works in one file. */
export const largestText = 4_000_000;

export function readSheet(text: string, source: number, uri: string): Sheet {
  const refusal = refuse(text);
  if (refusal !== undefined) {
    const problem: Problem = { kind: 'syntax', origin: { source, start: 0, end: Math.min(1, text.length) }, message: refusal };
    return emptySheet(source, uri, [problem]);
  }
  return lower(parseText(text), source, uri);
}

/** Why a text is not read at all; undefined where it is. */
export function refuse(text: string): string | undefined {
  if (text.includes('\0')) return 'This file is not text: it holds bytes that no text has. Save it as plain text in UTF-8.';
  if (text.length > largestText) {
    const size = (text.length / 1_000_000).toFixed(1);
    return `This file holds ${size} million characters, and at most ${largestText / 1_000_000} million are read. Split it: one file an inspection keeps every file small.`;
  }
  return undefined;
}
