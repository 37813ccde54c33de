import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  layPanels,
  layRecorded,
  type LayoutInput,
  type PanelLayout,
} from '../../../src/domain/geometry/panel-layout.js';

const usual = { panelLengths: [1200], start: 'tail', minimumClosingPiece: 200, gap: 0 } as const;
const lengths = (layout: PanelLayout): number[] => layout.panels.map((panel) => panel.length);

describe('a run of panels', () => {
  test('is filled with whole panels and a closing piece', () => {
    const layout = layPanels({ ...usual, length: 5000 });
    expect(lengths(layout)).toEqual([1200, 1200, 1200, 1200, 200]);
    expect(layout.joints).toEqual([0, 1200, 2400, 3600, 4800, 5000]);
    expect(layout.panels.map((panel) => panel.closing)).toEqual([false, false, false, false, true]);
    expect(layout.waste).toBe(1000);
  });

  test('started at the head closes at the tail, and is still numbered from the tail', () => {
    const layout = layPanels({ ...usual, length: 5000, start: 'head' });
    expect(lengths(layout)).toEqual([200, 1200, 1200, 1200, 1200]);
    expect(layout.panels[0]).toMatchObject({ number: 1, closing: true, cutFrom: 1200 });
  });

  test('honours the minimum closing piece by shortening the panel before it', () => {
    expect(lengths(layPanels({ ...usual, length: 4900 }))).toEqual([1200, 1200, 1200, 1100, 200]);
  });

  test('that fits exactly has nothing cut', () =>
    expect(layPanels({ ...usual, length: 3600 })).toMatchObject({ waste: 0, joints: [0, 1200, 2400, 3600] }));

  test('takes the lengths on offer with the least waste', () => {
    const layout = layPanels({ ...usual, panelLengths: [3000, 1200], length: 10_000 });
    expect(lengths(layout)).toEqual([3000, 3000, 3000, 1000]);
    expect(layout.waste).toBe(200);
  });

  test('leaves a gap at each joint where that is the policy', () => {
    const layout = layPanels({ ...usual, length: 3612, gap: 6 });
    expect(lengths(layout)).toEqual([1200, 1200, 1200]);
    expect(layout.joints).toEqual([0, 1203, 2409, 3612]);
    expect(layout.panels[1]).toMatchObject({ from: 1206, to: 2406 });
  });

  test('keeps joints clear of flanges', () => {
    const layout = layPanels({ ...usual, length: 4900, avoid: [{ at: 2400, clearance: 50 }] });
    expect(layout.unavoidable).toEqual([]);
    expect(layout.extraPieces).toBe(0);
    expect(layout.joints.every((joint) => Math.abs(joint - 2400) >= 50)).toBe(true);
  });

  test('takes one more piece where joints could not be clear without', () => {
    const layout = layPanels({ ...usual, length: 2400, avoid: [{ at: 1200, clearance: 50 }] });
    expect(layout).toMatchObject({ unavoidable: [], extraPieces: 1 });
    expect(lengths(layout)).toHaveLength(3);
  });

  test('says which place no layout can keep clear of', () => {
    const layout = layPanels({ ...usual, length: 1500, avoid: [{ at: 750, clearance: 800 }] });
    expect(layout.unavoidable).toHaveLength(1);
    expect(layout.unavoidable[0]?.place).toEqual({ at: 750, clearance: 800 });
  });

  test('shorter than the minimum, or than its panels allow, says so', () => {
    expect(layPanels({ ...usual, length: 150 })).toMatchObject({ belowMinimum: true, joints: [0, 150] });
    const tight = layPanels({ ...usual, panelLengths: [300], minimumClosingPiece: 280, length: 500 });
    expect(lengths(tight)).toEqual([250, 250]);
    expect(tight.belowMinimum).toBe(true);
  });

  test('in inches comes out in inches', () => {
    const layout = layPanels({ ...usual, panelLengths: [1219.2], length: 3 * 1219.2 });
    expect(lengths(layout)).toEqual([1219.2, 1219.2, 1219.2]);
    const moved = layPanels({
      ...usual,
      panelLengths: [1219.2],
      length: 4 * 1219.2 - 300,
      avoid: [{ at: 1219.2, clearance: 25.4 }],
    });
    expect(moved.unavoidable).toEqual([]);
    expect(moved.joints.at(-1)).toBeCloseTo(4 * 1219.2 - 300, 9);
  });

  test('as recorded lies as recorded', () => {
    const layout = layRecorded([1200, 1198, 640], 0, 'tail');
    expect(layout.joints).toEqual([0, 1200, 2398, 3038]);
    expect(layout.waste).toBe(0);
  });

  test('what cannot be laid is refused in words', () => {
    expect(() => layPanels({ ...usual, length: 0 })).toThrow(/length of the run is 0 mm/);
    expect(() => layPanels({ ...usual, length: 1000, panelLengths: [] })).toThrow(
      /at least one panel length/,
    );
    expect(() => layPanels({ ...usual, length: 1000, panelLengths: [-5] })).toThrow(/panel length is -5 mm/);
  });
});

describe('against trying every layout', () => {
  // Small whole numbers, so that every layout on the millimetre can be tried.
  const run = fc.record({
    length: fc.integer({ min: 1, max: 24 }),
    panelLengths: fc.uniqueArray(fc.integer({ min: 3, max: 9 }), { minLength: 1, maxLength: 2 }),
    start: fc.constantFrom('tail' as const, 'head' as const),
    minimumClosingPiece: fc.integer({ min: 1, max: 3 }),
    gap: fc.constantFrom(0, 0, 1),
    avoid: fc.array(
      fc.record({ at: fc.integer({ min: 1, max: 23 }), clearance: fc.integer({ min: 1, max: 2 }) }),
      { maxLength: 3 },
    ),
  });

  test('no layout has fewer joints too near, then fewer pieces, then less waste, then fewer cuts', () => {
    fc.assert(
      fc.property(run, (input) => {
        const best = tryAll(input);
        fc.pre(best !== undefined);
        const layout = layPanels(input);
        expect(score(input, layout)).toEqual(best);
      }),
      { numRuns: 600 },
    );
  });

  test('the pieces fill the run, in order, with the gap between, none longer than its panel', () => {
    fc.assert(
      fc.property(run, (input) => {
        const { panels, joints, waste, belowMinimum } = layPanels(input);
        expect(joints[0]).toBe(0);
        expect(joints.at(-1)).toBe(input.length);
        expect(panels.at(-1)?.to).toBe(input.length);
        expect(panels.filter((panel) => panel.closing)).toHaveLength(1);
        for (const [i, panel] of panels.entries()) {
          expect(panel.number).toBe(i + 1);
          expect(panel.to - panel.from).toBeCloseTo(panel.length, 6);
          expect(panel.length).toBeLessThanOrEqual(panel.cutFrom);
          expect(input.panelLengths).toContain(panel.cutFrom);
          if (!belowMinimum) expect(panel.length).toBeGreaterThanOrEqual(input.minimumClosingPiece - 1e-6);
          const next = panels[i + 1];
          if (next) expect(next.from - panel.to).toBeCloseTo(input.gap, 6);
        }
        expect(waste).toBeCloseTo(
          panels.reduce((sum, panel) => sum + panel.cutFrom - panel.length, 0),
          6,
        );
      }),
      { numRuns: 600 },
    );
  });

  test('a run laid from the head is the mirror image of one laid from the tail', () => {
    fc.assert(
      fc.property(run, (input) => {
        const tail = layPanels({ ...input, start: 'tail' });
        const head = layPanels({
          ...input,
          start: 'head',
          avoid: input.avoid.map((place) => ({ ...place, at: input.length - place.at })),
        });
        expect(head.panels).toHaveLength(tail.panels.length);
        // Each offset is rounded to a millionth of a millimetre, from whichever end it is counted.
        for (const [i, panel] of [...head.panels].reverse().entries())
          expect(Math.abs(panel.length - (tail.panels[i]?.length ?? 0))).toBeLessThan(1e-5);
      }),
    );
  });
});

type Score = readonly [tooNear: number, pieces: number, waste: number, cuts: number];

function score(input: LayoutInput, layout: PanelLayout): Score {
  const joints = layout.joints.slice(1, -1);
  return [
    joints.reduce((sum, joint) => sum + tooNear(input, joint), 0),
    layout.panels.length,
    layout.waste,
    layout.panels.filter((panel) => panel.length < panel.cutFrom).length,
  ];
}

function tooNear(input: LayoutInput, joint: number): number {
  return (input.avoid ?? []).filter((place) => Math.abs(joint - place.at) < place.clearance).length;
}

/** The best score of all layouts in whole millimetres; undefined where the minimum leaves none. */
function tryAll(input: LayoutInput): Score | undefined {
  let best: Score | undefined;
  const mirrored = input.start === 'head';
  const lay = (from: number, score: Score): void => {
    if (best && compare(score, best) >= 0) return;
    for (const panel of input.panelLengths) {
      for (let piece = input.minimumClosingPiece; piece <= panel; piece++) {
        const to = from + piece;
        const next: Score = [
          score[0],
          score[1] + 1,
          score[2] + panel - piece,
          score[3] + (piece < panel ? 1 : 0),
        ];
        if (to === input.length && (!best || compare(next, best) < 0)) best = next;
        if (to + input.gap >= input.length) continue;
        const joint = to + input.gap / 2;
        lay(to + input.gap, [
          next[0] + tooNear(input, mirrored ? input.length - joint : joint),
          next[1],
          next[2],
          next[3],
        ]);
      }
    }
  };
  lay(0, [0, 0, 0, 0]);
  return best;
}

function compare(a: Score, b: Score): number {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return (a[i] ?? 0) - (b[i] ?? 0);
  return 0;
}
