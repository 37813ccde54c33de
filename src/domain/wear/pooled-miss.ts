// Did several points together wear more, or less, between two looks than was foretold? One point's miss is mostly its gauge; pooled
// over points the gauge averages out, and what is left is what they have in common: a look that reads off as a whole, hours that
// were harder than others, or a rate that changed. The pooled miss is a share of the wear that was foretold for the interval,
// weighted by least squares; its error adds to the points' own errors those that all of them share.
// Shared errors (our judgement): a whole look reads off by a third of its gauge error; the wear of an
// interval is out by 5 % for all points alike and by 15 % for each by itself, for no two intervals are worked alike.

export interface Miss {
  /** Wear foretold for the interval, mm, > 0; found less foretold, mm. */
  readonly foretold: number;
  readonly miss: number;
  /** Variance of the miss from what is the point's own: its gauge and the rate it was foretold by, mm². */
  readonly variance: number;
  /** One standard deviation of what a whole look reading off makes of it, mm; with the same sign at all points. */
  readonly shared: number;
}

export interface PooledMiss {
  /** Found over foretold, less one: 0.34 is 34 % more. Least −1. */
  readonly excess: number;
  /** One standard deviation of it, and over how many of them. */
  readonly error: number;
  readonly z: number;
  /** 90 % interval of the excess. */
  readonly low: number;
  readonly high: number;
  readonly points: number;
  /** Points with more wear than foretold. */
  readonly more: number;
  /** The smallest excess that would have been told in four cases of five. */
  readonly hidden: number;
}

export const sharedDuty = 0.05;
export const pointDuty = 0.15;
/** A whole look reads off by so much of its gauge error. */
export const lookShare = 0.35;
/** Beyond so many errors a miss is told: about 2 % in steady conveyors by construction, both signs taken together. */
export const toldBeyond = 2.2;
/** Standard normal quantile with four of five below it. */
export const inFourOfFive = 0.8416;

/** Undefined without a point whose foretold wear is above zero. */
export function pooledMiss(misses: readonly Miss[]): PooledMiss | undefined {
  let [weight, product, tilt, points, more] = [0, 0, 0, 0, 0];
  for (const { foretold, miss, variance, shared } of misses) {
    const own = variance + (pointDuty * foretold) ** 2;
    if (!(foretold > 0 && own > 0) || !Number.isFinite(miss)) continue;
    weight += foretold ** 2 / own;
    product += (foretold * miss) / own;
    tilt += (foretold * shared) / own;
    points += 1;
    if (miss > 0) more += 1;
  }
  if (!(weight > 0)) return undefined;
  const excess = product / weight;
  const error = Math.sqrt(1 / weight + (tilt / weight) ** 2 + sharedDuty ** 2);
  return {
    excess,
    error,
    z: excess / error,
    low: excess - 1.645 * error,
    high: excess + 1.645 * error,
    points,
    more,
    hidden: (toldBeyond + inFourOfFive) * error,
  };
}

/** Conveyors weighed by how sure each is: what points share inside one they do not share with the next. Undefined below two. */
export function pooledTogether(own: readonly PooledMiss[]): PooledMiss | undefined {
  if (own.length < 2) return undefined;
  const weight = own.reduce((sum, { error }) => sum + 1 / error ** 2, 0);
  const excess = own.reduce((sum, p) => sum + p.excess / p.error ** 2, 0) / weight;
  const error = 1 / Math.sqrt(weight);
  return {
    excess,
    error,
    z: excess / error,
    low: excess - 1.645 * error,
    high: excess + 1.645 * error,
    points: own.reduce((sum, p) => sum + p.points, 0),
    more: own.reduce((sum, p) => sum + p.more, 0),
    hidden: (toldBeyond + inFourOfFive) * error,
  };
}
