// Which gates have to be shut above whoever is in the trough: by the slope and not by the chainage, the nearest one, up to its
// edge; and what an order is told and offered where they are not.

import { describe, expect, test } from 'vitest';
import type { Break, Conveyor, GateDrive } from '../../../src/domain/model/conveyor.js';
import { stepActions, type Job } from '../../../src/domain/model/job.js';
import { changeJob } from '../../../src/domain/order/change-steps.js';
import { checkOrder } from '../../../src/domain/order/check-order.js';
import { gateDrive, gatesAbove } from '../../../src/domain/order/gates-above.js';
import { stepText } from '../../../src/domain/order/words.js';
import { gap, origin, stated } from '../../kit/estate.js';
import { afterwards, before, check, crew, job, kinds, line, step, withOrder, worldOf } from './stories.js';

const on = (incline: number, facts: Partial<Conveyor> = {}): Conveyor =>
  line([2, 2, 2], [10, 10, 10, 10], { incline: stated('angle', incline), ...facts });
const above = (conveyor: Conveyor, text: string, from: number, to: number): string[] =>
  gatesAbove(conveyor, step(text), [{ from, to }]).map(({ name }) => name);
const driven = (conveyor: Conveyor, drive: GateDrive): Conveyor => ({
  ...conveyor,
  breaks: conveyor.breaks.map((each): Break => (each.kind === 'slide gate' ? { ...each, drive } : each)),
});

/** The order after the first repair of the first complaint, and what is then left. */
function mended(of: Job, lines: readonly string[]): { left: string[]; text: string[] } {
  const written = withOrder(of, lines);
  const [repair] = checkOrder(written, worldOf(of))[0]?.repairs ?? [];
  const after = changeJob(written, repair?.changes ?? []);
  return {
    left: checkOrder(after, worldOf(of)).map(({ kind }) => kind),
    text: (after.order?.steps ?? []).map(stepText),
  };
}

describe('which gates', () => {
  // Gates from 2.0 m to 2.2 m and from 4.2 m to 4.4 m; the trough ends at 6.4 m.
  test.each([
    ['the nearest above', 20, 0, 2000, ['Gate1']],
    ['up to its edge', 20, 2200, 4200, ['Gate2']],
    ['a millimetre over its edge', 20, 2200, 4201, ['Gate2']],
    ['into it', 20, 2200, 4300, ['Gate2']],
    ['none above the highest', 20, 4400, 6400, []],
    ['across one: for the part below it', 20, 1000, 4000, ['Gate1', 'Gate2']],
    ['all of the trough', 20, 0, 6400, ['Gate1', 'Gate2']],
    ['where the machine falls, the other way', -20, 4400, 6400, ['Gate2']],
    ['its foot is at the head then', -20, 0, 2000, []],
    ['and the edge is the other one', -20, 2200, 4200, ['Gate1']],
    ['none on the level', 0, 0, 6400, []],
  ])('%s', (_, incline, from, to, names) => {
    expect(above(on(incline), 'strip', from, to)).toEqual(names);
  });
  test('whoever carries the spiral through a gate is not below it', () => {
    expect(above(on(20), 'remove screw', 0, 6400)).toEqual([]);
    expect(above(on(20), 'insert screw', 0, 3000)).toEqual(['Gate2']);
    expect(above(on(20), 'join screw', 0, 1000)).toEqual(['Gate1']);
  });
  test('and nobody needs the gate that he strips', () => {
    expect(above(on(20), 'gate off Gate1', 2000, 2200)).toEqual(['Gate2']);
    const flat = {
      ...on(20),
      breaks: [gap('Gate1', 'slide gate', 2000, 2000), gap('Gate2', 'slide gate', 4000, 4000)],
    };
    expect(above(flat, 'gate on Gate1', 2000, 2000)).toEqual(['Gate2']);
    expect(above(flat, 'gate on Gate2', 4000, 4000)).toEqual([]);
  });
  test('for work inside, not at the rim', () => {
    const inside = stepActions.filter(
      (action) => !action.startsWith('gate ') && above(on(20), action, 0, 1000).length > 0,
    );
    expect(inside).toEqual([
      'remove screw',
      'strip',
      'clean',
      'patch',
      'other work',
      'fit',
      'insert screw',
      'join screw',
    ]);
  });
});

describe('what moves a gate', () => {
  const point = (kind: Conveyor['isolations'][number]['kind']): Conveyor['isolations'][number] => ({
    name: 'Q9',
    kind,
    origin: origin(),
  });
  test.each([
    ['what its break says', 'hand', ['hydraulic'], 'hand'],
    ['else the hydraulics that are isolated', undefined, ['electrical', 'hydraulic'], 'hydraulics'],
    ['or the air', undefined, ['pneumatic'], 'air'],
    [
      'nothing is known of it by the motor of the machine',
      undefined,
      ['electrical', 'mechanical'],
      undefined,
    ],
  ] as const)('%s', (_, drive, points, expected) => {
    const made = { ...on(20), isolations: points.map(point) };
    expect(gateDrive(drive ? driven(made, drive) : made, 'Gate1')).toBe(expected);
    expect(gateDrive(made, 'Tail')).toBeUndefined();
  });
});

describe('an order', () => {
  const of = job(driven(on(20), 'hydraulics'), ['run 2']);
  const work = ['strip run 2', 'clean run 2', 'fit run 2 starting at head'];
  const sound = [
    'gate shut Gate2',
    ...before,
    ...work,
    'remove isolation',
    'gate open Gate2',
    'run empty',
    'run loaded',
  ];
  const without = (text: string): string[] => sound.filter((each) => each !== text);
  const put = (text: string, place: string): string[] =>
    without(text).flatMap((each) => (each === place ? [text, each] : [each]));

  test('that shuts the gate first and opens it last is sound', () => {
    expect(kinds(of, sound)).toEqual([]);
  });
  test.each([
    ['never shut', sound.filter((each) => !each.startsWith('gate')), ['gate above open']],
    ['shut too late', put('gate shut Gate2', 'clean run 2'), ['gate above open']],
    ['shut after isolation', put('gate shut Gate2', 'strip run 2'), ['gate locked']],
    ['the wrong gate', sound.map((each) => each.replace('Gate2', 'Gate1')), ['gate above open']],
    [
      'opened while people are below',
      put('gate open Gate2', 'fit run 2 starting at head'),
      ['gate opened above people', 'gate locked'],
    ],
    ['opened before it has its energy', put('gate open Gate2', 'remove isolation'), ['gate locked']],
    ['never opened', without('gate open Gate2'), ['run too early']],
  ])('%s: told, and mended in one go or two', (_, lines, expected) => {
    expect(kinds(of, lines)).toEqual(expected);
    const first = mended(of, lines);
    const second = first.left.length > 0 ? mended(of, first.text) : first;
    expect(second.left).toEqual([]);
    expect(second.text.filter((each) => each.includes('Gate2'))).toEqual([
      'gate shut Gate2',
      'gate open Gate2',
    ]);
    expect(second.text.indexOf('gate shut Gate2')).toBeLessThan(second.text.indexOf('isolate'));
    expect(second.text.indexOf('gate open Gate2')).toBeGreaterThan(second.text.indexOf('remove isolation'));
  });
  test('by hand a gate moves at any time, and is open before the machine is handed back', () => {
    const hand = job(driven(on(20), 'hand'), ['run 2']);
    expect(kinds(hand, sound)).toEqual(['handed back too early']);
    expect(kinds(hand, put('gate open Gate2', 'remove isolation'))).toEqual([]);
    const inside = put('gate open Gate2', 'remove isolation').filter((each) => each !== 'gate shut Gate2');
    expect(
      kinds(
        hand,
        inside.flatMap((each) => (each === 'strip run 2' ? ['gate shut Gate2', each] : [each])),
      ),
    ).toEqual([]);
  });
  test('a trough is not run empty against a shut gate', () => {
    expect(kinds(of, ['gate shut Gate2', 'empty', ...sound.slice(1)])).toEqual(['run too early']);
  });
  test('two crews: who opens it waits for whoever is below', () => {
    const crews = [crew('Alpha'), crew('Bravo')];
    const two = job(driven(on(20), 'hand'), ['run 2'], { crews });
    const lines = [
      'gate shut Gate2 by Alpha',
      ...before.map((each) => `${each} by Alpha`),
      's: strip run 2 by Alpha',
      'c: clean run 2 by Alpha after s',
      'o: gate open Gate2 by Bravo after s',
      'f: fit run 2 starting at head by Alpha after c',
      ...afterwards.map((each, k) => (k === 0 ? `${each} by Alpha after f, o` : `${each} by Alpha`)),
    ];
    const found = check(two, lines);
    expect(found.map(({ kind }) => kind)).toEqual(['gate opened above people']);
    expect(mended(two, lines).left).toEqual([]);
  });
});
