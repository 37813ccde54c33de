// What to expect at a point, by arithmetic that can be redone by hand.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  expectationFor,
  type ExpectationInput,
} from '../../../src/generators/inspection-sheet/parts/expectation.js';

const base: ExpectationInput = {
  fitted: 12,
  condemn: 4,
  layers: [
    { name: 'white', thickness: 6 },
    { name: 'red', thickness: 6 },
  ],
  seen: [],
  now: 9000,
  error: 0.1,
  unit: 'h',
};

describe('from thicknesses', () => {
  // Worked example in the form of API 570: 12 mm at 0 h, 9.6 at 6000, 8.4 at 8000: long-term 0.45, short-term 0.60 mm/1000 h.
  const seen = [
    { exposure: 6000, thickness: 9.6 },
    { exposure: 8000, thickness: 8.4 },
  ];

  test('between the slower and the faster rate, twice the reading error on either side', () => {
    // 1000 h on: 8.4 − 0.60 − 0.2 = 7.6; 8.4 − 0.45 + 0.2 = 8.15.
    const found = expectationFor({ ...base, seen });
    expect(found).toMatchObject({ kind: 'range', layers: ['white'], mayBeAtLimit: false });
    if (found.kind !== 'range') return;
    expect(found.least).toBeCloseTo(7.6, 9);
    expect(found.most).toBeCloseTo(8.15, 9);
  });

  test('wide from a single reading, and says so', () => {
    // 9.6 at 6000 h: 0.4 mm/1000 h; 3000 h on at 0.2 to 0.6: 9.6 − 1.8 − 0.2 = 7.6 to 9.6 − 0.6 + 0.2 = 9.2.
    const found = expectationFor({ ...base, seen: [{ exposure: 6000, thickness: 9.6 }] });
    expect(found).toMatchObject({ kind: 'range', basis: expect.stringContaining('one reading') as string });
    if (found.kind !== 'range') return;
    expect([found.least, found.most]).toEqual([expect.closeTo(7.6, 9), expect.closeTo(9.2, 9)]);
  });

  test('names both colours where the range spans them, and warns at the condemn limit', () => {
    // At 20 000 h: 8.4 − 0.6·12 = 1.2 to 8.4 − 0.45·12 = 3.0.
    expect(expectationFor({ ...base, seen, now: 20_000 })).toMatchObject({
      layers: ['red'],
      mayBeAtLimit: true,
    });
    // At 12 000 h: 6.0 − 0.2 to 6.6 + 0.2: the first layer ends at 6 mm left.
    expect(expectationFor({ ...base, seen, now: 12_000 })).toMatchObject({ layers: ['white', 'red'] });
  });
});

describe('from a thickness and a colour seen since', () => {
  const thickness = { exposure: 6000, thickness: 9.6 };

  test('steel since: worn through, whatever the thickness said', () => {
    expect(expectationFor({ ...base, seen: [thickness, { exposure: 7000, layer: 2 }] }).kind).toBe(
      'worn through',
    );
  });

  test('a colour that agrees leaves what the thickness expects', () => {
    const alone = expectationFor({ ...base, seen: [thickness] });
    expect(expectationFor({ ...base, seen: [thickness, { exposure: 8000, layer: 0 }] })).toEqual(alone);
  });

  test('the second colour before its time caps it', () => {
    // At 8000 h at most 6 mm: 3.6 mm in 2000 h is 1.8, 6 in 8000 is 0.75 mm/1000 h. 1000 h on: 6 − 1.8 − 0.2 = 4.0 to
    // 6 − 0.75 + 0.2 = 5.45.
    const found = expectationFor({ ...base, seen: [thickness, { exposure: 8000, layer: 1 }] });
    expect(found).toMatchObject({ kind: 'range', layers: ['red'] });
    if (found.kind !== 'range') return;
    expect([found.least, found.most]).toEqual([expect.closeTo(4, 9), expect.closeTo(5.45, 9)]);
  });
});

describe('from colours', () => {
  test('first colour last time: anything down to what that rate allows', () => {
    // White at 5000 h: at most 6 mm in 5000 h; at 9000 h at most 10.8 mm gone: 1.2 mm left.
    expect(expectationFor({ ...base, seen: [{ exposure: 5000, layer: 0 }] })).toMatchObject({
      kind: 'range',
      least: expect.closeTo(1.2, 9) as number,
    });
  });

  test('white at 5000 h, red at 7000 h: 0.857 to 1.2 mm/1000 h', () => {
    // 12 − 1.2·9 = 1.2; 12 − 0.857·9 = 4.286 plus the band of 0.2.
    expect(
      expectationFor({
        ...base,
        seen: [
          { exposure: 5000, layer: 0 },
          { exposure: 7000, layer: 1 },
        ],
      }),
    ).toMatchObject({
      least: expect.closeTo(1.2, 9) as number,
      most: expect.closeTo(4.486, 3) as number,
      layers: ['red'],
    });
  });

  test('trough last time stays trough', () => {
    expect(expectationFor({ ...base, seen: [{ exposure: 5000, layer: 2 }] })).toMatchObject({
      kind: 'worn through',
    });
  });

  test('colours that contradict each other promise nothing', () => {
    expect(
      expectationFor({
        ...base,
        seen: [
          { exposure: 3000, layer: 1 },
          { exposure: 8000, layer: 0 },
        ],
      }),
    ).toMatchObject({ kind: 'open' });
  });
});

test('without a reading or without hours nothing is promised', () => {
  expect(expectationFor(base)).toMatchObject({
    kind: 'open',
    reason: expect.stringContaining('no reading') as string,
  });
  expect(expectationFor({ ...base, now: undefined })).toMatchObject({ kind: 'open' });
});

test('a range never leaves 0 to the fitted thickness, and never runs backwards', () => {
  const reading = fc.record({
    exposure: fc.double({ min: 1, max: 30_000, noNaN: true }),
    thickness: fc.double({ min: 0, max: 14, noNaN: true }),
  });
  fc.assert(
    fc.property(
      fc.array(reading, { maxLength: 5 }),
      fc.double({ min: 0, max: 60_000, noNaN: true }),
      (seen, now) => {
        const found = expectationFor({
          ...base,
          seen: [...seen].sort((a, b) => a.exposure - b.exposure),
          now,
        });
        return (
          found.kind !== 'range' ||
          (found.least >= 0 && found.least <= found.most && found.most <= 12.2 + 1e-9)
        );
      },
    ),
  );
});
