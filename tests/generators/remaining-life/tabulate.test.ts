import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import erfc from '@stdlib/math-base-special-erfc';
import quantile from '@stdlib/stats-base-dists-normal-quantile';
import { tabulated } from '../../../src/generators/remaining-life/parts/tabulate.js';

/** A lognormal, whose distribution the special functions of @stdlib give independently of the table. */
function lognormal(median: number, sigma: number) {
  const at = (p: number): number => median * Math.exp(sigma * quantile(p, 0, 1));
  return {
    reachedBy: (x: number): number => (x > 0 ? 0.5 * erfc(-Math.log(x / median) / sigma / Math.SQRT2) : 0),
    quantiles: { q05: at(0.05), q10: at(0.1), q50: median, q90: at(0.9), q95: at(0.95) },
  };
}

describe('a distribution read off a table', () => {
  it('stays within 1e-4 of a lognormal, wherever the table begins', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 1.2, noNaN: true }),
        fc.double({ min: 0, max: 1.5, noNaN: true }),
        fc.double({ min: 0.01, max: 5, noNaN: true }),
        (sigma, from, x) => {
          const exact = lognormal(10_000, sigma);
          const table = tabulated(exact, from * 10_000);
          expect(Math.abs(table(x * 10_000) - exact.reachedBy(x * 10_000))).toBeLessThan(1e-4);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('never falls', () => {
    const table = tabulated(lognormal(10_000, 0.3), 7000);
    let before = 0;
    for (let x = 1; x < 60_000; x += 13) {
      const now = table(x);
      expect(now).toBeGreaterThanOrEqual(before - 1e-12);
      before = now;
    }
  });
});
