// Parts of a machine that are declared with another first word than the language has, or without the last one: `slide gate MidGate at 13 m
// to 13.4 m`, `feed CentrifugeA at 0.2 m to 0.8 m`, `break Feed at 0 m to 0.3 m`, `access Walk at 4 m to 12 m walkway`.

import type { BrokenLine } from './broken-line.js';
import { readsSoundly } from './kept.js';
import type { Otherwise } from './otherwise.js';
import { changed } from './repairs.js';
import { imagesOf, keyword, plainImage, type Word } from './word.js';

/** What opens the trough, by what people call it. */
const breaks: Readonly<Record<string, string>> = {
  'slide gate': 'slide gate',
  gate: 'slide gate',
  slide: 'slide gate',
  inlet: 'inlet',
  feed: 'inlet',
  infeed: 'inlet',
  intake: 'inlet',
  hopper: 'inlet',
  discharge: 'discharge',
  outlet: 'discharge',
  spout: 'discharge',
  'end plate': 'end plate',
  endplate: 'end plate',
  'joint ring': 'joint ring',
};

export function declaredOtherwise(line: BrokenLine): Otherwise | undefined {
  return line.block === 'Conveyor' ? (asBreak(line) ?? kindOfBreak(line)) : undefined;
}

/** `slide gate MidGate at 13.0 m to 13.4 m driven by air` */
function asBreak({ words, pattern }: BrokenLine): Otherwise | undefined {
  const [first, name, ...rest] = words;
  const kind = breakOf(first);
  if (!first || kind === undefined || name?.type !== 'ID' || rest[0]?.type !== 'at') return undefined;
  const end = rest[2]?.type === 'to' ? 4 : 2;
  const line = [keyword('break'), name, ...rest.slice(0, end), keyword(kind), ...rest.slice(end)];
  const reads = readsSoundly(line, pattern);
  // `inlet Chute at 0.8 m to 1.6 m from above`: no line is shown that does not read either.
  if (!reads) return undefined;
  return {
    at: 0,
    message: `What opens the trough is a \`break\`, with what it is behind its place: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: [[plainImage(first), kind] as const],
  };
}

/** `break Feed at 0 m to 0.3 m`: what its name says it is. */
function kindOfBreak({ words, reached, pattern }: BrokenLine): Otherwise | undefined {
  const [first, name] = words;
  if (first?.type !== 'break' || name?.type !== 'ID' || words[2]?.type !== 'at') return undefined;
  const end = words[4]?.type === 'to' ? 6 : 4;
  if (reached !== end && reached !== words.length) return undefined;
  const ending = /([A-Z]?[a-z]+)[0-9A-Z]*$/.exec(name.image)?.[1]?.toLowerCase() ?? '';
  const beginning = /^([A-Z]?[a-z]+)/.exec(name.image)?.[1]?.toLowerCase() ?? '';
  const kind = [ending, beginning].map((each) => breakOf({ type: 'ID', image: each })).find(Boolean);
  const line = [...words.slice(0, end), keyword(kind ?? 'inlet'), ...words.slice(end)];
  if (!readsSoundly(line, pattern)) return undefined;
  const kinds = '`inlet`, `slide gate`, `discharge`, `end plate` or `joint ring`';
  return {
    at: Math.min(reached, words.length - 1),
    message: kind
      ? `A break says what opens the trough there: \`${imagesOf(line)}\`, going by its name (or ${kinds}).`
      : `A break says what opens the trough there, ${kinds}: \`${imagesOf(line)}\`.`,
    ...(kind ? { repair: changed(words, line) } : {}),
  };
}

function breakOf(word: Word | undefined): string | undefined {
  const image = word ? plainImage(word) : '';
  return Object.hasOwn(breaks, image) ? breaks[image] : undefined;
}
