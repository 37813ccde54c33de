// A line that cannot be read, as those see it who say what was meant.

import type { LinePattern, LinePlace } from './pattern.js';
import type { Word } from './word.js';

export interface BrokenLine {
  /** `Plant`; `Block` where a block begins. */
  readonly block: string;
  readonly pattern: LinePattern;
  /** The heading of that block; none outside any. */
  readonly heading: readonly Word[];
  /** All that is written of it. */
  readonly words: readonly Word[];
  /** Number of the word where it cannot be followed; that of all its words where it ends too soon. */
  readonly reached: number;
  readonly standing: LinePlace;
  /** How the lines inside a block go, by its rule. */
  readonly inside: (block: string) => LinePattern;
  /** The blocks that have a line which begins with a word. */
  readonly blocksSaying: (word: string) => readonly string[];
}
