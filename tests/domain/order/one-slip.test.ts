// One step of a good order moved to every other place, or left out: the complaints are few, the first has a repair, and
// taking the first repair again and again soon gives an order that can be built.

import { expect, test } from 'vitest';
import type { Job, Step } from '../../../src/domain/model/job.js';
import { checkOrder } from '../../../src/domain/order/check-order.js';
import { changeJob } from '../../../src/domain/order/change-steps.js';
import { origin, stated } from '../../kit/estate.js';
import { afterwards, before, brace, cover, crew, holdDown, job, line, step, worldOf } from './stories.js';

const conveyor = line([2, 3], [0, 20, 20], {
  incline: stated('angle', 20),
  confinedSpace: true,
  covers: [0, 1, 2, 3, 4].map((k) => cover(k * 1040, (k + 1) * 1040)),
  braces: [brace(1500), brace(4000)],
  holdDowns: [1000, 2500, 4500].map(holdDown),
});
const over = (action: string): string[] => [`${action} run 2`, `${action} run 1`];
const reline = [
  'gate shut Gate1',
  ...before,
  'gas test',
  ...over('covers off'),
  ...over('braces off'),
  ...over('hold-downs off'),
  ...over('strip'),
  ...over('clean'),
  'fit run 2 starting at head',
  'fit run 1 starting at tail',
  ...over('hold-downs on'),
  ...over('braces on'),
  ...over('covers on'),
  'gate open Gate1',
  ...afterwards,
];
const rescrew = [
  'gate shut Gate1',
  ...before,
  'gas test',
  'covers off',
  'braces off',
  'hold-downs off',
  'restrain screw',
  'unbolt drive',
  'remove screw',
  ...over('strip'),
  ...over('clean'),
  'fit run 2 starting at head',
  'fit run 1 starting at tail',
  'insert screw',
  'bolt drive',
  'release screw',
  'hold-downs on',
  'braces on',
  'covers on',
  'gate open Gate1',
  ...afterwards,
];

function* slips(steps: readonly Step[]): Generator<Step[]> {
  for (let from = 0; from < steps.length; from++) {
    const rest = steps.filter((_, i) => i !== from);
    yield rest;
    for (let to = 0; to < steps.length; to++)
      if (to !== from) yield [...rest.slice(0, to), ...steps.slice(from, from + 1), ...rest.slice(to)];
  }
}

test.each([
  ['a reline', reline, false],
  ['a reline with a new screw', rescrew, true],
])('%s', (_, lines, screw) => {
  const of = job(conveyor, ['all'], {
    crews: [crew('Alpha', 4)],
    ...(screw
      ? { screwChange: { screw: conveyor.screw, cut: 'cold', joints: 'bolted', origin: origin() } }
      : {}),
  });
  const world = worldOf(of);
  // Of four one always stays outside.
  const steps = lines.map((text) => ({ ...step(text, of), aboard: { count: 3, origin: origin() } }));
  expect(checkOrder({ ...of, order: { steps, origin: origin() } }, world)).toEqual([]);
  const counts: number[] = [];
  for (const slipped of slips(steps)) {
    let now: Job = { ...of, order: { steps: slipped, origin: origin() } };
    let left = checkOrder(now, world);
    counts.push(left.length);
    for (let round = 0; left.length > 0 && round < 6; round++) {
      now = changeJob(now, left[0]?.repairs.find(({ changes }) => changes.length > 0)?.changes ?? []);
      left = checkOrder(now, world);
    }
    if (left.length > 0)
      expect({ order: slipped.map((each) => each.action), left: left.map((each) => each.message) }).toEqual(
        {},
      );
  }
  expect(Math.max(...counts)).toBeLessThanOrEqual(3);
  expect(counts.filter((count) => count > 1).length).toBeLessThan(counts.length / 4);
});
