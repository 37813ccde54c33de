// What a schedule stands on: which steps wait for which, and how many nights are laid out for them.

import { describe, expect, it, test } from 'vitest';
import type { Job } from '../../../src/domain/model/job.js';
import { planningBasis, type PlanningBasis } from '../../../src/domain/plan/planning-basis.js';
import { origin, screw } from '../../kit/estate.js';
import { crew, job, line, step, withOrder, worldOf } from '../order/stories.js';

const made = (confinedSpace = false): Job =>
  job(line([4, 4], [10, 60, 60], { confinedSpace }), ['all'], {
    crews: [crew('Alpha', 2), crew('Bravo', 4)],
  });
const written = (lines: readonly string[], of = made()): PlanningBasis => {
  const ordered = withOrder(of, lines);
  return planningBasis(ordered, ordered.order?.steps ?? [], worldOf(of));
};

describe('which steps wait for which', () => {
  it('as written: for what stands above, or what is named', () => {
    expect(written(['i: isolate', 'strip run 1', 'strip run 2 after i']).waits).toEqual([[], [0], [0]]);
  });
  it('proposed: the old spiral is out before any liner under it is touched', () => {
    const of = { ...made(), screwChange: { screw: screw(), origin: origin() } };
    const steps = ['strip run 1', 'remove screw', 'strip run 2', 'remove screw', 'pause'].map((text) =>
      step(text, of),
    );
    const { waits } = planningBasis(of, steps, worldOf(of));
    expect(waits[2]).toContain(1);
    for (const list of waits) expect(new Set(list).size).toBe(list.length);
  });
  it('more than a plan is made for: each for the one before', () => {
    const many = written(Array.from({ length: 2001 }, () => 'pause'));
    expect(many.apart).toEqual([]);
    expect(many.waits.slice(0, 3)).toEqual([[], [0], [1]]);
    expect(many.waits.at(-1)).toEqual([1999]);
  });
});

test.each<[string, readonly string[], boolean, number]>([
  // Shifts of 8 h. Twice the longest ways, an hour of moving each and what dries: 2 × (30 + 1) = 62 h, seven nights.
  ['one step of 30 h', ['clean run 1 takes 30 h'], false, 7],
  ['two of 15 h', ['clean run 1 takes 15 h', 'clean run 2 takes 15 h'], false, 7],
  // 2 × (30 + 1 + 9) = 80: the end at 80 is not before it.
  ['and nine hours of drying', ['clean run 1 takes 30 h dries 9 h'], false, 9],
  // Four times for tests of the air: 124 h.
  ['in an enclosed trough', ['clean run 1 takes 30 h'], true, 15],
  // By the slowest crew: 40 m at 0.5 h/m by two people are 1 h, and one of moving: 4 h, no night.
  ['by the slowest of the crews', ['clean run 1'], false, 0],
])('nights enough for everything one after the other: %s', (_, lines, enclosed, nights) => {
  expect(written(lines, made(enclosed)).rules.axis.nights).toHaveLength(nights);
});

test('steps that nothing tests the air for are laid over the shifts only where it is tested', () => {
  const lines = [
    'gas test all takes 1 h',
    'clean run 1 takes 1 h',
    'remove isolation takes 1 h',
    'run empty takes 1 h',
  ];
  expect(written(lines, made(true)).rules.handBack).toEqual([2, 3]);
  expect(written(lines).rules.handBack).toEqual([]);
});
