// Where does a line say that something is? `at 9 m`, `from 8 to 10.5 m`, `P4` in front of all else, `panel 2 of run 2` without a word
// before it: as the language writes it, with the clock position and the side.

import { parseQuantity } from '../../domain/units/parse.js';
import { partOfName, partOfWord } from './part-words.js';
import { isWord, keyword, type Word } from './word.js';

/** Takes so many words out of the line, from a number on. */
export type Take = (from: number, count: number) => readonly Word[];

export function placeIn(words: readonly Word[], take: Take): readonly Word[] {
  // `all black except P5`: there it is not.
  if (words.some(({ image }, i) => excepting.test(image) && isName(words[i + 1]))) return [];
  const place = statedPlace(words, take);
  const bare = place.length > 0 ? -1 : words.findIndex((_, i) => isPanel(words, i));
  const panel: readonly Word[] = bare < 0 ? [] : [keyword('at'), ...take(bare, panelLength(words, bare))];
  const nearest = place.length + panel.length > 0 ? [] : bareSpot(words, take);
  const clock = words.findIndex(({ type }, i) => type === 'clock' && words[i + 1]?.type === 'CLOCK');
  const isRange = words[clock + 2]?.type === 'to' && words[clock + 3]?.type === 'CLOCK';
  const seen = clock < 0 ? [] : take(clock, isRange ? 4 : 2);
  const side = oneOf(words, sides, take);
  return [...place, ...panel, ...nearest, ...seen, ...(side.length > 0 ? side : bareSide(words, take))];
}

const excepting = /^(?:except|excepting|but|only)$/i;

/** The first of such words, taken out. */
export function oneOf(words: readonly Word[], wanted: ReadonlySet<string>, take: Take): readonly Word[] {
  const at = words.findIndex(({ type }) => wanted.has(type));
  return at < 0 ? [] : take(at, 1);
}

/** `at 9 m`, `at 9 m to 12 m`, `at Gate`, `at panel 2 of run 2`, `from 9 m to 12 m`; none behind another word that ends in `at`. */
function statedPlace(words: readonly Word[], take: Take): readonly Word[] {
  const at = words.findIndex(
    ({ type }, i) =>
      placing.has(type) &&
      (words[i + 1]?.type === 'QUANTITY' ||
        isStretch(words, i + 1) ||
        isName(words[i + 1]) ||
        isEnd(words[i + 1]) ||
        isPanel(words, i + 1)),
  );
  const from = words.findIndex(({ type }, i) => type === 'from' && isStretch(words, i + 1));
  if (at < 0 || (from >= 0 && words[at]?.type === 'at' && from < at))
    return from < 0 ? [] : withUnits(take(from, 4));
  // `ok at H6 and H13`: two places stand in its words.
  if (words[at + 2]?.image === 'and' && (isName(words[at + 3]) || isChainage(words[at + 3]))) return [];
  if (words[at]?.type !== 'at') return [];
  // `trips at 16 A`: that is no place.
  const value = words[at + 1];
  if (value?.type === 'QUANTITY' && !parseQuantity(value.image, 'length').ok) return [];
  if (isPanel(words, at + 1)) return take(at, 1 + panelLength(words, at + 1));
  return isStretch(words, at + 1) ? withUnits(take(at, 4)) : take(at, 2);
}

/** `at tail`: an end of the conveyor. */
function isEnd(word: Word | undefined): boolean {
  return word !== undefined && ['tail', 'head', 'drive'].includes(word.type);
}

const placing: ReadonlySet<string> = new Set(['at', 'drive at', 'rest at']);

/** `9 m to 12 m`, `8 to 10.5 m` */
function isStretch(words: readonly Word[], at: number): boolean {
  const [first, to, last] = words.slice(at, at + 3);
  return (
    (first?.type === 'QUANTITY' || first?.type === 'NUMBER') && to?.type === 'to' && last?.type === 'QUANTITY'
  );
}

/** `8 to 10.5 m` is said in one unit. */
function withUnits(stretch: readonly Word[]): readonly Word[] {
  const unit = /[a-z]+$/.exec(stretch.at(-1)?.image ?? '')?.[0] ?? '';
  return stretch.map((word) =>
    word.type === 'NUMBER' ? { type: 'QUANTITY', image: `${word.image} ${unit}` } : word,
  );
}

/** `cover leaking 14 m`, `covers ok 8 to 10.5 m`: the only chainage of the line; or else the name that says where. */
function bareSpot(words: readonly Word[], take: Take): readonly Word[] {
  const stretch = words.findIndex((_, i) => isStretch(words, i) && isChainage(words[i + 2]));
  if (stretch >= 0) return [keyword('from'), ...withUnits(take(stretch, 3))];
  const chainages = words.flatMap((word, i) => (isChainage(word) ? [i] : []));
  const [only] = chainages;
  if (only !== undefined && chainages.length === 1) return [keyword('at'), ...take(only, 1)];
  const named = spotName(words);
  return named === undefined || chainages.length > 0 ? [] : [keyword('at'), ...take(named, 1)];
}

/** `14.2 m`, `46 ft` */
export function isChainage(word: Word | undefined): boolean {
  return word?.type === 'QUANTITY' && /\d *(m|ft)$/.test(word.image);
}

/** `hatch H1 stuck`, `P4 panel missing`, `bolt loose 1 P4`, `gate stiff MidGate`: the name beside its part, or the only one that is no make. */
function spotName(words: readonly Word[]): number | undefined {
  const beside = words.findIndex(
    (word, i) => i > 0 && isName(word) && !isMake(word) && partOfWord(words[i - 1]) !== undefined,
  );
  if (beside >= 0) return beside;
  // `lifting point L2` is no place.
  const isOwn = (i: number): boolean =>
    isWord(words[i - 1]?.type ?? '') && partOfWord(words[i - 1]) === undefined;
  const spots = words.flatMap((word, i) => (isSpotName(word) && !(i > 0 && isOwn(i)) ? [i] : []));
  return spots.length === 1 ? spots[0] : undefined;
}

/** Names of points and parts as people give them, and no bolt, oil or steel: `P4`, `HD12`, `MidGate`. */
export function isSpotName(word: Word | undefined): boolean {
  if (word?.type !== 'ID' || isMake(word)) return false;
  return /^[A-Z]{1,3}\d{1,3}[a-z]?$/.test(word.image) || partOfName(word) !== undefined;
}

/** A size of bolt, an oil or a steel: no name of a spot. */
function isMake({ image }: Word): boolean {
  return madeOf.test(image);
}

const madeOf = /^(M|PE|PA|PU|VG|EP|IP|S|CLP|NLGI)\d/;

/** `at 8 m left` */
function bareSide(words: readonly Word[], take: Take): readonly Word[] {
  const at = words.findIndex(({ image }, i) => /^(left|right)$/i.test(image) && isChainage(words[i - 1]));
  const side = words[at]?.image.toLowerCase();
  if (side === undefined || words[at + 1]?.type === 'ID') return [];
  take(at, 1);
  return [keyword(`${side} side`)];
}

const sides: ReadonlySet<string> = new Set(['left side', 'right side', 'both sides']);

/** Names that people give have a capital or a digit. */
export function isName(word: Word | undefined): boolean {
  return word?.type === 'ID' && /[A-Z0-9]/.test(word.image);
}

/** `panel 2 of run 2` */
function isPanel(words: readonly Word[], at: number): boolean {
  return (
    words[at]?.type === 'panel' &&
    words[at + 1]?.type === 'NUMBER' &&
    words[at + 2]?.type === 'of run' &&
    panelLength(words, at) > 3
  );
}

function panelLength(words: readonly Word[], at: number): number {
  const run = words[at + 3];
  if (run?.type === 'NUMBER') return 4;
  if (run?.type === 'above' || run?.type === 'below') return isName(words[at + 4]) ? 5 : 0;
  return run?.type === 'between' && words[at + 5]?.type === 'and' ? 7 : 0;
}
