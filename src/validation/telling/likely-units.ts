// Which units to offer for a number whose unit is missing or wrong: those that make the value plausible where the fact is
// one whose size is known, otherwise the commonest of its dimension.

import type { Dimension } from '../../domain/units/dimension.js';
import { parseQuantity, unitsOf } from '../../domain/units/parse.js';
import { bands, isPlausible, type Sized } from '../evidence/plausible.js';

/** At most three units, likeliest first. `fact` as the problem names it. */
export function likelyUnits(text: string, expected: Dimension, fact: string): readonly string[] {
  const meant = parseQuantity(text, expected);
  const suggested = meant.ok ? [] : (meant.suggestions ?? []);
  const number = numberOf(text);
  const units = differing([...suggested, ...unitsOf(expected)], expected);
  const what = sizeNamed(fact, expected);
  const plausible =
    what === undefined || number === ''
      ? []
      : units.filter((unit) => {
          const read = parseQuantity(`${number} ${unit}`, expected);
          return read.ok && isPlausible(what, read.quantity.value);
        });
  return (plausible.length > 0 ? plausible : units).slice(0, 3);
}

/** Of several spellings of one unit the first. */
function differing(units: readonly string[], dimension: Dimension): readonly string[] {
  const seen = new Set<number>();
  return units.filter((unit) => {
    const read = parseQuantity(`1 ${unit}`, dimension);
    if (!read.ok || seen.has(read.quantity.value)) return false;
    seen.add(read.quantity.value);
    return true;
  });
}

/** The number at the start of a quantity's text; empty where there is none. */
export function numberOf(text: string): string {
  return /^[+-]?(?:\d+ \d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?)/.exec(text.trim())?.[0] ?? '';
}

/** How the reading of the text names its facts, and which size each is. */
const sizes: readonly (readonly [fact: RegExp, what: Sized])[] = [
  [/^length of conveyor\b/, 'conveyor length'],
  [/^length of section\b/, 'section length'],
  [/^inside radius of the trough$/, 'trough inside radius'],
  [/^side height of the trough$/, 'trough side height'],
  [/^plate of the trough$/, 'trough plate'],
  [/^outside diameter\b/, 'outside diameter'],
  [/^pitch\b/, 'screw pitch'],
  [/^flight width$/, 'flight width'],
  [/^flight thickness$/, 'flight thickness'],
  [/^thickness of layer\b/, 'layer thickness'],
  [/^(panel|stock) length$/, 'panel length'],
  [/^bolt pitch$/, 'bolt pitch'],
  [/^thickness$/, 'reading thickness'],
  [/^incline\b/, 'incline'],
  [/^speed of the screw$/, 'speed'],
  [/^power of the drive$/, 'drive power'],
  [/^bulk density$/, 'bulk density'],
  [/^gap of the hold-down$/, 'hold-down gap'],
];

function sizeNamed(fact: string, dimension: Dimension): Sized | undefined {
  return sizes.find(([pattern, what]) => pattern.test(fact) && bands[what].dimension === dimension)?.[1];
}
