// What a line says in words that the language does not have: it is kept as the line's note.

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
