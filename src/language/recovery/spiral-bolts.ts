// Bolts of a joint between two lengths of the spiral, under the names that people give the joint: `spiral flange bolts loose 2 at
// 10.4 m`, `flange bolt of the spiral loose`. The language says `spiral bolts loose`.

import type { BrokenLine } from './broken-line.js';
import { readsSoundly, type SaidBy } from './kept.js';
import type { Otherwise } from './otherwise.js';
import { blocksOfWork } from './general.js';
import { changed } from './repairs.js';
import { keyword } from './word.js';

const said = [
  'spiral',
  'screw',
  'flight',
  'flange',
  'coupling',
  'joint',
  'bolt',
  'bolts',
  'of',
  'the',
  'loose',
];

export function boltsOfASpiral({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  if (!blocksOfWork.has(block)) return undefined;
  const plain = words.map(({ image }) => image.toLowerCase().replace(/\s+/g, ' '));
  const end = plain.findIndex((image) => !image.split(' ').every((word) => said.includes(word)));
  const before = plain.slice(0, end < 0 ? plain.length : end);
  const named = new Set(before.flatMap((image) => image.split(' ')));
  const aboutSpiral = ['spiral', 'screw', 'flight'].some((word) => named.has(word));
  if (!aboutSpiral || !named.has('loose')) return undefined;
  if (!['bolt', 'bolts', 'flange'].some((word) => named.has(word))) return undefined;
  const rest = words.slice(before.length);
  // `a bolt`, of which there is one.
  const isOne = plain.slice(0, before.length).includes('bolt') && rest[0]?.type !== 'NUMBER';
  const one = isOne ? [{ type: 'NUMBER', image: '1' }] : [];
  const line = [keyword('spiral bolts loose'), ...one, ...rest];
  const isPlaced = rest.some(({ type }) => type === 'at' || type === 'from');
  const isOffered = /^\d+$/.test(line[1]?.image ?? '') && isPlaced && readsSoundly(line, pattern);
  return {
    at: 0,
    message:
      'Bolts of a joint between two lengths of the spiral are counted where the joint is: `spiral bolts loose 2 at 10.4 m`.',
    ...(isOffered
      ? { repair: changed(words, line), senses: before.map((word): SaidBy => [word, 'spiral bolts loose']) }
      : {}),
  };
}
