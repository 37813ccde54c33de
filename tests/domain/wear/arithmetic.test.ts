import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { handArithmetic, longTermRate, remainingLife } from '../../../src/domain/wear/arithmetic.js';

describe('the arithmetic of API 570 and API 510', () => {
  // Worked figures in the form of API 570 for piping: life (7.8 − 3.24)/15 mm a year, and (3.24 − 0.37)/0.34 years.
  it('reproduces the published divisions', () => {
    expect(longTermRate(7.8, 3.24, 15)).toBeCloseTo(0.304, 9);
    expect(remainingLife(3.24, 0.37, 0.34)).toBeCloseTo(8.441176470588236, 9);
  });

  it('lets the larger rate rule and looks again at half the life', () => {
    // 12 mm new, 9.6 mm at 6000 h, 8.4 mm at 8000 h, least 4 mm: LT 0.45 and ST 0.60 mm/1000 h, 7333 h left, look at 3667 h.
    const result = handArithmetic({
      fitted: 12,
      least: 4,
      readings: [
        { exposure: 6000, thickness: 9.6 },
        { exposure: 8000, thickness: 8.4 },
      ],
    });
    expect(result.kind).toBe('rate');
    if (result.kind !== 'rate') return;
    expect(result.longTerm * 1000).toBeCloseTo(0.45, 9);
    expect(result.shortTerm.kind === 'rate' && result.shortTerm.rate * 1000).toBeCloseTo(0.6, 9);
    expect(result.rules).toBe('short-term');
    expect(result.remaining).toBeCloseTo(22000 / 3, 6);
    expect(result.nextInspection).toBeCloseTo(11000 / 3, 6);
  });

  it('sorts the readings itself', () => {
    const forth = handArithmetic({
      fitted: 12,
      least: 4,
      readings: [
        { exposure: 8000, thickness: 8.4 },
        { exposure: 6000, thickness: 9.6 },
      ],
    });
    const back = handArithmetic({
      fitted: 12,
      least: 4,
      readings: [
        { exposure: 6000, thickness: 9.6 },
        { exposure: 8000, thickness: 8.4 },
      ],
    });
    expect(forth).toEqual(back);
  });
});

describe('what cannot be concluded is said', () => {
  const input = { fitted: 12, least: 3 };
  it('no reading, or only one at zero exposure', () => {
    expect(handArithmetic({ ...input, readings: [] })).toEqual({ kind: 'no reading' });
    expect(handArithmetic({ ...input, readings: [{ exposure: 0, thickness: 12 }] })).toEqual({
      kind: 'no reading',
    });
    expect(handArithmetic({ ...input, readings: [{ exposure: -40, thickness: 9 }] })).toEqual({
      kind: 'no reading',
    });
    expect(handArithmetic({ ...input, readings: [{ exposure: NaN, thickness: 9 }] })).toEqual({
      kind: 'no reading',
    });
  });
  it('one reading has a long-term rate from the fitted thickness only', () => {
    expect(handArithmetic({ ...input, readings: [{ exposure: 1000, thickness: 11 }] })).toMatchObject({
      kind: 'rate',
      rules: 'long-term',
      shortTerm: { kind: 'one reading' },
      remaining: 8000,
    });
  });
  it('thicker than fitted: a rate below zero and no life', () => {
    expect(handArithmetic({ ...input, readings: [{ exposure: 1000, thickness: 12.3 }] })).toMatchObject({
      kind: 'no wear measured',
    });
    expect(handArithmetic({ ...input, readings: [{ exposure: 1000, thickness: 12 }] })).toMatchObject({
      kind: 'no wear measured',
      longTerm: 0,
    });
  });
  it('thicker than last time: the long-term rate rules and the gain is told', () => {
    const result = handArithmetic({
      ...input,
      readings: [
        { exposure: 1000, thickness: 10 },
        { exposure: 2000, thickness: 10.5 },
      ],
    });
    expect(result).toMatchObject({
      kind: 'rate',
      rules: 'long-term',
      shortTerm: { kind: 'thicker later', gain: 0.5 },
    });
  });
  it('two readings at the same exposure give no short-term rate', () => {
    const result = handArithmetic({
      ...input,
      readings: [
        { exposure: 1000, thickness: 10 },
        { exposure: 1000, thickness: 9.8 },
      ],
    });
    expect(result).toMatchObject({ kind: 'rate', shortTerm: { kind: 'no exposure between' } });
  });
  it('at or below the limit nothing is left', () => {
    expect(handArithmetic({ ...input, readings: [{ exposure: 1000, thickness: 2.5 }] })).toMatchObject({
      kind: 'at the limit',
      below: 0.5,
    });
  });
});

describe('properties', () => {
  const reading = fc.record({
    exposure: fc.double({ min: 1, max: 50_000, noNaN: true }),
    thickness: fc.double({ min: 0, max: 20, noNaN: true }),
  });
  const life = (
    fitted: number,
    least: number,
    readings: { exposure: number; thickness: number }[],
  ): number => {
    const result = handArithmetic({ fitted, least, readings });
    return result.kind === 'rate' ? result.remaining : result.kind === 'at the limit' ? 0 : Infinity;
  };

  it('less thickness now never means more life', () => {
    fc.assert(
      fc.property(
        fc.array(reading, { minLength: 1, maxLength: 6 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (readings, share) => {
          const lastExposure = Math.max(...readings.map((r) => r.exposure));
          fc.pre(readings.filter((r) => r.exposure === lastExposure).length === 1);
          const thinner = readings.map((r) =>
            r.exposure === lastExposure ? { ...r, thickness: r.thickness * share } : r,
          );
          expect(life(12, 3, thinner)).toBeLessThanOrEqual(life(12, 3, readings) * (1 + 1e-9));
        },
      ),
    );
  });

  it('a thicker condemn limit never means more life', () => {
    fc.assert(
      fc.property(
        fc.array(reading, { minLength: 1, maxLength: 6 }),
        fc.double({ min: 0, max: 6, noNaN: true }),
        fc.double({ min: 0, max: 6, noNaN: true }),
        (readings, a, b) => {
          expect(life(12, Math.max(a, b), readings)).toBeLessThanOrEqual(
            life(12, Math.min(a, b), readings) * (1 + 1e-9),
          );
        },
      ),
    );
  });

  it('never gives NaN or a negative life', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ exposure: fc.double(), thickness: fc.double() }), { maxLength: 6 }),
        (readings) => {
          const result = handArithmetic({ fitted: 12, least: 3, readings });
          if (result.kind === 'rate')
            expect(result.remaining >= 0 && result.nextInspection <= result.remaining).toBe(true);
        },
      ),
    );
  });
});
