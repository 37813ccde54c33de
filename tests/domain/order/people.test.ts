// Who is alone inside an enclosed trough, and how many people a platform takes: tables with the borders.

import { describe, expect, test } from 'vitest';
import type { Access, Conveyor } from '../../../src/domain/model/conveyor.js';
import { stepActions, type Job } from '../../../src/domain/model/job.js';
import type { AccessUnit } from '../../../src/domain/model/plant.js';
import { aloneInside, overloads, peopleOn, reachesInside } from '../../../src/domain/order/people.js';
import { loadAboard, peopleAboard } from '../../../src/domain/order/platform.js';
import { liner, mm, origin, stated, use } from '../../kit/estate.js';
import { cover, crew, everywhere, job, line, platform, step, walked } from './stories.js';

describe('alone inside', () => {
  test('these are done from beside the trough', () => {
    const outside = stepActions.filter((action) => !reachesInside(step(action)));
    expect(outside).toEqual([
      'empty',
      'isolate',
      'prove dead',
      'gas test',
      'pause',
      'gate shut',
      'other work',
      'fire watch',
      'gate open',
      'remove isolation',
      'run empty',
      'run loaded',
    ]);
  });

  const enclosed = line([2], [10, 10], { confinedSpace: true });
  const solo = crew('Solo', 1);
  const pair = crew('Pair', 2);
  const unknown = { use: use('Who') };
  test.each<readonly [string, Conveyor, Job['crews'], string, boolean]>([
    ["the job's only crew is one person", enclosed, [solo], 'strip', true],
    ["the job's only crew is two", enclosed, [pair], 'strip', false],
    ['the trough is open', line([2], [10, 10]), [solo], 'strip', false],
    ['from beside the trough', enclosed, [solo], 'gas test', false],
    ['any of several may come, and one has two', enclosed, [solo, pair], 'strip', false],
    ['any of several may come, all of one', enclosed, [solo, crew('Sola', 1)], 'strip', true],
    ['two crews of one', enclosed, [solo, crew('Sola', 1)], 'strip by Solo, Sola', false],
    ['named', enclosed, [solo, pair], 'strip by Solo', true],
    ['somebody stands by', enclosed, [solo, pair], 'strip by Solo attended by Pair', false],
    ['he stands by himself', enclosed, [solo, pair], 'strip by Solo attended by Solo', true],
    ['a crew that nobody declared', enclosed, [solo, unknown], 'strip by Who', false],
    ['one of the crews is not known', enclosed, [solo, unknown], 'strip by Solo, Who', false],
    ['no crew at all', enclosed, [], 'strip', false],
  ])('%s', (_, conveyor, crews, text, expected) => {
    const found = aloneInside(walked(job(conveyor, ['all'], { crews }), ['isolate', text]));
    expect(found).toEqual(expected ? [{ step: 1 }] : []);
  });

  test('how many come', () => {
    const on = (crews: Job['crews'], text: string): readonly (number | undefined)[] => {
      const of = job(enclosed, ['all'], { crews });
      const w = walked(of, []);
      return [peopleOn(w, step(text, of), Math.min), peopleOn(w, step(text, of), Math.max)];
    };
    const [two, three] = [crew('Two', 2), crew('Three', 3)];
    expect(on([two, three], 'strip')).toEqual([2, 3]);
    expect(on([two, three], 'strip by Two')).toEqual([2, 2]);
    expect(on([two, three], 'strip by Two, Three')).toEqual([5, 5]);
    expect(on([], 'strip')).toEqual([undefined, undefined]);
    expect(on([two, unknown], 'strip')).toEqual([undefined, undefined]);
    expect(on([two, unknown], 'strip by Two, Who')).toEqual([undefined, undefined]);
  });
});

describe('a platform takes', () => {
  const unit = (limit: number | undefined, people?: number): AccessUnit => ({
    name: 'MP1',
    origin: origin(),
    nameOrigin: origin(),
    ...(limit === undefined ? {} : { limit: stated('mass', limit) }),
    ...(people === undefined ? {} : { people: { count: people, origin: origin() } }),
  });
  // 80 kg a person, 40 kg of tools.
  test.each<readonly [number | undefined, number | undefined, number, number]>([
    [200, undefined, 0, 2],
    [199.9, undefined, 0, 1],
    [120, undefined, 0, 1],
    [119, undefined, 0, 0],
    [30, undefined, 0, 0],
    [280, undefined, 80, 2],
    [280, undefined, 81, 1],
    [280, undefined, 300, 0],
    [500, 2, 0, 2],
    [200, 5, 0, 2],
    [undefined, 3, 500, 3],
    [undefined, undefined, 500, Infinity],
    // In floating point 200.1 − 40 − 0.1 is a hair below 160.
    [200.1, undefined, 0.1, 2],
  ])('of %s kg, for %s people, beside %s kg: %s', (limit, people, load, expected) => {
    expect(peopleAboard(unit(limit, people), load)).toBe(expected);
  });

  const made = line([1, 2], [10, 10, 10], {
    covers: [
      { ...cover(0, 1000), mass: stated('mass', 25) },
      { ...cover(1000, 2000), mass: stated('mass', 40) },
      cover(2000, 3200),
    ],
    liner: liner({ panelLengths: [mm(1500)], panelTolerance: mm(1) }),
  });
  // A panel of 1 m of this trough weighs 13.6 kg; run 2 of 2 m has one of 1.5 m, 20.4 kg.
  test.each<readonly [string, number]>([
    ['covers off from 0 mm to 1000 mm', 25],
    ['covers on from 0 mm to 1000 mm', 25],
    ['covers off from 0 mm to 1001 mm', 40],
    ['covers off from 1000 mm to 2000 mm', 40],
    ['covers off from 2000 mm to 3200 mm', 0],
    ['covers off all', 40],
    ['covers on all', 40],
    ['braces off all', 0],
    ['clean all', 0],
    ['strip run 1', 13.6],
    ['fit run 1', 13.6],
    ['strip run 2', 20.4],
    ['fit all', 20.4],
  ])('%s puts %s kg on it', (text, expected) => {
    const of = job(made, ['all']);
    const w = walked(of, [text]);
    const mass = loadAboard(w.ground, step(text, of), w.ground.areas[0] ?? []);
    expect(Math.round(mass * 10) / 10).toBe(expected);
  });

  test.each<readonly [string, number]>([
    ['strip all', 13.6],
    ['strip run 1', 13.6],
    ['covers off all', 25],
    ['covers off from 500 mm to 2000 mm', 25],
  ])('%s, of which a mobile platform serves the first 900 mm, puts %s kg on it', (text, expected) => {
    const access = [
      { ...everywhere, kind: 'mobile platform' as const, to: mm(900) },
      { ...everywhere, from: mm(900) },
    ];
    const of = job({ ...made, access }, ['all']);
    const w = walked(of, [text]);
    const mass = loadAboard(w.ground, step(text, of), w.ground.areas[0] ?? []);
    expect(Math.round(mass * 10) / 10).toBe(expected);
  });

  test('several stretches, of which one has a heavy cover', () => {
    const of = job(made, ['panel 1 of run 1', 'panel 1 of run 2']);
    const w = walked(of, ['covers off']);
    expect(w.ground.areas[0]).toHaveLength(2);
    expect(loadAboard(w.ground, step('covers off', of), w.ground.areas[0] ?? [])).toBe(40);
  });

  test.each([
    [0, 0],
    [225, true],
    [226, 0],
    [300, 0],
  ])('a liner of %s mm in a trough of 226 mm: no mass that cannot be', (thickness, expected) => {
    const odd = line([1], [0, 0], {
      liner: liner({ panelLengths: [mm(1000)], thickness: mm(thickness) }),
    });
    const of = job(odd, ['all']);
    const w = walked(of, ['fit all']);
    const mass = loadAboard(w.ground, step('fit all', of), w.ground.areas[0] ?? []);
    expect(expected === true ? mass > 0 : mass).toBe(expected);
  });
});

describe('overloaded', () => {
  const zone = (
    from: number,
    to: number,
    height: number,
    kind: Access['kind'] = 'mobile platform',
  ): Access => ({
    ...everywhere,
    kind,
    name: 'Z',
    from: mm(from),
    to: mm(to),
    height: mm(height),
  });
  const high = [zone(0, 4000, 9000)];
  const [four, two] = [crew('Four', 4), crew('Two', 2)];

  test.each<
    readonly [string, readonly Access[], Job['crews'], Job['accessUnits'], string, readonly string[]]
  >([
    [
      '2 kg a head short',
      high,
      [four],
      [platform('A', 9000, 359)],
      'clean run 1',
      ['clean run 1: 4 on A, 3'],
    ],
    ['just so', high, [four], [platform('A', 9000, 360)], 'clean run 1', []],
    [
      'the best of several counts, whichever is written first',
      high,
      [four],
      [platform('A', 9000, 200), platform('B', 9000, 290), platform('C', 9000, 130)],
      'clean run 1',
      ['clean run 1: 4 on B, 3'],
    ],
    [
      'one of several takes them',
      high,
      [four],
      [platform('A', 9000, 200), platform('B', 9000, 400)],
      'clean run 1',
      [],
    ],
    [
      'one that does not reach is no help',
      high,
      [four],
      [platform('A', 9000, 200), platform('B', 8999, 400)],
      'clean run 1',
      ['clean run 1: 4 on A, 2'],
    ],
    [
      'it has to reach both zones',
      [zone(0, 2000, 5000), zone(2000, 4000, 9000)],
      [four],
      [platform('A', 9000, 200), platform('B', 5000, 400)],
      'clean run 1',
      ['clean run 1: 4 on A, 2'],
    ],
    [
      'or the one it works in',
      [zone(0, 2000, 5000), zone(2000, 4000, 9000)],
      [four],
      [platform('A', 9000, 200), platform('B', 5000, 400)],
      'clean panels 1 to 2 of run 1',
      [],
    ],
    ['from the floor', [zone(0, 4000, 0, 'ground')], [four], [platform('A', 9000, 200)], 'clean run 1', []],
    [
      'from the floor where the step is, from a platform further on',
      [zone(0, 2000, 0, 'ground'), zone(2000, 4000, 9000)],
      [four],
      [platform('A', 9000, 200)],
      'clean panels 1 to 2 of run 1',
      [],
    ],
    [
      'named, though a floor is there',
      [zone(0, 4000, 0, 'ground')],
      [four],
      [platform('A', 9000, 200), platform('B', 9000, 400)],
      'clean run 1 using A',
      ['clean run 1 using A: 4 on A, 2'],
    ],
    [
      'named, and not declared',
      high,
      [four],
      [platform('A', 9000, 200), { use: use('B') }],
      'clean run 1 using B',
      [],
    ],
    ['so many at a time', high, [four], [platform('A', 9000, 200)], 'clean run 1 with 2 people', []],
    [
      'one too many at a time',
      high,
      [four],
      [platform('A', 9000, 200)],
      'clean run 1 with 3 people',
      ['clean run 1 with 3 people: 3 on A, 2'],
    ],
    ['the smaller crew may come', high, [four, two], [platform('A', 9000, 200)], 'clean run 1', []],
    [
      'the smaller crew is too many',
      high,
      [four, two],
      [platform('A', 9000, 199)],
      'clean run 1',
      ['clean run 1: 2 on A, 1'],
    ],
    [
      'one of a crew that stands by is up there too',
      high,
      [four, two],
      [platform('A', 9000, 359)],
      'clean run 1 by Two attended by Four',
      [],
    ],
    [
      'and is one too many where the platform takes the others only',
      high,
      [four, two],
      [platform('A', 9000, 200)],
      'clean run 1 by Two attended by Four',
      ['clean run 1 by Two attended by Four: 3 on A, 2'],
    ],
    [
      'of those who are said to be up there',
      high,
      [four, two],
      [platform('A', 9000, 200)],
      'clean run 1 by Two attended by Four with 2 people',
      [],
    ],
    [
      'who stands by oneself is counted once',
      high,
      [two],
      [platform('A', 9000, 200)],
      'clean run 1 by Two attended by Two',
      [],
    ],
    ['nobody knows who comes', high, [], [platform('A', 9000, 130)], 'clean run 1', []],
    ['air is tested from below', high, [four], [platform('A', 9000, 200)], 'gas test all', []],
    ['power is cut elsewhere', high, [four], [platform('A', 9000, 200)], 'isolate using A', []],
    ['a stretch that is nowhere', high, [four], [platform('A', 9000, 200)], 'clean run 7', []],
    [
      'with a panel of 13.6 kg',
      high,
      [two],
      [platform('A', 9000, 213)],
      'strip run 1',
      ['strip run 1: 2 on A, 1, beside 13.6 kg'],
    ],
    ['with a panel of 13.6 kg, just so', high, [two], [platform('A', 9000, 214)], 'strip run 1', []],
  ])('%s', (_, access, crews, accessUnits, text, expected) => {
    const of = job(line([4], [10, 10], { access: [...access] }), ['all'], { crews, accessUnits });
    const lines = ['isolate', text];
    expect(
      overloads(walked(of, lines)).map(
        ({ step: at, unit, people, most, load }) =>
          `${lines[at]}: ${people} on ${unit.name}, ${most}${load > 0 ? `, beside ${load.toFixed(1)} kg` : ''}`,
      ),
    ).toEqual(expected);
  });
});
