// The one number a rule goes by where it is a judgement, or a practice that differs between works: its usual value, what it means,
// where it comes from, and how a plant sets its own: `threshold TL261 10 m "the trolley reaches"` in its block.

import type { Plant } from '../domain/model/plant.js';
import type { Dimension } from '../domain/units/dimension.js';
import { parseQuantity, type Misread } from '../domain/units/parse.js';

export interface RuleThreshold {
  /** As it would be written: `8 m`. */
  readonly usual: string;
  readonly dimension: Dimension;
  /** A temperature that is a difference: kelvin, or degrees of any scale as steps. */
  readonly difference?: true;
  /** What it is, so that a reader can judge the number; one sentence. */
  readonly what: string;
  /** `judgement` and its reason, or the source by name. */
  readonly basis: string;
}

/** In the base unit: as the plant of the machine sets it, otherwise the usual value. */
export function settled(plant: Plant, code: string, threshold: RuleThreshold): number {
  const own = plant.thresholds?.findLast((each) => each.code === code);
  const set = own && valueOf(own.text, threshold);
  return typeof set === 'number' ? set : usualOf(threshold);
}

/** The number, never negative; otherwise why the text is none. */
export function valueOf(
  text: string,
  { dimension, difference }: RuleThreshold,
): number | Misread | 'negative' {
  const read = parseQuantity(text, dimension);
  if (!read.ok) return read;
  const step = difference && /K$/.test(text.trim()) ? read.quantity.value + 273.15 : read.quantity.value;
  return step < 0 ? 'negative' : step;
}

function usualOf(threshold: RuleThreshold): number {
  const value = valueOf(threshold.usual, threshold);
  // The catalogue test reads the usual value of every rule, so a miss is a fault of ours.
  if (typeof value !== 'number') throw new Error(`"${threshold.usual}" is no ${threshold.dimension}.`);
  return value;
}
