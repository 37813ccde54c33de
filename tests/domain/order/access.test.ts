// Where nobody can stand beside the trough, and which platforms do not reach: at the borders, and told once.

import { describe, expect, test } from 'vitest';
import type { Access, Conveyor } from '../../../src/domain/model/conveyor.js';
import type { Job } from '../../../src/domain/model/job.js';
import { accessSlips, reaches } from '../../../src/domain/order/access.js';
import { mm, origin, use } from '../../kit/estate.js';
import { before, check, everywhere, job, line, platform, walked, withOrder } from './stories.js';

const zone = (name: string, from: number, to: number, facts: Partial<Access> = {}): Access => ({
  ...everywhere,
  name,
  from: mm(from),
  to: mm(to),
  ...facts,
});
const mobile = (name: string, from: number, to: number, height = 9000): Access =>
  zone(name, from, to, { kind: 'mobile platform', height: mm(height) });

/** Each slip as `step: from to to, zone, platform`, in the order they are told. */
function told(access: readonly Access[], lines: readonly string[], facts: Partial<Job> = {}): string[] {
  const of = job(line([4], [10, 10], { access: [...access] }), ['all'], facts);
  return accessSlips(walked(of, lines)).map(({ step, gap, zone: where, unit }) =>
    [
      `${lines[step]}: ${gap.from} to ${gap.to}`,
      ...(where ? [where.name] : []),
      ...(unit ? [unit.name] : []),
    ].join(', '),
  );
}

describe('without access', () => {
  const strip = ['isolate', 'prove dead', 'gas test run 1', 'strip run 1', 'clean run 1'];
  test.each<readonly [string, readonly Access[], readonly string[], readonly string[]]>([
    ['floor all along', [zone('F', 0, 4000)], strip, []],
    [
      'the first step that lays hands on it is told, the next is not',
      [zone('F', 0, 1500)],
      strip,
      ['strip run 1: 1500 to 4000'],
    ],
    [
      'a gap at each end is told for itself',
      [zone('F', 1000, 3000)],
      strip,
      ['strip run 1: 0 to 1000', 'strip run 1: 3000 to 4000'],
    ],
    [
      'each gap at the step that runs into it',
      [zone('F', 1000, 3000)],
      [...before, 'strip panel 4 of run 1', 'strip panel 1 of run 1'],
      ['strip panel 4 of run 1: 3000 to 4000', 'strip panel 1 of run 1: 0 to 1000'],
    ],
    ['two zones that meet', [zone('F', 0, 2000), zone('G', 2000, 4000)], strip, []],
    ['a millimetre between zones is none', [zone('F', 0, 1999), zone('G', 2000, 4000)], strip, []],
    [
      'two millimetres are',
      [zone('F', 0, 1998), zone('G', 2000, 4000)],
      strip,
      ['strip run 1: 1998 to 2000'],
    ],
    ['work that stays on the floor', [zone('F', 0, 1500)], ['strip from 0 mm to 1500 mm'], []],
    ['a millimetre over its edge', [zone('F', 0, 1500)], ['strip from 0 mm to 1501 mm'], []],
    [
      'two millimetres over its edge',
      [zone('F', 0, 1500)],
      ['strip from 0 mm to 1502 mm'],
      ['strip from 0 mm to 1502 mm: 1500 to 4000'],
    ],
    ['the drive at the head, on the floor', [zone('F', 1000, 4000)], ['unbolt drive'], []],
    [
      'the drive at the head, in the air',
      [zone('F', 0, 3000)],
      ['unbolt drive'],
      ['unbolt drive: 3000 to 4000'],
    ],
    ['no access anywhere', [], strip, ['strip run 1: 0 to 4000']],
    ['what is done from elsewhere', [], ['isolate', 'prove dead', 'empty', 'pause', 'run empty'], []],
    ['air is tested with a hose', [], ['gas test all'], []],
  ])('%s', (_, access, lines, expected) => {
    expect(told(access, lines)).toEqual(expected);
  });

  test('the drive at the tail', () => {
    const at = (access: readonly Access[]): number => {
      const made: Conveyor = line([4], [10, 10], {
        access: [...access],
        drive: { end: 'tail', origin: origin() },
      });
      return accessSlips(walked(job(made, ['all']), ['unbolt drive'])).length;
    };
    expect([at([zone('F', 0, 1000)]), at([zone('F', 1000, 4000)])]).toEqual([0, 1]);
  });
});

describe('from mobile platforms', () => {
  const both = [mobile('Low', 0, 2000, 5000), mobile('High', 2000, 4000, 9000)];
  const strip = 'strip run 1';
  test.each<readonly [string, readonly Access[], readonly string[], Partial<Job>, readonly string[]]>([
    ['the job has none', [mobile('Z', 0, 4000)], [strip], {}, ['strip run 1: 0 to 4000, Z']],
    ['it reaches just so', [mobile('Z', 0, 4000)], [strip], { accessUnits: [platform('MP1', 9000)] }, []],
    [
      'a millimetre short',
      [mobile('Z', 0, 4000)],
      [strip],
      { accessUnits: [platform('MP1', 8999)] },
      ['strip run 1: 0 to 4000, Z, MP1'],
    ],
    [
      'told once a zone',
      [mobile('Z', 0, 4000)],
      [strip, 'clean run 1'],
      { accessUnits: [platform('MP1', 8999)] },
      ['strip run 1: 0 to 4000, Z, MP1'],
    ],
    [
      'one of several reaches',
      [mobile('Z', 0, 4000)],
      [strip],
      { accessUnits: [platform('MP1', 5000), platform('MP2', 9000)] },
      [],
    ],
    [
      'none of several does: the first is named',
      [mobile('Z', 0, 4000)],
      [strip],
      { accessUnits: [platform('MP1', 5000), platform('MP2', 6000)] },
      ['strip run 1: 0 to 4000, Z, MP1'],
    ],
    [
      'the step names one that does not',
      [mobile('Z', 0, 4000)],
      ['strip run 1 using MP1'],
      { accessUnits: [platform('MP1', 5000), platform('MP2', 9000)] },
      ['strip run 1 using MP1: 0 to 4000, Z, MP1'],
    ],
    [
      'the step names one that does, beside one that does not',
      [mobile('Z', 0, 4000)],
      ['strip run 1 using MP2'],
      { accessUnits: [platform('MP1', 5000), platform('MP2', 9000)] },
      [],
    ],
    [
      'one that nobody declared is told elsewhere',
      [mobile('Z', 0, 4000)],
      [strip],
      { accessUnits: [platform('MP1', 5000), { use: use('MP9') }] },
      [],
    ],
    [
      'each zone by its own height',
      both,
      [strip],
      { accessUnits: [platform('MP1', 7000)] },
      ['strip run 1: 2000 to 4000, High, MP1'],
    ],
    [
      'a zone that the step does not touch',
      both,
      ['strip panels 1 to 2 of run 1'],
      { accessUnits: [platform('MP1', 7000)] },
      [],
    ],
    ['a floor needs none', [zone('F', 0, 4000, { height: mm(9000) })], [strip], {}, []],
    ['a scaffold needs none', [zone('S', 0, 4000, { kind: 'scaffold', height: mm(9000) })], [strip], {}, []],
  ])('%s', (_, access, lines, facts, expected) => {
    expect(told(access, lines, facts)).toEqual(expected);
  });

  test('what is not stated is taken to reach', () => {
    const { unit } = platform('MP1', 5000);
    if (!unit) throw new Error('The story declares it.');
    const { reach: _, ...boundless } = unit;
    const { height: __, ...anywhere } = mobile('Z', 0, 4000);
    expect([
      reaches(unit, mobile('Z', 0, 4000, 5000)),
      reaches(unit, mobile('Z', 0, 4000, 5001)),
      reaches(boundless, mobile('Z', 0, 4000, 90_000)),
      reaches(unit, anywhere),
    ]).toEqual([true, false, true, true]);
  });
});

test('what is said of it', () => {
  const words = (access: readonly Access[], facts: Partial<Job> = {}): readonly string[] =>
    check(job(line([4], [10, 10], { access: [...access] }), ['all'], facts), [...before, 'strip run 1'])
      .filter(({ kind }) => kind.startsWith('no access'))
      .map(({ kind, grade, message, reason, repairs }) =>
        [kind, grade, message, reason, ...repairs.map(({ title }) => title)].join(' | '),
      );
  const why =
    'Nobody can work on a stretch that nobody can stand beside; say how it is reached, or hire what reaches it.';
  const hire = 'Add an access unit to the job that reaches, or a scaffold to the conveyor';
  const { name: _, ...nameless } = mobile('Z', 0, 4000);
  const { height: __, ...flat } = nameless;
  const { unit } = platform('MP1', 5000);
  expect(unit).toBeDefined();
  expect(words([zone('F', 0, 1500)])).toEqual([
    `no access | unsafe | "strip run 1" works where no access is declared: 1.50 m to 4.00 m. | ${why} | Declare the access there on the conveyor (ground, platform, mobile platform, scaffold)`,
  ]);
  expect(words([mobile('Z', 0, 4000)])).toEqual([
    `no access unit | unsafe | "strip run 1" works from Z (mobile platform, 0.00 m to 4.00 m), and the job has no access unit. | ${why} | ${hire}`,
  ]);
  expect(words([flat])).toEqual([
    `no access unit | unsafe | "strip run 1" works from a zone (mobile platform, 0.00 m to 4.00 m), and the job has no access unit. | ${why} | ${hire}`,
  ]);
  expect(words([mobile('Z', 0, 4000)], { accessUnits: [platform('MP1', 5000)] })).toEqual([
    `no access unit | unsafe | "strip run 1" works from Z at 9.00 m, and MP1 reaches 5.00 m. | ${why} | ${hire}`,
  ]);
  expect(words([nameless], { accessUnits: [platform('MP1', 5000)] })).toEqual([
    `no access unit | unsafe | "strip run 1" works from a mobile platform at 9.00 m, and MP1 reaches 5.00 m. | ${why} | ${hire}`,
  ]);
});

test('an order that nobody walks through has nothing to tell', () => {
  expect(withOrder(job(line([1], [0, 0]), []), []).order?.steps).toEqual([]);
  expect(told([], [])).toEqual([]);
});
