// Newer evidence against older, by hand. Two layers of 6 mm, condemned at 3 mm; the figures are worked out beside each check.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { handArithmetic } from '../../../src/domain/wear/arithmetic.js';
import { knownByHand, type SeenByHand } from '../../../src/domain/wear/known.js';

const liner = { fitted: 12, least: 3, depths: [0, 6, 12] };
const known = (...seen: SeenByHand[]) => knownByHand({ ...liner, seen });
const byThickness = handArithmetic({ ...liner, readings: [{ exposure: 4000, thickness: 10 }] });

describe('after the last thickness', () => {
  // 2 mm in 4000 h: 0.5 mm/1000 h, 7 mm to the limit, 14000 h.
  test('a thickness alone is the plain arithmetic', () => {
    expect(known({ exposure: 4000, thickness: 10 })).toEqual({ result: byThickness, overruled: undefined });
    expect(byThickness).toMatchObject({ kind: 'rate', remaining: 14_000 });
  });

  test('steel leaves nothing', () => {
    const { result, overruled } = known({ exposure: 4000, thickness: 10 }, { exposure: 5000, layer: 2 });
    expect(result).toMatchObject({ kind: 'at the limit', last: { exposure: 5000, thickness: 0 }, below: 3 });
    expect(overruled).toEqual({ by: 'steel', thickness: { exposure: 4000, thickness: 10 } });
  });

  test('steel in the round of a thickness leaves nothing too, in whatever order they were written', () => {
    expect(known({ exposure: 4000, layer: 2 }, { exposure: 4000, thickness: 10 }).result.kind).toBe(
      'at the limit',
    );
    expect(known({ exposure: 4000, thickness: 10 }, { exposure: 4000, layer: 2 }).result.kind).toBe(
      'at the limit',
    );
  });

  test('a colour of the same round as the thickness does not overrule the gauge: depths of layers are nominal', () => {
    expect(known({ exposure: 4000, thickness: 10 }, { exposure: 4000, layer: 1 })).toEqual({
      result: byThickness,
      overruled: undefined,
    });
  });

  test('the second colour before the arithmetic has it caps what is left', () => {
    // At 6000 h arithmetic has 9 mm; teal begins at 6 mm left. 4 mm in 2000 h: 2 mm/1000 h, 3 mm to the limit, 1500 h.
    const { result, overruled } = known({ exposure: 4000, thickness: 10 }, { exposure: 6000, layer: 1 });
    expect(result).toMatchObject({ kind: 'rate', last: { exposure: 6000, thickness: 6 }, remaining: 1500 });
    expect(overruled?.by).toBe('colour');
  });

  test('a colour that agrees, or speaks of more, changes nothing', () => {
    // At 13000 h arithmetic has 5.5 mm: teal. At 12000 h it has just 6 mm.
    for (const look of [
      { exposure: 13_000, layer: 1 },
      { exposure: 12_000, layer: 1 },
      { exposure: 6000, layer: 0 },
      { exposure: 13_000, layer: 0 },
    ])
      expect(known({ exposure: 4000, thickness: 10 }, look)).toEqual({
        result: byThickness,
        overruled: undefined,
      });
  });

  test('a colour before the last thickness is overruled by it', () => {
    for (const layer of [1, 2])
      expect(known({ exposure: 2000, layer }, { exposure: 4000, thickness: 10 })).toEqual({
        result: byThickness,
        overruled: undefined,
      });
  });

  test('no wear measured, and then the second colour: wear after all', () => {
    expect(known({ exposure: 1000, thickness: 12.2 }, { exposure: 5000, layer: 1 }).result).toMatchObject({
      kind: 'rate',
      last: { exposure: 5000, thickness: 6 },
    });
  });

  test('a limit that lies above the colour is reached with it', () => {
    const { result } = knownByHand({
      fitted: 12,
      least: 7,
      depths: [0, 6, 12],
      seen: [
        { exposure: 4000, thickness: 10 },
        { exposure: 5000, layer: 1 },
      ],
    });
    expect(result).toMatchObject({ kind: 'at the limit', last: { exposure: 5000, thickness: 6 } });
  });

  test('without a thickness the colours speak alone', () => {
    expect(known({ exposure: 5000, layer: 2 }).result.kind).toBe('no reading');
  });
});

test('no colour and no steel ever brings the end later', () => {
  const end = (seen: readonly SeenByHand[]): number => {
    const { result } = known(...seen);
    return result.kind === 'rate'
      ? result.last.exposure + result.remaining
      : result.kind === 'at the limit'
        ? result.last.exposure
        : Infinity;
  };
  fc.assert(
    fc.property(
      fc.double({ min: 100, max: 20_000, noNaN: true }),
      fc.double({ min: 3.1, max: 13, noNaN: true }),
      fc.array(
        fc.record({ after: fc.integer({ min: 1, max: 9000 }), layer: fc.integer({ min: 0, max: 2 }) }),
        {
          maxLength: 4,
        },
      ),
      (exposure, thickness, looks) => {
        const seen: SeenByHand[] = [{ exposure, thickness }];
        for (const { after, layer } of [...looks].sort((a, b) => a.after - b.after)) {
          const before = end(seen);
          seen.push({ exposure: exposure + after, layer });
          // Steel or a colour seen after the end was due by the arithmetic cannot end it any earlier.
          expect(end(seen)).toBeLessThanOrEqual(Math.max(before, exposure + after) * (1 + 1e-12));
        }
      },
    ),
  );
});
