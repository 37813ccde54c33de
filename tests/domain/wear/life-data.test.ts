// Published worked examples of life data, and R's survreg where a published figure has too few digits.
import { describe, expect, it } from 'vitest';
import type { LifeRow } from './life-regression.js';
import { fitLives, rankRegressionWeibull } from './life-regression.js';

function fitted(rows: readonly LifeRow[], family: 'weibull' | 'lognormal' | 'normal') {
  const fit = fitLives(rows, family);
  if (fit.kind !== 'fitted') throw new Error(fit.why);
  return fit;
}

const exact = (...lives: number[]): LifeRow[] => lives.map((t) => ({ lower: t, upper: t }));
const running = (...lives: number[]): LifeRow[] => lives.map((t) => ({ lower: t, upper: Infinity }));
const relative = (value: number, truth: number): number => Math.abs(value / truth - 1);

describe('maximum likelihood', () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.1.3 (file apr413): published 1.7208, 606.5280, −75.135; digits from R survreg.
  const failures = [54, 187, 216, 240, 244, 335, 361, 373, 375, 386];
  const nist = [...exact(...failures), { lower: 500, upper: Infinity, count: 10 }];

  it('Weibull of ten failures and ten still running (NIST apr413)', () => {
    const fit = fitted(nist, 'weibull');
    const shape = 1 / fit.scale;
    const scale = Math.exp(fit.coefficients[0] ?? NaN);
    expect(relative(shape, 1.720797261)).toBeLessThan(1e-6);
    expect(relative(scale, 606.527558)).toBeLessThan(1e-6);
    expect(relative(fit.logLikelihood, -75.13461816)).toBeLessThan(1e-6);
    expect(relative(scale * (-Math.log(0.9)) ** (1 / shape), 164.02244)).toBeLessThan(1e-6);
    expect(shape).toBeCloseTo(1.7208, 4);
    expect(scale).toBeCloseTo(606.528, 2);
    expect(fit.logLikelihood).toBeCloseTo(-75.135, 3);
  });

  it('a count says the same as rows alike', () => {
    const one = fitted(nist, 'weibull');
    const many = fitted([...exact(...failures), ...running(...Array<number>(10).fill(500))], 'weibull');
    expect(relative(one.scale, many.scale)).toBeLessThan(1e-9);
    expect(relative(one.logLikelihood, many.logLikelihood)).toBeLessThan(1e-12);
  });

  it('Weibull of five lives and two suspensions (Abernethy, The New Weibull Handbook, C.5: 2.257 and 4900.1)', () => {
    const fit = fitted([...exact(1500, 2250, 4000, 4300, 7000), ...running(1750, 5000)], 'weibull');
    expect(1 / fit.scale).toBeCloseTo(2.257, 3);
    expect(Math.exp(fit.coefficients[0] ?? NaN)).toBeCloseTo(4900.1, 1);
  });

  it('gives 3.017 and 87.956 where rank regression gives another line (same data as Abernethy figure 2-5)', () => {
    const fit = fitted([...exact(30, 49, 82, 90, 96), ...running(10, 45, 100)], 'weibull');
    expect(1 / fit.scale).toBeCloseTo(3.017, 3);
    expect(Math.exp(fit.coefficients[0] ?? NaN)).toBeCloseTo(87.956, 3);
  });

  it('normal regression, some below a limit (R survival, tobin: survreg(Surv(durable, durable > 0, type = "left") ~ age + quant, dist = "gaussian"))', () => {
    // Data: R package survival, data set `tobin` (Tobin 1958): durable, age, quant.
    const tobin: readonly (readonly [number, number, number])[] = [
      [0, 57.7, 236],
      [0.7, 50.9, 283],
      [0, 48.5, 207],
      [0, 41.7, 220],
      [0, 47.7, 238],
      [0, 59.8, 216],
      [0, 44.3, 284],
      [3.7, 45.1, 221],
      [0, 51.7, 275],
      [3, 50, 269],
      [10.4, 46.8, 207],
      [0, 58, 249],
      [0, 58.9, 246],
      [0, 40, 277],
      [1.5, 34.1, 231],
      [0, 39.9, 219],
      [0, 33.4, 240],
      [3.5, 48.1, 266],
      [6.1, 46.6, 214],
      [0, 53.1, 251],
    ];
    const rows = tobin.map(([durable, ...covariates]): LifeRow => ({
      lower: durable > 0 ? durable : -Infinity,
      upper: durable,
      covariates,
    }));
    const fit = fitted(rows, 'normal');
    [15.1448663607, -0.1290592841, -0.045541663].forEach((truth, k) =>
      expect(relative(fit.coefficients[k] ?? NaN, truth)).toBeLessThan(1e-6),
    );
    expect(relative(fit.scale, 5.5725397631)).toBeLessThan(1e-6);
    expect(relative(fit.logLikelihood, -28.9401332)).toBeLessThan(1e-6);
  });

  // R package survival, data set `turbine` (Nelson 1982): hundreds of hours, wheels inspected once, wheels found cracked.
  const turbine: readonly (readonly [number, number, number])[] = [
    [4, 39, 0],
    [10, 53, 4],
    [14, 33, 2],
    [18, 73, 7],
    [22, 30, 5],
    [26, 39, 9],
    [30, 42, 9],
    [34, 13, 6],
    [38, 34, 22],
    [42, 40, 21],
    [46, 36, 21],
  ];
  const inspections = turbine.flatMap(([hours, inspected, failed]): LifeRow[] => [
    { lower: 0, upper: hours, count: failed },
    { lower: hours, upper: Infinity, count: inspected - failed },
  ]);

  it('Weibull from inspections alone (R survival, turbine)', () => {
    const fit = fitted(inspections, 'weibull');
    expect(relative(1 / fit.scale, 2.17577991)).toBeLessThan(1e-6);
    expect(relative(Math.exp(fit.coefficients[0] ?? NaN), 46.7772302)).toBeLessThan(1e-6);
    expect(relative(fit.logLikelihood, -189.2871934)).toBeLessThan(1e-6);
  });

  it('lognormal from inspections alone (R survreg on the same rows)', () => {
    const fit = fitted(inspections, 'lognormal');
    expect(relative(fit.coefficients[0] ?? NaN, 3.69990766940751703)).toBeLessThan(1e-6);
    expect(relative(fit.scale, 0.71988572130537254)).toBeLessThan(1e-6);
    expect(relative(fit.logLikelihood, -190.73154949093935784)).toBeLessThan(1e-6);
  });
});

describe('rank regression', () => {
  it('Benard, adjusted ranks, life on rank (Abernethy, The New Weibull Handbook, figure 2-5: 2.024 and 94.998)', () => {
    const line = rankRegressionWeibull([30, 49, 82, 90, 96], [10, 45, 100]);
    expect(line?.shape).toBeCloseTo(2.024, 3);
    expect(line?.scale).toBeCloseTo(94.998, 3);
  });

  it('has no line through one life', () => {
    expect(rankRegressionWeibull([100], [50, 60])).toBeUndefined();
  });
});

describe('what cannot be fitted says so', () => {
  it.each([
    ['nothing', [], 'no rows'],
    ['a life of nothing', exact(0), 'not lives'],
    ['a life that ends before it begins', [{ lower: 5, upper: 3 }], 'not lives'],
    ['no number', exact(NaN), 'not lives'],
    ['only lives still running', running(100, 200, 300), 'no finite maximum'],
    [
      'only lives shorter than',
      [
        { lower: 0, upper: 100 },
        { lower: 0, upper: 200 },
      ],
      'no finite maximum',
    ],
  ] as const)('%s', (_, rows, why) => {
    for (const family of ['weibull', 'lognormal'] as const)
      expect(fitLives(rows, family)).toEqual({ kind: 'cannot say', why });
  });
});
