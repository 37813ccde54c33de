// A run of several liners. Nothing published divides one: the joints are counted by hand, and the property holds whatever the lengths.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jointReach, layMixed, type LaidStretch } from '../../../src/domain/geometry/mixed-layout.js';

const hard = (length: number, gap = 0): LaidStretch => ({ length, panelLengths: [2000, 1500], gap });
const green = (length: number, gap = 0): LaidStretch => ({ length, panelLengths: [1300], gap });
const joints = (start: 'tail' | 'head', ...stretches: readonly LaidStretch[]): readonly number[] =>
  layMixed({ stretches, start, minimumClosingPiece: 200 }).joints;

describe('a run of two liners', () => {
  test('has a joint at the change, each stretch laid of its own lengths from the end at which fitting starts', () => {
    // 5.5 m of 2000 and 1500 mm, 7.8 m of 1300 mm.
    expect(joints('tail', hard(5500), green(7800))).toEqual([
      0, 2000, 4000, 5500, 6800, 8100, 9400, 10_700, 12_000, 13_300,
    ]);
    expect(joints('head', hard(5500), green(7800))).toEqual([
      0, 1500, 3500, 5500, 6800, 8100, 9400, 10_700, 12_000, 13_300,
    ]);
  });

  test('is cut at the change where whole panels end elsewhere', () => {
    expect(joints('tail', green(3000), hard(4000))).toEqual([0, 1300, 2600, 3000, 5000, 7000]);
    expect(joints('head', green(3000), hard(3700))).toEqual([0, 400, 1700, 3000, 4700, 6700]);
  });

  test('is not cut for what a tape is off by: the joint lies where whole panels end, and the next stretch takes the rest', () => {
    for (const off of [-jointReach, -7, 7, jointReach])
      expect(joints('tail', green(2600 + off), hard(4000 - off))).toEqual([0, 1300, 2600, 4600, 6600]);
    expect(joints('tail', green(2600 + jointReach + 1), hard(4000))[2]).not.toBe(2600);
  });

  test('leaves the wider gap of the two open at the change', () => {
    const { panels } = layMixed({
      stretches: [hard(4002), green(3998, 4)],
      start: 'tail',
      minimumClosingPiece: 200,
    });
    expect(panels.map(({ from, to }) => [from, to])).toEqual([
      [0, 2000],
      [2000, 4000],
      [4004, 5304],
      [5308, 6608],
      [6612, 7796],
      [7800, 8000],
    ]);
  });
});

const stretch = fc.record({
  length: fc.integer({ min: 300, max: 9000 }),
  panelLengths: fc.uniqueArray(fc.integer({ min: 300, max: 3000 }), { minLength: 1, maxLength: 3 }),
  gap: fc.integer({ min: 0, max: 8 }),
});

test('whatever the stretches, panels fill the run in order, each of a length on offer there, and a joint is within reach of every change', () =>
  fc.assert(
    fc.property(
      fc.array(stretch, { minLength: 1, maxLength: 4 }),
      fc.constantFrom('tail' as const, 'head' as const),
      (stretches, start) => {
        const layout = layMixed({ stretches, start, minimumClosingPiece: 200 });
        const whole = stretches.reduce((sum, { length }) => sum + length, 0);
        expect(layout.joints[0]).toBe(0);
        expect(layout.joints.at(-1)).toBe(whole);
        expect(layout.panels[0]?.from).toBeCloseTo(0, 6);
        expect(layout.panels.at(-1)?.to).toBeCloseTo(whole, 6);
        expect(layout.panels.filter(({ closing }) => closing)).toHaveLength(1);
        let change = 0;
        const changes = stretches.slice(0, -1).map(({ length }) => (change += length));
        for (const at of changes)
          expect(Math.min(...layout.joints.map((joint) => Math.abs(joint - at)))).toBeLessThanOrEqual(
            jointReach + 1e-6,
          );
        layout.panels.forEach((panel, i) => {
          expect(panel.number).toBe(i + 1);
          expect(panel.length).toBeGreaterThan(0);
          expect(panel.length).toBeLessThanOrEqual(panel.cutFrom + 1e-6);
          const middle = (panel.from + panel.to) / 2;
          const here = stretches[changes.filter((at) => at < middle).length];
          // Near a change that was moved to where panels end, the neighbour's may hold the middle.
          if (Math.min(...changes.map((at) => Math.abs(at - middle)), Infinity) > jointReach)
            expect(here?.panelLengths).toContain(panel.cutFrom);
          const next = layout.panels[i + 1];
          if (next)
            expect(next.from - panel.to).toBeLessThanOrEqual(
              Math.max(...stretches.map(({ gap }) => gap)) + 1e-6,
            );
        });
      },
    ),
  ));
