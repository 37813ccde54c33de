// `finding brace at 14 m "bent"` → a remark, in a look and in a record of work alike; in a look one with a severity, or with an
// answer, is a condition, which stands open until it is closed.

import type * as ast from '../generated/ast.js';
import type { ConditionLine, NotedFinding } from '../../domain/model/records.js';
import { notesOf, present, stated } from './block.js';
import { wordsOf, type Reader } from './reader.js';
import { lowerSeenAt, partNamed, sectorWords } from './seen-at.js';

/** Undefined where it has no words. `mirrored`: whoever saw it looked against the flow. */
export function lowerRemark(reader: Reader, row: ast.Finding, mirrored = false): NotedFinding | undefined {
  const place = lowerSeenAt(reader, row, mirrored);
  const words = notesOf(row);
  if (words === undefined) return undefined;
  const text = [sectorWords(row), words].filter(Boolean).join(': ');
  return { ...place, text, origin: reader.origin(row), ...stated({ part: partNamed(row) }) };
}

/** Undefined where it is a note. */
export function lowerOpenFinding(
  reader: Reader,
  row: ast.Finding,
  mirrored: boolean,
): ConditionLine | undefined {
  const answer = wordsOf(row, 'answer') as ConditionLine['answer']; // the grammar takes these words only
  if (row.severity === undefined && answer === undefined) return undefined;
  return {
    kind: 'finding',
    wornThrough: false,
    origin: reader.origin(row),
    ...lowerSeenAt(reader, row, mirrored),
    ...stated({
      answer,
      about: partNamed(row),
      words: row.notes[0],
      severity: row.severity,
      photo: reader.photo(row),
      note:
        present([sectorWords(row), notesOf({ ...row, notes: row.notes.slice(1) })]).join(': ') || undefined,
    }),
  };
}
