// A line that begins with a word of something the language has, but elsewhere: in a record of its own, in a look, in another kind
// of block. Where that is, in one sentence, with the line as it goes there.

import { blockWord, withArticle } from './wording.js';
import { isWord, type Word } from './word.js';

/** By the word that begins the line, what people mean by it and where it goes. */
const outside: Readonly<Record<string, string>> = {
  calibrated:
    'How the gauge was set stands in each inspection, `gauge ultrasonic ± 0.2 mm`; the sound velocity it was set to, ' +
    'on the liner: `sound velocity 2140 m/s`.',
  cleaned: 'What was cleaned or put right is said by an inspection: `closed material behind liner at 8 m`.',
  repaired:
    'What was put right is said by an inspection of that day: `closed spiral weld cracked at 18 m "ground out, welded"`. ' +
    'Steel welded to the trough is `patch DG1 2026-03-10 at 9 m to 9.6 m thickness 4 mm`, ' +
    'work at the drive `serviced DG1 2026-03-10 gearbox oil changed`.',
};

const same: Readonly<Record<string, string>> = {
  calibration: 'calibrated',
  calibrate: 'calibrated',
  cleaning: 'cleaned',
  mended: 'repaired',
  repair: 'repaired',
  repairs: 'repaired',
  welded: 'repaired',
};

/** `blocksSaying`: the blocks that have a line which begins with a word. */
export function saidElsewhere(
  words: readonly Word[],
  block: string,
  blocksSaying: (word: string) => readonly string[],
): string | undefined {
  const [first] = words;
  if (!first) return undefined;
  const plain = first.image.toLowerCase();
  const known = Object.hasOwn(same, plain) ? (same[plain] ?? plain) : plain;
  if (Object.hasOwn(outside, known) && first.type === 'ID') return outside[known];
  if (!isWord(first.type)) return undefined;
  const blocks = blocksSaying(first.type).filter((each) => each !== block && each !== 'Block');
  if (block === 'Block' && blocks.includes('Inspection')) return inALook(words, first.type);
  const [one, ...more] = blocks;
  return one === undefined || more.length > 2
    ? undefined
    : `\`${first.type}\` is something ${[one, ...more].map(withArticle).join(' or ')} says.`;
}

/** A row of a look that stands outside any: with its conveyor and day taken from the line, where it names them. */
function inALook(words: readonly Word[], first: string): string {
  const conveyor = words[1]?.type === 'ID' ? words[1].image : 'DG1';
  const day = words.find(({ type }) => type === 'DATE')?.image ?? '2026-03-14';
  return `\`${first}\` stands inside ${withArticle(blockWord('Inspection'))}: \`inspection ${conveyor} ${day} meter 8120 h {\`, a line each, \`}\`.`;
}
