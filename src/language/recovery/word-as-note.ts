// What a line says in words that the language does not have: it is kept as the line's note, or as a finding about the part.

import { isWord, keyword, type Word } from './word.js';

/** The line with these words as its note, before what is quoted there already; the line itself where there are none. */
export function withNote(line: readonly Word[], told: readonly string[]): readonly Word[] {
  if (told.length === 0) return line;
  const opens = line.at(-1)?.type === '{';
  const body = opens ? line.slice(0, -1) : line;
  const last = body.at(-1);
  const quoted = last?.type === 'STRING' ? last.image.slice(1, -1) : undefined;
  const words = told.join(' ');
  const note: Word = {
    type: 'STRING',
    image: quoted === undefined || quoted === '' ? `"${words}"` : `"${words}: ${quoted}"`,
  };
  return [...(quoted === undefined ? body : body.slice(0, -1)), note, ...(opens ? line.slice(-1) : [])];
}

/** Parts that a finding can be about, as the grammar has them, and what belongs to one of them. */
const parts: Readonly<Record<string, string>> = {
  'hold-down': 'hold-down',
  brace: 'brace',
  cover: 'cover',
  hatch: 'hatch',
  flight: 'flight',
  drive: 'drive',
  'drive plate': 'drive',
  trough: 'trough',
  liner: 'liner',
  bolt: 'bolt',
};

/**
 * `cover cracked at 14.4 m serious`: a finding about the cover, with all that was said of it. `water in trough at 0.5 m`, of a thing
 * that the language does not know: a finding at that place. Undefined where the line says too little to be one.
 */
export function asFinding(words: readonly Word[]): readonly Word[] | undefined {
  const [first, ...rest] = words;
  if (!first) return undefined;
  const part = Object.hasOwn(parts, first.type) ? parts[first.type] : undefined;
  if (part === undefined && !isOfNothingKnown(words)) return undefined;
  const about: readonly Word[] = part === undefined ? [] : [keyword(part)];
  const told = part === first.type ? rest : words;
  const at = told.findIndex(({ type }) => type === 'at');
  const place = told[at + 1]?.type === 'QUANTITY' && at >= 0 ? told.slice(at, at + 2) : [];
  const said = told.filter((word) => !place.includes(word));
  if (said.length === 0 || said.some(({ type }) => type === '{' || type === 'photo')) return undefined;
  const text = said.filter(({ type }) => type === 'STRING').map(({ image }) => image.slice(1, -1));
  const plain = said.filter(({ type }) => type !== 'STRING').map(({ image }) => image);
  const finding: readonly Word[] = [keyword('finding'), ...about, ...place];
  return withNote(
    [...finding, ...text.map((each): Word => ({ type: 'STRING', image: `"${each}"` }))],
    [plain.join(' ').replace(/\s+/g, ' ').replace(/ ,/g, ',')].filter(Boolean),
  );
}

/** Plain words about a thing that no line of a look begins with: a sentence, and no slip of the pen in a name or a number. */
function isOfNothingKnown([first, second, ...more]: readonly Word[]): boolean {
  if (!first || !second) return false;
  const isPlain = ({ type, image }: Word): boolean => type === 'ID' && /^[a-z]{2}/.test(image);
  if (tools.has(first.type)) return true;
  return isPlain(first) && more.length > 0 && (isPlain(second) || isWord(second.type));
}

/** Words of other blocks that begin a line about a thing seen. */
const tools: ReadonlySet<string> = new Set(['lifting point', 'noise', 'gauge']);
