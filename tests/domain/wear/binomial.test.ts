import { describe, expect, it } from 'vitest';
import { atMost, binomialInterval } from '../../../src/domain/wear/binomial.js';

describe('the interval of a share', () => {
  it('is that of R binom.test', () => {
    // R: binom.test(8, 10)$conf.int; binom.test(0, 5)$conf.int; binom.test(45, 50)$conf.int
    expect(binomialInterval(8, 10).low).toBeCloseTo(0.4439045, 6);
    expect(binomialInterval(8, 10).high).toBeCloseTo(0.9747893, 6);
    expect(binomialInterval(0, 5)).toMatchObject({ low: 0 });
    expect(binomialInterval(0, 5).high).toBeCloseTo(0.5218238, 6);
    expect(binomialInterval(45, 50).low).toBeCloseTo(0.7818647, 6);
    expect(binomialInterval(45, 50).high).toBeCloseTo(0.966725, 5);
  });

  it('of nothing is everything', () => {
    expect(binomialInterval(0, 0)).toEqual({ low: 0, high: 1 });
  });

  it('its tail is that of R pbinom', () => {
    // R: pbinom(2, 8, 0.1), pbinom(0, 3, 0.1)
    expect(atMost(2, 8, 0.1)).toBeCloseTo(0.96190821, 8);
    expect(atMost(0, 3, 0.1)).toBeCloseTo(0.729, 12);
    expect(atMost(-1, 8, 0.1)).toBe(0);
  });
});
