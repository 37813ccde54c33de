// People first: one story for each rule that keeps them whole, and beside it the order that is silent.

import { describe, expect, test } from 'vitest';
import { changeJob } from '../../../src/domain/order/change-steps.js';
import { checkOrder } from '../../../src/domain/order/check-order.js';
import { stepText } from '../../../src/domain/order/words.js';
import type { Conveyor } from '../../../src/domain/model/conveyor.js';
import type { Job } from '../../../src/domain/model/job.js';
import { mm, origin, screw, stated, use } from '../../kit/estate.js';
import {
  afterwards,
  before,
  check,
  cover,
  crew,
  everywhere,
  holdDown,
  job,
  kinds,
  line,
  withOrder,
  worldOf,
} from './stories.js';

const slope = stated('angle', 20);
const flat = line([4], [10, 10]);
const plain = job(flat, ['all']);
const measures = 'hot work shielded wet fire watch 60 min';

/** Titles of the repairs of the first complaint, and the order after the first of them. */
function mended(
  of: Job,
  lines: readonly string[],
  which = 0,
): { titles: string[]; left: string[]; text: string[] } {
  const written = withOrder(of, lines);
  const repairs = checkOrder(written, worldOf(of))[0]?.repairs ?? [];
  const after = changeJob(written, repairs[which]?.changes ?? []);
  return {
    titles: repairs.map(({ title }) => title),
    left: checkOrder(after, worldOf(of)).map(({ kind }) => kind),
    text: (after.order?.steps ?? []).map(stepText),
  };
}

describe('hot work', () => {
  const patched = (patch: string, watch: readonly string[] = ['fire watch run 1']): string[] => [
    ...before,
    patch,
    ...watch,
    'strip run 1',
    'clean run 1',
    'fit run 1 starting at head',
    ...afterwards,
  ];

  test.each([
    ['nothing said', 'patch run 1', ['hot work over liner']],
    [
      'a word in the note is no measure',
      'patch run 1 "no shield to hand, fire watch?"',
      ['hot work over liner'],
    ],
    ['shielded only', 'patch run 1 hot work shielded', ['hot work over liner']],
    ['wet only', 'patch run 1 hot work wet', ['hot work over liner']],
    ['watched only', 'patch run 1 hot work fire watch 60 min', ['hot work over liner']],
    ['shielded and wet', `patch run 1 ${measures}`, []],
    ['demanded, not confirmed yet', `patch run 1 ${measures} to be confirmed`, []],
    ['cold', 'patch run 1 cold work', []],
  ])('%s', (_, patch, expected) => {
    expect(kinds(plain, patched(patch))).toEqual(expected);
  });

  test('what is missing is named', () => {
    expect(check(plain, patched('patch run 1 hot work wet'))[0]?.message).toContain(
      'does not say that it is shielded.',
    );
    expect(check(plain, patched('patch run 1 hot work shielded'))[0]?.message).toContain(
      'does not say that it is wet.',
    );
  });

  test('the repair demands and does not assure: what it writes is to be confirmed', () => {
    const { titles, left, text } = mended(plain, patched('patch run 1 hot work wet fire watch 90 min'), 1);
    expect(titles).toEqual([
      'Move "strip run 1" before "patch run 1"',
      'Demand shields, water and a fire watch, to be confirmed by the crew',
      'Do it cold: sawn, sheared, bolted or bonded',
      'Add "strip run 1" and "clean run 1" before "patch run 1"',
      'Move "patch run 1" after "strip run 1"',
    ]);
    expect(left).toEqual([]);
    expect(text).toContain('patch run 1 hot work shielded wet fire watch 90 min to be confirmed');
  });

  test('bare trough needs no shield, and still a fire watch', () => {
    const bare = (watch: readonly string[]): string[] => [
      ...before,
      'strip run 1',
      'patch run 1',
      ...watch,
      'clean run 1',
      'fit run 1 starting at head',
      ...afterwards,
    ];
    expect(kinds(plain, bare(['fire watch run 1 takes 60 min']))).toEqual([]);
    const { titles, left, text } = mended(plain, bare([]));
    expect(titles).toEqual(['Add a fire watch after "patch run 1"']);
    expect(left).toEqual([]);
    expect(text.slice(3, 5)).toEqual(['patch run 1', 'fire watch run 1 takes 60 min']);
  });

  test('what burns runs downhill, as far as the next end plate', () => {
    const steep = line([2, 2], [10, 10, 10], { incline: slope });
    const lines = (run: number): string[] => [
      'gate shut Gate1',
      ...before,
      `strip run ${run}`,
      `patch run ${run}`,
      `fire watch run ${run}`,
      `clean run ${run}`,
      `fit run ${run} starting at head`,
      'gate open Gate1',
      ...afterwards,
    ];
    const above = check(job(steep, ['run 2']), lines(2));
    expect(above.map(({ kind }) => kind)).toEqual(['hot work over liner']);
    expect(above[0]?.message).toContain('panels 1 to 2 of run 1');
    expect(kinds(job(steep, ['run 1']), lines(1))).toEqual([]);
    const falling = { ...steep, incline: stated('angle', -20) };
    expect(
      kinds(
        job(falling, ['run 2']),
        lines(2).map((each) => each.replace('at head', 'at tail')),
      ),
    ).toEqual([]);
    expect(
      kinds(
        job(falling, ['run 1']),
        lines(1).map((each) => each.replace('at head', 'at tail')),
      ),
    ).toEqual(['hot work over liner']);
  });

  test.each([
    ['as long as asked', 'fire watch run 1 takes 90 min', []],
    ['shorter than asked', 'fire watch run 1 takes 60 min', ['fire watch too short']],
    ['without a time it lasts as long as asked', 'fire watch run 1', []],
  ])('a watch %s', (_, watch, expected) => {
    const lines = patched('patch run 1 hot work shielded wet fire watch 90 min', [watch]);
    expect(kinds(plain, lines)).toEqual(expected);
    if (expected.length > 0) {
      expect(mended(plain, lines)).toMatchObject({ titles: ['Watch for 90 min'], left: [] });
      expect(check(plain, lines)[0]?.message).toContain('watches for 60 min');
    }
  });

  test('nobody goes to dinner, and nothing is closed, before it is watched', () => {
    const of = job(line([4], [10, 10], { covers: [cover(0, 4000)] }), ['all']);
    const lines = [
      ...before,
      'covers off',
      'strip run 1',
      'clean run 1',
      'fit run 1 starting at head',
      `patch run 1 ${measures}`,
      'covers on',
      'fire watch run 1',
      ...afterwards,
    ];
    const [only, ...more] = check(of, lines);
    expect([only?.kind, only?.step?.action, more]).toEqual(['fire watch missing', 'covers on', []]);
    expect(only?.repairs[0]?.title).toBe('Move "fire watch run 1" before "covers on"');
    const early = [...before, 'strip run 1', 'patch run 1', 'pause', 'fire watch run 1', 'clean run 1'];
    expect(check(plain, early)[0]?.step?.action).toBe('pause');
  });

  describe('the spiral', () => {
    const lines = (cut: string, join: readonly string[]): string[] => [
      ...before,
      'restrain screw',
      'unbolt drive',
      `remove screw${cut}`,
      'fire watch all',
      'strip',
      'clean',
      'fit starting at head',
      ...join,
      'bolt drive',
      'release screw',
      ...afterwards,
    ];
    const change = (facts: Partial<NonNullable<Job['screwChange']>> = {}): Job =>
      job(flat, ['all'], { screwChange: { screw: screw(), origin: origin(), ...facts } });
    const hot = ` ${measures}`;

    test.each([
      [
        'cut hot over the old liner',
        change(),
        lines('', [`insert screw${hot}`, 'fire watch all']),
        ['hot work over liner'],
      ],
      [
        'joined hot over the new one',
        change(),
        lines(hot, ['insert screw', 'fire watch all']),
        ['hot work over liner'],
      ],
      ['both with measures', change(), lines(hot, [`insert screw${hot}`, 'fire watch all']), []],
      ['joined and not watched', change(), lines(hot, [`insert screw${hot}`]), ['fire watch missing']],
      ['cut cold, bolted joints', change({ cut: 'cold', joints: 'bolted' }), lines('', ['insert screw']), []],
      [
        'joints of their own, one without measures',
        change(),
        lines(hot, [
          'insert screw',
          `join screw from 0 mm to 2000 mm${hot}`,
          'join screw from 2000 mm to 4000 mm',
          'fire watch all',
        ]),
        ['hot work over liner'],
      ],
      [
        'joints of their own, one left out',
        change(),
        lines(hot, ['insert screw', `join screw from 0 mm to 2000 mm${hot}`, 'fire watch all']),
        ['handed back too early'],
      ],
      [
        'joints of their own',
        change(),
        lines(hot, ['insert screw', `join screw from 0 mm to 4000 mm${hot}`, 'fire watch all']),
        [],
      ],
    ])('%s', (_, of, order, expected) => {
      expect(kinds(of, order)).toEqual(expected);
    });

    test('pieces come out from an end, not from the middle', () => {
      const pieces = (...order: readonly string[]): string[] =>
        lines('', ['insert screw']).flatMap((each) =>
          each === 'remove screw' ? order.map((where) => `remove screw from ${where}`) : [each],
        );
      const of = change({ cut: 'cold', joints: 'bolted' });
      const [a, b, c] = ['0 mm to 1500 mm', '1500 mm to 2500 mm', '2500 mm to 4000 mm'];
      expect(kinds(of, pieces(a, b, c))).toEqual([]);
      expect(kinds(of, pieces(c, b, a))).toEqual([]);
      expect(kinds(of, pieces(a, c, b))).toEqual([]);
      expect(kinds(of, pieces(b, a, c))).toEqual(['spiral from the middle']);
      expect(mended(of, pieces(b, a, c)).left).toEqual([]);
    });
  });
});

describe('an enclosed trough', () => {
  const enclosed = (facts: Partial<Conveyor> = {}): Conveyor =>
    line([2], [10, 10], { confinedSpace: true, ...facts });
  const order = [...before, 'gas test', 'strip', 'clean', 'fit starting at head', ...afterwards];

  test('restraining and unbolting reach inside: nothing of it before the gas test', () => {
    const of = job(enclosed(), ['all'], {
      screwChange: { screw: screw(), cut: 'cold', joints: 'bolted', origin: origin() },
    });
    const lines = (early: readonly string[], late: readonly string[]): string[] => [
      ...before,
      ...early,
      'gas test',
      ...late,
      'remove screw',
      'strip',
      'clean',
      'fit starting at head',
      'insert screw',
      'bolt drive',
      'release screw',
      ...afterwards,
    ];
    expect(kinds(of, lines([], ['restrain screw', 'unbolt drive']))).toEqual([]);
    expect(kinds(of, lines(['restrain screw'], ['unbolt drive']))).toEqual(['gas test missing']);
    expect(mended(of, lines(['restrain screw', 'unbolt drive'], [])).left).toEqual([]);
  });

  test('after a pause the air is tested again', () => {
    const of = job(enclosed(), ['all']);
    const paused = (again: readonly string[]): string[] =>
      order.flatMap((each) => (each === 'clean' ? ['pause', ...again, each] : [each]));
    expect(kinds(of, paused(['gas test']))).toEqual([]);
    expect(kinds(of, paused([]))).toEqual(['gas test missing']);
    expect(mended(of, paused([])).text).toEqual(paused(['gas test']));
    expect(kinds(job(line([2], [10, 10]), ['all']), paused([]))).toEqual([]);
  });

  test.each([
    ['alone', 'strip by Solo', ['lone worker']],
    ['alone and attended', 'strip by Solo attended by Alpha', []],
    ['attended by oneself', 'strip by Solo attended by Solo', ['lone worker']],
    ['two crews', 'strip by Solo, Alpha', ['nobody outside']],
    ['two crews, of whom one person stays outside', 'strip by Solo, Alpha with 3 people', []],
    ['a whole crew', 'strip by Alpha', ['nobody outside']],
    ['a whole crew, and said so', 'strip by Alpha with 3 people', ['nobody outside']],
    ['a crew of whom one stays outside', 'strip by Alpha with 2 people', []],
    ['whoever comes, all of them', 'strip', ['nobody outside']],
    ['a whole crew with another outside', 'strip by Alpha attended by Solo', []],
  ])('%s', (_, strip, expected) => {
    const crews = [crew('Alpha', 3), crew('Solo', 1)];
    const lines = order.map((each) =>
      each === 'strip' ? strip : /^(clean|fit)/.test(each) ? `${each} by Alpha with 2 people` : each,
    );
    const shut = lines.map((each) =>
      each.includes(' by ') || !/^(gas)/.test(each) ? each : `${each} by Alpha`,
    );
    expect(kinds(job(enclosed(), ['all'], { crews }), shut)).toEqual(expected);
    expect(kinds(job(line([2], [10, 10]), ['all'], { crews }), shut)).toEqual([]);
    if (strip === 'strip by Solo')
      expect(mended(job(enclosed(), ['all'], { crews }), shut)).toMatchObject({
        titles: ['Let Alpha stand by', 'Add a crew to the job that can stand by'],
        left: [],
      });
  });

  test('nobody outside is one matter, mended at every step of it', () => {
    const crews = [crew('Alpha', 3), crew('Bravo', 2)];
    const of = job(enclosed(), ['all'], { crews });
    const lines = [
      ...before,
      'gas test',
      'strip by Alpha',
      'patch by Bravo cold work',
      'clean by Alpha attended by Bravo',
      'fit starting at head by Alpha',
      ...afterwards,
    ];
    const { titles, left, text } = mended(of, lines);
    expect(check(of, lines).map(({ message }) => message)).toEqual([
      '"strip" has everybody inside an enclosed trough, and the order leaves nobody outside; nor during "patch" and "fit from the head".',
    ]);
    expect(titles).toEqual([
      'Let the other crew stand by outside',
      'Let one of those who come stay outside',
      'Add a crew to the job that can stand by',
    ]);
    expect(left).toEqual([]);
    expect(text.slice(3, 7)).toEqual([
      'strip by Alpha attended by Bravo',
      'patch by Bravo attended by Alpha cold work',
      'clean by Alpha attended by Bravo',
      'fit starting at head by Alpha attended by Bravo',
    ]);
    const fewer = mended(of, lines, 1);
    expect(fewer.left).toEqual([]);
    expect(fewer.text[4]).toBe('patch by Bravo with 1 person cold work');
    const third = { ...of, crews: [...crews, crew('Charlie', 2)] };
    expect(mended(third, lines).titles[0]).toBe('Let Charlie stand by outside');
  });

  test.each(['covers off', 'hold-downs off', 'braces off', 'restrain screw', 'gas test'])(
    'at the rim a crew sees its own: %s',
    (action) => {
      const of = job(enclosed(), ['all'], { crews: [crew('Alpha', 2)] });
      expect(kinds(of, [...before, 'gas test', `${action} by Alpha`])).not.toContain('nobody outside');
    },
  );

  test('who stands by does nothing else meanwhile', () => {
    const crews = [crew('Alpha', 3), crew('Solo', 1)];
    const lines = [
      'isolate by Alpha',
      'p: prove dead by Alpha',
      'g: gas test by Alpha',
      'a: strip panel 1 of run 1 by Solo attended by Alpha after g',
      'b: strip panel 2 of run 1 by Alpha with 2 people after g',
      'clean by Alpha with 2 people',
      'fit starting at head by Alpha with 2 people',
      ...afterwards,
    ];
    expect(kinds(job(enclosed(), ['all'], { crews }), lines)).toEqual(['crew in two places']);
  });
});

describe('handing back and running', () => {
  const of = job(line([2], [10, 10], { covers: [cover(0, 2000)], holdDowns: [holdDown(500)] }), ['all']);
  const order = [
    ...before,
    'covers off',
    'hold-downs off',
    'strip',
    'clean',
    'fit starting at head',
    'hold-downs on',
    'covers on',
    ...afterwards,
  ];
  test.each([
    ['covers never put back', 'covers on', 'remove isolation', 'Add "covers on"'],
    ['hold-downs never put back', 'hold-downs on', 'remove isolation', 'Add "hold-downs on"'],
    ['never fitted', 'fit starting at head', 'remove isolation', 'Add "fit run 1"'],
    ['isolation never removed', 'remove isolation', 'run empty', 'Add "remove isolation" before "run empty"'],
  ])('%s is an error at the step that hands back or runs', (_, gone, at, title) => {
    const lines = order.filter((each) => each !== gone);
    const [only, ...more] = check(of, lines);
    expect([only?.grade, only?.step?.action, more]).toEqual(['unsafe', at, []]);
    const { titles, left } = mended(of, lines);
    expect(titles[0]).toBe(title);
    expect(left).toEqual([]);
  });

  test('covers that come off after all were put on are missed at hand-back', () => {
    const two = job(line([2, 2], [10, 10, 10], { covers: [cover(0, 2100), cover(2100, 4200)] }), []);
    const some = [...before, 'covers off run 1', 'covers on all', 'covers off run 2'];
    const [only, ...more] = check(two, [...some, ...afterwards]);
    expect([only?.kind, only?.message, more]).toEqual([
      'handed back too early',
      '"remove isolation" hands the machine back while the cover 2.10 m to 4.20 m is off. "covers off run 2" left it so. No step puts it right before then.',
      [],
    ]);
    expect(kinds(two, [...some, 'covers on run 2', ...afterwards])).toEqual([]);
  });

  test('a gate that is stripped or still pinned', () => {
    const two = job(line([2, 2], [10, 10, 10]), ['run 1']);
    const lines = (first: readonly string[], last: readonly string[]): string[] => [
      ...before,
      ...first,
      'strip run 1',
      'clean run 1',
      'fit run 1 starting at head',
      ...last,
      ...afterwards,
    ];
    expect(kinds(two, lines(['gate off Gate1'], ['gate on Gate1']))).toEqual([]);
    expect(kinds(two, lines(['gate shut Gate1'], ['gate open Gate1']))).toEqual([]);
    const stripped = check(two, lines(['gate off Gate1'], []));
    expect(stripped.map(({ kind }) => kind)).toEqual(['handed back too early']);
    expect(stripped[0]?.message).toContain('the gate Gate1 is stripped');
    expect(mended(two, lines(['gate off Gate1'], [])).left).toEqual([]);
    expect(check(two, lines(['gate shut Gate1'], []))[0]?.message).toContain('the gate Gate1 is pinned shut');
    expect(mended(two, lines(['gate shut Gate1'], [])).text).toContain('gate open Gate1');
    expect(kinds(two, lines(['gate off Gate1', 'gate shut Gate1'], ['gate on Gate1']))).toEqual([
      'gate out of turn',
    ]);
  });

  test('emptied while there is power', () => {
    const lines = (first: readonly string[]): string[] => [...first, ...order.slice(2)];
    expect(kinds(of, lines(['empty', 'isolate', 'prove dead']))).toEqual([]);
    const late = lines(['isolate', 'empty', 'prove dead']);
    expect(kinds(of, late)).toEqual(['emptied too late']);
    expect(mended(of, late)).toMatchObject({ titles: ['Move "empty" before "isolate"'], left: [] });
  });
});

describe('below others', () => {
  const crews = [crew('Alpha'), crew('Bravo')];
  const made = line([2, 2], [10, 10, 10], {
    incline: slope,
    covers: [cover(0, 2100), cover(2100, 4200)],
  });
  const open = {
    ...made,
    breaks: made.breaks.map((each) => ({
      ...each,
      kind: each.kind === 'slide gate' ? ('inlet' as const) : each.kind,
    })),
  };
  const order = (upper: string, lower: string, gates: readonly string[] = []): string[] => [
    'isolate by Alpha',
    'p: prove dead by Alpha',
    'covers off all by Alpha',
    ...gates,
    `q: strip all by Alpha`,
    `a: ${by(upper, 'Alpha')}`,
    `b: ${by(lower, 'Bravo')}`,
  ];
  const by = (work: string, who: string): string =>
    `${work.replace(' cold work', '')} by ${who} after q${work.endsWith(' cold work') ? ' cold work' : ''}`;
  const falling = (of: Conveyor, lines: readonly string[]): string[] =>
    kinds(job(of, ['all'], { crews }), lines).filter((kind) =>
      ['work below loose parts', 'gate open between', 'gate above open'].includes(kind),
    );
  /** The gate is shut for the stripping and opened again after it, so that it is open between the two. */
  const atTheRim = (upper: string): string[] =>
    order(upper, 'hold-downs off run 1', ['gate shut Gate1 by Alpha']).flatMap((each) =>
      each.startsWith('q: ') ? [each.replace('q: ', ''), 'q: gate open Gate1 by Alpha'] : [each],
    );

  test.each([
    ['patch run 2 cold work'],
    ['covers on run 2'],
    ['fit run 2 starting at head'],
    ['unbolt drive'],
    ['remove screw from 2200 mm to 4200 mm'],
  ])('%s above, cleaning below', (upper) => {
    const head = { ...open, drive: { end: 'head' as const, origin: origin() } };
    expect(falling(head, order(upper, 'clean run 1'))).toEqual(['work below loose parts']);
    expect(falling({ ...made, drive: head.drive }, order(upper, 'clean run 1'))).toEqual(['gate above open']);
    expect(falling({ ...made, drive: head.drive }, atTheRim(upper))).toEqual(['gate open between']);
    expect(
      falling({ ...made, drive: head.drive }, order(upper, 'clean run 1', ['gate shut Gate1 by Alpha'])),
    ).toEqual([]);
    expect(falling({ ...head, incline: stated('angle', 0) }, order(upper, 'clean run 1'))).toEqual([]);
  });

  test('on a machine that falls, below is the other way', () => {
    const down = { ...open, incline: stated('angle', -20) };
    expect(falling(down, order('patch run 2 cold work', 'clean run 1'))).toEqual([]);
    expect(falling(down, order('patch run 1 cold work', 'clean run 2'))).toEqual(['work below loose parts']);
  });

  test('a gate that may be opened in between is no barrier', () => {
    const lines = order('fit run 2 starting at head', 'hold-downs off run 1', [
      'g: gate shut Gate1 by Alpha',
    ]);
    expect(falling(made, [...lines, 'o: gate open Gate1 by Alpha after q'])).toEqual(['gate open between']);
    const below = order('fit run 2 starting at head', 'clean run 1', ['g: gate shut Gate1 by Alpha']);
    expect(falling(made, [...below, 'o: gate open Gate1 by Alpha after q'])).toContain('gate above open');
    expect(falling(made, [...lines, 'o: gate open Gate1 by Alpha after a, b'])).toEqual([]);
  });

  test('the repair parts every step that the gate is to part, in one go', () => {
    const lines = [
      ...atTheRim('fit run 2 starting at head'),
      'k: hold-downs on run 1 by Bravo after b',
      'remove isolation by Alpha',
    ];
    const of = job(made, ['all'], { crews });
    const written = withOrder(of, lines);
    const between = checkOrder(written, worldOf(of)).filter(({ kind }) => kind === 'gate open between');
    expect(between).toHaveLength(1);
    const after = changeJob(written, between[0]?.repairs[0]?.changes ?? []);
    const left = (after.order?.steps ?? []).map(stepText);
    expect(left.filter((each) => /^[abk]: /.test(each))).toEqual([
      'a: fit run 2 starting at head by Alpha after q, s1',
      'b: hold-downs off run 1 by Bravo after q, s1',
      'k: hold-downs on run 1 by Bravo after b, s1',
    ]);
    expect(checkOrder(after, worldOf(of)).filter(({ kind }) => kind === 'gate open between')).toEqual([]);
  });

  test('the repair shuts the gate first and opens it before the machine is handed back', () => {
    const lines = [
      ...order('fit run 2 starting at head', 'clean run 1'),
      'clean run 2 by Alpha after q',
      'fit run 1 starting at head by Alpha',
      'covers on all by Alpha',
      'remove isolation by Alpha',
      'run empty by Alpha',
      'run loaded by Alpha',
    ]
      .map((each) =>
        each.replace(
          'a: fit run 2 starting at head by Alpha after q',
          'a: fit run 2 starting at head by Alpha after c',
        ),
      )
      .map((each) => each.replace('clean run 2 by Alpha after q', 'c: clean run 2 by Alpha after q'));
    const of = job(made, ['all'], { crews });
    expect(kinds(of, lines)).toEqual(['gate above open']);
    const { titles, left, text } = mended(of, lines);
    expect(titles[0]).toBe('Shut Gate1 before "isolate"');
    expect(left).toEqual([]);
    expect(text.indexOf('gate open Gate1')).toBe(text.indexOf('remove isolation by Alpha') - 1);
  });
});

describe('platforms', () => {
  const high = line([4], [10, 10], {
    access: [{ ...everywhere, kind: 'mobile platform' as const, height: mm(9000) }],
  });
  const unit = (limit: number | undefined, people?: number): Job['accessUnits'][number] => ({
    use: use('MP1'),
    unit: {
      name: 'MP1',
      reach: mm(14_000),
      origin: origin(),
      nameOrigin: origin(),
      ...(limit === undefined ? {} : { limit: stated('mass', limit, `${limit} kg`) }),
      ...(people === undefined ? {} : { people: { count: people, origin: origin() } }),
    },
  });
  const order = (strip: string): string[] =>
    [
      ...before,
      strip,
      'clean run 1 with 2 people',
      'fit run 1 starting at head with 2 people',
      ...afterwards,
    ].map((each) => each.replace(/ with (\d) people/, ' using MP1 with $1 people'));
  const found = (of: Job['accessUnits'][number], strip: string, size = 4): readonly string[] =>
    kinds(job(high, ['all'], { crews: [crew('Alpha', size)], accessUnits: [of] }), order(strip));

  // EN 280: 80 kg a person and 40 kg of tools; a panel of 1 m of this trough weighs 13.6 kg.
  test.each<[number | undefined, number | undefined, string, string[]]>([
    [230, undefined, 'strip run 1', ['platform overloaded']],
    [230, undefined, 'strip run 1 with 3 people', ['platform overloaded']],
    [230, undefined, 'strip run 1 with 2 people', []],
    [400, undefined, 'strip run 1', []],
    [373, undefined, 'strip run 1', ['platform overloaded']],
    [374, undefined, 'strip run 1', []],
    [500, 2, 'strip run 1', ['platform overloaded']],
    [undefined, undefined, 'strip run 1', []],
  ])('%s kg for %s people: %s', (limit, people, strip, expected) => {
    expect(found(unit(limit, people), strip)).toEqual(expected);
  });

  test('seven people on 230 kg, with the sum', () => {
    const of = job(high, ['all'], {
      crews: [crew('Alpha', 4), crew('Bravo', 3)],
      accessUnits: [unit(230)],
    });
    const lines = order('strip run 1 by Alpha, Bravo using MP1').map((each) =>
      /^(clean|fit)/.test(each) ? each.replace(' using', ' by Alpha using') : each,
    );
    const [only] = check(of, lines);
    expect(only?.kind).toBe('platform overloaded');
    expect(only?.message).toContain(
      'puts 7 people with tools and a part of 13.6 kg on MP1, which is rated for 230 kg.',
    );
    expect(only?.reason).toContain(
      '7 × 80 kg and 40 kg of tools and 13.6 kg make 614 kg; it takes 2 at a time.',
    );
    expect(mended(of, lines)).toMatchObject({
      titles: ['Let 2 people be on the platform at a time'],
      left: [],
    });
  });
});

describe('closing and resting', () => {
  const fit = (extra: string): string[] => [
    ...before,
    'strip run 1',
    'clean run 1',
    `fit run 1 starting at ${extra}`,
    ...afterwards,
  ];
  test('where no end takes up the error, the last panel is cut to fit on site', () => {
    const firm = job(line([4], [0, 5]), ['all']);
    for (const start of ['head', 'tail']) {
      expect(kinds(firm, fit(start))).toEqual(['closing error too large']);
      expect(kinds(firm, fit(`${start} cut to fit`))).toEqual([]);
    }
    const { titles, left, text } = mended(firm, fit('head'));
    expect(titles).toEqual([
      'Measure the last gap of "fit run 1 from the head" on site and cut the closing panel to fit',
      'Declare a joint ring in the run, with an allowance for the error',
    ]);
    expect(left).toEqual([]);
    expect(text).toContain('fit run 1 starting at head cut to fit');
    expect(check(firm, fit('head'))[0]?.reason).toContain('Head takes up only 5 mm either');
  });

  test('a stop to rest on makes fitting upward clean; without one it stays an error', () => {
    const lines = [...before, 'strip run 2', 'clean run 2', 'fit run 2 starting at tail', ...afterwards];
    const steep = (at: readonly number[]): Job =>
      job(
        line([2, 2], [0, 10, 10], {
          incline: slope,
          rests: at.map((each) => ({ from: mm(each), to: mm(each), origin: origin() })),
        }),
        ['run 2'],
      );
    expect(kinds(steep([]), lines)).toEqual(['panel would slide']);
    expect(check(steep([]), lines)[0]?.repairs.at(-1)?.title).toContain('rest at');
    for (const at of [2000, 2200, 2250]) expect(kinds(steep([at]), lines)).toEqual([]);
    for (const at of [1900, 2300, 3000]) expect(kinds(steep([at]), lines)).toEqual(['panel would slide']);
  });
});

describe('hot work outside the trough', () => {
  const of = job(line([2, 2], [10, 10, 10], { braces: [{ from: mm(500), to: mm(500), origin: origin() }] }), [
    'run 1',
  ]);
  const lines = (off: string, watch: readonly string[] = []): string[] => [
    ...before,
    off,
    ...watch,
    ...(off.startsWith('gate') ? [] : ['gate off Gate1']),
    ...(off.startsWith('braces') ? [] : ['braces off']),
    'strip run 1',
    'clean run 1',
    'fit run 1 starting at head',
    'braces on',
    'gate on Gate1',
    ...afterwards,
  ];
  test.each([
    [
      'braces burnt off over the liner',
      'braces off hot work',
      [],
      ['hot work over liner', 'fire watch missing'],
    ],
    ['braces burnt off with measures', `braces off ${measures}`, ['fire watch'], []],
    ['braces burnt off and not watched', `braces off ${measures}`, [], ['fire watch missing']],
    ['a gate burnt off and not watched', `gate off Gate1 ${measures}`, [], ['fire watch missing']],
    ['a gate burnt off and watched', `gate off Gate1 ${measures}`, ['fire watch all'], []],
  ])('%s', (_, off, watch, expected) => {
    expect(kinds(of, lines(off, watch))).toEqual(expected);
  });
  test('the repair watches where the gate is', () => {
    expect(mended(of, lines(`gate off Gate1 ${measures}`))).toMatchObject({
      titles: expect.arrayContaining([`Add a fire watch after "gate off Gate1"`]),
      left: [],
    });
  });
});

test('a drive whose bolts are burnt off is watched like any other hot work', () => {
  const of = job(line([2], [10, 10]), ['all'], {
    screwChange: { screw: screw(), cut: 'cold', joints: 'bolted', origin: origin() },
  });
  const lines = (watch: readonly string[]): string[] => [
    ...before,
    'restrain screw',
    `unbolt drive ${measures}`,
    ...watch,
    'remove screw',
    'strip',
    'clean',
    'fit starting at head',
    'insert screw',
    'bolt drive',
    'release screw',
    ...afterwards,
  ];
  expect(kinds(of, lines(['fire watch all']))).toEqual([]);
  expect(kinds(of, lines([]))).toEqual(['fire watch missing']);
  expect(mended(of, lines([])).text).toContain('fire watch all takes 60 min');
  expect(mended(of, lines([])).left).toEqual([]);
});
