// What each step asks for before it may be done and what it leaves behind, as a table: the order between the kinds of work.
// A line of needs: which pieces, the states they may be in, what is told otherwise, and with which grade.

import { describe, expect, test } from 'vitest';
import { stepActions, type Job, type StepAction } from '../../../src/domain/model/job.js';
import { demandsOf } from '../../../src/domain/order/demands.js';
import { atTheMachine } from '../../../src/domain/order/side-by-side.js';
import type { Need } from '../../../src/domain/order/demands/demand.js';
import type { Piece, PieceKind } from '../../../src/domain/order/ground.js';
import { origin, screw, stated } from '../../kit/estate.js';
import { brace, cover, holdDown, job, line, step, walked } from './stories.js';

const stateNames: Readonly<Record<PieceKind, readonly string[]>> = {
  isolation: ['live', 'isolated', 'proved dead'],
  running: ['not run', 'run empty', 'run loaded'],
  restraint: ['free', 'restrained'],
  drive: ['bolted', 'unbolted'],
  air: ['untested', 'tested'],
  heat: ['cool', 'hot'],
  litter: ['tidy', 'littered'],
  content: ['laden', 'emptied'],
  gate: ['open', 'shut', 'off'],
  screw: ['old', 'out', 'new', 'laid'],
  cover: ['on', 'off'],
  brace: ['on', 'off'],
  'hold-down': ['on', 'off'],
  panel: ['old', 'stripped', 'cleaned', 'new'],
};

const conveyor = line([2, 2], [10, 10, 10], {
  incline: stated('angle', 20),
  confinedSpace: true,
  covers: [cover(0, 2100), cover(2100, 4200)],
  braces: [brace(500), brace(3000)],
  holdDowns: [holdDown(1000), holdDown(3500)],
});
const welded: Job = job(conveyor, ['all'], { screwChange: { screw: screw(), origin: origin() } });
/** Steps that make the ground what it is: pieces of spiral joined by steps of their own, and a step that clears up. */
const always = ['join screw', 'clear up'];

const names = (piece: Piece, bits: number): string =>
  stateNames[piece.kind].filter((_, state) => (bits >> state) & 1).join(' or ');

function lineOf(need: Need): string {
  const { piece, kind, grade, good } = need;
  return [
    `${piece.kind} ${names(piece, need.allowed)}, else "${kind}" (${grade}), goes on as ${stateNames[piece.kind][good]}`,
    ...(need.onlyIfLater ? ['only if later'] : []),
    ...(need.orMissing ? ['or missing'] : []),
    ...(need.keep ? ['is itself out of turn'] : []),
    ...(need.stays ? ['stays'] : []),
  ].join('; ');
}

/** Equal lines in a row are counted. */
function counted(lines: readonly string[]): string[] {
  const found: { text: string; count: number }[] = [];
  for (const text of lines) {
    const last = found.at(-1);
    if (last?.text === text) last.count += 1;
    else found.push({ text, count: 1 });
  }
  return found.map(({ text, count }) => `${count} × ${text}`);
}

function table(of: Job, text: string, more: readonly string[] = always): readonly string[] {
  const w = walked(of, [text, ...more]);
  const { needs, effects, done } = demandsOf(w.ground, step(text, of), w.ground.areas[0] ?? []);
  const [about] = done.pieces;
  return [
    ...counted(needs.map(lineOf)),
    ...counted(effects.map(({ piece, to }) => `makes ${piece.kind} ${stateNames[piece.kind][to]}`)),
    ...(about
      ? [`done where ${done.by} of ${done.pieces.length} ${about.kind}: ${names(about, done.states)}`]
      : []),
  ];
}

const dead = '1 × isolation proved dead, else "isolation missing" (unsafe), goes on as proved dead';
const aired = '1 × air tested, else "gas test missing" (unsafe), goes on as tested';
const safe = [dead, aired];
const coversOff = '2 × cover off, else "not opened up" (cannot be built), goes on as off';
const opened = [
  ...safe,
  coversOff,
  '2 × brace off, else "not opened up" (cannot be built), goes on as off',
  '2 × hold-down off, else "not opened up" (cannot be built), goes on as off',
];
const watched = '1 × heat cool, else "fire watch missing" (unsafe), goes on as cool';
const held = '1 × restraint restrained, else "screw not restrained" (unsafe), goes on as restrained';
const noFire =
  '4 × panel stripped or cleaned, else "hot work over liner" (unsafe), goes on as cleaned; stays';
const lined = (panels: number, kind = 'closed up too early'): string =>
  `${panels} × panel old or new, else "${kind}" (cannot be built), goes on as new; only if later`;
const joined = (kind = 'closed up too early'): string =>
  `1 × screw old or new, else "${kind}" (cannot be built), goes on as new; only if later`;
const whole = (kind: string): string[] =>
  [
    '2 × cover on, else "K" (unsafe), goes on as on; only if later; or missing',
    '2 × brace on, else "K" (unsafe), goes on as on; only if later; or missing',
    '2 × hold-down on, else "K" (unsafe), goes on as on; only if later; or missing',
    '4 × panel old or new, else "K" (unsafe), goes on as new; only if later; or missing',
    '1 × screw old or new, else "K" (unsafe), goes on as new; only if later; or missing',
    '1 × drive bolted, else "K" (unsafe), goes on as bolted; only if later; or missing',
    '1 × restraint free, else "screw still restrained" (unsafe), goes on as free; only if later; or missing',
    '1 × gate open, else "K" (unsafe), goes on as open; only if later; or missing',
  ].map((each) => each.replace('K', kind));
const powered =
  '1 × isolation live, else "run too early" (unsafe), goes on as live; only if later; or missing';
const heldBack = '1 × gate shut, else "gate above open" (unsafe), goes on as shut';
const litters = '1 × makes litter littered';
const gate = (found: string, good: string): string =>
  `1 × gate ${found}, else "gate out of turn" (cannot be built), goes on as ${good}; is itself out of turn`;

const expected: Readonly<Record<StepAction, readonly string[]>> = {
  empty: [
    '1 × isolation live, else "emptied too late" (cannot be built), goes on as live; is itself out of turn',
    '1 × gate open, else "run too early" (cannot be built), goes on as open; is itself out of turn',
    '1 × makes content emptied',
    'done where all of 1 content: emptied',
  ],
  isolate: [
    '1 × makes isolation isolated',
    '1 × makes running not run',
    'done where all of 1 isolation: isolated or proved dead',
  ],
  'prove dead': [
    '1 × isolation isolated or proved dead, else "isolation missing" (unsafe), goes on as isolated',
    '1 × makes isolation proved dead',
    'done where all of 1 isolation: proved dead',
  ],
  'gas test': [dead, '1 × makes air tested'],
  pause: [watched, '1 × makes air untested'],
  'gate off': [
    ...safe,
    gate('open or shut or off', 'open'),
    '1 × makes gate off',
    'done where all of 1 gate: off',
  ],
  'gate shut': [gate('open or shut', 'open'), '1 × makes gate shut', 'done where all of 1 gate: shut'],
  'covers off': [...safe, '2 × makes cover off', 'done where all of 2 cover: off'],
  'braces off': [...safe, coversOff, '2 × makes brace off', 'done where all of 2 brace: off'],
  'hold-downs off': [...safe, coversOff, '2 × makes hold-down off', 'done where all of 2 hold-down: off'],
  'restrain screw': [...safe, '1 × makes restraint restrained', 'done where all of 1 restraint: restrained'],
  'unbolt drive': [...safe, held, '1 × makes drive unbolted', 'done where all of 1 drive: unbolted'],
  'remove screw': [
    ...opened,
    held,
    '1 × drive unbolted, else "screw out of turn" (cannot be built), goes on as unbolted',
    noFire,
    '1 × makes screw out',
    '1 × makes heat hot',
    litters,
    'done where any of 1 screw: out',
  ],
  strip: [
    ...opened,
    heldBack,
    '4 × makes panel stripped',
    litters,
    'done where any of 4 panel: stripped or cleaned or new',
  ],
  clean: [
    ...opened,
    '4 × panel stripped or cleaned, else "liner not stripped" (cannot be built), goes on as stripped',
    heldBack,
    '4 × makes panel cleaned',
    litters,
    'done where any of 4 panel: cleaned',
  ],
  // Without a stretch, as here, beside the machine; in the trough: tests/generators/work-pack/other-work.test.ts.
  'other work': [],
  patch: [...opened, noFire, heldBack, '1 × makes heat hot', litters],
  fit: [...opened, heldBack, litters],
  'insert screw': [
    ...opened,
    lined(4, 'screw out of turn'),
    '1 × screw out or new or laid, else "screw out of turn" (cannot be built), goes on as out',
    '1 × makes screw laid',
    litters,
    'done where any of 1 screw: new or laid',
  ],
  'join screw': [
    ...opened,
    '1 × screw laid, else "screw out of turn" (cannot be built), goes on as laid',
    noFire,
    '1 × makes screw new',
    '1 × makes heat hot',
    litters,
    'done where any of 1 screw: new',
  ],
  'fire watch': ['1 × makes heat cool'],
  'bolt drive': [
    ...safe,
    joined('screw out of turn'),
    '1 × drive bolted or unbolted, else "screw out of turn" (cannot be built), goes on as unbolted',
    '1 × makes drive bolted',
    'done where all of 1 drive: bolted',
  ],
  'release screw': [
    ...safe,
    '1 × drive bolted, else "screw not restrained" (unsafe), goes on as bolted; only if later; or missing',
    '1 × makes restraint free',
    'done where all of 1 restraint: free',
  ],
  // The hold-down at 1.00 m stands on the joint of panels 1 and 2.
  'hold-downs on': [
    ...safe,
    coversOff,
    lined(3),
    joined('screw out of turn'),
    '2 × makes hold-down on',
    litters,
    'done where all of 2 hold-down: on',
  ],
  'braces on': [
    ...safe,
    coversOff,
    lined(2),
    joined(),
    '2 × makes brace on',
    litters,
    'done where all of 2 brace: on',
  ],
  'clear up': [...safe, coversOff, '1 × makes litter tidy'],
  'covers on': [
    ...safe,
    watched,
    '1 × litter tidy, else "not cleared up" (incomplete), goes on as tidy',
    lined(4),
    joined(),
    '2 × brace on, else "closed up too early" (cannot be built), goes on as on; only if later',
    '2 × hold-down on, else "closed up too early" (cannot be built), goes on as on; only if later',
    '2 × makes cover on',
    'done where all of 2 cover: on',
  ],
  'gate open': [gate('open or shut', 'shut'), '1 × makes gate open', 'done where all of 1 gate: open'],
  'gate on': [...safe, gate('open or off', 'off'), '1 × makes gate open', 'done where all of 1 gate: open'],
  'remove isolation': [
    '1 × isolation isolated or proved dead, else "isolation missing" (unsafe), goes on as proved dead',
    watched,
    ...whole('handed back too early'),
    '1 × makes isolation live',
    '1 × makes air untested',
    'done where all of 1 isolation: live',
  ],
  'run empty': [
    powered,
    ...whole('run too early'),
    '1 × makes running run empty',
    'done where all of 1 running: run empty or run loaded',
  ],
  'run loaded': [
    powered,
    ...whole('run too early'),
    '1 × running run empty or run loaded, else "run too early" (incomplete), goes on as run empty; or missing',
    '1 × makes running run loaded',
    'done where all of 1 running: run loaded',
  ],
};

test.each(stepActions.map((action) => [action]))('%s asks, and leaves behind', (action) => {
  expect(table(welded, action.startsWith('gate ') ? `${action} Gate1` : action)).toEqual(expected[action]);
});

describe('only what the step reaches', () => {
  test.each<readonly [string, readonly string[]]>([
    ['covers off run 1', [...safe, '1 × makes cover off', 'done where all of 1 cover: off']],
    [
      'braces off run 2',
      [...safe, coversOff.replace('2', '1'), '1 × makes brace off', 'done where all of 1 brace: off'],
    ],
    [
      'strip panel 1 of run 1',
      [
        ...opened.map((each) => each.replace('2', '1')),
        heldBack,
        '1 × makes panel stripped',
        litters,
        'done where any of 1 panel: stripped or cleaned or new',
      ],
    ],
    // On 20° what burns runs down to the tail, past a gate, and not up.
    [
      'patch panel 1 of run 1',
      [
        ...opened.map((each) => each.replace('2', '1')),
        noFire.replace('4', '1'),
        heldBack,
        '1 × makes heat hot',
        litters,
      ],
    ],
    [
      'patch panel 1 of run 2',
      [
        ...opened.slice(0, 2),
        coversOff.replace('2', '1'),
        '1 × brace off, else "not opened up" (cannot be built), goes on as off',
        noFire.replace('4', '3'),
        '1 × makes heat hot',
        litters,
      ],
    ],
  ])('%s', (text, lines) => expect(table(welded, text)).toEqual(lines));

  test.each<readonly [string, Partial<Job['conveyor']>, string, readonly string[]]>([
    ['the drive is at the head', {}, 'restrain screw', ['from 3000 mm to 4200 mm']],
    [
      'the drive is at the tail',
      { drive: { end: 'tail', origin: origin() } },
      'restrain screw',
      ['from 0 mm to 1000 mm'],
    ],
    ['from 1000 mm on', {}, 'restrain screw from 1000 mm to 3000 mm', ['from 1000 mm to 3000 mm']],
  ])('air is tested where the spiral is reached into: %s', (_, facts, text, cells) => {
    const of = job({ ...conveyor, ...facts }, ['all'], { screwChange: { screw: screw(), origin: origin() } });
    const w = walked(of, [text, 'clean from 1000 mm to 3000 mm']);
    const { needs } = demandsOf(w.ground, step(text, of), w.ground.areas[0] ?? []);
    expect(
      needs.flatMap(({ piece }) => (piece.kind === 'air' ? [`from ${piece.from} mm to ${piece.to} mm`] : [])),
    ).toEqual(cells);
  });
});

describe('hot work, whatever it is done for', () => {
  const at = stepActions.filter((action) => atTheMachine(step(action)));
  test.each(at.map((action) => [action]))('%s', (action) => {
    const text = `${action}${action.startsWith('gate ') ? ' Gate1' : ''} hot work`;
    const asked = table(welded, text);
    expect(asked.filter((each) => each.includes('hot work over liner'))).toHaveLength(1);
    expect(asked).toContain('1 × makes heat hot');
  });
});

describe('what depends on the job', () => {
  const open = { ...conveyor, confinedSpace: false };
  const measures = 'hot work shielded wet';
  const without = (lines: readonly string[], ...gone: readonly string[]): string[] =>
    lines.filter((each) => !gone.includes(each));
  test.each<readonly [string, Job, string, readonly string[], readonly string[]]>([
    [
      'an open trough has no air to test',
      job(open, ['all']),
      'covers off',
      always,
      without(expected['covers off'], aired),
    ],
    [
      'nor at the drive',
      { ...welded, conveyor: open },
      'unbolt drive',
      always,
      without(expected['unbolt drive'], aired),
    ],
    [
      'where no step clears up, nothing is told as littered',
      welded,
      'strip',
      [],
      without(expected.strip, litters),
    ],
    [
      'nor asked for',
      welded,
      'covers on',
      [],
      expected['covers on'].filter((each) => !each.includes('litter')),
    ],
    ['hot work with shields and water', welded, `patch ${measures}`, always, without(expected.patch, noFire)],
    ['cold work', welded, 'patch cold work', always, without(expected.patch, noFire, '1 × makes heat hot')],
    [
      'a drive that is burnt off',
      welded,
      'unbolt drive hot work shielded',
      always,
      [
        ...safe,
        held,
        noFire,
        '1 × makes drive unbolted',
        '1 × makes heat hot',
        'done where all of 1 drive: unbolted',
      ],
    ],
    [
      'pieces welded as they are laid',
      welded,
      'insert screw',
      ['clear up'],
      [
        ...opened,
        lined(4, 'screw out of turn'),
        '1 × screw out or new or laid, else "screw out of turn" (cannot be built), goes on as out',
        noFire,
        '1 × makes screw new',
        '1 × makes heat hot',
        litters,
        'done where any of 1 screw: new or laid',
      ],
    ],
  ])('%s', (_, of, text, more, lines) => expect(table(of, text, more)).toEqual(lines));
});
