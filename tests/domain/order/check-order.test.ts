// One story for each thing an order of work can get wrong, and beside it the order that is silent.

import { describe, expect, test } from 'vitest';
import type { Job } from '../../../src/domain/model/job.js';
import { canBeBuilt, checkOrder } from '../../../src/domain/order/check-order.js';
import { changeJob } from '../../../src/domain/order/change-steps.js';
import { stepText } from '../../../src/domain/order/words.js';
import { gap, liner, mm, origin, stated } from '../../kit/estate.js';
import {
  afterwards,
  before,
  brace,
  check,
  cover,
  crew,
  everywhere,
  holdDown,
  job,
  kinds,
  line,
  platform,
  withOrder,
  worldOf,
} from './stories.js';

const slope = stated('angle', 20);
const two = line([4], [10, 10]);
const plain = job(two, ['all']);
const good = [...before, 'strip run 1', 'clean run 1', 'fit run 1 starting at head', ...afterwards];

test('an order that can be built has nothing against it', () => {
  expect(check(plain, good)).toEqual([]);
  expect(canBeBuilt(withOrder(plain, good), worldOf(plain))).toBe(true);
});

test('what cannot be built, or has no order, is not called good', () => {
  expect(canBeBuilt(withOrder(plain, good.slice(1)), worldOf(plain))).toBe(false);
  expect(canBeBuilt(plain, worldOf(plain))).toBe(false);
});

test('what the order as a whole lacks is told at the order', () => {
  const of = withOrder(plain, []);
  expect(checkOrder(of, worldOf(of)).map(({ step, origin: at }) => [step, at])).toEqual([
    [undefined, of.order?.origin],
    [undefined, of.order?.origin],
  ]);
});

describe('repairs are tried for the first complaints only', () => {
  const offered = (lines: readonly string[]): readonly [number, number] => {
    const found = check(plain, lines);
    return [found.length, found.filter(({ repairs }) => repairs.length > 0).length];
  };
  test.each([
    ['sixteen of twenty', 20, 16],
    ['all of sixteen', 16, 16],
  ])('%s', (_, count, expected) => {
    expect(offered([...before, ...Array<string>(count).fill('prove dead'), ...good.slice(2)])).toEqual([
      count,
      expected,
    ]);
  });
  test('fewer in a long order: 1500 complaints times steps', () => {
    const long = [
      ...before,
      ...Array<string>(20).fill('prove dead'),
      ...Array<string>(150).fill('pause'),
      ...good.slice(2),
    ];
    expect(offered(long)).toEqual([20, Math.ceil(1500 / (1 + long.length))]);
  });
});

test('a job without an order has nothing to check', () => {
  expect(checkOrder(plain, worldOf(plain))).toEqual([]);
});

describe('fronts', () => {
  const fits = (...lines: string[]): string[] => [
    ...before,
    'strip run 1',
    'clean run 1',
    ...lines,
    ...afterwards,
  ];

  test('two fronts over a lower end that holds nothing: nobody is told to fit from there', () => {
    const base = line([4], [20, 20], { incline: stated('angle', 20) });
    const of = (kind: 'discharge' | 'end plate'): Job =>
      job({ ...base, breaks: base.breaks.map((each, k) => (k === 0 ? { ...each, kind } : each)) }, ['all']);
    const titles = (kind: 'discharge' | 'end plate'): string[] =>
      check(of(kind), [
        ...before,
        'strip run 1',
        'clean run 1',
        'fit panels 1 to 2 of run 1 starting at tail',
        'fit panels 3 to 4 of run 1 starting at head',
        ...afterwards,
      ]).flatMap(({ repairs }) => repairs.map(({ title }) => title));
    expect(titles('discharge').filter((title) => title.includes('from the tail only'))).toEqual([]);
    expect(
      titles('discharge').filter((title) => title.includes('from the head only')).length,
    ).toBeGreaterThan(0);
    expect(
      titles('end plate').filter((title) => title.includes('from the tail only')).length,
    ).toBeGreaterThan(0);
  });

  test('two fronts in a run: both steps, the closing panel, its error, and repairs that can be built', () => {
    const lines = fits(
      'fit panels 1 to 2 of run 1 starting at tail',
      'fit panels 3 to 4 of run 1 starting at head',
    );
    const [only, ...more] = check(plain, lines);
    expect(more).toEqual([]);
    expect(only?.kind).toBe('two fronts');
    expect(only?.step && stepText(only.step)).toBe('fit panels 3 to 4 of run 1 starting at head');
    expect(only?.conflicts.map(({ step }) => stepText(step))).toEqual([
      'fit panels 1 to 2 of run 1 starting at tail',
    ]);
    // Four panels at ± 1 mm, ± 2 mm of measuring, butted: 4·1 + 2 and √(4·1² + 2²).
    expect(only?.closing).toMatchObject({
      panel: 3,
      panels: 4,
      worst: 6,
      rootSumSquare: Math.sqrt(8),
      allowance: undefined,
    });
    expect(only?.reason).toContain('6 mm at worst');
    const mended = (only?.repairs ?? [])
      .filter(({ changes }) => changes.length > 0)
      .map(({ changes }) => changeJob(withOrder(plain, []), []) && changes);
    expect(mended.length).toBeGreaterThanOrEqual(2);
    expect(only?.repairs.at(-1)?.title).toContain('Declare a break');
  });

  test.each([['tail'], ['head']])('the same run with one front from the %s is silent', (start) => {
    const panels = start === 'tail' ? ['1 to 2', '3 to 4'] : ['3 to 4', '1 to 2'];
    expect(
      kinds(plain, fits(...panels.map((each) => `fit panels ${each} of run 1 starting at ${start}`))),
    ).toEqual([]);
  });

  test('the whole run fitted by two crews from both ends', () => {
    const of = job(two, ['all'], { crews: [crew('Alpha'), crew('Bravo')] });
    const lines = [
      ...before,
      'strip run 1',
      's: clean run 1',
      'a: fit run 1 starting at head by Alpha after s',
      'b: fit run 1 starting at tail by Bravo after s',
      ...afterwards,
    ];
    const [only, ...more] = check(of, lines);
    expect([only?.kind, more]).toEqual(['two fronts', []]);
    const first = only?.repairs[0];
    expect(
      first && checkOrder(changeJob(withOrder(of, lines), []), worldOf(of)).map((each) => each.kind),
    ).toEqual(['two fronts']);
  });

  test('a panel with nothing to push against', () => {
    const [only, ...more] = check(
      plain,
      fits('fit panels 2 to 4 of run 1 starting at tail', 'fit panel 1 of run 1 starting at tail'),
    );
    expect(more).toEqual([]);
    expect(only?.kind).toBe('not contiguous');
    expect(only?.message).toContain('panel 1 of run 1 is not fitted');
    expect(only?.repairs[0]?.title).toBe(
      'Move "fit panel 1 of run 1 from the tail" before "fit panels 2 to 4 of run 1 from the tail"',
    );
  });

  test('two runs are independent', () => {
    const of = job(line([2, 2], [10, 10, 10]), ['all']);
    expect(
      kinds(of, [
        ...before,
        'strip all',
        'clean all',
        'fit run 1 starting at tail',
        'fit run 2 starting at head',
        ...afterwards,
      ]),
    ).toEqual([]);
  });
});

describe('closing', () => {
  const fit = (start: string): string[] => [
    ...before,
    'strip run 1',
    'clean run 1',
    `fit run 1 starting at ${start}`,
    ...afterwards,
  ];

  test('eight panels of ± 1 mm: ± 8 mm at worst, ± 2.8 mm root-sum-square', () => {
    const of = job(line([8], [7.9, 0]), ['all'], { measuringTolerance: mm(0) });
    const [only] = check(of, fit('head'));
    expect(only?.kind).toBe('closing error too large');
    expect(only?.closing?.worst).toBe(8);
    expect(only?.closing?.rootSumSquare).toBeCloseTo(2.83, 2);
    expect(kinds(job(line([8], [8, 0]), ['all'], { measuringTolerance: mm(0) }), fit('head'))).toEqual([]);
  });

  test('a firm end takes nothing; turned round it closes at the gate', () => {
    const of = job(line([4], [0, 10]), ['all']);
    const [only, ...more] = check(of, fit('head'));
    expect([only?.kind, more]).toEqual(['closing error too large', []]);
    expect(only?.reason).toContain('Head takes up 10 mm: start at Tail and close there');
    expect(only?.repairs.map(({ title }) => title)).toEqual(['Start "fit run 1 from the tail" instead']);
  });

  // 12 m × 20 K × 200e-6 = 48.0 mm free; against carbon steel (12e-6) 45.12, against stainless (16e-6) 44.16.
  test('growth against the trough counts where joints are gaps, less what the gaps between the panels take', () => {
    const spec = (gap: number) =>
      liner({
        panelLengths: [mm(1000)],
        panelTolerance: mm(1),
        joint: { policy: 'gap', gap: mm(gap), origin: origin() },
        expansion: stated('expansion', 200e-6),
      });
    const range = (from: number, to: number) => ({
      from: stated('temperature', from),
      to: stated('temperature', to),
    });
    const warm = (gap: number, material?: string) => {
      const of = line([12], [10, 0], { liner: spec(gap), serviceTemperature: range(10, 30) });
      const steel = material === undefined ? of : { ...of, trough: { ...of.trough, material } };
      return check(job(steel, ['all'], { fittingTemperature: range(10, 10) }), fit('head'))[0]?.closing;
    };
    expect(warm(0)?.growth).toBeCloseTo(45.12, 9);
    expect(warm(0)?.worst).toBeCloseTo(12 + 2 + 45.12, 9);
    expect(warm(0, '1.4301')?.growth).toBeCloseTo(44.16, 9);
    // Eleven gaps between twelve panels.
    expect(warm(3)?.growth).toBeCloseTo(45.12 - 33, 9);
    expect(warm(5)?.growth ?? 0).toBe(0);
    const unknown = line([12], [10, 0], { liner: spec(0) });
    expect(check(job(unknown, ['all']), fit('head'))[0]?.closing?.growth).toBeUndefined();
    expect(check(job(unknown, ['all']), fit('head'))[0]?.reason).toContain('growth left out');
  });

  test('between two old neighbours a hole cannot be closed; the repair says which panels must come off too', () => {
    const some = job(two, ['panel 2 of run 1']);
    const lines = [
      ...before,
      'strip panel 2 of run 1',
      'clean panel 2 of run 1',
      'fit panel 2 of run 1 starting at tail',
      ...afterwards,
    ];
    const [only, ...more] = check(some, lines);
    expect([only?.kind, more]).toEqual(['closes inside the run', []]);
    expect(only?.repairs.map(({ title }) => title)).toEqual([
      'Take off panels 3 to 4 too and close at Head',
      'Take off panel 1 too and close at Tail',
    ]);
  });

  test('the panels next to a break close there', () => {
    const some = job(two, ['panels 3 to 4 of run 1']);
    expect(
      kinds(some, [
        ...before,
        'strip panels 3 to 4 of run 1',
        'clean panels 3 to 4 of run 1',
        'fit panels 3 to 4 of run 1 starting at tail',
        ...afterwards,
      ]),
    ).toEqual([]);
    const [only] = check(some, [
      ...before,
      'strip panels 3 to 4 of run 1',
      'clean panels 3 to 4 of run 1',
      'fit panels 3 to 4 of run 1 starting at head',
      ...afterwards,
    ]);
    expect(only?.kind).toBe('closes inside the run');
    expect(only?.repairs[0]?.title).toBe('Start "fit panels 3 to 4 of run 1 from the tail" instead');
  });
});

describe('on an incline', () => {
  const steep = line([2, 2], [0, 10, 10], { incline: slope });
  const order = (run: number, start: string): string[] => [
    ...(run === 1 ? ['gate shut Gate1'] : []),
    ...before,
    `strip run ${run}`,
    `clean run ${run}`,
    `fit run ${run} starting at ${start}`,
    ...(run === 1 ? ['gate open Gate1'] : []),
    ...afterwards,
  ];

  test('panels slide off a slide gate', () => {
    const [only, ...more] = check(job(steep, ['run 2']), order(2, 'tail'));
    expect([only?.kind, only?.grade, more]).toEqual(['panel would slide', 'unsafe', []]);
    expect(only?.reason).toContain('At 20°');
  });
  test('they rest on an end plate', () => {
    expect(kinds(job(steep, ['run 1']), order(1, 'tail'))).toEqual([]);
  });
  test('and from the top down nothing slides', () => {
    expect(kinds(job(steep, ['run 2']), order(2, 'head'))).toEqual([]);
  });
  test('on a gentle slope they stay where they are put', () => {
    expect(
      kinds(job(line([2, 2], [0, 10, 10], { incline: stated('angle', 5) }), ['run 2']), order(2, 'tail')),
    ).toEqual([]);
  });
  test('without a stated start the custom holds: the top, or the end that can be closed from', () => {
    expect(
      kinds(job(steep, ['all']), [
        'gate shut Gate1',
        ...before,
        'strip all',
        'clean all',
        'fit all',
        'gate open Gate1',
        ...afterwards,
      ]),
    ).toEqual([]);
  });
});

describe('what must come before what', () => {
  const full = job(
    line([2], [10, 10], {
      covers: [cover(0, 2000)],
      braces: [brace(500)],
      holdDowns: [holdDown(1500)],
      confinedSpace: true,
    }),
    ['all'],
  );
  const order = [
    ...before,
    'gas test',
    'covers off',
    'braces off',
    'hold-downs off',
    'strip',
    'clean',
    'fit starting at head',
    'hold-downs on',
    'braces on',
    'covers on',
    ...afterwards,
  ];
  const without = (...gone: string[]): string[] => order.filter((each) => !gone.includes(each));
  const moved = (what: string, after: string): string[] =>
    without(what).flatMap((each) => (each === after ? [each, what] : [each]));

  test('what was put back too early is not told as left off as well', () => {
    expect(
      kinds(full, [...before, 'gas test', 'covers on', 'covers off', ...afterwards]).slice(0, 1),
    ).toEqual(['closed up too early']);
    expect(kinds(full, [...before, 'gas test', 'covers on', 'covers off', ...afterwards])).not.toContain(
      'not put back',
    );
  });
  test('the whole order is silent', () => {
    expect(check(full, order)).toEqual([]);
  });
  test.each([
    ['no isolation at all', without('isolate', 'prove dead'), ['isolation missing']],
    ['not proved dead', without('prove dead'), ['isolation missing']],
    ['no gas test in an enclosed trough', without('gas test'), ['gas test missing']],
    ['covers off after the stripping', moved('covers off', 'strip'), ['not opened up']],
    ['hold-downs stay on', without('hold-downs off', 'hold-downs on'), ['not opened up']],
    ['fitted before it is stripped', moved('strip', 'fit starting at head'), ['liner not stripped']],
    ['not cleaned', without('clean'), ['trough not cleaned']],
    ['fitted before it is cleaned', moved('clean', 'fit starting at head'), ['trough not cleaned']],
    [
      'a part of it fitted before all is cleaned: one fault, told once',
      order.flatMap((each) => {
        if (each === 'clean') return ['fit panel 2 of run 1 starting at head', 'clean'];
        return each === 'fit starting at head' ? ['fit panel 1 of run 1 starting at head'] : [each];
      }),
      ['trough not cleaned'],
    ],
    ['covers back before the panels', moved('covers on', 'strip'), ['closed up too early']],
    ['handed back before the covers', moved('covers on', 'remove isolation'), ['handed back too early']],
    ['run while isolated', moved('remove isolation', 'run empty'), ['run too early']],
    ['loaded before empty', moved('run empty', 'run loaded'), ['run too early']],
    ['braces left off', without('braces on'), ['handed back too early']],
    ['isolation left on', without('remove isolation', 'run empty', 'run loaded'), ['not put back']],
    ['never run loaded', without('run loaded'), ['no trial run']],
    ['nothing fitted', without('fit starting at head'), ['handed back too early']],
    ['never handed back', without('remove isolation'), ['run too early']],
    ['nothing renewed', without('strip', 'clean', 'fit starting at head'), ['scope not done']],
    ['stripped twice', [...order.slice(0, 7), ...order.slice(6)], ['done twice']],
  ])('%s', (_, lines, expected) => {
    const found = check(full, lines);
    expect(found.map((each) => each.kind)).toEqual(expected);
    for (const each of found) {
      expect(each.message).not.toBe('');
      expect(each.reason).not.toBe('');
    }
  });

  test.each([
    ['no isolation at all', without('isolate', 'prove dead')],
    ['covers off after the stripping', moved('covers off', 'strip')],
    ['fitted before it is stripped', moved('strip', 'fit starting at head')],
    ['not cleaned', without('clean')],
    ['covers back before the panels', moved('covers on', 'strip')],
    ['handed back before the covers', moved('covers on', 'remove isolation')],
    ['braces left off', without('braces on')],
    ['never run loaded', without('run loaded')],
    ['nothing fitted', without('fit starting at head')],
    ['nothing renewed', without('strip', 'clean', 'fit starting at head')],
    ['stripped twice', [...order.slice(0, 7), ...order.slice(6)]],
    ['no gas test', without('gas test')],
  ])('the first repair mends the order: %s', (_, lines) => {
    const written = withOrder(full, lines);
    const [first] = checkOrder(written, worldOf(full));
    const mended = changeJob(written, first?.repairs[0]?.changes ?? []);
    expect(checkOrder(mended, worldOf(full)).map((each) => each.message)).toEqual([]);
  });

  test('one slip does not hide an independent one, and tells nothing twice', () => {
    const lines = moved('covers off', 'strip').filter((each) => each !== 'clean' && each !== 'braces on');
    expect(kinds(full, lines)).toEqual(['not opened up', 'trough not cleaned', 'handed back too early']);
  });

  test('stretches that do not touch do not bind each other', () => {
    const of = job(line([2, 2], [10, 10, 10], { covers: [cover(0, 2100), cover(2100, 4200)] }), ['all']);
    const half = (run: number): string[] => [
      `covers off run ${run}`,
      `strip run ${run}`,
      `clean run ${run}`,
      `fit run ${run} starting at ${run === 1 ? 'tail' : 'head'}`,
      `covers on run ${run}`,
    ];
    expect(kinds(of, [...before, ...half(2), ...half(1), ...afterwards])).toEqual([]);
  });
});

describe('a screw change', () => {
  const of = job(line([2], [10, 10], { holdDowns: [holdDown(500)] }), ['all'], {
    screwChange: { screw: two.screw, cut: 'cold', joints: 'bolted', origin: origin() },
  });
  const order = [
    ...before,
    'hold-downs off',
    'restrain screw',
    'unbolt drive',
    'remove screw',
    'strip',
    'clean',
    'fit starting at head',
    'insert screw',
    'bolt drive',
    'release screw',
    'hold-downs on',
    ...afterwards,
  ];
  const moved = (what: string, after: string): string[] =>
    order.filter((each) => each !== what).flatMap((each) => (each === after ? [each, what] : [each]));

  test.each([
    ['as it should be', order, []],
    ['unbolted before it is restrained', moved('restrain screw', 'unbolt drive'), ['screw not restrained']],
    ['removed while bolted', moved('unbolt drive', 'remove screw'), ['screw out of turn']],
    ['in before the liner', moved('insert screw', 'clean'), ['screw out of turn']],
    ['hold-downs before the screw', moved('hold-downs on', 'fit starting at head'), ['screw out of turn']],
    ['never changed', order.filter((each) => !/screw|drive/.test(each)), ['scope not done']],
  ])('%s', (_, lines, expected) => {
    expect(kinds(of, lines)).toEqual(expected);
  });
});

describe('crews, platforms and people below', () => {
  const crews = [crew('Alpha'), crew('Bravo')];
  const halves = line([2, 2], [10, 10, 10], { incline: slope });
  const side = (of: typeof halves, more: object = {}): ReturnType<typeof job> =>
    job(of, ['all'], { crews, ...more });
  const lines = (a: string, b: string): string[] => [
    'isolate',
    'p: prove dead',
    'a: strip run 1 by Alpha after p',
    `b: strip run 2 by ${a} after p`,
    'c: clean run 1 by Alpha after a',
    `d: clean run 2 by ${a} after ${b}`,
    'fit run 1 starting at head by Alpha',
    'fit run 2 starting at head by Alpha',
    ...afterwards,
  ];

  test('a crew is in one place at a time', () => {
    const found = check(side({ ...halves, incline: stated('angle', 0) }), lines('Alpha', 'b'));
    expect(new Set(found.map((each) => each.kind))).toEqual(new Set(['crew in two places']));
    expect(found[0]?.repairs[0]?.title).toBe('Let "strip run 2" wait for "strip run 1"');
  });
  const barred = [
    ...lines('Bravo', 'b').map((each) => each.replace('p: prove dead', 'q: prove dead')),
  ].flatMap((each) =>
    each.startsWith('q: ')
      ? [each, 'p: gate shut Gate1 by Alpha after q']
      : each === 'remove isolation'
        ? ['gate open Gate1', each]
        : [each],
  );
  test('two crews may work in two runs with a slide gate shut between them', () => {
    expect(kinds(side(halves), barred)).toEqual([]);
    // Whoever is inside below an open gate is told of that; of the two crews as well would say it twice.
    expect(kinds(side(halves), lines('Bravo', 'b'))).toEqual(['gate above open']);
    const atTheRim = lines('Bravo', 'b').map((each) =>
      each.replace(/(strip|clean|fit) run 1/, 'hold-downs off run 1'),
    );
    expect(kinds(side(halves), atTheRim)).toContain('gate open between');
  });
  test('but not one below the other without a barrier', () => {
    const open = {
      ...halves,
      breaks: halves.breaks.map((each) =>
        each.name === 'Gate1' ? gap('Gate1', 'inlet', each.from.value, each.to.value, 10) : each,
      ),
    };
    const found = check(side(open), lines('Bravo', 'b'));
    expect(new Set(found.map((each) => each.kind))).toEqual(new Set(['work below loose parts']));
    expect(found[0]?.message).toBe(
      '"strip run 1" is at 0.00 m, below "strip run 2" at up to 4.20 m, and both may go on at the same time.',
    );
    expect(kinds(side({ ...open, incline: stated('angle', 0) }), lines('Bravo', 'b'))).toEqual([]);
  });
  test('a platform serves one stretch at a time', () => {
    const of = side(halves, { accessUnits: [platform('MP1')] });
    const shared = barred.map((each) =>
      /strip run \d by/.test(each) ? each.replace(' after', ' using MP1 after') : each,
    );
    expect(kinds(of, shared)).toEqual(['access unit in two places']);
  });
  test('a stretch without access cannot be worked; told once', () => {
    const of = job({ ...two, access: [{ ...everywhere, to: mm(1500) }] }, ['all']);
    const found = check(of, good);
    expect(found.map((each) => each.kind)).toEqual(['no access']);
    expect(found[0]?.message).toContain('1.50 m to 4.00 m');
  });
  test('a zone for mobile platforms needs one that reaches', () => {
    const high = { ...two, access: [{ ...everywhere, kind: 'mobile platform' as const, height: mm(9000) }] };
    expect(kinds(job(high, ['all']), good)).toEqual(['no access unit']);
    expect(kinds(job(high, ['all'], { accessUnits: [platform('Low', 6000)] }), good)).toEqual([
      'no access unit',
    ]);
    expect(kinds(job(high, ['all'], { accessUnits: [platform('MP1', 14_000)] }), good)).toEqual([]);
  });
});

describe('orders that make no sense', () => {
  test('a circle', () => {
    const found = check(plain, [
      ...before,
      'a: strip run 1 after b',
      'b: clean run 1 after a',
      'fit run 1 starting at head',
      ...afterwards,
    ]);
    expect(found[0]?.kind).toBe('circular order');
    expect(found[0]?.conflicts.map(({ step }) => stepText(step))).toEqual(['b: clean run 1 after a']);
    expect(found[0]?.repairs[0]?.title).toBe('Do not let "strip run 1" wait for "b"');
  });
  test('a step that waits for itself', () => {
    expect(
      kinds(plain, [
        ...before,
        'a: strip run 1 after a',
        'clean run 1',
        'fit run 1 starting at head',
        ...afterwards,
      ])[0],
    ).toBe('circular order');
  });
  test('a run or a panel that is not there', () => {
    const found = check(plain, [
      ...before,
      'strip run 3',
      'strip run 1',
      'clean run 1',
      'fit panels 3 to 9 of run 1 starting at head',
      'fit run 1 starting at head',
      ...afterwards,
    ]);
    expect(found.map((each) => each.kind)).toEqual(['no such stretch', 'no such stretch']);
    expect(found[0]?.reason).toContain('run 1 (Tail to Head) with 4 panels');
  });
  test('an empty order leaves the scope undone', () => {
    expect(kinds(plain, [])).toEqual(['scope not done', 'no trial run']);
  });
});
