import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { spreadLabels } from '../../../src/generators/drawing/labels.js';

const marks = fc
  .array(
    fc.record({
      at: fc.double({ min: 0, max: 200, noNaN: true }),
      width: fc.double({ min: 1, max: 30, noNaN: true }),
    }),
    { maxLength: 20 },
  )
  .map((list) => [...list].sort((a, b) => a.at - b.at));

describe('labels on one line', () => {
  test('stay where they are when nothing is in the way', () => {
    expect(
      spreadLabels(
        [
          { at: 20, width: 10 },
          { at: 60, width: 10 },
        ],
        2,
        0,
        100,
      ),
    ).toEqual([20, 60]);
  });

  test('two that collide move apart by the same amount', () => {
    expect(
      spreadLabels(
        [
          { at: 50, width: 10 },
          { at: 50, width: 10 },
        ],
        2,
        0,
        100,
      ),
    ).toEqual([44, 56]);
  });

  test('are refused when they are wider than the line', () => {
    expect(
      spreadLabels(
        [
          { at: 5, width: 6 },
          { at: 5, width: 6 },
        ],
        1,
        0,
        12,
      ),
    ).toBeUndefined();
  });

  test('never overlap, never change places, never leave the line', () => {
    fc.assert(
      fc.property(marks, (list) => {
        const middles = spreadLabels(list, 1.5, 0, 220);
        if (!middles) return list.reduce((sum, mark) => sum + mark.width, 0) + 1.5 * (list.length - 1) > 220;
        return middles.every((middle, i) => {
          const mark = list[i];
          const before = list[i - 1];
          if (!mark) return false;
          const inside = middle - mark.width / 2 > -1e-6 && middle + mark.width / 2 < 220 + 1e-6;
          return (
            inside &&
            (!before || middle - mark.width / 2 - ((middles[i - 1] ?? 0) + before.width / 2) > 1.5 - 1e-6)
          );
        });
      }),
    );
  });
});
