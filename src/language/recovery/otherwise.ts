// What an author is told of a line that the language says in another way, or in another record.

import type { BrokenLine } from './broken-line.js';
import type { SaidBy } from './kept.js';
import type { LineRepair } from './repairs.js';

export interface Otherwise {
  readonly message: string;
  /** Number of the word where it is told. */
  readonly at: number;
  /** Told only where its line reads and keeps all that was written. */
  readonly repair?: LineRepair;
  /** Words that were written, each with the language's word that says it in the repair. */
  readonly senses?: readonly SaidBy[];
}

export type LineSaying = (line: BrokenLine) => Otherwise | undefined;
