import { describe, expect, it } from 'vitest';
import {
  area,
  areaTabled,
  logArea,
  logAreaBetween,
  logAreaBetweenTabled,
  logAreaTabled,
} from '../../../src/domain/wear/numeric/normal.js';
import { gaussLegendre, gaussNormal } from '../../../src/domain/wear/numeric/quadrature.js';

describe('tail areas', () => {
  it.each([
    // scipy.stats.norm.logcdf, SciPy 1.17
    [-10, -53.23128515051248],
    [-5.001, -15.070185381609441],
    [-4.999, -15.059812373671578],
    [9, -1.1285884059538324e-19],
  ])('ln of the area below %f', (z, expected) => {
    expect(Math.abs(logArea(z) / expected - 1)).toBeLessThan(1e-13);
  });

  it('differences in either tail (scipy: ln(Φ(−7) − Φ(−8)))', () => {
    expect(Math.abs(logAreaBetween(-8, -7) / -27.38479370071994 - 1)).toBeLessThan(1e-13);
    expect(logAreaBetween(7, 8)).toBeCloseTo(logAreaBetween(-8, -7), 12);
  });

  it('tables follow within 1e-9', () => {
    for (let z = -8.6; z < 8.6; z += 0.0137) {
      expect(Math.abs(logAreaTabled(z) - logArea(z))).toBeLessThan(1e-9);
      expect(Math.abs(areaTabled(z) - area(z))).toBeLessThan(1e-9);
      expect(Math.abs(logAreaBetweenTabled(z, z + 0.5) - logAreaBetween(z, z + 0.5))).toBeLessThan(2e-9);
    }
  });
});

describe('quadrature', () => {
  it('Gauss–Legendre is exact for polynomials up to twice its count less one', () => {
    for (const count of [2, 5, 12, 32]) {
      const { node, weight } = gaussLegendre(count);
      const degree = 2 * count - 2;
      const sum = node.reduce((total, x, i) => total + (weight[i] ?? 0) * x ** degree, 0);
      expect(Math.abs(sum - 2 / (degree + 1))).toBeLessThan(1e-13);
    }
  });

  it('three nodes against a normal: 0 and ±√3 with 2/3 and 1/6 (Abramowitz & Stegun, table 25.10, rescaled)', () => {
    const { node, weight } = gaussNormal(3);
    [-Math.sqrt(3), 0, Math.sqrt(3)].forEach((x, i) => expect(node[i]).toBeCloseTo(x, 13));
    [1 / 6, 2 / 3, 1 / 6].forEach((w, i) => expect(weight[i]).toBeCloseTo(w, 13));
  });
});
