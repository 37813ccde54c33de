// What slides onto whom, as plain lengths of trough; gates that stand between; and pairs of steps that are open to one another.

import { describe, expect, test } from 'vitest';
import type { BreakKind, Conveyor } from '../../../src/domain/model/conveyor.js';
import type { Job } from '../../../src/domain/model/job.js';
import type { Area } from '../../../src/domain/order/ground.js';
import {
  crewsOf,
  fallingPairs,
  fallsOnto,
  isShutFor,
  sharedPairs,
  unsettledPairs,
} from '../../../src/domain/order/side-by-side.js';
import { sequenceOf } from '../../../src/domain/order/sequence.js';
import { stated } from '../../kit/estate.js';
import { cover, crew, job, line, platform, step, walked } from './stories.js';

const area = (from: number, to: number): Area => ({ from, to });

describe('from the upper stretch onto the lower one', () => {
  // Runs of 2 m at 0, 2.2 and 4.4 m; what stands at 2 m and at 4.2 m is as the line says.
  const three = (incline: number, first: BreakKind, second: BreakKind): Conveyor => {
    const all = line([2, 2, 2], [10, 10, 10, 10], { incline: stated('angle', incline) });
    const kinds: Readonly<Record<string, BreakKind>> = { Gate1: first, Gate2: second };
    const breaks = all.breaks.map((each) => ({ ...each, kind: kinds[each.name] ?? each.kind }));
    return { ...all, breaks: [...breaks].reverse() };
  };
  const open = three(20, 'inlet', 'inlet');
  const gates = three(20, 'slide gate', 'slide gate');
  test.each<
    readonly [string, Conveyor, readonly Area[], readonly Area[], readonly string[], object | undefined]
  >([
    ['all the way down', open, [area(4400, 6400)], [area(0, 2000)], [], { from: 6400, below: 0, gates: [] }],
    ['not upward', open, [area(0, 2000)], [area(4400, 6400)], [], undefined],
    ['not beside', open, [area(2000, 4000)], [area(4000, 5000)], [], undefined],
    [
      'within the stretch itself',
      open,
      [area(0, 2000)],
      [area(0, 2000)],
      [],
      { from: 2000, below: 0, gates: [] },
    ],
    [
      'the highest of several onto the lowest of several',
      open,
      [area(4400, 5000), area(5400, 6400)],
      [area(2200, 3000), area(400, 900)],
      [],
      { from: 6400, below: 400, gates: [] },
    ],
    [
      'a place without length is above',
      open,
      [area(6400, 6400)],
      [area(0, 2000)],
      [],
      { from: 6400, below: 0, gates: [] },
    ],
    ['and below', open, [area(0, 2000)], [area(0, 0)], [], { from: 2000, below: 0, gates: [] }],
    [
      'a plate between stops it',
      three(20, 'end plate', 'inlet'),
      [area(4400, 6400)],
      [area(0, 2000)],
      [],
      undefined,
    ],
    [
      'a plate further up does not',
      three(20, 'inlet', 'end plate'),
      [area(2200, 4000)],
      [area(0, 2000)],
      [],
      { from: 4000, below: 0, gates: [] },
    ],
    [
      'over a plate, the part below it still falls',
      three(20, 'inlet', 'end plate'),
      [area(2200, 6400)],
      [area(0, 2000)],
      [],
      { from: 4300, below: 0, gates: [] },
    ],
    ['a shut gate stops it', gates, [area(2200, 4000)], [area(0, 2000)], ['Gate1'], undefined],
    [
      'another gate does not',
      gates,
      [area(2200, 4000)],
      [area(0, 2000)],
      ['Gate2'],
      { from: 4000, below: 0, gates: ['Gate1'] },
    ],
    [
      'open gates between are named',
      gates,
      [area(4400, 6400)],
      [area(0, 2000)],
      [],
      { from: 6400, below: 0, gates: ['Gate2', 'Gate1'] },
    ],
    [
      'those beside are not',
      gates,
      [area(4400, 6400)],
      [area(2200, 4000)],
      [],
      { from: 6400, below: 2200, gates: ['Gate2'] },
    ],
    [
      'a gate within a stretch stops nothing',
      gates,
      [area(1000, 4000)],
      [area(0, 1500)],
      [],
      { from: 4000, below: 0, gates: [] },
    ],
    [
      'a falling conveyor: towards the head',
      three(-20, 'inlet', 'inlet'),
      [area(0, 2000)],
      [area(4400, 6400)],
      [],
      { from: 0, below: 6400, gates: [] },
    ],
    [
      'a falling conveyor: not towards the tail',
      three(-20, 'inlet', 'inlet'),
      [area(4400, 6400)],
      [area(0, 2000)],
      [],
      undefined,
    ],
    [
      'a falling conveyor: gates between',
      three(-20, 'slide gate', 'slide gate'),
      [area(0, 2000)],
      [area(2200, 4000)],
      [],
      { from: 0, below: 4000, gates: ['Gate1'] },
    ],
    ['nobody there', open, [area(4400, 6400)], [], [], undefined],
    ['nothing loose', open, [], [area(0, 2000)], [], undefined],
  ])('%s', (_, conveyor, upper, lower, shut, expected) => {
    expect(fallsOnto(conveyor, upper, lower, (gate) => shut.includes(gate))).toEqual(expected);
  });
});

describe('a gate stands shut for two steps', () => {
  const shut = (...lines: readonly string[]): boolean =>
    isShutFor(sequenceOf(lines.map((each) => step(each))), 'G', 1, 2);
  test.each<readonly [string, readonly string[], boolean]>([
    ['shut before both', ['g: gate shut G', 'strip after g', 'clean after g'], true],
    [
      'shut before both, through others',
      ['g: gate shut G', 'strip after g', 'clean after x', 'x: empty after y', 'y: empty after g'],
      true,
    ],
    ['beside one of them', ['a: empty', 'strip after g', 'clean after a', 'g: gate shut G after a'], false],
    ['beside the other', ['a: empty', 'strip after a', 'clean after g', 'g: gate shut G after a'], false],
    ['another gate', ['g: gate shut H', 'strip after g', 'clean after g'], false],
    ['opened only', ['g: gate open G', 'strip after g', 'clean after g'], false],
    [
      'opened after both',
      ['g: gate shut G', 's: strip after g', 'k: clean after g', 'gate open G after s, k'],
      true,
    ],
    [
      'opened after one',
      ['g: gate shut G', 's: strip after g', 'k: clean after g', 'gate open G after s'],
      false,
    ],
    [
      'opened after the other',
      ['g: gate shut G', 's: strip after g', 'k: clean after g', 'gate open G after k'],
      false,
    ],
    [
      'stripped meanwhile',
      ['g: gate shut G', 's: strip after g', 'k: clean after g', 'gate off G after g'],
      false,
    ],
    [
      'refitted meanwhile',
      ['g: gate shut G', 's: strip after g', 'k: clean after g', 'gate on G after g'],
      true,
    ],
    [
      'another opened meanwhile',
      ['g: gate shut G', 's: strip after g', 'k: clean after g', 'gate open H after g'],
      true,
    ],
    [
      'shut twice, the second time for good',
      [
        'f: gate shut G',
        's: strip after g',
        'k: clean after g',
        'o: gate open G after f',
        'g: gate shut G after o',
      ],
      true,
    ],
  ])('%s: %#', (_, lines, expected) => expect(shut(...lines)).toBe(expected));
});

test('whose step it is', () => {
  const of = (names: readonly string[]): Job =>
    job(line([1], [0, 0]), [], { crews: names.map((name) => crew(name)) });
  const on = (names: readonly string[], text: string) => crewsOf(walked(of(names), []), step(text));
  expect([
    on([], 'strip'),
    on(['A'], 'strip'),
    on(['A', 'B'], 'strip'),
    on(['A', 'B'], 'strip by B'),
    on(['A'], 'strip by A, C'),
  ]).toEqual([[''], ['A'], undefined, ['B'], ['A', 'C']]);
});

describe('pairs', () => {
  const made = line([2, 2], [10, 10, 10], { covers: [cover(0, 2100), cover(2100, 4200)] });
  const inlet: Conveyor = {
    ...made,
    incline: stated('angle', 20),
    breaks: made.breaks.map((each) => (each.name === 'Gate1' ? { ...each, kind: 'inlet' } : each)),
  };
  const facts = { crews: [crew('A'), crew('B'), crew('C')], accessUnits: [platform('MP1')] };
  const of = job(inlet, ['all'], facts);
  const start = ['isolate by A', 'd: prove dead by A'];
  const loose = [
    ...start,
    'a: covers off run 2 by A after d',
    'b: clean run 1 by B after d',
    'c: clean run 1 by C after d',
    'x: covers off run 2 by A after d',
  ];
  const pairs = (found: readonly { readonly step: number; readonly other: number }[]): string[] =>
    found.map(({ step: at, other }) => `${other} ${at}`);

  test('falling: each once, the later written second', () => {
    expect(pairs(fallingPairs(walked(of, loose)))).toEqual(['2 3', '2 4', '3 5', '4 5']);
    expect(fallingPairs(walked(of, loose)).map(({ above }) => above)).toEqual([2, 2, 5, 5]);
  });
  test('no more than asked for', () => {
    expect(pairs(fallingPairs(walked(of, loose), 2))).toEqual(['2 3', '2 4']);
    expect(
      pairs(
        sharedPairs(
          walked(of, [...start, 'covers off by B after d', 'braces off by B after d', 'clean by B after d']),
          1,
        ),
      ),
    ).toEqual(['2 3']);
  });
  test('on the level nothing falls', () => {
    expect(
      fallingPairs(walked(job({ ...inlet, incline: stated('angle', 0) }, ['all'], facts), loose)),
    ).toEqual([]);
  });
  test('one crew is not below itself, and one of two crews on both is enough', () => {
    const falls = (a: string, b: string): number =>
      fallingPairs(walked(of, [...start, `covers off run 2${a} after d`, `clean run 1${b} after d`])).length;
    expect([
      falls(' by A', ' by A'),
      falls(' by A', ' by B'),
      falls(' by A, C', ' by B, C'),
      falls('', ''),
      falls('', ' by B'),
    ]).toEqual([0, 1, 0, 1, 1]);
  });
  test('shared: crews, platforms, those who stand by, and how often', () => {
    const shared = (...lines: readonly string[]): string[] =>
      sharedPairs(walked(of, [...start, ...lines])).map(
        ({ step: at, other, what, name }) => `${other} ${at} ${what} ${name}`,
      );
    expect(shared('covers off by A using MP1 after d', 'clean by A using MP1 after d')).toEqual([
      '2 3 crew A',
      '2 3 access unit MP1',
    ]);
    expect(shared('covers off by A, B after d', 'clean by B, C after d')).toEqual(['2 3 crew B']);
    expect(shared('covers off by A attended by C after d', 'clean by B attended by C after d')).toEqual([
      '2 3 crew C',
    ]);
    expect(shared('covers off after d', 'clean after d')).toEqual([]);
  });
  test('unsettled: in the order of the later step, then of the earlier', () => {
    const lines = [
      ...start,
      'a: covers off run 1 by A after d',
      'b: covers off run 2 by B after d',
      'k: strip run 2 by C after d',
      'm: strip run 1 by A after d',
      'n: strip all by B after d',
    ];
    expect(pairs(unsettledPairs(walked(job(made, ['all'], facts), lines)))).toEqual([
      '3 4',
      '2 5',
      '2 6',
      '3 6',
    ]);
  });
  test('a step that finds it done could be the one that does it', () => {
    const tests = ['isolate', 'prove dead', 'gas test all', 'gas test all', 'covers off all'];
    const air = job({ ...made, confinedSpace: true }, ['all']);
    const w = walked(air, tests);
    const unordered = { ...w, sequence: { ...w.sequence, before: () => false } };
    const found = unsettledPairs(unordered).filter(({ touches }) =>
      touches.some(({ piece }) => w.ground.pieces[piece]?.kind === 'air'),
    );
    expect(pairs(found)).toEqual(['2 4', '3 4']);
  });
  test('what another step is sure to bring is not left open', () => {
    const lines = [
      ...start,
      'g: gas test all by A after d',
      'h: gas test all by B after d',
      'c: covers off all by A after g',
      'e: covers off all by B after d',
    ];
    const air = job({ ...made, confinedSpace: true }, ['all'], facts);
    expect(pairs(unsettledPairs(walked(air, lines)))).toEqual(['2 5', '3 5']);
  });
});
