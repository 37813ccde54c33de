// The values that all clocks of an estate share, and the age clock that the power makes: wear of a set at a given age runs as
// age^power, scaled so that at the reference age an hour is an hour whatever the power.

/** Natural scale. */
export interface Theta {
  /** τ: spread of ln rates between points. */
  readonly spread: number;
  /** f: factor on declared errors. */
  readonly scatter: number;
  /** Wandering of one point and of a whole conveyor over a usual interval, as a share of the wear then. */
  readonly pointNoise: number;
  readonly sharedNoise: number;
  /** ω: spread of conveyors about their common level. */
  readonly levelSpread: number;
  readonly power: number;
}

/** Effective hours at an age. */
export function ageClock(age: number, power: number, reference: number): number {
  if (power === 1) return age;
  return age > 0 ? (Math.pow(age / reference, power) * reference) / power : 0;
}
