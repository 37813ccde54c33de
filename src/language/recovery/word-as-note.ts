// What a line says in words that the language does not have: it is kept as the line's note, or as a finding about the part.

import type { Word } from './word.js';

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

/** Parts that a finding can be about, as the grammar has them. */
const parts = new Set(['hold-down', 'brace', 'cover', 'hatch', 'flight', 'drive', 'trough', 'liner', 'bolt']);

/** `cover cracked at 14.4 m serious`: a finding about the cover, with all that was said of it. */
export function asFinding(words: readonly Word[]): readonly Word[] | undefined {
  const [part, ...rest] = words;
  if (!part || !parts.has(part.type)) return undefined;
  const at = rest.findIndex(({ type }) => type === 'at');
  const place = rest[at + 1]?.type === 'QUANTITY' && at >= 0 ? rest.slice(at, at + 2) : [];
  const told = rest.filter((word) => !place.includes(word));
  if (told.length === 0 || told.some(({ type }) => type === '{' || type === 'photo')) return undefined;
  const text = told.filter(({ type }) => type === 'STRING').map(({ image }) => image.slice(1, -1));
  const said = told.filter(({ type }) => type !== 'STRING').map(({ image }) => image);
  const finding: readonly Word[] = [{ type: 'finding', image: 'finding' }, part, ...place];
  return withNote(
    [...finding, ...text.map((each): Word => ({ type: 'STRING', image: `"${each}"` }))],
    [said.join(' ').replace(/\s+/g, ' ')].filter(Boolean),
  );
}
