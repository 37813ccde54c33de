// Parts of a machine that are declared with another first word than the language has, or without the last one: `slide gate MidGate at 13 m
// to 13.4 m`, `feed CentrifugeA at 0.2 m to 0.8 m`, `break Feed at 0 m to 0.3 m`, `access Walk at 4 m to 12 m walkway`.

import type { BrokenLine } from './broken-line.js';
import { isSafeguard } from '../../domain/conditions/safeguards.js';
import { parseQuantity } from '../../domain/units/parse.js';
import { isName } from './said-place.js';
import { noteOfWords, noteOf, takenApart } from './general.js';
import { joined } from './joined.js';
import { isOffered, readsSoundly } from './kept.js';
import type { Otherwise } from './otherwise.js';
import { changed } from './repairs.js';
import { storeOtherwise } from './store-line.js';
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
  discharge: 'discharge',
  outlet: 'discharge',
  spout: 'discharge',
  'end plate': 'end plate',
  endplate: 'end plate',
  'joint ring': 'joint ring',
  'no liner': 'no liner',
  drain: 'no liner',
  screen: 'no liner',
  bare: 'no liner',
  unlined: 'no liner',
};

export function declaredOtherwise(line: BrokenLine): Otherwise | undefined {
  if (line.block === 'Plant') return storeOtherwise(line);
  return line.block === 'Conveyor'
    ? (asBreak(line) ??
        asUnlined(line) ??
        kindOfBreak(line) ??
        asSafeguard(line) ??
        asHolder(line) ??
        withMore(line))
    : undefined;
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

/** `e-stop at tail left`, `hatch interlock H1`, `pull cord both sides from 0 m to 19 m`: what, where, and the rest in quotes. */
function asSafeguard({ words, pattern }: BrokenLine): Otherwise | undefined {
  const plain = joined(words);
  const { part, place, told, texts, answer, severity, by, photo } = takenApart(plain);
  const isMore = [answer, severity, by, photo].some(({ length }) => length > 0);
  if (part === undefined || !isSafeguard(part) || isMore) return undefined;
  // `emergency stops at head and tail`
  const isBoth = place.length === 0 && /^(?:at )?both ends$/.test(imagesOf(told));
  const ends = isBoth ? [keyword('at'), keyword('tail'), keyword('and'), keyword('head')] : [];
  const [side, ...more] = told;
  const isSide = more.length === 0 && /^(?:left|right)$/.test(side?.image ?? '');
  const whole = readsSoundly(plain, pattern)
    ? plain
    : isSide && side
      ? [keyword(part), ...place, keyword(`${side.image} side`)]
      : undefined;
  if (whole && isOffered(words, whole, pattern))
    return {
      at: 0,
      message: `What stops the screw, or keeps people from it, is declared so: \`${imagesOf(whole)}\`.`,
      repair: changed(words, whole),
    };
  const note = noteOf(told, texts);
  const line = [keyword(part), ...place, ...ends, ...(note === undefined ? [] : [note])];
  if (!isOffered(words, line, pattern)) return undefined;
  return {
    at: 0,
    message: `What stops the screw, or keeps people from it, is declared so: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
  };
}

/** `silo from 0.4 m to 2.2 m 12 m3`, `drain valve D1 at 0.1 m`: where, how much it holds, and the rest in quotes. */
function asHolder({ words, pattern }: BrokenLine): Otherwise | undefined {
  const all = joined(words);
  const isVolume = ({ type, image }: Word): boolean =>
    type === 'QUANTITY' && parseQuantity(image, 'volume').ok;
  const held = all.filter(isVolume);
  const { part, place, told, texts, answer, severity, by, photo } = takenApart(
    all.filter((word) => !isVolume(word) && word.type !== 'volume'),
  );
  const isMore = [answer, severity, by, photo].some(({ length }) => length > 0);
  if ((part !== 'hopper' && part !== 'drain') || held.length > (part === 'hopper' ? 1 : 0) || isMore)
    return undefined;
  const name = isName(told[0]) ? told.slice(0, 1) : [];
  const note = noteOf(told.slice(name.length), texts);
  const line = [
    keyword(part),
    ...name,
    keyword('at'),
    ...place.slice(1),
    ...(held.length > 0 ? [keyword('volume'), ...held] : []),
    ...(note === undefined ? [] : [note]),
  ];
  if (!isOffered(words, line, pattern)) return undefined;
  const what = part === 'hopper' ? 'What stands over the screw is' : 'Where what is wet runs out is';
  return {
    at: 0,
    message: `${what} declared with its place: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
  };
}

/** `no liner from 6.2 m to 6.9 m`, `unlined from 6.2 m to 6.9 m "screen"`: no panel lies there, as at any other break. */
function asUnlined({ words, pattern }: BrokenLine): Otherwise | undefined {
  const said = joined(words);
  const from = said.findIndex(({ type }) => type === 'from' || type === 'at');
  const head = imagesOf(said.slice(0, from)).toLowerCase();
  if (from < 1 || !/^(no liner|unlined|not lined|never lined|bare|no lining|without liner)$/.test(head))
    return undefined;
  const line = [
    ...[keyword('break'), { type: 'ID', image: 'Bare' }, keyword('at')],
    ...[...said.slice(from + 1, from + 4), keyword('no liner'), ...said.slice(from + 4)],
  ];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: 0,
    message: `What is never lined is a \`break\`, with a name of its own: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: [[plainImage(said[0]!), 'no liner'] as const],
  };
}

/** `break Gate at 8.4 m to 9 m slide gate driven by air plate G1`: it reads as far as it says what it is; what more is said stands in quotes. */
function withMore({ words, reached, pattern }: BrokenLine): Otherwise | undefined {
  const rest = words.slice(reached);
  const isPlain = rest.every(({ type }) => type !== 'QUANTITY' && type !== '{' && type !== '}');
  // One word more is as likely a slip: `at 3 m m`.
  if (!parts.has(words[0]?.type ?? '') || rest.length < 2 || !isPlain) return undefined;
  const note = noteOfWords(rest);
  const line = [...words.slice(0, reached), ...(note ? [note] : [])];
  if (!note || !isOffered(words, line, pattern)) return undefined;
  return {
    at: reached,
    message: `What more there is to say of it stands in quotes: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
  };
}

/** Lines that end with words of one's own. */
const parts: ReadonlySet<string> = new Set([
  'break',
  'access',
  'cover',
  'hatch',
  'brace',
  'hold-down',
  'lifting point',
  'rest at',
]);

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
  const kinds = '`inlet`, `slide gate`, `discharge`, `end plate`, `joint ring` or `no liner`';
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
