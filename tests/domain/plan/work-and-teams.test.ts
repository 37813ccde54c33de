// How much work is in a step, and who can do it how quickly: person-hours by the unit times, counted by hand, and the ways of
// doing each step with the crews, platforms and cranes of a job.

import { describe, expect, it, test } from 'vitest';
import type { Conveyor } from '../../../src/domain/model/conveyor.js';
import type { Job } from '../../../src/domain/model/job.js';
import type { Plant, WorkItem } from '../../../src/domain/model/plant.js';
import { groundOf } from '../../../src/domain/order/ground.js';
import { canDo, teamsOf, waysOf, welds, type Way } from '../../../src/domain/plan/teams.js';
import { fittingWays } from '../../../src/domain/plan/time-rules.js';
import { defaultUnitTimes, unitTime, workOf, type Work } from '../../../src/domain/plan/unit-times.js';
import { gap, mm, origin, plant, screw, stated, use } from '../../kit/estate.js';
import {
  brace,
  cover,
  crew,
  everywhere,
  holdDown,
  job,
  line,
  platform,
  step,
  withOrder,
  worldOf,
} from '../order/stories.js';

/** Two runs, 4 m and 6 m of liner, 200 mm of gate between them; 10.2 m in all. */
const made = (facts: Partial<Conveyor> = {}): Conveyor =>
  line([4, 6], [0, 60, 60], {
    covers: [cover(0, 5000), cover(5000, 10_200)],
    braces: [1500, 3500, 8000].map(brace),
    holdDowns: [500, 2500, 4500, 9000].map(holdDown),
    ...facts,
  });
const unit = (
  item: WorkItem,
  time: number,
  per: 'duration' | 'labour a length' = 'duration',
): Plant['unitTimes'][number] =>
  ({ item, time: stated(per, time), origin: origin() }) as Plant['unitTimes'][number]; // a time of either kind

function work(text: string, of: Job = job(made(), ['all']), pieces?: readonly number[]): Work {
  const one = step(text, of);
  const ground = groundOf(of, [one, ...(of.order?.steps ?? [])], worldOf(of));
  return workOf(
    ground,
    one,
    ground.areas[0] ?? [],
    pieces && { pieces: pieces.map((centre) => ({ centre })) },
  );
}

describe('the usual work in a step, in person-hours', () => {
  test.each<[string, number, number, string, readonly string[]]>([
    // Step; person-hours, most people that help, how it came about, which defaults.
    ['isolate', 2, 2, '1 at 2 h', ['isolate']],
    ['prove dead', 0.5, 2, '1 at 0.5 h', ['isolate']],
    ['remove isolation', 1, 2, '1 at 1 h', ['isolate']],
    ['empty', 1, 1, '1 at 1 h', ['empty']],
    ['pause', 0.5, 1, 'half an hour', []],
    ['fire watch', 1, 1, '1 h of watching', []],
    ['gate off Gate1', 1, 2, '1 at 1 h', ['gate']],
    ['gate on Gate1', 1, 2, '1 at 1 h', ['gate']],
    ['gate shut Gate1', 0.25, 1, '1 at 0.25 h', ['gate']],
    ['gate open Gate1', 0.25, 1, '1 at 0.25 h', ['gate']],
    ['join screw', 2.5, 2, '1 at 2.5 h', ['weld']],
    ['gas test all', 0.5, 1, '1 at 0.5 h', ['gas test']],
    // 10.2 m at 0.1.
    ['clear up all', 1.02, 6, '10.2 m at 0.1 h/m', ['clear up']],
    ['covers off all', 0.6, 6, '2 at 0.3 h', ['cover']],
    ['covers on from 0 mm to 4000 mm', 0.3, 6, '1 at 0.3 h', ['cover']],
    ['braces off all', 0.9, 4, '3 at 0.3 h', ['brace']],
    ['braces on run 1', 0.6, 4, '2 at 0.3 h', ['brace']],
    ['hold-downs off all', 1.2, 4, '4 places at 0.3 h', ['hold-down']],
    ['hold-downs on run 2', 0.6, 4, '2 places at 0.3 h', ['hold-down']],
    ['restrain screw', 1.5, 4, '1 at 1.5 h', ['screw section']],
    ['unbolt drive', 1.5, 3, '1 at 1.5 h', ['screw section']],
    ['bolt drive', 1.5, 3, '1 at 1.5 h', ['screw section']],
    ['release screw', 0.75, 3, '1 at 0.75 h', ['screw section']],
    // 4 m and 10 m of panels, not the gate between.
    ['strip run 1', 2, 8, '4 m at 0.5 h/m', ['strip']],
    ['strip all', 5, 8, '10 m at 0.5 h/m', ['strip']],
    ['clean panels 2 to 4 of run 2', 1.5, 6, '3 m at 0.5 h/m', ['clean']],
    ['fit run 2', 12, 4, '6 m at 2 h/m', ['fit']],
    ['clean all', 5, 6, '10 m at 0.5 h/m', ['clean']],
    ['fit all', 20, 4, '10 m at 2 h/m', ['fit']],
    ['patch panel 1 of run 1', 5, 2, '2 at 2.5 h', ['weld']],
    ['run empty', 1.5, 3, '1 at 1.5 h', ['prove']],
    ['run loaded', 1.5, 3, '1 at 1.5 h', ['prove']],
    ['other work run 1 takes 20 min', 1, 1, 'as its step says', []],
  ])('%s: %d, at most %d people, %s', (text, personHours, mostPeople, basis, defaults) => {
    expect(work(text)).toMatchObject({
      personHours: expect.closeTo(personHours, 9) as number,
      mostPeople,
      basis,
      defaults,
    });
  });

  describe('of the spiral', () => {
    const of = (joins: boolean): Job =>
      withOrder(
        job(made(), [], { screwChange: { screw: screw(), origin: origin() } }),
        joins ? ['join screw'] : [],
      );
    test.each<[string, string, readonly number[] | undefined, number, string, readonly string[]]>([
      ['in three pieces', 'remove screw', [1700, 5100, 8500], 9, '3 at 3 h', ['screw section']],
      ['of unknown pieces: one', 'remove screw', undefined, 3, '1 at 3 h', ['screw section']],
      [
        'the pieces with their middle in it, borders not',
        'remove screw from 0 mm to 5100 mm',
        [0, 1700, 5100, 8500],
        3,
        '1 at 3 h',
        ['screw section'],
      ],
      // Welded where no step of its own joins them: one joint less than pieces.
      [
        'laid in and welded',
        'insert screw',
        [1700, 5100, 8500],
        14,
        'lift 3 at 3 h; weld 2 at 2.5 h',
        ['screw section', 'weld'],
      ],
      [
        'in one piece nothing is welded',
        'insert screw',
        undefined,
        3,
        'lift 1 at 3 h; weld 0 at 2.5 h',
        ['screw section', 'weld'],
      ],
    ])('%s', (_, text, pieces, personHours, basis, defaults) => {
      expect(work(text, of(false), pieces)).toMatchObject({ personHours, basis, defaults, mostPeople: 6 });
    });
    it('joined by steps of their own it is lifted only', () => {
      expect(work('insert screw', of(true), [1700, 5100, 8500])).toMatchObject({
        personHours: 9,
        basis: '3 at 3 h',
        defaults: ['screw section'],
      });
    });
  });

  it('tells what is on the platform meanwhile', () => {
    const heavy = made({ covers: [{ ...cover(0, 5000), mass: stated('mass', 42) }, cover(5000, 10_200)] });
    expect(work('covers off all', job(heavy, ['all'])).load).toBe(42);
    expect(work('isolate').load).toBe(0);
    expect(work('fit run 1').load).toBeGreaterThan(0);
  });
});

describe('unit times', () => {
  const of = (...times: Plant['unitTimes']): Job =>
    job(made({ plant: plant({ unitTimes: times }) }), ['all']);
  it('of the plant go before the usual ones, each or by the metre', () => {
    const own = of(unit('cover', 0.5), unit('fit', 1.5, 'labour a length'), unit('strip', 3));
    expect(unitTime(own, 'cover')).toEqual({ hours: 0.5, per: 'each', assumed: false });
    expect(unitTime(own, 'fit')).toEqual({ hours: 1.5, per: 'metre', assumed: false });
    expect(unitTime(own, 'brace')).toEqual({ hours: 0.3, per: 'each', assumed: true });
    expect(work('covers off all', own)).toMatchObject({ personHours: 1, basis: '2 at 0.5 h', defaults: [] });
    expect(work('fit run 1', own)).toMatchObject({ personHours: 6, basis: '4 m at 1.5 h/m', defaults: [] });
    // By the panel: four of them.
    expect(work('strip run 1', own)).toMatchObject({ personHours: 12, basis: '4 at 3 h' });
  });
  test.each<[string, WorkItem, string, number, string]>([
    // All along 10.2 m, or the stretch.
    ['covers', 'cover', 'covers off all', 10.2, '10.2 m at 1 h/m'],
    ['braces', 'brace', 'braces on all', 10.2, '10.2 m at 1 h/m'],
    ['hold-downs', 'hold-down', 'hold-downs off from 1000 mm to 4000 mm', 3, '3 m at 1 h/m'],
    ['spiral', 'screw section', 'remove screw from 0 mm to 5100 mm', 5.1, '5.1 m at 1 h/m'],
  ])('%s by the metre', (_, item, text, personHours, basis) => {
    expect(work(text, of(unit(item, 1, 'labour a length')))).toMatchObject({
      personHours: expect.closeTo(personHours, 9) as number,
      basis,
    });
  });
  it('by the panel, of those in it', () => {
    const own = of(unit('fit', 1), unit('clean', 2), unit('strip', 3));
    // Six panels in run 2, of the whole ten.
    expect(['fit all', 'clean all', 'strip all'].map((text) => work(text, own).personHours)).toEqual([
      10, 20, 30,
    ]);
  });
  it('the welds of an inserted spiral by the metre', () => {
    const own = job(made({ plant: plant({ unitTimes: [unit('weld', 1, 'labour a length')] }) }), [], {
      screwChange: { screw: screw(), origin: origin() },
    });
    expect(work('insert screw', own).basis).toBe('lift 1 at 3 h; weld 10.2 m at 1 h/m');
    expect(work('insert screw', own).defaults).toEqual(['screw section']);
  });
  it('the usual ones, as published', () => {
    expect(
      Object.entries(defaultUnitTimes).map(([item, { hours: time, per }]) => `${item} ${time} ${per}`),
    ).toEqual([
      'isolate 2 each',
      'cover 0.3 each',
      'brace 0.3 each',
      'hold-down 0.3 each',
      'strip 0.5 metre',
      'clean 0.5 metre',
      'fit 2 metre',
      'screw section 3 each',
      'weld 2.5 each',
      'prove 3 each',
      'access move 1 each',
      'crane move 1 each',
      'gate 1 each',
      'empty 1 each',
      'gas test 0.5 each',
      'clear up 0.1 metre',
    ]);
  });
});

describe('the teams of a job', () => {
  it('crews, platforms and cranes; a crane apart from a crew of its name, each once', () => {
    const cranes = ['MP1', 'MP1', 'C2'].map((name) => ({
      use: use(name),
      at: mm(0),
      offset: mm(0),
      origin: origin(),
    })) as unknown as NonNullable<Job['cranes']>; // their names are all that is read
    const of = job(made(), ['all'], {
      crews: [crew('Alpha', 4), crew('Bravo', 2)],
      accessUnits: [platform('MP1')],
      cranes,
    });
    expect(teamsOf(of)).toEqual([
      { name: 'Alpha', kind: 'crew', people: 4 },
      { name: 'Bravo', kind: 'crew', people: 2 },
      { name: 'MP1', kind: 'access unit', people: 0 },
      { name: 'crane MP1', kind: 'crane', people: 0 },
      { name: 'crane C2', kind: 'crane', people: 0 },
    ]);
  });
  it('three people where nobody is named, or is not known; said', () => {
    expect(teamsOf(job(made(), ['all']))).toEqual([
      {
        name: 'a crew',
        kind: 'crew',
        people: 3,
        assumed: 'The job names no crew: one of 3 people is taken, a judgement.',
      },
    ]);
    expect(teamsOf(job(made(), ['all'], { crews: [{ use: use('Guests') }] }))).toEqual([
      {
        name: 'Guests',
        kind: 'crew',
        people: 3,
        assumed: 'Guests is no crew of Tarnholt: 3 people are taken.',
      },
    ]);
  });
});

describe('ways of doing a step', () => {
  const eight: Work = { personHours: 8, mostPeople: 6, basis: '', defaults: [] };
  const base = job(made(), ['all'], { crews: [crew('Alpha', 4), crew('Bravo', 2)] });
  const ways = (text: string, of: Job = base, w: Work = eight): readonly Way[] => {
    const one = step(text, of);
    const ground = groundOf(of, [one, ...(of.order?.steps ?? [])], worldOf(of));
    return waysOf(of, one, ground.areas[0] ?? [], w, teamsOf(of));
  };
  const short = (list: readonly Way[]): readonly unknown[] =>
    list.map(({ crews, people, minutes, unit: up, teams }) => [crews.join('+'), people, minutes, up, teams]);

  it('each crew, and all of them where many hands make it light', () => {
    // 8 h by four are 2 h, by two 4 h, by six 80 min.
    expect(short(ways('strip run 1'))).toEqual([
      ['Alpha', 4, 120, undefined, [0]],
      ['Bravo', 2, 240, undefined, [1]],
      ['Alpha+Bravo', 6, 80, undefined, [0, 1]],
    ]);
    expect(ways('isolate').map(({ crews }) => crews)).toEqual([['Alpha'], ['Bravo']]);
  });
  test.each([
    'covers off all',
    'covers on all',
    'braces off all',
    'braces on all',
    'hold-downs off all',
    'hold-downs on all',
    'strip all',
    'clean all',
    'remove screw',
    'insert screw',
  ])('many hands: %s', (text) => {
    expect(ways(text)).toHaveLength(3);
  });
  test.each(['fit run 1', 'gas test all', 'prove dead', 'clear up all', 'bolt drive'])(
    'not many: %s',
    (text) => {
      expect(ways(text)).toHaveLength(2);
    },
  );
  it('a single crew is not listed twice', () => {
    expect(ways('strip run 1', job(made(), ['all'], { crews: [crew('Alpha', 4)] }))).toHaveLength(1);
  });
  it('no more people than help, and at least one', () => {
    expect(
      short(ways('strip run 1', base, { ...eight, mostPeople: 3 })).map((row) =>
        (row as unknown[]).slice(1, 3),
      ),
    ).toEqual([
      [3, 160],
      [2, 240],
      [3, 160],
    ]);
    const nobody = job(made(), ['all'], { crews: [crew('Alpha', 0)] });
    expect(short(ways('strip run 1', nobody))).toEqual([['Alpha', 1, 480, undefined, [0]]]);
  });
  it('in whole minutes, rounded up, at least one; by what the step itself says', () => {
    const minutes = (personHours: number): number | undefined =>
      ways('isolate by Bravo', base, { ...eight, personHours, mostPeople: 1 })[0]?.minutes;
    expect([minutes(0), minutes(1), minutes(1 + 1e-9), minutes(1.001)]).toEqual([1, 60, 60, 61]);
    expect(ways('isolate by Alpha takes 90 min').map((each) => each.minutes)).toEqual([90]);
  });
  it('the crews that the step names, together; those nobody knows are left out', () => {
    expect(short(ways('isolate by Bravo'))).toEqual([['Bravo', 2, 240, undefined, [1]]]);
    expect(short(ways('isolate by Alpha, Bravo'))).toEqual([['Alpha+Bravo', 6, 80, undefined, [0, 1]]]);
    expect(short(ways('isolate by Guests, Bravo'))).toEqual([['Bravo', 2, 240, undefined, [1]]]);
    expect(ways('isolate by Guests')).toHaveLength(2);
  });
  it('who stands by is bound too, and does not work', () => {
    expect(short(ways('isolate by Alpha attended by Bravo'))).toEqual([['Alpha', 4, 120, undefined, [0, 1]]]);
    expect(short(ways('isolate by Bravo attended by Alpha'))).toEqual([['Bravo', 2, 240, undefined, [1, 0]]]);
    expect(short(ways('isolate by Alpha attended by Guests'))).toEqual([['Alpha', 4, 120, undefined, [0]]]);
  });
  it('where it is', () => {
    expect(ways('strip run 1')[0]?.place).toBe('run 1');
    expect(ways('isolate')[0]?.place).toBe('');
  });

  describe('somebody outside an enclosed trough, where a proposal has to say who', () => {
    const small = (...crews: readonly [string, number][]): Job =>
      job(made({ confinedSpace: true }), ['all'], { crews: crews.map(([name, size]) => crew(name, size)) });
    const outside = (text: string, of: Job): readonly unknown[] =>
      ways(text, of).map(({ crews, people, standBy, aboard, teams }) => [
        crews.join('+'),
        people,
        standBy,
        aboard,
        teams,
      ]);
    const solo = small(['Solo', 1], ['Alpha', 4]);

    it('beside a crew of one any other crew; of more than one, one of them', () => {
      expect(outside('fit run 1', solo)).toEqual([
        ['Solo', 1, ['Alpha'], undefined, [0, 1]],
        ['Alpha', 3, undefined, 3, [1]],
      ]);
      // Two crews of one: either stands by for the other, and together one of the two does.
      expect(outside('strip run 1', small(['Solo', 1], ['Una', 1]))).toEqual([
        ['Solo', 1, ['Una'], undefined, [0, 1]],
        ['Una', 1, ['Solo'], undefined, [1, 0]],
        ['Solo+Una', 1, undefined, 1, [0, 1]],
      ]);
    });
    it('a way for each crew that could', () => {
      expect(outside('fit run 1 by Solo', small(['Solo', 1], ['Alpha', 4], ['Bravo', 2]))).toEqual([
        ['Solo', 1, ['Alpha'], undefined, [0, 1]],
        ['Solo', 1, ['Bravo'], undefined, [0, 2]],
      ]);
    });
    it('at the rim too, for one who is alone there', () => {
      expect(outside('covers off run 1 by Solo', solo)).toEqual([['Solo', 1, ['Alpha'], undefined, [0, 1]]]);
      expect(outside('covers off run 1 by Alpha', solo)).toEqual([['Alpha', 4, undefined, undefined, [1]]]);
    });
    it.each([
      [
        'in a trough that is open',
        job(made(), ['all'], { crews: [crew('Solo', 1), crew('Alpha', 4)] }),
        'fit run 1 by Solo',
      ],
      ['for who only tests the air', solo, 'gas test run 1 by Solo'],
      ['for who moves a gate from outside', solo, 'gate shut Gate1 by Solo'],
      ['where there is no other crew: the checker says so', small(['Solo', 1]), 'fit run 1 by Solo'],
      ['in an order that somebody wrote', withOrder(solo, ['fit run 1 by Solo']), 'fit run 1 by Solo'],
    ])('not %s', (_, of, text) => {
      expect(outside(text, of)).toEqual([['Solo', 1, undefined, undefined, [0]]]);
    });
    it('whoever is named to stand by does', () => {
      expect(outside('fit run 1 by Solo attended by Alpha', solo)).toEqual([
        ['Solo', 1, undefined, undefined, [0, 1]],
      ]);
    });
  });

  describe('from a platform', () => {
    const zone = {
      ...everywhere,
      name: 'High',
      kind: 'mobile platform' as const,
      from: mm(4200),
      height: mm(8000),
    };
    const floor = { ...everywhere, to: mm(4200) };
    const high = (units: Job['accessUnits'], facts: Partial<Conveyor> = {}): Job =>
      job(made({ access: [floor, zone], ...facts }), ['all'], {
        crews: [crew('Alpha', 4)],
        accessUnits: units,
      });
    const up = (text: string, of: Job): readonly unknown[] =>
      ways(text, of).map(({ unit: name, teams, people, aboard }) => [name, teams, people, aboard]);
    it('with whoever stands by, who has no hand in the work', () => {
      const two = (limit: number): Job => ({
        ...high([platform('MP1', 9000, limit)]),
        crews: [crew('Alpha', 4), crew('Bravo', 2)],
      });
      expect(up('strip run 2 by Alpha attended by Bravo', two(600))).toEqual([
        ['MP1', [0, 1, 2], 4, undefined],
      ]);
      // Five of 80 kg with 40 kg of tools; four; two, of whom one watches.
      expect(up('strip run 2 by Alpha attended by Bravo', two(440))).toEqual([
        ['MP1', [0, 1, 2], 4, undefined],
      ]);
      expect(up('strip run 2 by Alpha attended by Bravo', two(439))).toEqual([['MP1', [0, 1, 2], 3, 4]]);
      expect(up('strip run 2 by Alpha attended by Bravo', two(230))).toEqual([['MP1', [0, 1, 2], 1, 2]]);
      expect(up('strip run 2 by Alpha attended by Bravo using MP1 with 3 people', two(600))).toEqual([
        ['MP1', [0, 1, 2], 2, 3],
      ]);
      expect(up('strip run 1 by Alpha attended by Bravo', two(230))).toEqual([
        [undefined, [0, 1], 4, undefined],
      ]);
    });
    it('each that reaches, where the place needs one', () => {
      const of = high([platform('MP1'), platform('Low', 5000), platform('MP2')]);
      expect(up('strip run 2', of)).toEqual([
        ['MP1', [0, 1], 4, undefined],
        ['MP2', [0, 3], 4, undefined],
      ]);
      expect(up('strip run 1', of)).toEqual([[undefined, [0], 4, undefined]]);
      // One that only touches the zone is not in it.
      expect(up('strip from 3000 mm to 4201 mm', of)).toEqual([[undefined, [0], 4, undefined]]);
      expect(up('strip from 3000 mm to 4202 mm', of)).toHaveLength(2);
    });
    it('one that the plant does not know is taken to reach', () => {
      expect(up('strip run 2', high([{ use: use('Hired') }]))).toEqual([['Hired', [0, 1], 4, undefined]]);
    });
    it('none where none reaches, and none for what is not done there', () => {
      expect(up('strip run 2', high([platform('Low', 5000)]))).toEqual([[undefined, [0], 4, undefined]]);
      expect(up('strip run 2', high([]))).toEqual([[undefined, [0], 4, undefined]]);
      for (const text of ['isolate', 'gas test all'])
        expect(up(text, high([platform('MP1')]))).toEqual([[undefined, [0], 4, undefined]]);
    });
    it('at a place in it: its borders count', () => {
      const gate = (from: number, to: number): unknown =>
        up(
          'gate off Gate1',
          high([platform('MP1')], { access: [floor, { ...zone, from: mm(from), to: mm(to) }] }),
        );
      expect(gate(4000, 9000)).toEqual([['MP1', [0, 1], 4, undefined]]);
      expect(gate(4300, 9000)).toEqual([[undefined, [0], 4, undefined]]);
    });
    it('at a gate without a width too, borders included', () => {
      const thin = [
        gap('Tail', 'end plate', 0),
        gap('Gate1', 'slide gate', 4000),
        gap('Head', 'end plate', 10_200),
      ];
      const gate = (from: number, to: number): unknown =>
        up(
          'gate off Gate1',
          high([platform('MP1')], { breaks: thin, access: [floor, { ...zone, from: mm(from), to: mm(to) }] }),
        );
      const needed = [['MP1', [0, 1], 4, undefined]];
      const none = [[undefined, [0], 4, undefined]];
      expect([gate(4000, 9000), gate(0, 4000), gate(4001, 9000), gate(0, 3999)]).toEqual([
        needed,
        needed,
        none,
        none,
      ]);
    });
    it('one that reaches all zones of the step, with its own room', () => {
      const higher = { ...zone, name: 'Higher', from: mm(7000), height: mm(15_000) };
      const of = high([platform('Low', 9000), platform('MP2', 20_000, 320)], {
        access: [floor, { ...zone, to: mm(7000) }, higher],
      });
      expect(up('strip run 2', of)).toEqual([['MP2', [0, 2], 3, 3]]);
      expect(up('strip from 4500 mm to 6000 mm', of)).toEqual([
        ['Low', [0, 1], 4, undefined],
        ['MP2', [0, 2], 3, 3],
      ]);
    });
    it('the one that the step names, if the job has it', () => {
      const of = high([platform('MP1'), platform('MP2')]);
      expect(up('strip run 2 using MP2', of)).toEqual([['MP2', [0, 2], 4, undefined]]);
      expect(up('strip run 1 using MP2', of)).toEqual([['MP2', [0, 2], 4, undefined]]);
      expect(up('strip run 2 using MP9', of)).toEqual([[undefined, [0], 4, undefined]]);
    });
    it('no more people than it carries beside the load; where even that is too much, one is reckoned with', () => {
      // 320 kg: 40 of tools, 80 a person. With 40 kg of load 3 people, with 300 none.
      const of = high([platform('MP1', 20_000, 320)]);
      const aboard = (load: number): unknown =>
        ways('strip run 2', of, { ...eight, load }).map((each) => [each.people, each.aboard, each.minutes]);
      expect(aboard(40)).toEqual([[3, 3, 160]]);
      expect(aboard(300)).toEqual([[1, 1, 480]]);
      expect(ways('strip run 2', of, eight).map((each) => [each.people, each.aboard])).toEqual([[3, 3]]);
      expect(
        ways('strip run 2 with 2 people', of).map((each) => [each.people, each.aboard, each.minutes]),
      ).toEqual([[2, 2, 240]]);
      // As many as there are anyway: nothing to say.
      expect(ways('strip run 2 with 4 people', of).map((each) => each.aboard)).toEqual([undefined]);
    });
  });

  it('a crane is bound where it lifts, and only by what hangs', () => {
    const crane = {
      name: 'C1',
      origin: origin(),
      nameOrigin: origin(),
      chart: [{ load: stated('mass', 900), radius: mm(20_000) }],
    };
    const of: Job = {
      ...base,
      cranes: [{ use: use('C1'), crane, at: mm(5000), offset: mm(3000), origin: origin() }],
    };
    expect(ways('remove screw', of).map(({ teams }) => teams)).toEqual([
      [0, 2],
      [1, 2],
      [0, 1, 2],
    ]);
    expect(ways('strip run 1', of)[0]?.teams).toEqual([0]);
  });
});

describe('who welds', () => {
  const with2 = (...skills: readonly (readonly string[])[]): Job =>
    job(made(), ['all'], { crews: skills.map((each, k) => crew(['Alpha', 'Bravo'][k] ?? '', 3, each)) });
  test.each<[string, Job, readonly boolean[]]>([
    ['the one who says so', with2(['fitting', 'Welder'], ['fitting']), [true, false]],
    ['nobody where only other skills are said', with2(['fitting'], []), [false, false]],
    ['anybody where nothing is said', with2([], []), [true, true]],
  ])('%s', (_, of, able) => {
    expect(['Alpha', 'Bravo'].map((name) => canDo(of, name, 'patch'))).toEqual(able);
    expect(['Alpha', 'Bravo'].map((name) => canDo(of, name, 'strip'))).toEqual([true, true]);
  });
  it('one who is not of the job does not, where others say who does', () => {
    expect(canDo(with2(['welding']), 'Guests', 'patch')).toBe(false);
    expect(canDo(with2([]), 'Guests', 'patch')).toBe(true);
  });
  it('only who can is taken; where nobody can, all are', () => {
    const sets = (of: Job): unknown =>
      waysOf(
        of,
        step('patch panel 1 of run 1', of),
        [],
        { personHours: 1, mostPeople: 2, basis: '', defaults: [] },
        teamsOf(of),
      ).map(({ crews }) => crews);
    expect(sets(with2(['fitting'], ['welding']))).toEqual([['Bravo']]);
    expect(sets(with2(['fitting'], []))).toEqual([['Alpha'], ['Bravo']]);
  });
  const change = (joints: 'bolted' | undefined, lines?: readonly string[]): Job => {
    const of = job(made(), [], {
      screwChange: { screw: screw(), origin: origin(), ...(joints ? { joints } : {}) } as NonNullable<
        Job['screwChange']
      >,
    });
    return lines ? withOrder(of, lines) : of;
  };
  test.each<[string, Job, boolean, boolean]>([
    // Of joining; of laying in.
    ['proposed: joints are steps of their own', change(undefined), true, false],
    ['bolted joints need none', change('bolted'), false, false],
    ['as written, with joints of their own', change(undefined, ['insert screw', 'join screw']), true, false],
    ['as written, without', change(undefined, ['insert screw']), true, true],
    ['as written, bolted', change('bolted', ['insert screw']), false, false],
  ])('%s', (_, of, joining, laying) => {
    expect([welds(of, 'join screw'), welds(of, 'insert screw')]).toEqual([joining, laying]);
    expect([welds(of, 'patch'), welds(of, 'strip')]).toEqual([true, false]);
  });
});

describe('ways that fit into a shift', () => {
  const way = (minutes: number): Way => ({
    crews: [],
    people: 1,
    unit: undefined,
    place: '',
    minutes,
    teams: [],
  });
  const kept = (text: string, longest: number): readonly number[] =>
    fittingWays([way(100), way(200), way(300)], step(text), longest).map(({ minutes }) => minutes);
  it('of what may not be left half done; all where none fits', () => {
    expect(kept('remove screw', 200)).toEqual([100, 200]);
    expect(kept('remove screw', 199)).toEqual([100]);
    expect(kept('remove screw', 99)).toEqual([100, 200, 300]);
    expect(kept('clean all', 200)).toEqual([100, 200, 300]);
  });
});
