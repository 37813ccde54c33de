// Which units to offer for a number whose unit is missing or wrong: those that make the value plausible where the fact is
// one whose size is known, otherwise the commonest of its dimension.

import type { Dimension } from '../domain/units/dimension.js';
import { parseQuantity, unitsOf } from '../domain/units/parse.js';
import { bands, isPlausible, type Sized } from './plausible.js';

/** At most three units, likeliest first. `fact` as the problem names it. */
export function likelyUnits(text: string, expected: Dimension, fact: string): readonly string[] {
  const meant = parseQuantity(text, expected);
  const suggested = meant.ok ? [] : meant.suggestions ?? [];
  const number = numberOf(text);
  const units = [...new Set([...suggested, ...unitsOf(expected)])];
  const what = sizeNamed(fact, expected);
  const plausible = what === undefined || number === '' ? [] : units.filter((unit) => {
    const read = parseQuantity(`${number} ${unit}`, expected);
    return read.ok && isPlausible(what, read.quantity.value);
  });
  return (plausible.length > 0 ? plausible : units).slice(0, 3);
}

/** The number at the start of a quantity's text; empty where there is none. */
export function numberOf(text: string): string {
  return /^[+-]?(?:\d+ \d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?)/.exec(text.trim())?.[0] ?? '';
}

function sizeNamed(fact: string, dimension: Dimension): Sized | undefined {
  // `bands` is declared with exactly these keys.
  const names = Object.keys(bands) as Sized[];
  const wanted = fact === 'length' ? 'conveyor length' : fact === 'pitch' ? 'screw pitch' : fact;
  return names.find((name) => name === wanted && bands[name].dimension === dimension);
}
