// Repairs as changes of the author's text: applied to the text and read again, the order can be built, and everything the
// repair has no business with is still there.

import { describe, expect, test } from 'vitest';
import type { Estate } from '../../../src/domain/model/estate.js';
import type { Job, Step } from '../../../src/domain/model/job.js';
import { checkOrder } from '../../../src/domain/order/check-order.js';
import { changeJob, changeSteps } from '../../../src/domain/order/change-steps.js';
import { editsOf } from '../../../src/domain/order/edits.js';
import type { StepChange } from '../../../src/domain/order/violation.js';
import { stepText } from '../../../src/domain/order/words.js';
import { assemble } from '../../../src/language/assemble.js';
import { lower } from '../../../src/language/lower.js';
import { parseText } from '../../../src/language/parse.js';

const machine = `plant Tarnholt {
  crew Alpha 4 people
  crew Bravo 3 people
}
liner TwoLayer12 {
  layer ivory 6 mm
  layer teal 6 mm
  panel length 1000 mm
  condemn at 3 mm
}
screw Spiral400 {
  shaftless
  outside diameter 400 mm
  pitch 350 mm
}
conveyor DG1 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  access Floor at 0 m to 12 m ground
  break Gate at 5.8 m to 6 m slide gate allowance 15 mm
  break Discharge at 11.5 m to 12 m discharge allowance 20 mm
}
`;
const jobText = (steps: string): string => `${machine}job J1 {
  conveyor DG1
  reline run above Gate
  crews Alpha, Bravo
  order {
${steps}
  }
}
`;

function read(text: string): { readonly job: Job; readonly estate: Estate } {
  const { estate, problems } = assemble([lower(parseText(text), 0, 'one.trough')]);
  expect(problems).toEqual([]);
  const job = estate.jobs[0];
  if (!job) throw new Error('no job');
  return { job, estate };
}

function apply(text: string, edits: ReturnType<typeof editsOf>): string {
  return [...edits]
    .sort((a, b) => b.origin.start - a.origin.start || b.origin.end - a.origin.end)
    .reduce((now, edit) => now.slice(0, edit.origin.start) + edit.text + now.slice(edit.origin.end), text);
}

const around = (...middle: string[]): string =>
  ['isolate', 'prove dead', ...middle, 'remove isolation', 'run empty', 'run loaded']
    .map((line) => `    ${line}`)
    .join('\n');

test.each([
  [
    'two fronts',
    around(
      'strip run 2',
      'clean run 2 // with the hose',
      'fit panels 1 to 3 of run 2 starting at tail by Alpha',
      'fit panels 4 to 6 of run 2 starting at head by Bravo takes 3.5 h "mind the flange"',
    ),
  ],
  ['cleaned before it is stripped', around('clean run 2', 'strip run 2', 'fit run 2 starting at head')],
  [
    'not isolated',
    ['strip run 2', 'clean run 2', 'fit run 2 starting at head', 'run empty', 'run loaded']
      .map((line) => `    ${line}`)
      .join('\n'),
  ],
  [
    'two that may swap',
    around(
      'a: strip run 2 by Alpha',
      'b: clean run 2 by Bravo',
      'fit run 2 starting at head by Alpha after a',
    ),
  ],
  [
    'no trial run',
    ['isolate', 'prove dead', 'strip run 2', 'clean run 2', 'fit run 2 starting at head', 'remove isolation']
      .map((line) => `    ${line}`)
      .join('\n'),
  ],
])('%s', (_, steps) => {
  const text = jobText(steps);
  const { job, estate } = read(text);
  const [first] = checkOrder(job, estate);
  const repair = first?.repairs[0];
  if (!repair) throw new Error('nothing to repair');
  const expected = checkOrder(changeJob(job, repair.changes), estate).map((each) => each.kind);
  const mended = apply(text, editsOf(job, repair.changes));
  const again = read(mended);
  expect(checkOrder(again.job, again.estate).map((each) => each.kind)).toEqual(expected);
  expect(expected).not.toContain(first?.kind);
  if (steps.includes('//')) expect(mended).toContain('// with the hose');
  if (steps.includes('mind the flange')) expect(mended).toContain('by Bravo takes 3.5 h "mind the flange"');
});

test('no change, no edit', () => {
  const { job } = read(jobText(around('strip run 2')));
  expect(editsOf(job, [])).toEqual([]);
});

describe('what stays is left alone, and only what changes is written', () => {
  const known = [
    'isolate',
    'strip panels 1 to 3 of run 2',
    'strip panels 4 to 6 of run 2',
    'clean run 2 by Alpha',
    'fit run 2 starting at head by Alpha',
  ];
  /** A step that the order does not have, from nowhere in its text unless told. */
  const fresh = (line: string, origin: Partial<Step['origin']> = {}): Step => {
    const [made] = read(jobText(`    ${line}`)).job.order?.steps ?? [];
    if (!made) throw new Error(line);
    return { ...made, origin: { source: 7, start: 0, end: 0, ...origin } };
  };
  type Change = (steps: (at: number) => Step) => readonly StepChange[];

  /** What is replaced by what (`(line) |` is a place behind it, `| (line)` one before it), and the steps of the text that comes out. */
  function changed(lines: readonly string[], change: Change): [readonly string[], readonly string[]] {
    const text = jobText(lines.map((line) => `    ${line}`).join('\n'));
    const { job } = read(text);
    const steps = job.order?.steps ?? [];
    const changes = change((at) => steps[at] ?? fresh('pause'));
    const edits = editsOf(job, changes);
    const place = ({ origin: { start, end } }: (typeof edits)[number]): string => {
      if (start < end) return text.slice(start, end);
      const before = steps.find(({ origin }) => origin.end === start);
      const after = steps.find(({ origin }) => origin.start === start);
      return before ? `(${stepText(before)}) |` : `| (${after ? stepText(after) : '?'})`;
    };
    const told = edits.map((edit) => `${place(edit)} => ${edit.text.trim().replace(/\s*\n\s*/g, ' / ')}`);
    const again = (read(apply(text, edits)).job.order?.steps ?? []).map(stepText);
    expect(again).toEqual(changeSteps(steps, changes).map(stepText));
    return [told, again];
  }

  test.each<[string, readonly string[], Change, readonly string[]]>([
    [
      'a step moved before its neighbour of the same kind: one of the two is taken out and put in behind the other',
      known,
      (step) => [{ change: 'move', step: step(2), place: 'before', other: step(1) }],
      [
        'strip panels 1 to 3 of run 2 => ',
        '(strip panels 4 to 6 of run 2) | => strip panels 1 to 3 of run 2',
      ],
    ],
    [
      'the first moved behind the last',
      known,
      (step) => [{ change: 'move', step: step(0), place: 'after', other: step(4) }],
      ['isolate => ', '(fit run 2 starting at head by Alpha) | => isolate'],
    ],
    [
      'the last moved before the first',
      known,
      (step) => [{ change: 'move', step: step(4), place: 'before', other: step(0) }],
      ['fit run 2 starting at head by Alpha => ', '| (isolate) => fit run 2 starting at head by Alpha'],
    ],
    [
      'one moved over two of which one is of its kind: it alone is touched',
      known,
      (step) => [{ change: 'move', step: step(1), place: 'after', other: step(3) }],
      ['strip panels 1 to 3 of run 2 => ', '(clean run 2 by Alpha) | => strip panels 1 to 3 of run 2'],
    ],
    [
      'one moved, and written anew on the way',
      known,
      (step) => [
        { change: 'move', step: step(0), place: 'after', other: step(2) },
        { change: 'set crews', step: step(0), crews: step(3).crews },
      ],
      ['isolate => ', '(strip panels 4 to 6 of run 2) | => isolate by Alpha'],
    ],
    [
      'a new one before the first',
      known,
      (step) => [{ change: 'insert', step: fresh('prove dead'), place: 'before', other: step(0) }],
      ['| (isolate) => prove dead'],
    ],
    [
      'two new ones before the first, in their order',
      known,
      (step) => [
        { change: 'insert', step: fresh('prove dead'), place: 'before', other: step(0) },
        { change: 'insert', step: fresh('pause'), place: 'before', other: step(0) },
      ],
      ['| (isolate) => prove dead / pause'],
    ],
    [
      'two new ones behind one step, in their order',
      known,
      (step) => [
        { change: 'insert', step: fresh('pause'), place: 'after', other: step(2) },
        { change: 'insert', step: fresh('prove dead'), place: 'after', other: step(2) },
      ],
      ['(strip panels 4 to 6 of run 2) | => prove dead / pause'],
    ],
    [
      'one before the first, one in the middle and one at the end are three places',
      known,
      (step) => [
        { change: 'append', step: fresh('run empty') },
        { change: 'insert', step: fresh('pause'), place: 'after', other: step(1) },
        { change: 'insert', step: fresh('prove dead'), place: 'before', other: step(0) },
      ],
      [
        '| (isolate) => prove dead',
        '(strip panels 1 to 3 of run 2) | => pause',
        '(fit run 2 starting at head by Alpha) | => run empty',
      ],
    ],
    [
      'a new one in place of the first stands before the next that stays',
      known,
      (step) => [
        { change: 'insert', step: fresh('prove dead'), place: 'after', other: step(0) },
        { change: 'remove', step: step(0) },
      ],
      ['isolate => ', '| (strip panels 1 to 3 of run 2) => prove dead'],
    ],
    [
      'two taken out side by side stay two edits',
      known,
      (step) => [
        { change: 'remove', step: step(1) },
        { change: 'remove', step: step(2) },
      ],
      ['strip panels 1 to 3 of run 2 => ', 'strip panels 4 to 6 of run 2 => '],
    ],
    [
      'all taken out',
      ['isolate', 'pause'],
      (step) => [
        { change: 'remove', step: step(0) },
        { change: 'remove', step: step(1) },
      ],
      ['isolate => ', 'pause => '],
    ],
    [
      'who waited for what is taken out waits for what that waited for',
      ['a: isolate', 'b: strip run 2 after a', 'clean run 2 after b'],
      (step) => [{ change: 'remove', step: step(1) }],
      ['b: strip run 2 after a => ', 'clean run 2 after b => clean run 2 after a'],
    ],
    [
      'a new step of the same kind is not taken for the one that is there, were it at the same place of another file',
      known,
      (step) => [
        {
          change: 'insert',
          step: fresh('clean run 1', { ...step(3).origin, source: 7 }),
          place: 'before',
          other: step(3),
        },
      ],
      ['(strip panels 4 to 6 of run 2) | => clean run 1'],
    ],
    [
      'nor one that begins where it begins, or ends where it ends',
      known,
      (step) => [
        {
          change: 'insert',
          step: fresh('clean run 1', { ...step(3).origin, end: 1 }),
          place: 'before',
          other: step(3),
        },
        {
          change: 'insert',
          step: fresh('strip run 1', { ...step(1).origin, start: 1 }),
          place: 'before',
          other: step(1),
        },
      ],
      ['(isolate) | => strip run 1', '(strip panels 4 to 6 of run 2) | => clean run 1'],
    ],
    [
      'nor one of another kind that a repair has put at its place',
      known,
      (step) => [
        { change: 'insert', step: fresh('prove dead', step(1).origin), place: 'before', other: step(1) },
      ],
      ['(isolate) | => prove dead'],
    ],
  ])('%s', (_, lines, change, expected) => {
    expect(changed(lines, change)[0]).toEqual(expected);
  });

  test('the fewest steps are touched: one of five moved to any place', () => {
    const order = ['isolate', 'strip run 2', 'strip run 1', 'clean run 1', 'clean run 2'];
    for (const from of [0, 1, 2, 3, 4])
      for (const to of [0, 1, 2, 3, 4]) {
        if (from === to) continue;
        const [told] = changed(order, (step) => [
          { change: 'move', step: step(from), place: from < to ? 'after' : 'before', other: step(to) },
        ]);
        // One taken out, one put in.
        expect(told).toHaveLength(2);
      }
  });

  test('a job without an order has nothing to edit', () => {
    const { job } = read(jobText('    isolate'));
    const { order: _, ...bare } = job;
    expect(editsOf(bare, [{ change: 'append', step: fresh('isolate') }])).toEqual([]);
  });

  test('where no step stays, the new ones stand where the first stood', () => {
    const anew = (step: (at: number) => Step, all: number): readonly StepChange[] => [
      { change: 'append', step: fresh('isolate') },
      { change: 'append', step: fresh('prove dead') },
      ...Array.from({ length: all }, (_, k) => ({ change: 'remove' as const, step: step(k) })),
    ];
    expect(changed(['pause', 'strip run 2', 'fit run 2'], (step) => anew(step, 3))).toEqual([
      ['pause => isolate / prove dead', 'strip run 2 => ', 'fit run 2 => '],
      ['isolate', 'prove dead'],
    ]);
    // All of them moved is another matter: one stays.
    expect(changed(['pause'], (step) => anew(step, 1))[1]).toEqual(['isolate', 'prove dead']);
    const braces = jobText('');
    const { job } = read(braces);
    const mended = apply(
      braces,
      editsOf(
        job,
        anew(() => fresh('pause'), 0),
      ),
    );
    expect((read(mended).job.order?.steps ?? []).map(stepText)).toEqual(['isolate', 'prove dead']);
  });
});

describe('a comment behind a step', () => {
  const lines = [
    'isolate // by the electrician',
    'clean run 2',
    'strip run 2  // any end',
    'fit run 2 // the new liner',
  ];
  const after = (change: (steps: readonly Step[]) => readonly StepChange[]): readonly string[] => {
    const text = jobText(lines.map((line) => `    ${line}`).join('\n'));
    const { job } = read(text);
    const mended = apply(text, editsOf(job, change(job.order?.steps ?? [])));
    const body = mended.slice(mended.indexOf('order {') + 'order {'.length, mended.lastIndexOf('}\n}'));
    return body.split('\n').flatMap((line) => line.trim() || []);
  };
  const step = (line: string): Step => {
    const [made] = read(jobText(`    ${line}`)).job.order?.steps ?? [];
    if (!made) throw new Error(line);
    return { ...made, origin: { source: 7, start: 0, end: 0 } };
  };
  const at = (steps: readonly Step[], i: number): Step => steps[i] ?? step('pause');

  test('stays behind it when a step is put in after it', () => {
    expect(
      after((s) => [{ change: 'insert', step: step('prove dead'), place: 'after', other: at(s, 0) }]),
    ).toEqual(['isolate // by the electrician', 'prove dead', ...lines.slice(1)]);
  });
  test('goes where the step goes', () => {
    expect(after((s) => [{ change: 'move', step: at(s, 2), place: 'before', other: at(s, 1) }])).toEqual([
      'isolate // by the electrician',
      'strip run 2  // any end',
      'clean run 2',
      'fit run 2 // the new liner',
    ]);
    expect(after((s) => [{ change: 'move', step: at(s, 0), place: 'after', other: at(s, 3) }])).toEqual([
      'clean run 2',
      'strip run 2  // any end',
      'fit run 2 // the new liner',
      'isolate // by the electrician',
    ]);
    expect(after((s) => [{ change: 'move', step: at(s, 3), place: 'before', other: at(s, 0) }])).toEqual([
      'fit run 2 // the new liner',
      'isolate // by the electrician',
      'clean run 2',
      'strip run 2  // any end',
    ]);
  });
  test('is left to be read where the step is left out, and where it is written anew', () => {
    expect(after((s) => [{ change: 'remove', step: at(s, 2) }])).toEqual([
      'isolate // by the electrician',
      'clean run 2',
      '// any end',
      'fit run 2 // the new liner',
    ]);
    expect(after((s) => [{ change: 'set start', step: at(s, 3), start: 'head' }]).at(-1)).toBe(
      'fit run 2 starting at head // the new liner',
    );
  });
});
