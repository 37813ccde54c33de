// Impossible inputs stop here with a sentence, so that no formula of this folder ever returns NaN.

/** `value` where it is above zero; RangeError otherwise. */
export function positive(what: string, value: number, unit: string): number {
  return within(what, value, Number.MIN_VALUE, Number.MAX_VALUE, unit, 'must be above zero');
}

/** `value` where it is zero or more; RangeError otherwise. */
export function notNegative(what: string, value: number, unit: string): number {
  return within(what, value, 0, Number.MAX_VALUE, unit, 'must not be negative');
}

/** `value` where it is a finite number of any sign; RangeError otherwise. */
export function finite(what: string, value: number, unit: string): number {
  return within(what, value, -Number.MAX_VALUE, Number.MAX_VALUE, unit, 'must be a number');
}

/** `value` where `low` ≤ value ≤ `high`; RangeError otherwise, also for NaN. */
export function within(
  what: string,
  value: number,
  low: number,
  high: number,
  unit: string,
  must?: string,
): number {
  if (value >= low && value <= high) return value;
  throw new RangeError(
    `The ${what} is ${value} ${unit}; it ${must ?? `must lie between ${low} and ${high} ${unit}`}.`,
  );
}

/** Throws RangeError unless `small` < `large`; both named, so the sentence says what disagrees. */
export function below(what: string, small: number, than: string, large: number, unit: string): void {
  if (!(small < large))
    throw new RangeError(`The ${what} (${small} ${unit}) must be below the ${than} (${large} ${unit}).`);
}
