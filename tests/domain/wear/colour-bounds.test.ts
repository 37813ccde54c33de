import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { colourBounds, layerDepths } from '../../../src/domain/wear/colour-bounds.js';

const liner = { layers: [6, 6], least: 3 };

describe('what colours allow', () => {
  it('two layers, first colour at 5000 h and second at 7000 h', () => {
    // By hand: wear < 6 at 5000 h, so at most 1.2 mm/1000 h; wear > 6 at 7000 h, so at least 0.857; 12 − 8.4 = 3.6 to 6.0 mm left.
    const result = colourBounds({
      ...liner,
      seen: [
        { exposure: 5000, layer: 0 },
        { exposure: 7000, layer: 1 },
      ],
    });
    expect(result.kind).toBe('between');
    if (result.kind !== 'between') return;
    expect(result.lowRate * 1000).toBeCloseTo(0.857, 3);
    expect(result.highRate * 1000).toBeCloseTo(1.2, 9);
    expect(result.leastThickness).toBeCloseTo(3.6, 9);
    expect(result.mostThickness).toBeCloseTo(6.0, 9);
    // (12 − 3)/1.2 = 7500 h and (12 − 3)/0.857 = 10 500 h in all, less the 7000 h run.
    expect(result.leastLife).toBeCloseTo(500, 6);
    expect(result.mostLife).toBeCloseTo(3500, 6);
  });

  it('only the first colour: no latest date, only an earliest', () => {
    expect(colourBounds({ ...liner, seen: [{ exposure: 5000, layer: 0 }] })).toMatchObject({
      kind: 'at most',
      highRate: 6 / 5000,
      leastThickness: expect.closeTo(6, 9),
      leastLife: expect.closeTo(2500, 6),
    });
  });

  it('second colour only: bounded on both sides by its own layer', () => {
    expect(colourBounds({ ...liner, seen: [{ exposure: 6000, layer: 1 }] })).toMatchObject({
      kind: 'between',
      lowRate: 0.001,
      highRate: 0.002,
    });
  });

  it('trough showing is worn through', () => {
    expect(colourBounds({ ...liner, seen: [{ exposure: 6000, layer: 2 }] })).toMatchObject({
      kind: 'worn through',
      lowRate: 0.002,
    });
  });

  it('a colour that comes back is a contradiction', () => {
    const result = colourBounds({
      ...liner,
      seen: [
        { exposure: 5000, layer: 1 },
        { exposure: 7000, layer: 0 },
      ],
    });
    expect(result).toMatchObject({
      kind: 'contradiction',
      reached: { exposure: 5000 },
      notReached: { exposure: 7000 },
    });
  });

  it('nothing seen, or only before any exposure', () => {
    expect(colourBounds({ ...liner, seen: [] })).toEqual({ kind: 'nothing seen' });
    expect(colourBounds({ ...liner, seen: [{ exposure: 0, layer: 1 }] })).toEqual({ kind: 'nothing seen' });
  });

  it('every constant rate that would have shown these colours lies inside the bounds', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-5, max: 5e-3, noNaN: true }),
        fc.array(fc.double({ min: 1, max: 20_000, noNaN: true }), { minLength: 1, maxLength: 5 }),
        (rate, exposures) => {
          const depths = layerDepths(liner.layers);
          const seen = exposures.map((exposure) => ({
            exposure,
            layer: Math.min(
              2,
              depths.findLastIndex((d) => rate * exposure >= d),
            ),
          }));
          const result = colourBounds({ ...liner, seen });
          const near = 1 + 1e-12;
          switch (result.kind) {
            case 'between':
              expect(rate >= result.lowRate / near && rate <= result.highRate * near).toBe(true);
              break;
            case 'at most':
              expect(rate).toBeLessThanOrEqual(result.highRate * near);
              break;
            case 'worn through':
              expect(rate).toBeGreaterThanOrEqual(result.lowRate / near);
              break;
            default:
              throw new Error(`unexpected ${result.kind}`);
          }
        },
      ),
    );
  });
});
