// What an author is told of a line that the language says in another way, or in another record.

import type { SaidBy } from './kept.js';
import type { LineRepair } from './repairs.js';

export interface Otherwise {
  readonly message: string;
  /** Number of the word where it is told. */
  readonly at: number;
  readonly repair?: LineRepair;
  /** Words that were written, each with the language's word that says it in the repair. */
  readonly senses?: readonly SaidBy[];
}
