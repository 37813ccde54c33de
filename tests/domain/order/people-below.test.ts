// Nobody works below what may get away down the slope: panels and pieces of the spiral while they are loose or in the air.

import { describe, expect, test } from 'vitest';
import { stepActions, type StepAction } from '../../../src/domain/model/job.js';
import { atTheMachine, handlesLooseParts } from '../../../src/domain/order/side-by-side.js';
import { gap, screw, stated } from '../../kit/estate.js';
import { check, crew, job, line, step } from './stories.js';

const slope = stated('angle', 20);
const crews = [crew('Alpha'), crew('Bravo')];
/** Two runs of 2 m at 0 m and 2.2 m, without a gate between them that could stop anything. */
const made = line([2, 2], [10, 10, 10], { incline: slope });
const open = {
  ...made,
  breaks: made.breaks.map((each) =>
    each.name === 'Gate1' ? gap('Gate1', 'inlet', each.from.value, each.to.value, 10) : each,
  ),
};
const change = job(open, ['all'], {
  crews,
  screwChange: { screw: screw(), cut: 'cold', joints: 'bolted', origin: slope.origin },
});

const start = [
  'isolate by Alpha',
  'p: prove dead by Alpha',
  'restrain screw by Alpha',
  'u: unbolt drive by Alpha',
];
function below(lines: readonly string[], of = change): readonly string[] {
  return check(of, lines)
    .filter(({ kind }) => kind === 'work below loose parts')
    .map(({ message }) => message);
}

describe('while Alpha handles the spiral above, Bravo is not to be below', () => {
  const upper = 'from 2200 mm to 4200 mm';
  test.each([
    [
      `a: remove screw ${upper} by Alpha after u`,
      'b: clean run 1 by Bravo after u',
      '"clean run 1" is at 0.00 m',
    ],
    [
      `a: insert screw ${upper} by Alpha after u`,
      'b: clean run 1 by Bravo after u',
      '"clean run 1" is at 0.00 m',
    ],
    [
      `a: insert screw ${upper} by Alpha after u`,
      'b: patch run 1 by Bravo after u',
      '"patch run 1" is at 0.00 m',
    ],
    [
      `a: strip run 2 by Alpha after u`,
      'b: gas test run 1 by Bravo after u',
      '"gas test run 1" is at 0.00 m',
    ],
    [
      `a: fit run 2 starting at head by Alpha after u`,
      'b: clean run 1 by Bravo after u',
      '"clean run 1" is at 0.00 m',
    ],
  ])('%s', (above, work, said) => {
    const found = below([...start, above, work]);
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(said);
    expect(found[0]).toContain('at up to 4.20 m, and both may go on at the same time.');
    // The other way round in the text, it is the same.
    expect(below([...start, work, above])).toHaveLength(1);
  });

  const insert = `a: insert screw ${upper} by Alpha after u`;
  test('one after the other is well', () =>
    expect(below([...start, insert, 'b: clean run 1 by Bravo after a'])).toEqual([]));
  test('above is well', () =>
    expect(
      below([
        ...start,
        'a: insert screw from 0 mm to 2000 mm by Alpha after u',
        'b: clean run 2 by Bravo after u',
      ]),
    ).toEqual([]));
  test('on the level nothing slides', () =>
    expect(
      below([...start, insert, 'b: clean run 1 by Bravo after u'], {
        ...change,
        conveyor: { ...open, incline: stated('angle', 0) },
      }),
    ).toEqual([]));
  test('a gate between them stops what slides', () =>
    expect(
      below([...start, insert, 'b: clean run 1 by Bravo after u'], { ...change, conveyor: made }),
    ).toEqual([]));
  test('where the conveyor falls, below is towards the head', () => {
    const falling = { ...change, conveyor: { ...open, incline: stated('angle', -20) } };
    expect(below([...start, insert, 'b: clean run 1 by Bravo after u'], falling)).toEqual([]);
    expect(
      below(
        [
          ...start,
          'a: insert screw from 0 mm to 2000 mm by Alpha after u',
          'b: clean run 2 by Bravo after u',
        ],
        falling,
      ),
    ).toHaveLength(1);
  });
  test('one crew is in one place, which is told instead', () =>
    expect(below([...start, insert, 'b: clean run 1 by Alpha after u'])).toEqual([]));
});

// Every kind of step has a line here, so that a new one is thought about.
const kinds: Readonly<Record<StepAction, { readonly loose: boolean; readonly there: boolean }>> = {
  empty: { loose: false, there: false },
  isolate: { loose: false, there: false },
  'prove dead': { loose: false, there: false },
  'gas test': { loose: false, there: true },
  pause: { loose: false, there: false },
  'gate off': { loose: true, there: true },
  'gate shut': { loose: false, there: true },
  'covers off': { loose: true, there: true },
  'braces off': { loose: false, there: true },
  'hold-downs off': { loose: false, there: true },
  'restrain screw': { loose: false, there: true },
  'unbolt drive': { loose: true, there: true },
  'remove screw': { loose: true, there: true },
  strip: { loose: true, there: true },
  clean: { loose: false, there: true },
  patch: { loose: true, there: true },
  // Without a stretch, as here, beside the machine.
  'other work': { loose: false, there: false },
  fit: { loose: true, there: true },
  'insert screw': { loose: true, there: true },
  'join screw': { loose: true, there: true },
  'fire watch': { loose: false, there: true },
  'bolt drive': { loose: false, there: true },
  'release screw': { loose: false, there: true },
  'hold-downs on': { loose: false, there: true },
  'braces on': { loose: false, there: true },
  'clear up': { loose: false, there: true },
  'covers on': { loose: true, there: true },
  'gate open': { loose: false, there: true },
  'gate on': { loose: true, there: true },
  'remove isolation': { loose: false, there: false },
  'run empty': { loose: false, there: false },
  'run loaded': { loose: false, there: false },
};
test.each(stepActions.map((action) => [action]))(
  '%s: what is loose, and whether people are at the trough',
  (action) => {
    expect({ loose: handlesLooseParts(step(action)), there: atTheMachine(step(action)) }).toEqual(
      kinds[action],
    );
  },
);
