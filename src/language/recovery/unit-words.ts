// A value tells by its unit which word was left out before it: after `drive at head` 5.5 kW is the power and 16 rpm the speed, a reading
// in mm at a point is its thickness, and what is in m says where. Words are put in before such values only, as many as are missing.

import type { LinePattern, LinePlace } from './pattern.js';
import { isSpotName } from './said-place.js';
import { imagesOf, keyword, type Word } from './word.js';

/** The line with the words that its values ask for; undefined where none is missing, or more than one line would do. */
export function withUnitWords(words: readonly Word[], pattern: LinePattern): readonly Word[] | undefined {
  if (words.length > longest) return undefined;
  const plain = words.filter(({ type }, at) => type !== ':' || at !== 1);
  for (const line of [plain, swapped(plain)])
    for (const missing of [0, 1, 2, 3]) {
      const found = new Map(
        filled(line, 0, pattern.start, missing, pattern).map((one) => [imagesOf(one), one]),
      );
      const [only] = found.values();
      if (only && imagesOf(only) !== imagesOf(words)) return found.size === 1 ? only : undefined;
    }
  return undefined;
}

const longest = 24;

/** All lines with exactly so many words put in. */
function filled(
  line: readonly Word[],
  at: number,
  standing: LinePlace,
  missing: number,
  pattern: LinePattern,
): readonly (readonly Word[])[] {
  const word = line[at];
  if (!word) return missing === 0 && pattern.isWhole(standing) ? [[]] : [];
  const next = pattern.next(standing, word.type);
  const asItStands =
    next === undefined ? [] : filled(line, at + 1, next, missing, pattern).map((rest) => [word, ...rest]);
  if (missing === 0) return asItStands;
  const tokens = new Set(pattern.ways(standing).map(({ token }) => token));
  const put = [...tokens].flatMap((token) => {
    const after = asksFor(token, word) ? pattern.next(standing, token) : undefined;
    const behind = after === undefined ? undefined : pattern.next(after, word.type);
    if (behind === undefined) return [];
    return filled(line, at + 1, behind, missing - 1, pattern).map((rest) => [keyword(token), word, ...rest]);
  });
  return [...asItStands, ...put];
}

/** `4.4 A empty`, `9 mm gap`: the word behind its value. */
function swapped(words: readonly Word[]): readonly Word[] {
  const line = [...words];
  for (let at = 0; at + 1 < line.length; at++) {
    const [value, word] = [line[at], line[at + 1]];
    if (!value || !word || value.type !== 'QUANTITY' || !asksFor(word.type, value)) continue;
    line.splice(at, 2, word, value);
    at++;
  }
  return line;
}

/** A word that this value, with its unit and its size, stands behind. */
function asksFor(word: string, { type, image }: Word): boolean {
  if (word === 'at' && isSpotName({ type, image })) return true;
  if (word === 'clock') return type === 'CLOCK';
  if (type !== 'QUANTITY' || !Object.hasOwn(wanted, word)) return false;
  const unit = /[^\d\s.,+-].*$/.exec(image)?.[0] ?? '';
  if (!wanted[word]?.includes(unit)) return false;
  const isWide = unit === 'mm' && Number.parseFloat(image) >= 150;
  if (word === '±') return unit === 'mm' && Number.parseFloat(image) <= coarsest;
  return word === 'outside diameter' ? isWide : word === 'depth' ? !isWide : true;
}

/** No gauge that is written down is further out than this, mm (judgement: by eye). */
const coarsest = 2;

const long = ['m', 'ft'];
const short = ['mm', 'in'];

const wanted: Readonly<Record<string, readonly string[]>> = {
  at: long,
  from: long,
  thickness: short,
  gap: short,
  depth: short,
  'outside diameter': short,
  '±': short,
  power: ['kW', 'hp', 'W'],
  speed: ['rpm', '1/min', '/min'],
  temperature: ['degC', '°C', 'degF', '°F'],
  limit: ['kg', 't', 'lb'],
  mass: ['kg', 't', 'lb'],
  meter: ['h'],
  tonnes: ['t'],
  empty: ['A'],
  loaded: ['A'],
};
