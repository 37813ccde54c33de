// A line that begins with a word of something the language has, but elsewhere: in a record of its own, in a look, in another kind
// of block. Where that is, in one sentence, with the line as it goes there.

import { joined } from './joined.js';
import { asFinding } from './general.js';
import { isOffered, readsSoundly } from './kept.js';
import { partOfWord } from './part-words.js';
import { isName } from './said-place.js';
import type { LinePattern } from './pattern.js';
import { blockWord, quoted, withArticle } from './wording.js';
import type { BrokenLine } from './broken-line.js';
import { imagesOf, isWord, type Word } from './word.js';

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

export function saidElsewhere(line: BrokenLine): string | undefined {
  const { words, block, blocksSaying } = line;
  const [first] = words;
  if (!first) return undefined;
  const plain = first.image.toLowerCase();
  const known = Object.hasOwn(same, plain) ? (same[plain] ?? plain) : plain;
  if (Object.hasOwn(outside, known) && first.type === 'ID') return outside[known];
  const ofALook = block === 'Block' ? inALook(line) : undefined;
  if (ofALook !== undefined || !isWord(first.type)) return ofALook;
  if (isStep(line)) return `\`${first.type}\` is a step of the job's \`order { … }\`.`;
  const blocks = blocksSaying(first.type).filter((each) => each !== block && each !== 'Block');
  // What is seen may be told of in work too: a look is where it goes first.
  const [one, ...more] = blocks.length > 3 && blocks.includes('Inspection') ? ['Inspection'] : blocks;
  return one === undefined || more.length > 2
    ? undefined
    : `\`${first.type}\` is something ${[one, ...more].map(withArticle).join(' or ')} says.`;
}

/** In a job what belongs into its order; of a part, `gate on the left renewed`, only where it reads there. */
export function isStep({ block, words, inside }: BrokenLine): boolean {
  const [first] = words;
  if (block !== 'Job' || !first || !isWord(first.type)) return false;
  const steps = inside('Order');
  return steps.first.has(first.type) && (partOfWord(first) === undefined || readsSoundly(words, steps));
}

/** Something seen, outside any look: with its conveyor and day taken from the line, where it names them. */
export function inALook({ words, inside, blocksSaying }: BrokenLine): string | undefined {
  const day = words.findIndex(({ type }) => type === 'DATE');
  const isNamed = day > 0 && isName(words[day - 1]);
  const [first] = words;
  const saysLook = isWord(first?.type ?? '') && blocksSaying(first?.type ?? '').includes('Inspection');
  if (!saysLook && !(isNamed && words.some((word) => partOfWord(word) !== undefined))) return undefined;
  const conveyor = isNamed ? words[day - 1]?.image : words[1]?.type === 'ID' ? words[1].image : 'DG1';
  const heading = `\`inspection ${conveyor ?? 'DG1'} ${words[day]?.image ?? '2026-03-14'} meter 8120 h {\``;
  const rest = isNamed ? [...words.slice(0, day - 1), ...words.slice(day + 1)] : [];
  const row = isNamed ? rowOf(joined(rest), inside('Inspection')) : undefined;
  return (
    `${quoted(first?.image ?? '')} stands inside ${withArticle(blockWord('Inspection'))}, with the meter of that day: ` +
    `${heading}, ${row ? `\`${imagesOf(row)}\`` : 'a line each'}, \`}\`.`
  );
}

/** As it stands, or as a finding. */
function rowOf(words: readonly Word[], look: LinePattern): readonly Word[] | undefined {
  if (readsSoundly(words, look)) return words;
  const finding = asFinding(words);
  return finding && isOffered(words, finding, look) ? finding : undefined;
}
