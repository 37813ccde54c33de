// `troughline explain CODE`: a rule in full; without a code, all rules in a list. `explain words` and `explain gate shut`: what can be
// written, how, and what it means. `explain formulas` and `explain ID`: what is reckoned, how, and where it comes from.

import { codesLike, explain as explainRule, listRules, wrap } from '../../validation/explain.js';
import { linesInside } from '../../language/lines-inside.js';
import { wordRooms, wordsCalled, wordsLike, type WordRoom } from '../../language/word-list.js';
import { formulas } from '../../generators/appendix/formulas.js';
import { Exit, Trouble, type Console } from '../console.js';

export function explain(code: string | undefined, console: Console): number {
  if (code === undefined) {
    console.out(listRules());
    return Exit.clean;
  }
  if (code === 'formulas') {
    console.out(`${formulas.map(({ id, title }) => `${id.padEnd(20)}${title}`).join('\n')}\n`);
    return Exit.clean;
  }
  if (code === 'words') {
    console.out(wordsText(wordRooms()));
    return Exit.clean;
  }
  const called = wordsCalled(code);
  const text = [
    explainRule(code),
    called.length > 0 ? wordsText(called) : undefined,
    inside(code),
    formulaText(code),
  ]
    .filter((each) => each !== undefined)
    .join('\n');
  if (text === '') {
    const like = wordsLike(code);
    if (like.length > 0) {
      console.out(`No line begins with "${code}". What the language has for it:\n\n${wordsText(like)}`);
      return Exit.clean;
    }
    const near = codesLike(code.slice(0, 3));
    throw new Trouble(
      `${code}: no such rule, word or formula${near.length > 0 ? `; there are ${near.join(', ')}` : ''}. ` +
        `Run 'troughline explain', 'troughline explain words' or 'troughline explain formulas' for the lists.`,
    );
  }
  console.out(text);
  return Exit.clean;
}

/** Of a block, the words that its lines begin with, each of which can be asked for in turn. */
function inside(word: string): string | undefined {
  const plain = word.trim().toLowerCase().replace(/\s+/g, ' ');
  const words = linesInside(plain);
  if (words.length === 0) return undefined;
  return `Lines inside ${plain} { … } begin with:\n\n${wrap(`${words.join(', ')}.`)
    .map((each) => `    ${each}`)
    .join('\n')}\n`;
}

/** A head for each room, then each word: the line as it is typed, and its meaning below. */
function wordsText(rooms: readonly WordRoom[]): string {
  const parts = rooms.map(({ title, entries }) => {
    const texts = entries.map(({ word, line, meaning }) =>
      [line ?? word, ...wrap(meaning).map((each) => `    ${each}`)].join('\n'),
    );
    return [title, ...texts].join('\n\n');
  });
  return `${parts.join('\n\n')}\n`;
}

function formulaText(id: string): string | undefined {
  const found = formulas.find((each) => each.id === id.toLowerCase());
  if (!found) return undefined;
  const { title, formula, symbols, standing, source, note } = found;
  const width = Math.max(0, ...symbols.map(({ symbol, unit }) => symbol.length + unit.length)) + 3;
  const rows = symbols.map(
    ({ symbol, unit, meaning }) => `    ${`${symbol} ${unit === '1' ? '' : unit}`.padEnd(width)}${meaning}`,
  );
  return [
    title,
    '',
    `    ${formula}`,
    '',
    ...rows,
    '',
    `${standing}: ${source}.`,
    ...(note ? [note] : []),
    '',
  ].join('\n');
}
