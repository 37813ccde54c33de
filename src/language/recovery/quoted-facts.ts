// Facts that the language takes in quotes, written without them or with another first word: `fixed with clamp strips along both edges`,
// `gives off wood dust and carbon monoxide`, `spare gate wiper`.

import type { BrokenLine } from './broken-line.js';
import { joined } from './joined.js';
import { isOffered, readsSoundly } from './kept.js';
import type { Otherwise } from './otherwise.js';
import { changed } from './repairs.js';
import { imagesOf, keyword, type Word } from './word.js';

export function quotedFact(line: BrokenLine): Otherwise | undefined {
  switch (line.block) {
    case 'Liner':
      return asHeldBy(line);
    case 'Conveyor':
      return asGivenOff(line);
    case 'Job':
      return asSpare(line);
    default:
      return undefined;
  }
}

const holding = /^(fixed|held|clamped|clamp|clamps|glued|bonded|riveted|wedged|no bolts?|without bolts?)$/i;
const joining = /^(with|by|only|on|down|in|place|,)$/i;

/** `fixed with clamp strips along both top edges`: where `by` says all, the word before it says nothing more. */
function asHeldBy({ words, pattern }: BrokenLine): Otherwise | undefined {
  const [first] = words;
  if (!first || !holding.test(first.image)) return undefined;
  const isPlain = /^(fixed|held)$/i.test(first.image);
  let from = isPlain ? 1 : 0;
  while (isPlain && joining.test(words[from]?.image ?? '')) from++;
  const line = [keyword('fixed by'), textOf(words.slice(from))];
  if (from === words.length || !readsSoundly(line, pattern)) return undefined;
  return offered(words, line, 'What holds the panels is said in quotes');
}

/** `the material gives off wood dust and carbon monoxide` */
function asGivenOff({ words, pattern }: BrokenLine): Otherwise | undefined {
  const said = joined(words);
  const at = said.findIndex(
    ({ type, image }, i) =>
      type === 'gives off' ||
      /^(emits|releases|gassing)$/i.test(image) ||
      (image === 'give' && said[i + 1]?.image === 'off'),
  );
  if (at < 0) return undefined;
  const rest = said.slice(at + (said[at]?.image === 'give' ? 2 : 1));
  const each = rest.reduce<Word[][]>(
    (all, word) => {
      if (word.type === ',' || word.image === 'and') all.push([]);
      else all.at(-1)?.push(word);
      return all;
    },
    [[]],
  );
  const things = each.filter(({ length }) => length > 0).map(textOf);
  const line = [
    keyword('gives off'),
    ...things.flatMap((thing, i) => (i === 0 ? [thing] : [{ type: ',', image: ',' }, thing])),
  ];
  if (things.length === 0 || !readsSoundly(line, pattern)) return undefined;
  return offered(words, line, 'What comes off the material is said in quotes, each by itself');
}

/** `spare 1 gate "wiper"`, `spare gate wiper`: a part to have at hand, in quotes. */
function asSpare({ words, pattern }: BrokenLine): Otherwise | undefined {
  const [first, ...rest] = words;
  if (first?.type !== 'spare') return undefined;
  const counts = rest.filter(({ type }) => type === 'NUMBER');
  const what = rest.filter(({ type }) => type !== 'NUMBER');
  if (what.length === 0 || counts.length > 1) return undefined;
  const line = [first, ...counts, textOf(what)];
  return isOffered(words, line, pattern)
    ? offered(words, line, 'A part to have at hand is said in quotes')
    : undefined;
}

function offered(words: readonly Word[], line: readonly Word[], why: string): Otherwise {
  return { at: 0, message: `${why}: \`${imagesOf(line)}\`.`, repair: changed(words, line) };
}

function textOf(words: readonly Word[]): Word {
  return { type: 'STRING', image: `"${imagesOf(words).replace(/"/g, '').replace(/\s+/g, ' ').trim()}"` };
}
