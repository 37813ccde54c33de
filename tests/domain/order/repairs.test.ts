// What each repair makes of an order: every offer on the complaints of one kind, with the order as it then reads. Offers that change
// nothing are advice and stand alone.

import { expect, test } from 'vitest';
import type { Job } from '../../../src/domain/model/job.js';
import { changeJob } from '../../../src/domain/order/change-steps.js';
import { checkOrder } from '../../../src/domain/order/check-order.js';
import type { ViolationKind } from '../../../src/domain/order/violation.js';
import { stepText } from '../../../src/domain/order/words.js';
import { gap, origin, screw, stated } from '../../kit/estate.js';
import { afterwards, brace, cover, crew, holdDown, job, line, withOrder, worldOf } from './stories.js';

/** `title` and behind it the order it makes, without the steps that stay where and as they were at its beginning and end. */
function offered(of: Job, lines: readonly string[], kind: ViolationKind): string[] {
  const written = withOrder(of, lines);
  return checkOrder(written, worldOf(of))
    .filter((each) => each.kind === kind)
    .flatMap(({ repairs }) => repairs)
    .map(({ title, asks, changes }) => {
      const after = (changeJob(written, changes).order?.steps ?? []).map(stepText);
      return [`${asks ? 'asked: ' : ''}${title}`, ...between(lines, after)].join(' | ');
    });
}

function between(before: readonly string[], after: readonly string[]): readonly string[] {
  let same = 0;
  while (same < after.length && before[same] === after[same]) same++;
  let end = 0;
  while (
    end < after.length - same &&
    end < before.length - same &&
    before.at(-1 - end) === after.at(-1 - end)
  )
    end++;
  return after.slice(same, after.length - end);
}

const crews = [crew('Alpha'), crew('Bravo')];
const four = line([4], [20, 20]);
const plain = job(four, ['all']);
const manned = job(four, ['all'], { crews });
const ready = ['isolate', 'prove dead', 'strip run 1', 'clean run 1'];
const full = job(
  line([2, 2], [20, 20, 20], {
    covers: [cover(0, 2100), cover(2100, 4200)],
    braces: [brace(500)],
    holdDowns: [holdDown(3500)],
    confinedSpace: true,
  }),
  ['all'],
  { crews },
);
const spiral = job(line([2], [10, 10]), ['all'], {
  screwChange: { screw: screw(), cut: 'cold', joints: 'bolted', origin: origin() },
});
const steep = line([2, 2], [10, 10, 10], { incline: stated('angle', 20) });
const inlets = {
  ...steep,
  breaks: steep.breaks.map((each) => gap(each.name, 'inlet', each.from.value, each.to.value, 10)),
};

test.each<readonly [string, Job, readonly string[], ViolationKind, readonly string[]]>([
  [
    'two fronts',
    manned,
    [
      ...ready.slice(0, 3),
      's: clean run 1',
      'a: fit panels 1 to 2 of run 1 starting at tail by Alpha after s',
      'b: fit panels 3 to 4 of run 1 starting at head by Bravo after s',
      ...afterwards,
    ],
    'two fronts',
    [
      'Fit run 1 (Tail to Head) from the head only: "fit panels 1 to 2 of run 1 from the head" after "fit panels 3 to 4 of run 1 from the head" | b: fit panels 3 to 4 of run 1 starting at head by Bravo after s | a: fit panels 1 to 2 of run 1 starting at head by Alpha after s, b',
      'Fit run 1 (Tail to Head) from the tail only: "fit panels 3 to 4 of run 1 from the tail" after "fit panels 1 to 2 of run 1 from the tail" | b: fit panels 3 to 4 of run 1 starting at tail by Bravo after s, a',
      'Fit run 1 (Tail to Head) from the tail only: "fit run 1 from the tail" in place of both | a: fit run 1 starting at tail by Alpha, Bravo after s',
      'Fit run 1 (Tail to Head) from the head only: "fit run 1 from the head" in place of both | b: fit run 1 starting at head by Alpha, Bravo after s',
      'Declare a break in run 1 (Tail to Head) where the fronts meet, with an allowance for the error, and keep both',
    ],
  ],
  [
    'two fronts, with somebody outside: who stands by goes on doing so',
    { ...manned, conveyor: { ...manned.conveyor, confinedSpace: true } },
    [
      ...ready.slice(0, 2),
      'gas test all',
      'strip run 1 by Alpha attended by Bravo',
      's: clean run 1 by Alpha attended by Bravo',
      'a: fit panels 1 to 2 of run 1 starting at tail by Alpha attended by Bravo',
      'b: fit panels 3 to 4 of run 1 starting at head by Bravo attended by Alpha',
      ...afterwards,
    ],
    'two fronts',
    [
      'Fit run 1 (Tail to Head) from the head only: "fit panels 1 to 2 of run 1 from the head" after "fit panels 3 to 4 of run 1 from the head" | b: fit panels 3 to 4 of run 1 starting at head by Bravo attended by Alpha | a: fit panels 1 to 2 of run 1 starting at head by Alpha attended by Bravo',
      'Fit run 1 (Tail to Head) from the tail only: "fit panels 3 to 4 of run 1 from the tail" after "fit panels 1 to 2 of run 1 from the tail" | b: fit panels 3 to 4 of run 1 starting at tail by Bravo attended by Alpha',
      'Fit run 1 (Tail to Head) from the tail only: "fit run 1 from the tail" in place of both | a: fit run 1 starting at tail by Alpha attended by Bravo',
      'Fit run 1 (Tail to Head) from the head only: "fit run 1 from the head" in place of both | b: fit run 1 starting at head by Bravo attended by Alpha',
      'Declare a break in run 1 (Tail to Head) where the fronts meet, with an allowance for the error, and keep both',
    ],
  ],
  [
    'two fronts over the whole run, by two crews',
    manned,
    [
      ...ready.slice(0, 3),
      's: clean run 1',
      'a: fit run 1 starting at tail by Alpha after s',
      'b: fit run 1 starting at head by Bravo, Alpha after s',
      ...afterwards,
    ],
    'two fronts',
    [
      'Fit run 1 (Tail to Head) from the tail only: leave out "fit run 1 from the head" | a: fit run 1 starting at tail by Alpha, Bravo after s',
      'Fit run 1 (Tail to Head) from the head only: leave out "fit run 1 from the tail"',
      'Fit run 1 (Tail to Head) from the head only: "fit run 1 from the head" after "fit run 1 from the head" | b: fit run 1 starting at head by Bravo, Alpha after s | a: fit run 1 starting at head by Alpha after s, b',
      'Fit run 1 (Tail to Head) from the tail only: "fit run 1 from the tail" after "fit run 1 from the tail" | b: fit run 1 starting at tail by Bravo, Alpha after s, a',
      'Declare a break in run 1 (Tail to Head) where the fronts meet, with an allowance for the error, and keep both',
    ],
  ],
  [
    'two fronts in one line of steps',
    plain,
    [
      ...ready,
      'fit panels 1 to 2 of run 1 starting at tail',
      'fit panels 3 to 4 of run 1 starting at head',
      ...afterwards,
    ],
    'two fronts',
    [
      'Fit run 1 (Tail to Head) from the head only: "fit panels 1 to 2 of run 1 from the head" after "fit panels 3 to 4 of run 1 from the head" | fit panels 3 to 4 of run 1 starting at head | fit panels 1 to 2 of run 1 starting at head',
      'Fit run 1 (Tail to Head) from the tail only: "fit panels 3 to 4 of run 1 from the tail" after "fit panels 1 to 2 of run 1 from the tail" | fit panels 3 to 4 of run 1 starting at tail',
      'Fit run 1 (Tail to Head) from the tail only: "fit run 1 from the tail" in place of both | fit run 1 starting at tail',
      'Fit run 1 (Tail to Head) from the head only: "fit run 1 from the head" in place of both | fit run 1 starting at head',
      'Declare a break in run 1 (Tail to Head) where the fronts meet, with an allowance for the error, and keep both',
    ],
  ],
  [
    'two fronts over a lower end that holds nothing',
    job({ ...inlets }, ['run 1']),
    [
      ...ready,
      'fit panel 1 of run 1 starting at tail',
      'fit panel 2 of run 1 starting at head',
      ...afterwards,
    ],
    'two fronts',
    [
      'Fit run 1 (Tail to Gate1) from the head only: "fit panel 1 of run 1 from the head" after "fit panel 2 of run 1 from the head" | fit panel 2 of run 1 starting at head | fit panel 1 of run 1 starting at head',
      'Fit run 1 (Tail to Gate1) from the head only: "fit run 1 from the head" in place of both | fit run 1 starting at head',
      'Declare a break in run 1 (Tail to Gate1) where the fronts meet, with an allowance for the error, and keep both',
    ],
  ],
  [
    'closes at the wrong end, in one step',
    job(line([4], [0, 20]), ['all']),
    [...ready, 'fit run 1 starting at head', ...afterwards],
    'closing error too large',
    ['Start "fit run 1 from the tail" instead | fit run 1 starting at tail'],
  ],
  [
    'closes at the wrong end, in three steps',
    job(line([4], [0, 20]), ['all']),
    [
      ...ready,
      'fit panel 4 of run 1 starting at head',
      'fit panels 2 to 3 of run 1 starting at head',
      'fit panel 1 of run 1 starting at head',
      ...afterwards,
    ],
    'closing error too large',
    [
      'Fit all of run 1 (Tail to Head) from the tail | fit panel 1 of run 1 starting at tail | fit panels 2 to 3 of run 1 starting at tail | fit panel 4 of run 1 starting at tail',
    ],
  ],
  [
    'closes at the wrong end, in steps that wait',
    job(line([4], [0, 20]), ['all'], { crews }),
    [
      'isolate',
      'prove dead',
      'strip run 1',
      's: clean run 1',
      'a: fit panels 3 to 4 of run 1 starting at head by Alpha after s',
      'b: fit panels 1 to 2 of run 1 starting at head by Alpha after a',
      ...afterwards,
    ],
    'closing error too large',
    [
      'Fit all of run 1 (Tail to Head) from the tail | b: fit panels 1 to 2 of run 1 starting at tail by Alpha | a: fit panels 3 to 4 of run 1 starting at tail by Alpha after s, b',
    ],
  ],
  [
    'two fronts, of which the second waits for the first',
    manned,
    [
      ...ready.slice(0, 3),
      's: clean run 1',
      'a: fit panels 1 to 2 of run 1 starting at tail by Alpha after s',
      'b: fit panels 3 to 4 of run 1 starting at head by Bravo after a',
      ...afterwards,
    ],
    'two fronts',
    [
      'Fit run 1 (Tail to Head) from the head only: "fit panels 1 to 2 of run 1 from the head" after "fit panels 3 to 4 of run 1 from the head" | b: fit panels 3 to 4 of run 1 starting at head by Bravo | a: fit panels 1 to 2 of run 1 starting at head by Alpha after s, b',
      'Fit run 1 (Tail to Head) from the tail only: "fit panels 3 to 4 of run 1 from the tail" after "fit panels 1 to 2 of run 1 from the tail" | b: fit panels 3 to 4 of run 1 starting at tail by Bravo after a',
      'Fit run 1 (Tail to Head) from the tail only: "fit run 1 from the tail" in place of both | a: fit run 1 starting at tail by Alpha, Bravo after s',
      'Fit run 1 (Tail to Head) from the head only: "fit run 1 from the head" in place of both | b: fit run 1 starting at head by Alpha, Bravo after s',
      'Declare a break in run 1 (Tail to Head) where the fronts meet, with an allowance for the error, and keep both',
    ],
  ],
  [
    'what comes too late waits for what needs it',
    manned,
    [
      'isolate',
      'd: prove dead',
      'b: clean run 1 by Alpha after d',
      'a: strip run 1 by Alpha after b',
      'fit run 1',
      ...afterwards,
    ],
    'liner not stripped',
    [
      'Move "strip run 1" before "clean run 1" | a: strip run 1 by Alpha | b: clean run 1 by Alpha after d, a',
    ],
  ],
  [
    'closes at the wrong end, just turned',
    job(line([4], [0, 6]), ['all']),
    [...ready, 'fit run 1 starting at head', ...afterwards],
    'closing error too large',
    ['Start "fit run 1 from the tail" instead | fit run 1 starting at tail'],
  ],
  [
    'closes nowhere',
    job(line([4], [0, 5.9]), ['all']),
    [...ready, 'fit run 1 starting at head', ...afterwards],
    'closing error too large',
    [
      'Measure the last gap of "fit run 1 from the head" on site and cut the closing panel to fit | fit run 1 starting at head cut to fit',
      'Declare a joint ring in the run, with an allowance for the error',
    ],
  ],
  [
    'closes nowhere from the tail',
    job(line([4], [5.9, 0]), ['all']),
    [...ready, 'fit run 1 starting at tail', ...afterwards],
    'closing error too large',
    [
      'Measure the last gap of "fit run 1 from the tail" on site and cut the closing panel to fit | fit run 1 starting at tail cut to fit',
      'Declare a joint ring in the run, with an allowance for the error',
    ],
  ],
  [
    'a hole between panels that stay',
    job(four, ['panels 2 to 3 of run 1']),
    [
      'isolate',
      'prove dead',
      'strip panels 2 to 3 of run 1',
      'clean panels 2 to 3 of run 1',
      'fit panels 2 to 3 of run 1 starting at tail',
      ...afterwards,
    ],
    'closes inside the run',
    [
      'Take off panel 4 too and close at Head | strip panels 2 to 4 of run 1 | clean panels 2 to 4 of run 1 | fit panels 2 to 4 of run 1 starting at tail',
      'Take off panel 1 too and close at Tail | strip panels 1 to 3 of run 1 | clean panels 1 to 3 of run 1 | fit panels 1 to 3 of run 1 starting at head',
    ],
  ],
  [
    'a hole of one panel between single panels',
    job(line([3], [20, 20]), ['panel 2 of run 1']),
    [
      'isolate',
      'prove dead',
      'strip panel 2 of run 1',
      'clean panel 2 of run 1',
      'fit panel 2 of run 1 starting at head',
      ...afterwards,
    ],
    'closes inside the run',
    [
      'Take off panel 3 too and close at Head | strip panels 2 to 3 of run 1 | clean panels 2 to 3 of run 1 | fit panels 2 to 3 of run 1 starting at tail',
      'Take off panel 1 too and close at Tail | strip panels 1 to 2 of run 1 | clean panels 1 to 2 of run 1 | fit panels 1 to 2 of run 1 starting at head',
    ],
  ],
  [
    'a hole whose neighbour comes off later',
    job(four, ['all']),
    [
      'isolate',
      'prove dead',
      'strip panels 1 to 2 of run 1',
      'clean panels 1 to 2 of run 1',
      'fit panels 1 to 2 of run 1 starting at tail',
      'strip panels 3 to 4 of run 1',
      'clean panels 3 to 4 of run 1',
      'fit panels 3 to 4 of run 1 starting at tail',
      ...afterwards,
    ],
    'closes inside the run',
    [
      'Move "strip panels 3 to 4 of run 1" before "fit panels 1 to 2 of run 1 from the tail" | strip panels 3 to 4 of run 1 | fit panels 1 to 2 of run 1 starting at tail',
      'Start "fit panels 1 to 2 of run 1 from the head" instead | fit panels 1 to 2 of run 1 starting at head',
      'Fit all of run 1 (Tail to Head) from the head | strip panels 3 to 4 of run 1 | clean panels 3 to 4 of run 1 | fit panels 3 to 4 of run 1 starting at head | fit panels 1 to 2 of run 1 starting at head',
      'Take off panels 3 to 4 too and close at Head | strip run 1 | clean run 1 | fit run 1 starting at tail',
    ],
  ],
  [
    'panels that would slide',
    job(inlets, ['run 2']),
    ['isolate', 'prove dead', 'strip run 2', 'clean run 2', 'fit run 2 starting at tail', ...afterwards],
    'panel would slide',
    [
      'Start "fit run 2 from the head" instead | fit run 2 starting at head',
      'Declare the stop that the panels rest on (`rest at …` on the conveyor)',
    ],
  ],
  [
    'nothing to push against',
    plain,
    [
      ...ready,
      'fit panels 2 to 4 of run 1 starting at tail',
      'fit panel 1 of run 1 starting at tail',
      ...afterwards,
    ],
    'not contiguous',
    [
      'Move "fit panel 1 of run 1 from the tail" before "fit panels 2 to 4 of run 1 from the tail" | fit panel 1 of run 1 starting at tail | fit panels 2 to 4 of run 1 starting at tail',
      'Start "fit panels 2 to 4 of run 1 from the head" instead | fit panels 2 to 4 of run 1 starting at head',
    ],
  ],
  [
    'nothing to push against, from the other side it has',
    plain,
    [
      ...ready,
      'fit panels 2 to 4 of run 1 starting at tail',
      'fit panel 1 of run 1 starting at head',
      ...afterwards,
    ],
    'not contiguous',
    [
      'Start "fit panels 2 to 4 of run 1 from the head" instead | fit panels 2 to 4 of run 1 starting at head',
    ],
  ],
  [
    'a gate out of turn',
    full,
    ['isolate', 'prove dead', 'gas test', 'gate off Gate1', 'gate open Gate1', 'gate on Gate1'],
    'gate out of turn',
    [
      'Leave out the second "gate open Gate1"',
      'Move "gate off Gate1" after "gate open Gate1" | gate open Gate1 | gate off Gate1',
    ],
  ],
  [
    'emptied too late',
    plain,
    ['isolate', 'empty', 'prove dead', ...ready.slice(2), 'fit run 1', ...afterwards],
    'emptied too late',
    ['Move "empty" before "isolate" | empty | isolate'],
  ],
  [
    'hot work over liner',
    plain,
    [
      'isolate',
      'prove dead',
      'patch run 1 hot work wet fire watch 90 min',
      'fire watch run 1',
      'strip run 1',
      'clean run 1',
      'fit run 1',
      ...afterwards,
    ],
    'hot work over liner',
    [
      'Move "strip run 1" before "patch run 1" | strip run 1 | patch run 1 hot work wet fire watch 90 min | fire watch run 1',
      'asked: Demand shields, water and a fire watch, to be confirmed by the crew | patch run 1 hot work shielded wet fire watch 90 min to be confirmed',
      'asked: Do it cold: sawn, sheared, bolted or bonded | patch run 1 cold work',
      'Add "strip run 1" and "clean run 1" before "patch run 1" | strip run 1 | clean run 1',
      'Move "patch run 1" after "strip run 1" | fire watch run 1 | strip run 1 | patch run 1 hot work wet fire watch 90 min',
    ],
  ],
  [
    'hot work over liner that says nothing',
    plain,
    [
      'isolate',
      'prove dead',
      'patch run 1',
      'fire watch run 1',
      'strip run 1',
      'clean run 1',
      'fit run 1',
      ...afterwards,
    ],
    'hot work over liner',
    [
      'Move "strip run 1" before "patch run 1" | strip run 1 | patch run 1 | fire watch run 1',
      'asked: Demand shields, water and a fire watch, to be confirmed by the crew | patch run 1 hot work shielded wet fire watch 60 min to be confirmed',
      'asked: Do it cold: sawn, sheared, bolted or bonded | patch run 1 cold work',
      'Add "strip run 1" and "clean run 1" before "patch run 1" | strip run 1 | clean run 1',
      'Move "patch run 1" after "strip run 1" | fire watch run 1 | strip run 1 | patch run 1',
    ],
  ],
  [
    'not watched, in steps that wait',
    manned,
    [
      'isolate',
      'd: prove dead',
      's: strip run 1 by Alpha after d',
      'p: patch run 1 by Alpha after s',
      'pause after p',
      'k: clean run 1 by Alpha',
      'fit run 1',
      ...afterwards,
    ],
    'fire watch missing',
    [
      'Add a fire watch after "patch run 1" | s1: fire watch run 1 by Alpha after p takes 60 min | pause after p, s1',
    ],
  ],
  [
    'not watched, in one line',
    plain,
    [
      'isolate',
      'prove dead',
      'strip run 1',
      'patch panel 1 of run 1 hot work fire watch 120 min',
      'patch panel 2 of run 1',
      'clean run 1',
      'fit run 1',
      ...afterwards,
    ],
    'fire watch missing',
    [
      'Add a fire watch after "patch panel 1 of run 1" and "patch panel 2 of run 1" | fire watch panel 1 of run 1 takes 2 h | patch panel 2 of run 1 | fire watch panel 2 of run 1 takes 60 min',
    ],
  ],
  [
    'watched too late',
    plain,
    [
      'isolate',
      'prove dead',
      'strip run 1',
      'patch run 1',
      'pause',
      'fire watch run 1',
      'clean run 1',
      'fit run 1',
      ...afterwards,
    ],
    'fire watch missing',
    ['Move "fire watch run 1" before "pause" | fire watch run 1 | pause'],
  ],
  [
    'watched too short',
    plain,
    [
      'isolate',
      'prove dead',
      'strip run 1',
      'patch panel 1 of run 1 hot work fire watch 90 min',
      'patch panel 2 of run 1 hot work fire watch 100 min',
      'fire watch run 1 takes 1 h',
      'clean run 1',
      'fit run 1',
      ...afterwards,
    ],
    'fire watch too short',
    ['Watch for 100 min | fire watch run 1 takes 100 min'],
  ],
  [
    'watched too short for two hours',
    plain,
    [
      'isolate',
      'prove dead',
      'strip run 1',
      'patch panel 1 of run 1 hot work fire watch 120 min',
      'fire watch run 1 takes 1 h',
      'clean run 1',
      'fit run 1',
      ...afterwards,
    ],
    'fire watch too short',
    ['Watch for 2 h | fire watch run 1 takes 2 h'],
  ],
  [
    'a piece cut out of the middle',
    spiral,
    [
      'isolate',
      'prove dead',
      'restrain screw',
      'unbolt drive',
      'remove screw from 500 mm to 1500 mm',
      'remove screw from 0 mm to 500 mm',
      'remove screw from 1500 mm to 2000 mm',
      'strip',
      'clean',
      'fit',
      'insert screw',
      'bolt drive',
      'release screw',
      ...afterwards,
    ],
    'spiral from the middle',
    [
      'Move "remove screw from 500 mm to 1500 mm" after "remove screw from 0 mm to 500 mm" | remove screw from 0 mm to 500 mm | remove screw from 500 mm to 1500 mm',
      'Move "remove screw from 500 mm to 1500 mm" after "remove screw from 1500 mm to 2000 mm" | remove screw from 0 mm to 500 mm | remove screw from 1500 mm to 2000 mm | remove screw from 500 mm to 1500 mm',
    ],
  ],
  [
    'handed back with covers and braces off',
    full,
    [
      'isolate',
      'prove dead',
      'gas test',
      'covers off run 1 by Alpha',
      'covers off run 2 by Bravo',
      'braces off',
      ...afterwards,
    ],
    'handed back too early',
    [
      'Add "covers on run 1" and "covers on run 2" | covers on run 1 | covers on run 2',
      'Add "covers on" before "remove isolation" | covers on',
      'Add "braces on" | braces on',
    ],
  ],
  [
    'handed back stripped',
    plain,
    [...ready.slice(0, 3), ...afterwards],
    'handed back too early',
    ['Add "clean run 1" and "fit run 1" | clean run 1 | fit run 1'],
  ],
  [
    'handed back cleaned, some of it fitted',
    plain,
    [...ready, 'fit panels 3 to 4 of run 1 starting at head', ...afterwards],
    'handed back too early',
    [
      'Add "fit panels 1 to 2 of run 1" | fit panels 1 to 2 of run 1',
      'Add "fit" before "remove isolation" | fit',
    ],
  ],
  [
    'handed back with a gate stripped',
    full,
    ['isolate', 'prove dead', 'gas test', 'gate off Gate1', ...afterwards],
    'handed back too early',
    ['Add "gate on Gate1" | gate on Gate1'],
  ],
  [
    'handed back before the covers',
    full,
    [
      'isolate',
      'prove dead',
      'gas test',
      'covers off run 1',
      'remove isolation',
      'covers on run 1',
      'run empty',
      'run loaded',
    ],
    'handed back too early',
    ['Move "covers on run 1" before "remove isolation" | covers on run 1 | remove isolation'],
  ],
  [
    'run while isolated',
    plain,
    [...ready, 'fit run 1', 'run empty', 'run loaded'],
    'run too early',
    ['Add "remove isolation" before "run empty" | remove isolation'],
  ],
  [
    'loaded, and never empty',
    plain,
    [...ready, 'fit run 1', 'remove isolation', 'run loaded'],
    'run too early',
    ['Add "run empty" before "run loaded" | run empty'],
  ],
  [
    'left isolated',
    plain,
    [...ready, 'fit run 1'],
    'not put back',
    ['Add "remove isolation", "run empty" and "run loaded" | remove isolation | run empty | run loaded'],
  ],
  [
    'left isolated, with a trial run too early',
    plain,
    ['run empty', ...ready, 'fit run 1'],
    'not put back',
    ['Add "remove isolation", "run empty" and "run loaded" | remove isolation | run empty | run loaded'],
  ],
  [
    'left open in many places',
    full,
    [
      'isolate',
      'prove dead',
      'gas test',
      'covers off run 1',
      'gate off Gate1',
      'hold-downs off',
      'covers off run 2',
    ],
    'not put back',
    [
      'Add "gate on Gate1" | gate on Gate1',
      'Add "hold-downs on" | hold-downs on',
      'Add "covers on run 1" | covers on run 1',
      'Add "remove isolation", "run empty" and "run loaded" | remove isolation | run empty | run loaded',
    ],
  ],
  [
    'a spiral left out, in pieces',
    spiral,
    [
      'isolate',
      'prove dead',
      'restrain screw',
      'unbolt drive',
      'remove screw from 0 mm to 1000 mm',
      'remove screw from 1000 mm to 2000 mm',
    ],
    'not put back',
    [
      'Add "insert screw from 0 mm to 1000 mm" and "insert screw from 1000 mm to 2000 mm" | insert screw from 0 mm to 1000 mm | insert screw from 1000 mm to 2000 mm',
      'Add "bolt drive" | bolt drive',
      'Add "remove isolation", "run empty" and "run loaded" | remove isolation | run empty | run loaded',
    ],
  ],
  [
    'scope not done',
    plain,
    [
      'isolate',
      'prove dead',
      'strip panel 4 of run 1',
      'clean panel 4 of run 1',
      'fit panel 4 of run 1 starting at tail',
      ...afterwards,
    ],
    'scope not done',
    [],
  ],
  ['scope not done at all', full, [], 'scope not done', []],
  [
    'never run',
    plain,
    [...ready, 'fit run 1', 'remove isolation'],
    'no trial run',
    ['Add "run empty" and "run loaded" | run empty | run loaded'],
  ],
  [
    'never run loaded',
    plain,
    [...ready, 'fit run 1', 'remove isolation', 'run empty'],
    'no trial run',
    ['Add "run loaded" | run loaded'],
  ],
  [
    'no test of the air',
    full,
    ['isolate', 'prove dead', 'covers off run 1', 'covers on run 1', ...afterwards],
    'gas test missing',
    [
      'Add "gas test" before "covers off run 1" | gas test',
      'Add "gas test run 1" before "covers off run 1" | gas test run 1',
    ],
  ],
  [
    'no test of the air after a pause',
    full,
    [
      'isolate',
      'd: prove dead',
      'g: gas test',
      'p: pause after g',
      'c: covers off run 1 by Alpha after p',
      'covers on run 1',
      ...afterwards,
    ],
    'gas test missing',
    [
      'Add "gas test" before "covers off run 1" | s1: gas test | c: covers off run 1 by Alpha after p, s1',
      'Add "gas test run 1" before "covers off run 1" | s1: gas test run 1 | c: covers off run 1 by Alpha after p, s1',
    ],
  ],
  [
    'not isolated, where a step waits',
    manned,
    ['a: empty', 'b: strip run 1 by Alpha after a', 'clean run 1', 'fit run 1', ...afterwards],
    'isolation missing',
    [
      'Add "isolate" and "prove dead" before "strip run 1" | s1: isolate | s2: prove dead | b: strip run 1 by Alpha after a, s1, s2',
    ],
  ],
  [
    'done twice',
    plain,
    [...ready, 'clean panel 2 of run 1', 'fit run 1', ...afterwards],
    'done twice',
    ['Leave out the second "clean panel 2 of run 1"'],
  ],
  [
    'closed up too early',
    full,
    [
      'isolate',
      'prove dead',
      'gas test',
      'covers off run 1',
      'braces off',
      'strip run 1',
      'clean run 1',
      'covers on run 1',
      'fit run 1',
      'braces on',
      ...afterwards,
    ],
    'closed up too early',
    ['Move "covers on run 1" after "braces on" | fit run 1 | braces on | covers on run 1'],
  ],
  [
    'not opened up',
    full,
    [
      'isolate',
      'prove dead',
      'gas test',
      'a: braces off by Alpha',
      'b: covers off run 1 by Alpha',
      'braces on',
      'covers on run 1',
      ...afterwards,
    ],
    'not opened up',
    ['Move "covers off run 1" before "braces off" | b: covers off run 1 by Alpha | a: braces off by Alpha'],
  ],
  [
    'cleared up before the last work: never that work after the covers',
    full,
    [
      'isolate',
      'prove dead',
      'gas test',
      'covers off run 1',
      'braces off',
      'clear up',
      'braces on',
      'covers on run 1',
      ...afterwards,
    ],
    'not cleared up',
    ['Move "clear up" after "braces on" | braces on | clear up'],
  ],
  [
    'a ring',
    manned,
    [
      'isolate',
      'd: prove dead',
      'a: strip run 1 by Alpha after d, c',
      'b: clean run 1 by Alpha after a',
      'c: fit run 1 by Alpha after b',
      ...afterwards,
    ],
    'circular order',
    ['Do not let "strip run 1" wait for "c" | a: strip run 1 by Alpha after d'],
  ],
  [
    'alone inside, whoever comes',
    job({ ...full.conveyor }, ['all'], { crews: [crew('Solo', 1), crew('Sola', 1), crew('Soli', 1)] }),
    ['isolate', 'prove dead', 'gas test', 'covers off run 1', 'covers on run 1 by Sola', ...afterwards],
    'lone worker',
    [
      'Let Sola stand by | covers off run 1 by Solo attended by Sola',
      'Let Soli stand by | covers off run 1 by Solo attended by Soli',
      'Add a crew to the job that can stand by',
      'Let Solo stand by | covers on run 1 by Sola attended by Solo',
      'Let Soli stand by | covers on run 1 by Sola attended by Soli',
      'Add a crew to the job that can stand by',
    ],
  ],
])('%s', (_, of, lines, kind, expected) => expect(offered(of, lines, kind)).toEqual(expected));
