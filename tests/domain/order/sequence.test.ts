// Which steps wait for which: a line of steps, steps that say `after`, rings, and more steps than fit in one word of bits.

import { describe, expect, test } from 'vitest';
import { changeSteps, freshName } from '../../../src/domain/order/change-steps.js';
import { apartPairs, precedenceOf } from '../../../src/domain/order/precedence.js';
import { sequenceOf, stepAt } from '../../../src/domain/order/sequence.js';
import { stepText } from '../../../src/domain/order/words.js';
import type { StepChange } from '../../../src/domain/order/violation.js';
import type { Step } from '../../../src/domain/model/job.js';
import { gap, stated } from '../../kit/estate.js';
import { job, line, step, stretch, walked, worldOf } from './stories.js';

const made = (...lines: readonly string[]): Step[] => lines.map((each) => step(each));
/** `0<1` for every pair that is sure to be in that order. */
const sure = (...lines: readonly string[]): string[] => {
  const { before, steps } = sequenceOf(made(...lines));
  return steps.flatMap((_, i) => steps.flatMap((__, j) => (before(i, j) ? [`${i}<${j}`] : [])));
};

describe('sure to be finished before the other starts', () => {
  test.each<readonly [string, readonly string[], readonly string[]]>([
    ['a line of steps', ['isolate', 'strip', 'fit'], ['0<1', '0<2', '1<2']],
    ['after the first only', ['a: isolate', 'strip after a', 'fit after a'], ['0<1', '0<2']],
    [
      'a step without `after` waits for everything above',
      ['a: isolate', 'strip after a', 'fit after a', 'covers on'],
      ['0<1', '0<2', '0<3', '1<3', '2<3'],
    ],
    [
      'through others',
      ['a: isolate', 'b: strip after a', 'c: clean after b', 'fit after c'],
      ['0<1', '0<2', '0<3', '1<2', '1<3', '2<3'],
    ],
    ['written out of order', ['a: isolate', 'clean after c', 'c: strip after a'], ['0<1', '0<2', '2<1']],
    [
      'two waits',
      ['a: isolate', 'b: strip after a', 'c: clean after a', 'fit after b, c'],
      ['0<1', '0<2', '0<3', '1<3', '2<3'],
    ],
    ['a name that nobody has is no wait', ['a: isolate', 'strip after x'], ['0<1']],
    [
      'of two steps of one name, the first counts',
      ['a: isolate', 'b: strip after a', 'b: clean after a', 'fit after b'],
      ['0<1', '0<2', '0<3', '1<3'],
    ],
    ['nothing', [], []],
  ])('%s', (_, lines, expected) => expect(sure(...lines)).toEqual(expected));

  test('more than 32 steps, and more than 64', () => {
    const lines = [
      'a: isolate',
      ...Array.from({ length: 70 }, (_, k) => `s${k}: strip after ${k === 0 ? 'a' : `s${k - 1}`}`),
      'fit after a',
    ];
    const { before, order } = sequenceOf(made(...lines));
    expect(order).toEqual(lines.map((_, i) => i));
    expect([
      before(0, 70),
      before(31, 32),
      before(32, 31),
      before(1, 70),
      before(33, 64),
      before(64, 33),
      before(70, 0),
    ]).toEqual([true, true, false, true, true, false, false]);
    expect([before(0, 71), before(1, 71), before(70, 71)]).toEqual([true, false, false]);
  });
});

test.each<readonly [readonly string[], readonly number[]]>([
  [
    ['isolate', 'strip', 'fit'],
    [0, 1, 2],
  ],
  [
    ['a: isolate', 'b: strip after c', 'c: clean after a', 'fit'],
    [0, 2, 1, 3],
  ],
  [
    ['z: isolate', 'b: strip after c', 'c: clean after d', 'd: fit after z'],
    [0, 3, 2, 1],
  ],
  // Of those that may start, the earliest written goes first.
  [
    ['z: isolate', 'a: strip after z, d', 'b: clean after z', 'c: fit after z', 'd: patch after z'],
    [0, 2, 3, 4, 1],
  ],
])('%j is walked as %j', (lines, expected) => {
  expect(sequenceOf(made(...lines)).order).toEqual(expected);
});

describe('walked although there is a ring', () => {
  test.each<readonly [readonly string[], readonly number[]]>([
    [
      ['isolate', 'a: strip after a', 'fit'],
      [0, 1, 2],
    ],
    // What a ring waits for, and is not part of it, still goes first.
    [
      ['q: empty', 'a: isolate after b, z', 'b: strip after a', 'z: pause after q'],
      [0, 3, 1, 2],
    ],
  ])('%j as %j', (lines, expected) => expect(sequenceOf(made(...lines)).order).toEqual(expected));
});

test('rings are told in the order they are written, whichever is found first', () => {
  const lines = ['a: isolate after b, c', 'b: strip after a', 'c: clean after d', 'd: fit after c'];
  expect(sequenceOf(made(...lines)).circles).toEqual([
    [0, 1],
    [2, 3],
  ]);
});

describe('rings', () => {
  test.each<readonly [string, readonly string[], readonly (readonly number[])[]]>([
    ['none', ['a: isolate', 'strip after a'], []],
    ['for itself', ['isolate', 'a: strip after a'], [[1]]],
    ['two', ['a: isolate after b', 'b: strip after a'], [[0, 1]]],
    [
      'three, and a step that waits for them',
      ['a: isolate after c', 'b: strip after a', 'c: clean after b', 'd: fit after c'],
      [[0, 1, 2]],
    ],
    [
      'two rings, the first written first',
      ['c: isolate after d', 'a: strip after b', 'd: clean after c', 'b: fit after a'],
      [
        [0, 2],
        [1, 3],
      ],
    ],
    [
      'a step without `after` between',
      ['a: isolate after c', 'strip', 'c: clean after b', 'b: fit after a'],
      [[0, 2, 3]],
    ],
    ['a ring through the step that waits for all above', ['a: isolate after b', 'b: strip'], [[0, 1]]],
    ['two ways round', ['a: isolate after b, c', 'b: strip after a', 'c: clean after a'], [[0, 1, 2]]],
  ])('%s', (_, lines, expected) => expect(sequenceOf(made(...lines)).circles).toEqual(expected));

  test('what leads forward in a ring is left out, so that the rest can be walked', () => {
    const { order, before } = sequenceOf(
      made('a: isolate after c', 'b: strip after a', 'c: clean after b', 'd: fit after c'),
    );
    expect(order).toEqual([0, 1, 2, 3]);
    expect([before(0, 1), before(1, 2), before(2, 0), before(0, 3)]).toEqual([true, true, false, true]);
  });
});

test('a position that is none', () => {
  const sequence = sequenceOf(made('isolate'));
  expect(stepAt(sequence, 0).action).toBe('isolate');
  expect(() => stepAt(sequence, 1)).toThrow('The order has no step 1.');
});

describe('what a planner may not swap or overlap', () => {
  const flat = line([2, 2], [10, 10, 10]);
  const steep = { ...flat, incline: stated('angle', 20) };
  const inlet = {
    ...steep,
    breaks: steep.breaks.map((each) =>
      each.name === 'Gate1' ? gap('Gate1', 'inlet', each.from.value, each.to.value, 10) : each,
    ),
  };
  const lines = [
    'isolate',
    'prove dead',
    'gate shut Gate1',
    'strip run 2',
    'strip run 1',
    'clean run 2',
    'clean run 1',
    'gate open Gate1',
    'remove isolation',
  ];
  const of = (conveyor: typeof flat) => job(conveyor, ['all']);
  const names = (pairs: readonly (readonly [number, number])[]): string[] =>
    pairs.map(([a, b]) => `${lines[a]} | ${lines[b]}`).sort();

  test('bound', () => {
    const { bound } = precedenceOf(
      of(flat),
      lines.map((each) => step(each)),
      worldOf(of(flat)),
    );
    expect(names([...new Map(bound.map((pair) => [String(pair), pair])).values()])).toEqual([
      'clean run 1 | remove isolation',
      'clean run 2 | remove isolation',
      'gate open Gate1 | remove isolation',
      'gate shut Gate1 | gate open Gate1',
      'gate shut Gate1 | remove isolation',
      'gate shut Gate1 | strip run 1',
      'gate shut Gate1 | strip run 2',
      'isolate | clean run 1',
      'isolate | clean run 2',
      'isolate | gate open Gate1',
      'isolate | prove dead',
      'isolate | remove isolation',
      'isolate | strip run 1',
      'isolate | strip run 2',
      'prove dead | clean run 1',
      'prove dead | clean run 2',
      'prove dead | remove isolation',
      'prove dead | strip run 1',
      'prove dead | strip run 2',
      'strip run 1 | clean run 1',
      'strip run 1 | gate open Gate1',
      'strip run 1 | remove isolation',
      'strip run 2 | clean run 2',
      'strip run 2 | gate open Gate1',
      'strip run 2 | remove isolation',
    ]);
  });

  test.each<readonly [string, typeof flat, readonly string[], readonly string[]]>([
    ['on the level, nothing', flat, lines, []],
    [
      'within a run, and not across a gate that is shut',
      steep,
      lines,
      ['strip run 1 | clean run 1', 'strip run 2 | clean run 2'],
    ],
    [
      'a gate that nobody shuts does not',
      steep,
      lines.map((each) => (each.startsWith('gate') ? 'pause' : each)),
      [
        'strip run 1 | clean run 1',
        'strip run 2 | clean run 1',
        'strip run 2 | clean run 2',
        'strip run 2 | strip run 1',
      ],
    ],
    [
      'whichever is written first',
      inlet,
      ['clean run 1', 'strip run 2', 'clean run 2'],
      ['clean run 1 | strip run 2', 'strip run 2 | clean run 2'],
    ],
    [
      'in one run too, the upper part',
      inlet,
      ['strip panel 2 of run 1', 'clean panel 1 of run 1'],
      ['strip panel 2 of run 1 | clean panel 1 of run 1'],
    ],
  ])('apart: %s', (_, conveyor, some, expected) => {
    const steps = some.map((each) => step(each));
    const { apart } = precedenceOf(of(conveyor), steps, worldOf(of(conveyor)));
    const found = apart
      .map(([a, b]) => `${some[a]} | ${some[b]}`)
      .filter((each) => !/gate|pause|isolat|dead/.test(each));
    expect(found.sort()).toEqual(expected);
  });

  test('a gate is shut before what is loose after it, and opened after what was loose before it', () => {
    const some = ['patch run 1', 'gate shut Gate1', 'strip run 1', 'gate open Gate1', 'fit run 1'];
    const { bound } = precedenceOf(
      of(flat),
      some.map((each) => step(each)),
      worldOf(of(flat)),
    );
    const gates = bound.map(([a, b]) => `${some[a]} | ${some[b]}`).filter((each) => each.includes('gate'));
    expect(gates.sort()).toEqual([
      'gate shut Gate1 | fit run 1',
      'gate shut Gate1 | gate open Gate1',
      'gate shut Gate1 | strip run 1',
      'patch run 1 | gate open Gate1',
      'strip run 1 | gate open Gate1',
    ]);
  });

  test('nobody is below where nobody is at the trough, and a gate that is only opened is not shut', () => {
    const pairs = (conveyor: typeof flat, ...some: readonly string[]): string[] => {
      const steps = some.map((each) => step(each));
      return precedenceOf(of(conveyor), steps, worldOf(of(conveyor))).apart.map(String);
    };
    expect(pairs(inlet, 'strip run 2', 'pause')).toEqual([]);
    expect(pairs(inlet, 'pause', 'strip run 2')).toEqual([]);
    expect(pairs(steep, 'gate open Gate1', 'strip run 2', 'clean run 1')).toContain('1,2');
    expect(pairs(steep, 'gate shut Gate1', 'strip run 2', 'clean run 1')).not.toContain('1,2');
  });

  test('with the sequence, a gate counts where it is shut for the pair', () => {
    const some = [
      'x: isolate',
      'g: gate shut Gate1 after x',
      'a: strip run 2 after g',
      'b: clean run 1 after g',
      'c: clean run 1 after x',
    ];
    const w = walked(of(steep), some);
    const pairs = apartPairs(of(steep), w.sequence.steps, w.ground, w.sequence);
    expect(pairs.map(String)).toContain('2,4');
    expect(pairs.map(String)).not.toContain('2,3');
  });
});

describe('changes of an order', () => {
  const steps = made('a: isolate', 's1: strip', 'b: clean after a, s1', 'fit by Alpha after b', 'covers on');
  const at = (i: number): Step => stepAt({ steps }, i);
  const texts = (...changes: readonly StepChange[]): string[] => changeSteps(steps, changes).map(stepText);
  const asWritten = steps.map(stepText);
  const fresh = step('patch');
  test.each<readonly [string, readonly StepChange[], readonly string[]]>([
    [
      'moved before',
      [{ change: 'move', step: at(4), place: 'before', other: at(1) }],
      ['a: isolate', 'covers on', 's1: strip', 'b: clean after a, s1', 'fit by Alpha after b'],
    ],
    [
      'moved after',
      [{ change: 'move', step: at(0), place: 'after', other: at(3) }],
      ['s1: strip', 'b: clean after a, s1', 'fit by Alpha after b', 'a: isolate', 'covers on'],
    ],
    ['moved to itself', [{ change: 'move', step: at(0), place: 'after', other: at(0) }], asWritten],
    [
      'moved to a step that is none',
      [{ change: 'move', step: at(0), place: 'after', other: fresh }],
      asWritten,
    ],
    [
      'a step that is none is moved',
      [{ change: 'move', step: fresh, place: 'after', other: at(0) }],
      asWritten,
    ],
    [
      'put in before',
      [{ change: 'insert', step: fresh, place: 'before', other: at(0) }],
      ['patch', ...asWritten],
    ],
    [
      'put in after',
      [{ change: 'insert', step: fresh, place: 'after', other: at(0) }],
      ['a: isolate', 'patch', ...asWritten.slice(1)],
    ],
    [
      'put in beside a step that is none',
      [{ change: 'insert', step: fresh, place: 'after', other: step('pause') }],
      asWritten,
    ],
    ['put at the end', [{ change: 'append', step: fresh }], [...asWritten, 'patch']],
    [
      'told to wait for a named step',
      [{ change: 'add after', step: at(3), after: at(0) }],
      [...asWritten.slice(0, 3), 'fit by Alpha after b, a', 'covers on'],
    ],
    ['told to wait for what it waits for', [{ change: 'add after', step: at(3), after: at(2) }], asWritten],
    [
      'told to wait for one without a name, which gets the next free one',
      [{ change: 'add after', step: at(2), after: at(4) }],
      ['a: isolate', 's1: strip', 'b: clean after a, s1, s2', 'fit by Alpha after b', 's2: covers on'],
    ],
    ['told to wait for a step that is none', [{ change: 'add after', step: at(2), after: fresh }], asWritten],
    ['a step that is none is told to wait', [{ change: 'add after', step: fresh, after: at(4) }], asWritten],
    [
      'not to wait any more',
      [{ change: 'drop after', step: at(2), name: 'a' }],
      [...asWritten.slice(0, 2), 'b: clean after s1', ...asWritten.slice(3)],
    ],
    [
      'left out: who waited for it waits for what it waited for',
      [{ change: 'remove', step: at(2) }],
      ['a: isolate', 's1: strip', 'fit by Alpha after a, s1', 'covers on'],
    ],
    [
      'left out, with nothing to wait for',
      [{ change: 'remove', step: at(0) }],
      ['s1: strip', 'b: clean after s1', 'fit by Alpha after b', 'covers on'],
    ],
    ['left out, without a name', [{ change: 'remove', step: at(4) }], asWritten.slice(0, 4)],
    ['a step that is none is left out', [{ change: 'remove', step: fresh }], asWritten],
    [
      'turned round',
      [{ change: 'set start', step: at(3), start: 'tail' }],
      [...asWritten.slice(0, 3), 'fit starting at tail by Alpha after b', 'covers on'],
    ],
    [
      'elsewhere',
      [{ change: 'set stretch', step: at(1), stretch: stretch('run 2') }],
      ['a: isolate', 's1: strip run 2', ...asWritten.slice(2)],
    ],
    [
      'by others',
      [{ change: 'set crews', step: at(3), crews: step('fit by Bravo').crews }],
      [...asWritten.slice(0, 3), 'fit by Bravo after b', 'covers on'],
    ],
    [
      'attended',
      [{ change: 'set attendants', step: at(4), attendants: step('fit by Bravo').crews }],
      [...asWritten.slice(0, 4), 'covers on attended by Bravo'],
    ],
    [
      'so many aboard',
      [{ change: 'set aboard', step: at(4), aboard: { count: 2, origin: at(4).origin } }],
      [...asWritten.slice(0, 4), 'covers on with 2 people'],
    ],
    [
      'for so long',
      [{ change: 'set takes', step: at(4), takes: stated('duration', 1, '1 h') }],
      [...asWritten.slice(0, 4), 'covers on takes 1 h'],
    ],
    [
      'cold',
      [{ change: 'set heat', step: at(1), heat: { kind: 'cold', origin: at(1).origin } }],
      ['a: isolate', 's1: strip cold work', ...asWritten.slice(2)],
    ],
    [
      'cut to fit',
      [{ change: 'cut to fit', step: at(3) }],
      [...asWritten.slice(0, 3), 'fit cut to fit by Alpha after b', 'covers on'],
    ],
    [
      'one change after the other',
      [
        { change: 'remove', step: at(1) },
        { change: 'insert', step: fresh, place: 'before', other: at(2) },
      ],
      ['a: isolate', 'patch', 'b: clean after a', 'fit by Alpha after b', 'covers on'],
    ],
  ])('%s', (_, changes, expected) => expect(texts(...changes)).toEqual(expected));

  test('the next free name', () => {
    expect([freshName([]), freshName(made('s1: strip', 's3: fit')), freshName(steps)]).toEqual([
      's1',
      's2',
      's2',
    ]);
  });

  test('who waited for a step left out waits only once for each', () => {
    const some = made('a: isolate', 'b: strip after a', 'c: clean after a, b');
    const second = stepAt({ steps: some }, 1);
    expect(changeSteps(some, [{ change: 'remove', step: second }]).map(stepText)).toEqual([
      'a: isolate',
      'c: clean after a',
    ]);
  });
});
