// The heading of a record with its day before its conveyor, or with a word between: `inspection on 2021-11-08 PB2 meter 2230 h {`.

import type { BrokenLine } from './broken-line.js';
import { readsSoundly } from './kept.js';
import type { Otherwise } from './otherwise.js';
import { changed } from './repairs.js';
import { imagesOf, type Word } from './word.js';

export function headingInOrder({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [first, ...all] = words;
  if (block !== 'Block' || !first || first.type === 'ID') return undefined;
  const head = all.slice(0, 5);
  const day = head.find(({ type }) => type === 'DATE');
  const conveyor = head.find(({ type, image }) => type === 'ID' && /[A-Z0-9]/.test(image));
  if (!day || !conveyor) return undefined;
  const isJoining = ({ image }: Word): boolean => image === 'on' || image === 'of' || image === 'for';
  const rest = all.filter(
    (word) => word !== day && word !== conveyor && !(isJoining(word) && head.includes(word)),
  );
  const line = [first, conveyor, day, ...rest];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: 1,
    message: `A record names its conveyor and then its day: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
  };
}
