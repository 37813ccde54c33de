// Panels of a run as they go in, one by one: what is told of each, how many panels add up, and at which place.

import { describe, expect, test } from 'vitest';
import type { Job } from '../../../src/domain/model/job.js';
import { gap, mm, stated } from '../../kit/estate.js';
import { crew, job, line, walked } from './stories.js';

const four = line([4], [20, 20]);
const plain = job(four, ['all']);
const ready = ['isolate', 'prove dead', 'strip run 1', 'clean run 1'];

/** Each slip as `kind: step: panels (others)`, and how many panels add up to how much. */
function told(of: Job, lines: readonly string[]): string[] {
  return walked(of, lines).slips.map(
    ({ kind, grade, step, pieces, others, closing }) =>
      `${kind}, ${grade}: ${lines[step ?? -1]}: ${pieces.map(({ panel }) => panel).join(' ')}` +
      [...others].map(([i, role]) => `; ${role} ${lines[i]}`).join('') +
      (closing
        ? ` | panel ${closing.panel} of ${closing.panels} panels, ${closing.worst} mm at ${closing.breakName ?? 'no break'}`
        : ''),
  );
}
const fits = (...lines: readonly string[]): string[] => told(plain, [...ready, ...lines]);

describe('a front', () => {
  test.each<readonly [string, readonly string[], readonly string[]]>([
    ['from the tail', ['fit run 1 starting at tail'], []],
    ['from the head', ['fit run 1 starting at head'], []],
    [
      'by hand, panel by panel',
      [
        'fit panel 1 of run 1 starting at tail',
        'fit panels 2 to 3 of run 1 starting at tail',
        'fit panel 4 of run 1 starting at tail',
      ],
      [],
    ],
    [
      'with a hole behind it',
      ['fit panels 3 to 4 of run 1 starting at tail'],
      [
        'not contiguous, cannot be built: fit panels 3 to 4 of run 1 starting at tail: 2; made it so clean run 1',
      ],
    ],
    [
      'with a hole behind it that is filled later',
      [
        'fit panels 3 to 4 of run 1 starting at tail',
        'fit panel 2 of run 1 starting at tail',
        'fit panel 1 of run 1 starting at tail',
      ],
      [
        'not contiguous, cannot be built: fit panels 3 to 4 of run 1 starting at tail: 2; comes too late fit panel 2 of run 1 starting at tail',
        'closes inside the run, cannot be built: fit panel 1 of run 1 starting at tail: 1; made it so fit panel 2 of run 1 starting at tail | panel 1 of 1 panels, 3 mm at no break',
      ],
    ],
    [
      'done twice, panel by panel',
      ['fit panels 1 to 2 of run 1 starting at tail', 'fit run 1 starting at tail'],
      [
        'done twice, incomplete: fit run 1 starting at tail: 1 2; made it so fit panels 1 to 2 of run 1 starting at tail',
      ],
    ],
    [
      'met by another at the last panel',
      ['fit panels 1 to 3 of run 1 starting at tail', 'fit panel 4 of run 1 starting at head'],
      [
        'two fronts, cannot be built: fit panel 4 of run 1 starting at head: 4; other front fit panels 1 to 3 of run 1 starting at tail | panel 4 of 4 panels, 6 mm at no break',
      ],
    ],
    [
      'met by another across a hole',
      ['fit panel 1 of run 1 starting at tail', 'fit panel 4 of run 1 starting at head'],
      [
        'two fronts, cannot be built: fit panel 4 of run 1 starting at head: 2 4; other front fit panel 1 of run 1 starting at tail | panel 2 of 4 panels, 6 mm at no break',
      ],
    ],
    [
      'met from the other side',
      ['fit panels 3 to 4 of run 1 starting at head', 'fit panel 1 of run 1 starting at tail'],
      [
        'two fronts, cannot be built: fit panel 1 of run 1 starting at tail: 2 1; other front fit panels 3 to 4 of run 1 starting at head | panel 2 of 4 panels, 6 mm at no break',
      ],
    ],
    [
      'met by two panels at once',
      ['fit panel 4 of run 1 starting at head', 'fit panels 1 to 2 of run 1 starting at tail'],
      [
        'two fronts, cannot be built: fit panels 1 to 2 of run 1 starting at tail: 3 1 2; other front fit panel 4 of run 1 starting at head | panel 3 of 4 panels, 6 mm at no break',
      ],
    ],
    [
      'over all that the other end has fitted',
      ['fit run 1 starting at tail', 'fit run 1 starting at head'],
      [
        'two fronts, cannot be built: fit run 1 starting at head: 4 1 2 3; other front fit run 1 starting at tail | panel 4 of 4 panels, 6 mm at no break',
      ],
    ],
    [
      'met several times: told once',
      [
        'fit panel 1 of run 1 starting at tail',
        'fit panel 4 of run 1 starting at head',
        'fit panel 3 of run 1 starting at head',
        'fit panel 2 of run 1 starting at head',
      ],
      [
        'two fronts, cannot be built: fit panel 4 of run 1 starting at head: 2 4; other front fit panel 1 of run 1 starting at tail | panel 2 of 4 panels, 6 mm at no break',
      ],
    ],
    [
      'turned round half-way',
      ['fit panels 1 to 2 of run 1 starting at tail', 'fit panels 3 to 4 of run 1 starting at head'],
      [
        'two fronts, cannot be built: fit panels 3 to 4 of run 1 starting at head: 3 4; other front fit panels 1 to 2 of run 1 starting at tail | panel 3 of 4 panels, 6 mm at no break',
      ],
    ],
    [
      'over panels that were met already',
      ['fit panel 1 of run 1 starting at tail', 'fit run 1 starting at head'],
      [
        'two fronts, cannot be built: fit run 1 starting at head: 2 1 3 4; other front fit panel 1 of run 1 starting at tail | panel 2 of 4 panels, 6 mm at no break',
      ],
    ],
  ])('%s', (_, lines, expected) => expect(fits(...lines)).toEqual(expected));

  test('two runs have a front each', () => {
    const of = job(line([2, 2], [20, 20, 20]), ['all']);
    const lines = [
      'isolate',
      'prove dead',
      'strip all',
      'clean all',
      'fit run 1 starting at tail',
      'fit run 2 starting at head',
    ];
    expect(told(of, lines)).toEqual([]);
    const both = [
      ...lines.slice(0, 4),
      'fit panel 1 of run 1 starting at tail',
      'fit panel 2 of run 1 starting at head',
      'fit panel 1 of run 2 starting at tail',
      'fit panel 2 of run 2 starting at head',
    ];
    expect(told(of, both).map((each) => each.split(' |')[0])).toEqual([
      'two fronts, cannot be built: fit panel 2 of run 1 starting at head: 2; other front fit panel 1 of run 1 starting at tail',
      'two fronts, cannot be built: fit panel 2 of run 2 starting at head: 2; other front fit panel 1 of run 2 starting at tail',
    ]);
  });
});

describe('the seat of a panel', () => {
  test.each<readonly [string, readonly string[], readonly string[]]>([
    [
      'the old liner is in',
      ['isolate', 'prove dead', 'fit run 1 starting at tail'],
      ['liner not stripped, cannot be built: fit run 1 starting at tail: 1 2 3 4'],
    ],
    [
      'stripped and not cleaned',
      ['isolate', 'prove dead', 'strip run 1', 'fit run 1 starting at tail'],
      ['trough not cleaned, incomplete: fit run 1 starting at tail: 1 2 3 4; made it so strip run 1'],
    ],
    [
      'some of each',
      [
        'isolate',
        'prove dead',
        'strip panels 1 to 2 of run 1',
        'clean panel 1 of run 1',
        'fit run 1 starting at tail',
      ],
      [
        'trough not cleaned, incomplete: fit run 1 starting at tail: 2; made it so strip panels 1 to 2 of run 1',
        'liner not stripped, cannot be built: fit run 1 starting at tail: 3 4',
      ],
    ],
    [
      'next to a panel that stays, told at the panel that has no room',
      [
        'isolate',
        'prove dead',
        'strip panels 1 to 2 of run 1',
        'clean panels 1 to 2 of run 1',
        'fit panels 1 to 2 of run 1 starting at tail',
      ],
      [
        'closes inside the run, cannot be built: fit panels 1 to 2 of run 1 starting at tail: 2 | panel 2 of 2 panels, 4 mm at no break',
      ],
    ],
    [
      'between panels that stay, with a piece cut to the gap as measured',
      [
        'isolate',
        'prove dead',
        'strip panels 1 to 2 of run 1',
        'clean panels 1 to 2 of run 1',
        'fit panels 1 to 2 of run 1 starting at tail cut to fit',
      ],
      [],
    ],
    [
      'next to a panel that is stripped later',
      [
        'isolate',
        'prove dead',
        'strip panels 1 to 2 of run 1',
        'clean panels 1 to 2 of run 1',
        'fit panels 1 to 2 of run 1 starting at tail',
        'strip panel 4 of run 1',
        'clean run 1',
        'strip panel 3 of run 1',
        'strip run 1',
      ],
      [
        'closes inside the run, cannot be built: fit panels 1 to 2 of run 1 starting at tail: 2; comes too late strip panel 3 of run 1 | panel 2 of 2 panels, 4 mm at no break',
      ],
    ],
    [
      'next to panels that stay, from the middle to a break',
      [
        'isolate',
        'prove dead',
        'strip panels 3 to 4 of run 1',
        'clean panels 3 to 4 of run 1',
        'fit panels 3 to 4 of run 1 starting at tail',
      ],
      [],
    ],
  ])('%s', (_, lines, expected) => {
    const found = told(plain, lines).filter((each) =>
      /not stripped|not cleaned|closes inside|two fronts|contiguous/.test(each),
    );
    expect(found.filter((each) => each.includes(': fit'))).toEqual(expected);
  });
});

describe('the closing panel', () => {
  const closes = (
    allowances: readonly number[],
    text: string,
    relines: readonly string[] = ['all'],
  ): string[] =>
    told(job(line([4], allowances), relines), [
      ...ready.map((each) => (relines[0] === 'all' ? each : each.replace('run 1', relines[0] ?? ''))),
      text,
    ]);
  test.each<readonly [string, readonly number[], string, readonly string[]]>([
    ['just fits', [0, 6], 'fit run 1 starting at tail', []],
    [
      'is a tenth too far out',
      [0, 5.9],
      'fit run 1 starting at tail',
      [
        'closing error too large, cannot be built: fit run 1 starting at tail: 4 | panel 4 of 4 panels, 6 mm at Head',
      ],
    ],
    [
      'from the other end',
      [5.9, 0],
      'fit run 1 starting at head',
      [
        'closing error too large, cannot be built: fit run 1 starting at head: 1 | panel 1 of 4 panels, 6 mm at Tail',
      ],
    ],
    ['is cut to fit', [0, 0], 'fit run 1 starting at tail cut to fit', []],
  ])('%s', (_, allowances, text, expected) => expect(closes(allowances, text)).toEqual(expected));

  test('adds up only what this front fitted, behind panels that stay', () => {
    expect(
      closes([0, 3.9], 'fit panels 3 to 4 of run 1 starting at tail', ['panels 3 to 4 of run 1']),
    ).toEqual([
      'closing error too large, cannot be built: fit panels 3 to 4 of run 1 starting at tail: 4 | panel 4 of 2 panels, 4 mm at Head',
    ]);
  });
  test('adds up over several steps of one front', () => {
    const lines = [
      ...ready,
      'fit panel 1 of run 1 starting at tail',
      'fit panels 2 to 3 of run 1 starting at tail',
      'fit panel 4 of run 1 starting at tail',
    ];
    expect(told(job(line([4], [0, 5]), ['all']), lines)).toEqual([
      'closing error too large, cannot be built: fit panel 4 of run 1 starting at tail: 4 | panel 4 of 4 panels, 6 mm at Head',
    ]);
  });
});

test('panels that would slide are one complaint a run', () => {
  const steep = line([2, 2], [20, 20, 20], { incline: stated('angle', 20) });
  const inlets = {
    ...steep,
    breaks: steep.breaks.map((each) => gap(each.name, 'inlet', each.from.value, each.to.value, 20)),
  };
  const lines = ['isolate', 'prove dead', 'strip all', 'clean all', 'fit all starting at tail'];
  expect(told(job(inlets, ['all']), lines)).toEqual([
    'panel would slide, unsafe: fit all starting at tail: 1',
    'panel would slide, unsafe: fit all starting at tail: 1',
  ]);
});

test('two crews in one run, from both ends at once', () => {
  const of = job(four, ['all'], { crews: [crew('Alpha'), crew('Bravo')], measuringTolerance: mm(0) });
  const lines = [
    'isolate',
    'prove dead',
    'strip run 1',
    's: clean run 1',
    'fit panels 1 to 2 of run 1 starting at tail by Alpha after s',
    'fit panels 3 to 4 of run 1 starting at head by Bravo after s',
  ];
  expect(told(of, lines)).toEqual([
    'two fronts, cannot be built: fit panels 3 to 4 of run 1 starting at head by Bravo after s: 3 4; other front fit panels 1 to 2 of run 1 starting at tail by Alpha after s | panel 3 of 4 panels, 4 mm at no break',
  ]);
});
