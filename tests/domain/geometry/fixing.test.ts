// Countersunk bolts against tables in print. Stress areas: ISO 898-1. Torques of class 8.8, zinc-plated: a farm machine maker's
// table of minimum tightening torques (49, 85, 210, 425 N·m for M10 to M20) and one by friction 0.125 (42 to 350 N·m), looked up
// 2026-11; our figure is dry, so it lies at the upper one. Head heights: tables of ISO 7046 and DIN 7991.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  boltSize,
  countersinkWidth,
  flushDepth,
  leastBoltLength,
  stressArea,
  usualTorque,
  type BoltSize,
} from '../../../src/domain/geometry/fixing.js';

function size(name: string): BoltSize {
  const found = boltSize(name);
  if (!found) throw new Error(name);
  return found;
}

test.each([
  ['M5', 14.2],
  ['M6', 20.1],
  ['M8', 36.6],
  ['M10', 58.0],
  ['M12', 84.3],
  ['M16', 157],
  ['M20', 245],
])('%s has a stress area of %d mm² (ISO 898-1)', (name, area) => {
  expect(Math.abs(stressArea(size(name)) / area - 1)).toBeLessThan(0.003);
});

test.each([
  ['M6', 10],
  ['M8', 25],
  ['M10', 49],
  ['M12', 85],
  ['M16', 210],
  ['M20', 425],
])('%s of class 8.8 bears about %d N·m', (name, torque) => {
  expect(Math.abs(usualTorque(size(name)) / torque - 1)).toBeLessThan(0.06);
});

test.each([
  ['M5', 2.7],
  ['M6', 3.3],
  ['M8', 4.65],
  ['M10', 5],
  ['M12', 6.5],
  ['M16', 7.5],
  ['M20', 8.5],
])('the head of %s is %d mm high, so that it lies flush no deeper than that', (name, high) => {
  const flush = flushDepth(size(name));
  // A head is a little lower than the cone of its theoretical diameter down to the shank, and the hole is wider than the shank.
  expect(flush).toBeLessThanOrEqual(high);
  expect(flush).toBeGreaterThan(high * 0.75);
});

test('M10 in a hole of 11 mm: 4.5 mm deep for the head to lie flush; 5 mm deep is 21 mm wide', () => {
  expect(flushDepth(size('M10'))).toBe(4.5);
  expect(countersinkWidth(5, 11)).toBe(21);
});

test('a bolt through 12 mm of liner and 4 mm of plate: 26.4 mm flush, half a millimetre less where it is sunk by that', () => {
  const held = { liner: 12, plate: 4, countersink: 4.5, hole: 11 };
  expect(leastBoltLength(size('M10'), held)).toBeCloseTo(12 + 4 + 2 + 8.4, 9);
  expect(leastBoltLength(size('M10'), { ...held, countersink: 5 })).toBeCloseTo(25.9, 9);
});

test('a flush head is as wide as its countersink, whatever the hole', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('M5', 'M6', 'M8', 'M10', 'M12', 'M16', 'M20'),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (name, share) => {
        const bolt = size(name);
        const hole = bolt.diameter + share * (bolt.head - bolt.diameter);
        expect(countersinkWidth(flushDepth(bolt, hole), hole)).toBeCloseTo(bolt.head, 9);
      },
    ),
  );
});

test('a size that no table holds is not guessed', () => {
  expect(boltSize('M11')).toBeUndefined();
  expect(boltSize('3/8')).toBeUndefined();
});
