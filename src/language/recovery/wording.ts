// How tokens and blocks are called when a message speaks of them: in the words of the language, never in the names of tokens
// or rules.

import { list as listOf } from '../../domain/units/wording.js';
import type { NextToken } from './pattern.js';

/** What a block is called, from its rule of the grammar: `ScrewChange` is a screw change. */
export function blockWord(block: string): string {
  return block.replace(/(?!^)([A-Z])/g, ' $1').toLowerCase();
}

export function withArticle(block: string): string {
  const word = blockWord(block);
  return /^[aeiou]/.test(word) ? `an ${word}` : `a ${word}`;
}

/** What a rule that reads one value wants. */
const values: Readonly<Record<string, string>> = {
  Quantity: 'a number with its unit (such as `8.4 mm`)',
  Numeral: 'a whole number',
  Day: 'a date (such as `2026-03-14`)',
  ClockTime: 'a clock position (such as `7:30`)',
  QualifiedName: 'the name of a conveyor',
};

const kinds: Readonly<Record<string, string>> = {
  ID: 'a name',
  STRING: 'a text in quotes',
};

/** What may come next, each once, words before values. */
export function waysInWords(ways: readonly NextToken[]): readonly string[] {
  const words = ways
    .filter(({ token }) => !Object.hasOwn(kinds, token) && token === token.toLowerCase())
    .map(({ token }) => `\`${token}\``)
    // Two spellings of one thing are one choice.
    .filter((word) => word !== '`+/-`' && word !== '`color`');
  const others = ways
    .filter(({ token }) => token !== token.toLowerCase())
    .map(({ token, rule }) => values[rule] ?? kinds[token] ?? 'a number');
  return [...new Set([...words, ...others])];
}

export function oneOf(items: readonly string[]): string {
  return listOf([...items], 'or');
}

/** As written, on one line, and short. */
export function quoted(image: string): string {
  const plain = image.replace(/\s+/g, ' ');
  return `\`${plain.length > 40 ? `${plain.slice(0, 40)}…` : plain}\``;
}
