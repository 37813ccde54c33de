// A reading in the words of whoever took it, in any order: where, and what was seen or measured there: `steel visible at 13.9 m clock 5`, `green
// just showing at 14.2 m 5 o’clock`, `colour turquoise at P5`, `panel 5 run 1 sand coloured`. What it does not say is its note.

import type { BrokenLine } from './broken-line.js';
import { isColour } from './colours.js';
import { fillers } from './fillers.js';
import { noteOfWords, noteOf, takenApart, type SaidLine } from './general.js';
import { joined } from './joined.js';
import { readsSoundly, type SaidBy } from './kept.js';
import type { Otherwise } from './otherwise.js';
import { changed, states } from './repairs.js';
import { isName } from './said-place.js';
import { partOfWord } from './part-words.js';
import type { LinePattern } from './pattern.js';
import { isValue, imagesOf, keyword, plainImage, type Word } from './word.js';

interface Shown {
  /** Behind the place. */
  readonly row: readonly Word[];
  /** What it leaves to a note. */
  readonly left: readonly Word[];
  readonly senses: readonly SaidBy[];
}

export function readInWords({ block, words: written, pattern }: BrokenLine): Otherwise | undefined {
  if (block !== 'Inspection' || written.some(({ type }) => type === 'finding' || type === '{'))
    return undefined;
  const said = takenApart(joined(written));
  const { place, part, photo, texts } = said;
  if (said.severity.length + said.by.length + said.answer.length > 0) return undefined;
  // `10.8 mm left of the bolt`
  const size = said.told.findIndex(({ type }) => type === 'QUANTITY');
  const isBehind = size >= 0 && said.told.findIndex((word) => partOfWord(word) === part) > size;
  if (part !== undefined && !isBehind && !['liner', 'panel', 'trough'].includes(part)) return undefined;
  const shown = shownIn(said);
  if (!shown) return undefined;
  const { row, left, senses } = shown;
  const spot = spotOf(place);
  const note = noteOf(left, texts);
  const isSomewhere = row[0]?.type === 'thickness' || written.some(isName);
  if (spot.length === 0) return isSomewhere ? undefined : nowhere(written, row, pattern);
  const behind = [...row, ...photo, ...(note ? [note] : [])];
  const line = [...spot, ...behind];
  if (readsSoundly(line, pattern))
    return { at: 0, message: `Did you mean \`${imagesOf(line)}\`?`, repair: changed(written, line), senses };
  const clock = [keyword('clock'), { type: 'CLOCK', image: '6:00' }];
  const lacking = [...spot, ...clock, ...behind];
  if (place.some(({ type }) => type === 'clock') || !readsSoundly(lacking, pattern)) return undefined;
  return {
    at: 0,
    message:
      `A reading says where round the trough it was taken: \`${imagesOf(lacking)}\`, if it was at the bottom; ` +
      'where a point lies, the point by its name says both.',
  };
}

/** `all sand coloured`: nobody says where. */
function nowhere(
  written: readonly Word[],
  row: readonly Word[],
  pattern: LinePattern,
): Otherwise | undefined {
  const note = noteOfWords(written);
  const line = [keyword('finding'), ...(note ? [note] : [])];
  if (!note || !readsSoundly(line, pattern)) return undefined;
  return {
    at: 0,
    message:
      `What shows counts where it is said to: \`P1 ${imagesOf(row)}\`, a line for each point, or ` +
      `\`from 2 m to 9 m clock 6:00 ${imagesOf(row)}\`. As a note that counts nothing it is \`${imagesOf(line)}\`.`,
    repair: changed(written, line),
  };
}

/** A point and a panel stand without `at`. */
function spotOf(place: readonly Word[]): readonly Word[] {
  const [at, spot, ...more] = place;
  if (at?.type === 'at' && isName(spot)) return more.length > 0 ? [] : place.slice(1);
  return at?.type === 'at' && spot?.type === 'panel' ? place.slice(1) : place;
}

function shownIn({ told }: SaidLine): Shown | undefined {
  if (told.some(({ image }, at) => denying.has(image.toLowerCase()) || isNearly(told, at))) return undefined;
  const sizes = told.filter(({ type }) => isValue(type));
  if (sizes.length > 1) return undefined;
  return sizes.length === 1 ? measured(told, sizes[0]) : (phrased(told) ?? coloured(told));
}

/** What shows not, or not yet, is no reading. */
const denying: ReadonlySet<string> = new Set([
  ...['not', 'no', 'never', 'without', 'yet', 'soon', 'except', 'excepting', 'but', 'only'],
]);

/** `nearly showing`, and not `full width nearly`. */
function isNearly(told: readonly Word[], at: number): boolean {
  const next = told[at + 1];
  return (
    /^(almost|nearly)$/.test(told[at]?.image ?? '') && (isColour(next) || showing.has(next?.image ?? ''))
  );
}

/** `P5 = 10.8 mm`, `P5 reads 10.8 mm left of the bolt`: what stands before the value only says that it was measured. */
function measured(told: readonly Word[], size: Word | undefined): Shown | undefined {
  if (!size || size.type !== 'QUANTITY' || !/\d *(mm|in)$/.test(size.image)) return undefined;
  const at = told.indexOf(size);
  // `worn by 12 mm` is what is gone, not what is left.
  if (told[at - 1]?.image.toLowerCase() === 'by') return undefined;
  const says = ({ image, type }: Word): boolean =>
    !measuring.has(image.toLowerCase()) && !fillers.has(image.toLowerCase()) && type !== ':' && type !== ',';
  const before = told.slice(0, at);
  const after = told.slice(at + 1);
  if (before.some(says) || after.some(({ image }) => states.has(image))) return undefined;
  return {
    row: [keyword('thickness'), size],
    left: after.some(says) ? after : [],
    senses: told.filter((word) => measuring.has(word.image.toLowerCase())).map(asThickness),
  };
}

function asThickness({ image }: Word): SaidBy {
  return [image.toLowerCase(), 'thickness'];
}

const measuring: ReadonlySet<string> = new Set(
  (
    'thickness thick thk measured measures measure measurement gauge gauged reading read reads value shows show left remaining remains ' +
    'liner panel lining = now today down to worn up'
  ).split(' '),
);

const shows = '(?:visible|showing|shows|bare|exposed|shining|seen|to be seen)';
const comes = '(?:coming |showing |shining )?through';

/** What shows of it, behind the place, by words that say so. */
const phrases: readonly (readonly [string, string])[] = [
  ['trough showing', `(?:bare )?(?:steel|metal|trough)(?: plate)?(?: is| was)? (?:${shows}|${comes})`],
  ['trough showing', '(?:worn |right )?(?:down|through) to(?: the)? (?:steel|metal|trough|plate)'],
  ['trough showing', 'bare (?:steel|metal|trough|plate)'],
  [
    'second colour showing',
    `(?:second|2nd|lower|other|under|bottom) (?:colour|color|layer)(?: is| was| just)*(?: ${shows}| ${comes})?`,
  ],
];

const patterns = phrases.map(([row, text]) => [row, new RegExp(`(?<![^ ])(?:${text})(?![^ ])`)] as const);

function phrased(told: readonly Word[]): Shown | undefined {
  const singles = told.flatMap((word) =>
    plainImage(word)
      .split(' ')
      .map((text) => ({ word, text: text.toLowerCase() })),
  );
  const text = singles.map(({ text }) => text).join(' ');
  for (const [row, pattern] of patterns) {
    const found = pattern.exec(text);
    if (!found) continue;
    const from = text.slice(0, found.index).split(' ').length - 1;
    const to = from + found[0].split(' ').length;
    const left = singles.filter((_, at) => at < from || at >= to).map(({ word }) => word);
    if (left.some(({ image }) => states.has(image))) return undefined;
    return {
      row: [keyword(row)],
      left: [...new Set(left)].filter(({ image }) => image !== 'panel' && image !== 'liner'),
      senses: [
        ...found[0].split(' '),
        ...singles.slice(from, to).map(({ word }) => plainImage(word).toLowerCase()),
      ].map((each): SaidBy => [each, row]),
    };
  }
  return undefined;
}

const showing: ReadonlySet<string> = new Set([
  ...[
    'showing',
    'shows',
    'show',
    'visible',
    'seen',
    'coloured',
    'colored',
    'colour',
    'color',
    'panel',
    'panels',
    'liner',
    'layer',
  ],
]);

/** `green just showing`, `colour turquoise`, `sand coloured`; of two colours nobody knows which it is. */
function coloured(told: readonly Word[]): Shown | undefined {
  const named = told.findIndex(
    ({ type }, i) => ['colour', 'color'].includes(type) && told[i + 1]?.type === 'ID',
  );
  const at = named < 0 ? told.findIndex(isColour) : named + 1;
  const colour = told[at];
  if (!colour || told.filter(isColour).length > 1) return undefined;
  const left = told.filter((word) => word !== colour && !showing.has(word.image));
  if (
    left.some(
      ({ image, type }) =>
        states.has(image) || (type !== 'ID' && fillers.has(image) === false && /^[A-Z]/.test(type)),
    )
  )
    return undefined;
  return {
    row: [keyword('colour'), colour],
    left,
    senses: told.filter(({ image }) => showing.has(image)).map(({ image }): SaidBy => [image, 'colour']),
  };
}
