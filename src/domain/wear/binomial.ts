// Shares counted out of a number: how sure is the true share, and how unlikely was so large a count?

/** P(X ≤ k) of `of` trials with chance p. */
export function atMost(k: number, of: number, p: number): number {
  if (k < 0) return 0;
  if (k >= of || p <= 0) return 1;
  if (p >= 1) return 0;
  let log = of * Math.log1p(-p);
  let sum = Math.exp(log);
  for (let i = 1; i <= k; i++) {
    log += Math.log((of - i + 1) / i) + Math.log(p) - Math.log1p(-p);
    sum += Math.exp(log);
  }
  return Math.min(1, sum);
}

/** Exact 95 % interval of a share from a count (Clopper & Pearson 1934, Biometrika 26, 404), by bisection on the binomial tail. */
export function binomialInterval(held: number, of: number): { readonly low: number; readonly high: number } {
  if (of === 0) return { low: 0, high: 1 };
  const solve = (falling: (p: number) => number, level: number): number => {
    let low = 0;
    let high = 1;
    for (let step = 0; step < 60; step++) {
      const p = 0.5 * (low + high);
      if (falling(p) > level) low = p;
      else high = p;
    }
    return 0.5 * (low + high);
  };
  const low = held === 0 ? 0 : solve((p) => atMost(held - 1, of, p), 0.975);
  const high = held === of ? 1 : solve((p) => atMost(held, of, p), 0.025);
  return { low, high };
}
