// A text without its quotes: `by day shift`, `conveys sludge cake`, `gearbox oil changed by fitter "VG 220"`.

import type { BrokenLine } from './broken-line.js';
import { readsSoundly } from './kept.js';
import type { Otherwise } from './otherwise.js';
import { changed } from './repairs.js';
import { imagesOf, type Word } from './word.js';

export function unquoted({ words, reached, standing, pattern }: BrokenLine): Otherwise | undefined {
  const ways = pattern.ways(standing);
  // Where the line could end, the words behind it are no text of it.
  if (
    pattern.isWhole(standing) ||
    reached >= words.length ||
    ways.length === 0 ||
    ways.some(({ token }) => token !== 'STRING')
  )
    return undefined;
  const quote = words.findIndex(({ type }, at) => at >= reached && (type === 'STRING' || type === '{'));
  const end = quote < 0 ? words.length : quote;
  const plain = words.slice(reached, end);
  const isValue = (type: string): boolean => type === type.toUpperCase() && type !== 'ID';
  if (plain.length === 0 || isValue(plain[0]?.type ?? '') || plain.some(({ type }) => type === 'DATE'))
    return undefined;
  // `photo lid 7 no time` names no file.
  if (words[reached - 1]?.image === 'photo' && !plain.some(({ type }) => type === '.')) return undefined;
  const isFile = words[reached - 1]?.image === 'photo';
  const said = isFile ? plain.map(({ image }) => image).join('') : imagesOf(plain);
  const text: Word = { type: 'STRING', image: `"${said}"` };
  const line = [...words.slice(0, reached), text, ...words.slice(end)];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: reached,
    message: `A text stands in quotes: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
  };
}
