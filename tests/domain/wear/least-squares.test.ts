import { describe, expect, it } from 'vitest';
import { lineThroughOrigin, lineWithIntercept } from '../../../src/domain/wear/least-squares.js';
import { norris } from './fixtures/norris.js';

// Certified values: NIST/ITL Statistical Reference Datasets, linear regression.
describe('least squares meets the NIST reference datasets', () => {
  it('NoInt1: eleven points through the origin', () => {
    const x = [60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70];
    const y = [130, 131, 132, 133, 134, 135, 136, 137, 138, 139, 140];
    const line = lineThroughOrigin(x, y);
    expect(line?.slope).toBeCloseTo(2.07438016528926, 9);
    expect(line?.slopeError).toBeCloseTo(0.0165289256198347, 9);
    expect(line?.residual).toBeCloseTo(3.56753034006338, 9);
  });

  it('NoInt2: three points through the origin', () => {
    const line = lineThroughOrigin([4, 5, 6], [3, 4, 4]);
    expect(line?.slope).toBeCloseTo(0.727272727272727, 9);
    expect(line?.slopeError).toBeCloseTo(0.0420827318078432, 9);
    expect(line?.residual).toBeCloseTo(0.369274472937998, 9);
  });

  it('Norris: 36 points with an intercept', () => {
    const line = lineWithIntercept(
      norris.map(([x]) => x),
      norris.map(([, y]) => y),
    );
    expect(line?.slope).toBeCloseTo(1.00211681802045, 9);
    expect(line?.slopeError).toBeCloseTo(4.29796848199937e-4, 9);
    expect(line?.intercept).toBeCloseTo(-0.262323073774029, 9);
    expect(line?.residual).toBeCloseTo(0.884796396144373, 9);
  });
});

describe('where a line says less', () => {
  it('one point gives a slope and no error', () => {
    expect(lineThroughOrigin([2], [3])).toEqual({
      slope: 1.5,
      intercept: 0,
      slopeError: undefined,
      residual: undefined,
      count: 1,
    });
  });
  it('no point, or all at the origin, gives no line', () => {
    expect(lineThroughOrigin([], [])).toBeUndefined();
    expect(lineThroughOrigin([0, 0], [1, 2])).toBeUndefined();
    expect(lineWithIntercept([3, 3], [1, 2])).toBeUndefined();
  });
});
