// What a walk tells of a step that finds its place not as it needs it: once, at the step, with all that is in the way, with who left
// it so, and with who would have brought it about, too late.

import { expect, test } from 'vitest';
import type { Job } from '../../../src/domain/model/job.js';
import type { Piece } from '../../../src/domain/order/ground.js';
import { sayPieces } from '../../../src/domain/order/telling/pieces.js';
import { brace, cover, holdDown, job, line, walked } from './stories.js';
import { origin, screw } from '../../kit/estate.js';

function byKind(pieces: readonly Piece[]): string {
  const kinds = [...new Set(pieces.map(({ kind }) => kind))];
  return kinds
    .map((kind) =>
      sayPieces(
        pieces.filter((piece) => piece.kind === kind),
        'mm',
      ),
    )
    .join(' + ');
}

/** Each slip as `kind at step: pieces (others)`. */
function told(of: Job, lines: readonly string[]): string[] {
  return walked(of, lines).slips.map(
    ({ kind, grade, step, pieces, others, missing, found, wanted }) =>
      `${kind} (${grade}) at ${lines[step ?? -1]}: ${byKind(pieces)}, ${found} for ${wanted}` +
      [...others].map(([i, role]) => `; ${role}: ${i} ${lines[i]}`).join('') +
      (missing ? '; never' : ''),
  );
}

const made = line([2, 2], [20, 20, 20], {
  covers: [cover(0, 2100), cover(2100, 4200)],
  braces: [brace(500), brace(3000)],
  holdDowns: [holdDown(1000), holdDown(3500)],
});
const of = job(made, ['all']);
const enclosed = job({ ...made, confinedSpace: true }, ['all']);
const bare = job({ ...made, covers: [], braces: [], holdDowns: [] }, ['all']);
const spiral = job({ ...made, covers: [], braces: [], holdDowns: [] }, ['all'], {
  screwChange: { screw: screw(), cut: 'cold', joints: 'bolted', origin: origin() },
});
const ready = ['isolate', 'prove dead'];
const open = [...ready, 'covers off all', 'braces off all', 'hold-downs off all'];

test.each<readonly [string, Job, readonly string[], readonly string[]]>([
  [
    'isolated and proved too late: the first of all that need it, with both',
    of,
    ['covers off run 1', 'braces off run 1', 'isolate', 'prove dead'],
    ['isolation missing (unsafe) at covers off run 1: the isolation, 0 for 2; comes too late: 3 prove dead'],
  ],
  [
    'isolated in time, proved too late',
    of,
    ['isolate', 'covers off run 1', 'prove dead'],
    ['isolation missing (unsafe) at covers off run 1: the isolation, 1 for 2; comes too late: 2 prove dead'],
  ],
  [
    'a late step that others need too is told once',
    of,
    [...ready, 'braces off run 1', 'hold-downs off run 1', 'strip run 1', 'covers off run 1'],
    [
      'not opened up (cannot be built) at braces off run 1: the cover 0.00 m to 2.10 m, 0 for 1; comes too late: 5 covers off run 1',
    ],
  ],
  [
    'two late steps, of one kind, are one complaint with both',
    of,
    [...ready, 'braces off all', 'covers off run 1', 'covers off run 2'],
    [
      'not opened up (cannot be built) at braces off all: 2 covers from 0.00 m to 4.20 m, 0 for 1; comes too late: 3 covers off run 1; comes too late: 4 covers off run 2',
    ],
  ],
  [
    'two late steps of two kinds are one complaint about the first',
    of,
    [...ready, 'covers off all', 'strip run 1', 'braces off run 1', 'hold-downs off run 1'],
    [
      'not opened up (cannot be built) at strip run 1: the brace at 0.50 m, 0 for 1; comes too late: 4 braces off run 1; comes too late: 5 hold-downs off run 1',
    ],
  ],
  [
    'the first of several that would do is meant',
    of,
    [...ready, 'braces off run 1', 'covers off run 1', 'covers off run 1'],
    [
      'not opened up (cannot be built) at braces off run 1: the cover 0.00 m to 2.10 m, 0 for 1; comes too late: 3 covers off run 1',
    ],
  ],
  [
    'a later step elsewhere does not count',
    of,
    [...ready, 'braces off run 1', 'covers off run 2'],
    ['not opened up (cannot be built) at braces off run 1: the cover 0.00 m to 2.10 m, 0 for 1; never'],
  ],
  [
    'a later step over part of it counts for its part',
    of,
    [...ready, 'strip all', 'covers off run 2', 'braces off all', 'hold-downs off all'],
    [
      'not opened up (cannot be built) at strip all: 2 covers from 0.00 m to 4.20 m, 0 for 1; never',
      'not opened up (cannot be built) at strip all: 2 braces from 0.50 m to 3.00 m, 0 for 1; comes too late: 4 braces off all; comes too late: 5 hold-downs off all',
    ],
  ],
  [
    'stripped and cleaned too late: both are counted',
    bare,
    [...ready, 'fit run 1 starting at tail', 'strip run 1', 'clean run 1'],
    [
      'liner not stripped (cannot be built) at fit run 1 starting at tail: panels 1 to 2 of run 1, 0 for 2; comes too late: 4 clean run 1',
    ],
  ],
  [
    'stripped too late for some panels',
    bare,
    [...ready, 'strip panel 1 of run 1', 'clean run 1', 'strip panel 2 of run 1'],
    [
      'liner not stripped (cannot be built) at clean run 1: panel 2 of run 1, 0 for 1; comes too late: 4 strip panel 2 of run 1',
    ],
  ],
  [
    'never, in every place of the step',
    of,
    [...ready, 'strip all'],
    [
      'not opened up (cannot be built) at strip all: 2 covers from 0.00 m to 4.20 m, 0 for 1; never',
      'not opened up (cannot be built) at strip all: 2 braces from 0.50 m to 3.00 m, 0 for 1; never',
      'not opened up (cannot be built) at strip all: 2 hold-downs from 1.00 m to 3.50 m, 0 for 1; never',
    ],
  ],
  [
    'never, in the place of the step only',
    of,
    [...ready, 'strip run 1'],
    [
      'not opened up (cannot be built) at strip run 1: the cover 0.00 m to 2.10 m, 0 for 1; never',
      'not opened up (cannot be built) at strip run 1: the brace at 0.50 m, 0 for 1; never',
      'not opened up (cannot be built) at strip run 1: the hold-down at 1.00 m, 0 for 1; never',
    ],
  ],
  [
    'never tested: all of the air there is',
    enclosed,
    [...ready, 'covers off run 1', 'covers off run 2'],
    ['gas test missing (unsafe) at covers off run 1: the air from 0.00 m to 4.20 m, 0 for 1; never'],
  ],
  [
    'tested in part: the rest',
    enclosed,
    [...ready, 'gas test run 1', 'covers off run 2', 'covers off run 1'],
    ['gas test missing (unsafe) at covers off run 2: the air from 2.00 m to 4.20 m, 0 for 1; never'],
  ],
  [
    'tested too late in part',
    enclosed,
    [...ready, 'covers off all', 'gas test run 2'],
    ['gas test missing (unsafe) at covers off all: the air from 0.00 m to 4.20 m, 0 for 1; never'],
  ],
  [
    'two in the way of each other, each told at its step',
    bare,
    [...ready, 'clean run 1', 'clean run 2'],
    [
      'liner not stripped (cannot be built) at clean run 1: panels 1 to 2 of run 1, 0 for 1; never',
      'liner not stripped (cannot be built) at clean run 2: panels 1 to 2 of run 2, 0 for 1; never',
    ],
  ],
  [
    'the new liner in the way, and the old',
    bare,
    [...ready, 'strip run 1', 'clean run 1', 'fit run 1 starting at tail', 'clean all'],
    [
      'liner not stripped (cannot be built) at clean all: panels 1 to 2 of run 1, 3 for 1; made it so: 4 fit run 1 starting at tail; never',
      'liner not stripped (cannot be built) at clean all: panels 1 to 2 of run 2, 0 for 1; never',
    ],
  ],
  [
    'closing up too early waits, and is not told again',
    of,
    [
      ...open,
      'strip run 1',
      'clean run 1',
      'covers on run 1',
      'fit run 1 starting at tail',
      'braces on run 1',
      'hold-downs on run 1',
    ],
    [
      'closed up too early (cannot be built) at covers on run 1: panels 1 to 2 of run 1 + the brace at 0.50 m + the hold-down at 1.00 m, 2 for 3; comes too late: 8 fit run 1 starting at tail; comes too late: 9 braces on run 1; comes too late: 10 hold-downs on run 1',
    ],
  ],
  [
    'closing up over what nothing puts back is told at hand-back',
    of,
    [...open, 'covers on all', 'remove isolation'],
    [
      'handed back too early (unsafe) at remove isolation: 2 braces from 0.50 m to 3.00 m, 1 for 0; made it so: 3 braces off all; never',
      'handed back too early (unsafe) at remove isolation: 2 hold-downs from 1.00 m to 3.50 m, 1 for 0; made it so: 4 hold-downs off all; never',
    ],
  ],
  [
    'handed back with several kinds open, in one complaint',
    of,
    [...open, 'strip run 1', 'remove isolation'],
    [
      'handed back too early (unsafe) at remove isolation: 2 covers from 0.00 m to 4.20 m, 1 for 0; made it so: 2 covers off all; never',
      'handed back too early (unsafe) at remove isolation: 2 braces from 0.50 m to 3.00 m, 1 for 0; made it so: 3 braces off all; never',
      'handed back too early (unsafe) at remove isolation: 2 hold-downs from 1.00 m to 3.50 m, 1 for 0; made it so: 4 hold-downs off all; never',
      'handed back too early (unsafe) at remove isolation: panels 1 to 2 of run 1, 1 for 3; made it so: 5 strip run 1; never',
    ],
  ],
  [
    'handed back with parts that come back later',
    of,
    [...open, 'remove isolation', 'hold-downs on all', 'braces on all', 'covers on all'],
    [
      'handed back too early (unsafe) at remove isolation: 2 covers from 0.00 m to 4.20 m + 2 braces from 0.50 m to 3.00 m + 2 hold-downs from 1.00 m to 3.50 m, 1 for 0; comes too late: 8 covers on all; comes too late: 7 braces on all; comes too late: 6 hold-downs on all',
    ],
  ],
  [
    'run before hand-back, which comes later',
    of,
    [...ready, 'run empty', 'run loaded', 'remove isolation'],
    ['run too early (unsafe) at run empty: the isolation, 2 for 0; comes too late: 4 remove isolation'],
  ],
  [
    'loaded before empty',
    of,
    ['run loaded', 'run empty'],
    ['run too early (incomplete) at run loaded: the trial runs, 0 for 1; comes too late: 1 run empty'],
  ],
  [
    'put back before it was taken off',
    of,
    [...ready, 'covers on all', 'covers off all'],
    [
      'closed up too early (cannot be built) at covers on all: 2 covers from 0.00 m to 4.20 m, 0 for 1; comes too late: 3 covers off all',
    ],
  ],
  [
    'put back in part before it was taken off',
    of,
    [...ready, 'covers off run 1', 'covers on all', 'covers off run 2'],
    [],
  ],
  [
    'done already, all of it',
    of,
    [...ready, 'covers off all', 'covers off all'],
    [
      'done twice (incomplete) at covers off all: 2 covers from 0.00 m to 4.20 m, 1 for -1; made it so: 2 covers off all',
    ],
  ],
  ['done already in part is no slip for covers', of, [...ready, 'covers off run 1', 'covers off all'], []],
  [
    'done already in part is one for panels',
    bare,
    [...ready, 'strip panel 1 of run 1', 'strip run 1'],
    [
      'done twice (incomplete) at strip run 1: panel 1 of run 1, 1 for -1; made it so: 2 strip panel 1 of run 1',
    ],
  ],
  ['nothing there to do', bare, [...ready, 'gate shut Nix'], []],
  [
    'a spiral out of turn: bolted, and never unbolted',
    spiral,
    [...ready, 'restrain screw', 'remove screw', 'insert screw', 'bolt drive'],
    ['screw out of turn (cannot be built) at remove screw: the drive plate, 0 for 1; never'],
  ],
  [
    'a spiral out of turn: panels under it come later',
    spiral,
    [
      ...ready,
      'restrain screw',
      'unbolt drive',
      'remove screw',
      'strip all',
      'clean all',
      'insert screw',
      'fit run 1 starting at tail',
      'fit run 2 starting at head',
      'bolt drive',
    ],
    [
      'screw out of turn (cannot be built) at insert screw: panels 1 to 2 of run 1 and panels 1 to 2 of run 2, 2 for 3; comes too late: 8 fit run 1 starting at tail; comes too late: 9 fit run 2 starting at head',
    ],
  ],
  [
    'a spiral out of turn: the old one comes out later',
    spiral,
    [...ready, 'restrain screw', 'unbolt drive', 'insert screw from 0 mm to 2000 mm', 'remove screw'],
    [
      'screw out of turn (cannot be built) at insert screw from 0 mm to 2000 mm: the spiral 0.00 m to 2.00 m, 0 for 1; comes too late: 5 remove screw',
    ],
  ],
  [
    'pieces from an end, then from the middle of the rest',
    spiral,
    [
      ...ready,
      'restrain screw',
      'unbolt drive',
      'remove screw from 0 mm to 1000 mm',
      'remove screw from 2000 mm to 3000 mm',
      'remove screw from 1000 mm to 2000 mm',
      'remove screw from 3000 mm to 4200 mm',
    ],
    [
      'spiral from the middle (unsafe) at remove screw from 2000 mm to 3000 mm: the spiral 2.00 m to 3.00 m, 0 for -1',
    ],
  ],
  [
    'the whole spiral at once',
    spiral,
    [...ready, 'restrain screw', 'unbolt drive', 'remove screw from 0 mm to 4200 mm'],
    [],
  ],
  [
    'a middle piece that is out already',
    spiral,
    [
      ...ready,
      'restrain screw',
      'unbolt drive',
      'remove screw from 0 mm to 1000 mm',
      'remove screw from 1000 mm to 2000 mm',
      'remove screw from 1000 mm to 2000 mm',
      'insert screw from 0 mm to 1000 mm',
      'remove screw from 1000 mm to 2000 mm',
    ],
    [
      'done twice (incomplete) at remove screw from 1000 mm to 2000 mm: the spiral 1.00 m to 2.00 m, 1 for -1; made it so: 5 remove screw from 1000 mm to 2000 mm',
      'done twice (incomplete) at remove screw from 1000 mm to 2000 mm: the spiral 1.00 m to 2.00 m, 1 for -1; made it so: 5 remove screw from 1000 mm to 2000 mm',
    ],
  ],
  [
    'a middle piece of which a part is out',
    spiral,
    [
      ...ready,
      'restrain screw',
      'unbolt drive',
      'remove screw from 1000 mm to 2000 mm',
      'remove screw from 1000 mm to 3000 mm',
      'insert screw from 3000 mm to 4200 mm',
    ],
    [
      'spiral from the middle (unsafe) at remove screw from 1000 mm to 2000 mm: the spiral 1.00 m to 2.00 m, 0 for -1',
      'spiral from the middle (unsafe) at remove screw from 1000 mm to 3000 mm: the spiral from 1.00 m to 3.00 m, 0 for -1',
      'screw out of turn (cannot be built) at insert screw from 3000 mm to 4200 mm: the spiral 3.00 m to 4.20 m, 0 for 1; never',
    ],
  ],
  [
    'bolted before it is unbolted',
    spiral,
    [...ready, 'restrain screw', 'bolt drive', 'unbolt drive'],
    [
      'closed up too early (cannot be built) at bolt drive: the drive plate, 0 for 1; comes too late: 4 unbolt drive',
    ],
  ],
  [
    'braces and hold-downs put back before they came off',
    of,
    [
      ...ready,
      'covers off all',
      'braces on all',
      'hold-downs on all',
      'braces off all',
      'hold-downs off all',
    ],
    [
      'closed up too early (cannot be built) at braces on all: 2 braces from 0.50 m to 3.00 m, 0 for 1; comes too late: 5 braces off all',
      'closed up too early (cannot be built) at hold-downs on all: 2 hold-downs from 1.00 m to 3.50 m, 0 for 1; comes too late: 6 hold-downs off all',
    ],
  ],
  [
    'put back twice, and off again later',
    of,
    [...ready, 'covers off all', 'covers on all', 'covers on all', 'covers off all'],
    [
      'done twice (incomplete) at covers on all: 2 covers from 0.00 m to 4.20 m, 0 for -1; made it so: 3 covers on all',
    ],
  ],
  [
    'a gate opened before it is shut',
    bare,
    [...ready, 'gate open Gate1', 'gate shut Gate1'],
    ['done twice (incomplete) at gate open Gate1: the gate Gate1, 0 for -1'],
  ],
  [
    'handed back twice, and isolated again later',
    bare,
    [...ready, 'remove isolation', 'remove isolation', 'isolate', 'prove dead'],
    [
      'isolation missing (unsafe) at remove isolation: the isolation, 0 for 2; comes too late: 4 isolate',
      'isolation missing (unsafe) at prove dead: the isolation, 0 for 1; made it so: 3 remove isolation; never',
    ],
  ],
  [
    'watched again for less, where nothing is hot any more',
    bare,
    [...ready, 'strip all', 'patch run 1', 'fire watch run 1 takes 60 min', 'fire watch all takes 30 min'],
    [],
  ],
  [
    'counted as fitted too early, it still has to be reached',
    of,
    [
      ...ready,
      'covers off all',
      'hold-downs off all',
      'braces off run 2',
      'strip run 1',
      'clean run 1',
      'fit panel 2 of run 1 starting at tail',
      'fit panel 1 of run 1 starting at tail',
    ],
    [
      'not opened up (cannot be built) at strip run 1: the brace at 0.50 m, 0 for 1; never',
      'not contiguous (cannot be built) at fit panel 2 of run 1 starting at tail: panel 1 of run 1, 2 for 3; comes too late: 8 fit panel 1 of run 1 starting at tail',
    ],
  ],
  [
    'counted as done in part',
    of,
    [...ready, 'braces off run 1', 'covers off run 1', 'covers off run 1', 'covers off all'],
    [
      'not opened up (cannot be built) at braces off run 1: the cover 0.00 m to 2.10 m, 0 for 1; comes too late: 3 covers off run 1',
    ],
  ],
  [
    'hot work where it is stripped later',
    bare,
    [...ready, 'patch run 1', 'strip panel 2 of run 1', 'strip panel 1 of run 1'],
    [
      'hot work over liner (unsafe) at patch run 1: panels 1 to 2 of run 1, 0 for 2; comes too late: 4 strip panel 1 of run 1; comes too late: 3 strip panel 2 of run 1',
    ],
  ],
  [
    'a gate out of turn, by whom',
    bare,
    [...ready, 'gate off Gate1', 'gate open Gate1', 'gate on Gate1'],
    [
      'gate out of turn (cannot be built) at gate open Gate1: the gate Gate1, 2 for 1; made it so: 2 gate off Gate1',
    ],
  ],
  [
    'a gate out of turn does nothing',
    bare,
    [...ready, 'gate off Gate1', 'gate shut Gate1', 'gate shut Gate1', 'gate on Gate1'],
    [
      'gate out of turn (cannot be built) at gate shut Gate1: the gate Gate1, 2 for 0; made it so: 2 gate off Gate1',
      'gate out of turn (cannot be built) at gate shut Gate1: the gate Gate1, 2 for 0; made it so: 2 gate off Gate1',
    ],
  ],
  [
    'emptied when it is isolated, and before',
    bare,
    ['empty', 'isolate', 'empty'],
    ['emptied too late (cannot be built) at empty: the isolation, 1 for 0; made it so: 1 isolate'],
  ],
  [
    'watched too short, by the longest of several',
    bare,
    [
      ...ready,
      'strip all',
      'patch run 1 hot work fire watch 90 min',
      'patch run 2 hot work fire watch 30 min',
      'fire watch all takes 60 min',
    ],
    [
      'fire watch too short (unsafe) at fire watch all takes 60 min: the place from 0.00 m to 4.20 m, 1 for -1; made it so: 3 patch run 1 hot work fire watch 90 min',
    ],
  ],
  [
    'watched in the other place',
    bare,
    [
      ...ready,
      'strip all',
      'patch run 1 hot work fire watch 90 min',
      'fire watch run 2 takes 60 min',
      'pause',
    ],
    [
      'fire watch missing (unsafe) at pause: the place of hot work 0.00 m to 2.00 m, 1 for 0; made it so: 3 patch run 1 hot work fire watch 90 min; never',
    ],
  ],
  [
    'watched for just so long',
    bare,
    [...ready, 'strip all', 'patch run 1 hot work fire watch 90 min', 'fire watch run 1 takes 90 min'],
    [],
  ],
  [
    'closed up over hot work, over litter, over what is off: each for itself',
    of,
    [
      ...open,
      'strip run 1',
      'patch run 1',
      'clean run 1',
      'fit run 1 starting at tail',
      'covers on run 1',
      'clear up',
    ],
    [
      'fire watch missing (unsafe) at covers on run 1: the place of hot work 0.00 m to 2.00 m, 1 for 0; made it so: 6 patch run 1; never',
      'not cleared up (incomplete) at covers on run 1: the tools and litter 0.00 m to 2.00 m, 1 for 0; comes too late: 10 clear up',
      'not opened up (cannot be built) at clear up: the cover 0.00 m to 2.10 m, 0 for 1; made it so: 9 covers on run 1; never',
    ],
  ],
  [
    'two steps too early wait for the same',
    of,
    [
      ...open,
      'strip run 1',
      'clean run 1',
      'braces on run 1',
      'covers on run 1',
      'fit run 1 starting at tail',
      'hold-downs on run 1',
    ],
    [
      'closed up too early (cannot be built) at braces on run 1: panel 1 of run 1, 2 for 3; comes too late: 9 fit run 1 starting at tail',
      'closed up too early (cannot be built) at covers on run 1: the hold-down at 1.00 m, 1 for 0; comes too late: 10 hold-downs on run 1',
    ],
  ],
])('%s', (_, made, lines, expected) => expect(told(made, lines)).toEqual(expected));
