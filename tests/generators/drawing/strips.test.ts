import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stripsOf } from '../../../src/generators/drawing/strips.js';

describe('strips', () => {
  test('a short conveyor is one strip at the largest scale that holds it', () => {
    // 4 m at 1:20 is 200 mm, within 220 mm; at 1:10 it would need two strips where there is room for one.
    const layout = stripsOf(4000, [], 220, () => 1);
    expect(layout.scale.text).toBe('1:20');
    expect(layout.sheets).toEqual([[{ from: 0, to: 4000 }]]);
  });

  test('is cut at the joint nearest to the middle', () => {
    expect(stripsOf(10_000, [3000, 5200, 8000], 120, () => 2).sheets).toEqual([
      [
        { from: 0, to: 5200 },
        { from: 5200, to: 10_000 },
      ],
    ]);
  });

  test('strips tile the conveyor, none is longer than the paper, and the scale is one that ISO 5455 recommends', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 300, max: 200_000 }),
        fc.array(fc.integer({ min: 1, max: 199_999 })),
        fc.integer({ min: 1, max: 3 }),
        (length, cuts, rows) => {
          const layout = stripsOf(length, cuts, 220, () => rows);
          const strips = layout.sheets.flat();
          const tiled =
            strips.every((strip, i) => strip.from === (strips[i - 1]?.to ?? 0) && strip.to > strip.from) &&
            strips.at(-1)?.to === length;
          const fits = strips.every(
            (strip) => (strip.to - strip.from) / layout.scale.reduction <= 220 + 1e-6,
          );
          return (
            tiled &&
            fits &&
            layout.sheets.every((sheet) => sheet.length <= rows) &&
            /^[125]0*$/.test(String(layout.scale.reduction))
          );
        },
      ),
    );
  });
});
