// One line that says several facts is offered as so many lines: between them stands a break, which no line of the language holds.

import type { LineRepair } from './repairs.js';
import { imagesOf, type Word } from './word.js';

const lineBreak: Word = { type: 'BREAK', image: '\n' };

/** The whole line gives way to these. */
export function inSeveralLines(words: readonly Word[], lines: readonly (readonly Word[])[]): LineRepair {
  const line = lines.flatMap((each, at) => (at === 0 ? each : [lineBreak, ...each]));
  return { line, from: 0, to: words.length, words: line };
}

/** The lines of what is offered; mostly one. */
export function linesOf(offered: readonly Word[]): readonly (readonly Word[])[] {
  const lines: Word[][] = [[]];
  for (const word of offered)
    if (word.type === lineBreak.type) lines.push([]);
    else lines.at(-1)?.push(word);
  return lines;
}

/** As a message shows them: `scope panel 4 of run 1` and `scope panel 1 of run 3`. */
export function shownTogether(lines: readonly (readonly Word[])[]): string {
  return lines.map((line) => `\`${imagesOf(line)}\``).join(' and ');
}
