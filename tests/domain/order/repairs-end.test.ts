// Repairs come to an end, whichever are taken: orders spoiled at random, and repairs picked at random until none is offered.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Job } from '../../../src/domain/model/job.js';
import { changeJob } from '../../../src/domain/order/change-steps.js';
import { checkOrder } from '../../../src/domain/order/check-order.js';
import { stepText } from '../../../src/domain/order/words.js';
import { origin, stated } from '../../kit/estate.js';
import { afterwards, before, cover, crew, holdDown, job, line, step, worldOf } from './stories.js';

const conveyor = line([2, 2], [0, 20, 20], {
  incline: stated('angle', 20),
  confinedSpace: true,
  covers: [cover(0, 2100), cover(2100, 4200)],
  holdDowns: [holdDown(1000)],
});
const of = job(conveyor, ['all'], {
  crews: [crew('Alpha'), crew('Bravo')],
  screwChange: { screw: conveyor.screw, origin: origin() },
});
const world = worldOf(of);
const lines = [
  'empty',
  ...before,
  'gas test all',
  'gate shut Gate1',
  'covers off all by Alpha',
  'hold-downs off all by Alpha',
  'restrain screw by Alpha',
  'unbolt drive by Alpha',
  'remove screw by Alpha attended by Bravo hot work shielded wet',
  'fire watch all takes 1 h',
  'x: strip all by Alpha attended by Bravo',
  'a: clean run 1 by Alpha with 2 people after x',
  'b: clean run 2 by Bravo with 2 people after x',
  'fit run 2 starting at head by Alpha attended by Bravo',
  'fit run 1 starting at tail by Alpha attended by Bravo',
  'insert screw by Alpha attended by Bravo hot work shielded wet',
  'fire watch all takes 1 h',
  'bolt drive by Alpha',
  'release screw by Alpha',
  'hold-downs on all by Alpha',
  'covers on all by Alpha',
  'gate open Gate1',
  ...afterwards,
];
const more = [
  'isolate',
  'prove dead',
  'strip run 1',
  'pause',
  'patch run 2',
  'gate off Gate1',
  'covers on run 1',
  'remove isolation',
];

/** A line taken out, doubled or moved, several times over. */
const spoiled = fc
  .array(
    fc.record({ what: fc.constantFrom('out', 'move', 'more', 'turn'), at: fc.nat(99), to: fc.nat(99) }),
    {
      minLength: 1,
      maxLength: 6,
    },
  )
  .map((slips) =>
    slips.reduce<string[]>((all, { what, at, to }) => {
      const i = at % Math.max(1, all.length);
      const j = to % Math.max(1, all.length);
      const line = all[i] ?? 'isolate';
      if (what === 'out') return all.filter((_, k) => k !== i);
      if (what === 'turn')
        return all.map((each) =>
          each.replace(
            /starting at (head|tail)/,
            (_, end) => `starting at ${end === 'head' ? 'tail' : 'head'}`,
          ),
        );
      if (what === 'more') return [...all.slice(0, j), more[at % more.length] ?? 'pause', ...all.slice(j)];
      const rest = all.filter((_, k) => k !== i);
      return [...rest.slice(0, j), line, ...rest.slice(j)];
    }, lines),
  );

const made = (some: readonly string[]): Job => ({
  ...of,
  order: { steps: some.map((each) => step(each, of)), origin: origin() },
});

test('the order that is spoiled is sound', () => {
  expect(checkOrder(made(lines), world).map(({ message }) => message)).toEqual([]);
});

test('taking offered repairs ends, and leaves fewer complaints or earlier ones each time', () => {
  fc.assert(
    fc.property(spoiled, fc.array(fc.nat(20), { minLength: 40, maxLength: 40 }), (some, picks) => {
      let now = made(some);
      const seen = new Set<string>();
      for (const pick of picks) {
        const text = (now.order?.steps ?? []).map(stepText).join('\n');
        expect(seen.has(text)).toBe(false);
        seen.add(text);
        const offered = checkOrder(now, world).flatMap(({ repairs }) =>
          repairs.filter(({ changes }) => changes.length > 0),
        );
        const repair = offered[pick % Math.max(1, offered.length)];
        if (!repair) return;
        expect(repair.title).not.toMatch(/undefined|NaN/);
        now = changeJob(now, repair.changes);
      }
      throw new Error('Forty repairs and still more are offered.');
    }),
    { seed: 20_261_126, numRuns: 60 },
  );
});

test.each([
  ['prove dead', 'isolate'],
  ['prove dead', 'isolate', 'prove dead'],
])('where the order of %s, %s is wrong, nobody is told to leave one of them out', (...first) => {
  const some = ['empty', ...first, ...lines.slice(3)];
  const found = checkOrder(made(some), world);
  expect(found[0]?.kind).toBe('isolation missing');
  expect(found[0]?.repairs[0]?.title).toBe('Move "isolate" before "prove dead"');
  const titles = found.flatMap(({ repairs }) => repairs.map(({ title }) => title));
  expect(titles.filter((title) => title.includes('Leave out the second "isolate"'))).toEqual([]);
});
