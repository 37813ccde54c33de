// The steps that are proposed where no order is written, as text, line by line.

import { describe, expect, it, test } from 'vitest';
import type { Conveyor } from '../../../src/domain/model/conveyor.js';
import type { Job } from '../../../src/domain/model/job.js';
import { stepText } from '../../../src/domain/order/words.js';
import { judge } from '../../../src/domain/order/judge.js';
import { newStep, proposeSteps } from '../../../src/domain/plan/proposed-steps.js';
import { gap, hours, mm, origin, plant, screw, stated } from '../../kit/estate.js';
import { brace, cover, crew, holdDown, job, line, worldOf } from '../order/stories.js';

const heldUp = { gear: 'chain hoist', rating: stated('mass', 500), spacing: mm(3000), origin: origin() };
const lines = (of: Job): readonly string[] =>
  proposeSteps({ heldUp, ...of }, worldOf(of)).steps.map(stepText);
const first = ['empty', 'isolate', 'prove dead'];
const last = ['remove isolation', 'run empty', 'run loaded'];

describe('a reline', () => {
  it('asks at the first step under a spiral what nobody can propose', () => {
    const of = job(line([2, 2], [10, 10, 10]), ['all']);
    const asked = (more: Partial<Job>): readonly string[] =>
      proposeSteps({ ...of, ...more }, worldOf(of)).steps.flatMap(({ action, note }) =>
        note === undefined ? [] : [`${action}: ${note}`],
      );
    expect(asked({})).toEqual(['strip: first: what holds the spiral up? Say it in the job.']);
    expect(asked({ heldUp })).toEqual([]);
    expect(
      asked({ screwChange: { screw: screw(), cut: 'cold', joints: 'bolted', origin: origin() } }),
    ).toEqual([]);
  });
  it('of one run under nothing', () => {
    expect(lines(job(line([4], [10, 0]), ['all']))).toEqual([
      ...first,
      'covers off run 1',
      'strip run 1',
      'clean run 1',
      'fit run 1 starting at head',
      'clear up run 1',
      'covers on run 1',
      ...last,
    ]);
  });

  it('of two parts of a run leaves what lies between where it is', () => {
    const of = job(line([8], [10, 10]), ['panels 1 to 2 of run 1', 'panels 6 to 8 of run 1']);
    const steps = lines(of).filter((step) => /^(strip|fit) /.test(step));
    expect(steps).toEqual([
      'strip panels 1 to 2 of run 1',
      'strip panels 6 to 8 of run 1',
      expect.stringContaining('fit panels 1 to 2 of run 1'),
      expect.stringContaining('fit panels 6 to 8 of run 1'),
    ]);
    expect(proposeSteps(of, worldOf(of)).runs.map(({ beyond }) => beyond)).toEqual([undefined, undefined]);
  });

  it('of two parts that cannot be closed apart says what comes off too', () => {
    const of = job(line([8], [10, 0]), ['panel 3 of run 1', 'panel 5 of run 1']);
    const { runs } = proposeSteps(of, worldOf(of));
    expect(runs).toHaveLength(1);
    expect(runs[0]?.beyond).toBeDefined();
  });

  it('with what lies over it, taken off from the outside in and put on from the inside out', () => {
    const over = { covers: [cover(0, 4000)], braces: [brace(1000)], holdDowns: [holdDown(2000)] };
    expect(lines(job(line([4], [10, 0], over), ['all']))).toEqual([
      ...first,
      'covers off run 1',
      'braces off run 1',
      'hold-downs off run 1',
      'strip run 1',
      'clean run 1',
      'fit run 1 starting at head',
      'hold-downs on run 1',
      'braces on run 1',
      'clear up run 1',
      'covers on run 1',
      ...last,
    ]);
  });

  it('of a conveyor, emptied first, and of an enclosed one, whose air is tested', () => {
    const interval = { ...hours(2), text: '2 h' };
    const of = (confinedSpace: boolean, facts: Partial<Conveyor> = {}): readonly string[] =>
      lines(job(line([4, 4], [10, 10, 10], { confinedSpace, ...facts }), ['run 1'])).filter((text) =>
        /gas|empty$/.test(text),
      );
    expect(of(false)).toEqual(['empty', 'run empty']);
    expect(of(true)).toEqual(['empty', 'gas test run 1', 'run empty']);
    expect(of(true, { plant: plant({ gasTestInterval: interval }) })).toEqual([
      'empty',
      'gas test run 1 every 2 h',
      'run empty',
    ]);
  });
  it('of a job that is part of another: the machine is empty and isolated already', () => {
    const of = job(line([4], [10, 0]), ['all'], { partOf: { name: 'J0', origin: origin() } });
    expect(lines(of).slice(0, 2)).toEqual(['isolate', 'prove dead']);
  });
  it('of two runs: one test for the whole trough', () => {
    const of = line([4, 4], [10, 10, 10], { confinedSpace: true });
    expect(lines(job(of, ['all'])).filter((text) => text.startsWith('gas'))).toEqual(['gas test all']);
  });

  it('of two runs, one action after the other along both', () => {
    expect(lines(job(line([4, 4], [10, 10, 10]), ['all'])).slice(3, -3)).toEqual([
      'covers off run 1',
      'covers off run 2',
      'strip run 1',
      'strip run 2',
      'clean run 1',
      'clean run 2',
      'fit run 1 starting at head',
      'fit run 2 starting at head',
      'clear up run 1',
      'clear up run 2',
      'covers on run 1',
      'covers on run 2',
    ]);
  });

  it('a cover that both runs share comes off once', () => {
    const named = (covers: Conveyor['covers']): readonly string[] =>
      lines(job(line([4, 4], [10, 10, 10], { covers }), ['all'])).filter((text) => text.startsWith('covers'));
    expect(named([cover(0, 8200)])).toHaveLength(2);
    expect(named([cover(0, 4100), cover(4100, 8200)])).toEqual([
      'covers off run 1',
      'covers off run 2',
      'covers on run 1',
      'covers on run 2',
    ]);
    // The first run has nothing of its own; the second has.
    expect(named([cover(0, 5000), cover(5000, 8200)])).toEqual(['covers off run 2', 'covers on run 2']);
    expect(named([cover(0, 3000), cover(3000, 8200)])).toEqual(['covers off run 1', 'covers on run 1']);
  });

  it('of a part', () => {
    expect(lines(job(line([4], [10, 0]), ['panels 1 to 2 of run 1'])).slice(3, 7)).toEqual([
      'covers off panels 1 to 2 of run 1',
      'strip panels 1 to 2 of run 1',
      'clean panels 1 to 2 of run 1',
      'fit panels 1 to 2 of run 1 starting at head',
    ]);
  });

  it('of nothing has no steps', () => {
    expect(proposeSteps(job(line([4], [10, 0]), []), worldOf(job(line([4], [10, 0]), [])))).toEqual({
      steps: [],
      runs: [],
    });
  });
});

describe('from which end, and how much', () => {
  const runs = (of: Job): readonly unknown[] =>
    proposeSteps(of, worldOf(of)).runs.map(({ start, first: from, last: to, beyond, cutToFit }) => [
      start,
      from,
      to,
      beyond && [beyond.first, beyond.last],
      cutToFit && [cutToFit.worst, cutToFit.allowance],
    ]);
  test.each<[string, readonly number[], string, readonly unknown[]]>([
    // Allowances at tail and head; what the job asks for; start, panels, beyond, cut to fit (worst, taken).
    ['closed at the tail', [10, 0], 'all', ['head', 1, 4, undefined, undefined]],
    ['closed at the head', [0, 10], 'all', ['tail', 1, 4, undefined, undefined]],
    ['both ends will do: the custom', [10, 10], 'all', ['head', 1, 4, undefined, undefined]],
    [
      'the first two, closed at the tail',
      [10, 10],
      'panels 1 to 2 of run 1',
      ['head', 1, 2, undefined, undefined],
    ],
    [
      'the last two: from the other end',
      [10, 10],
      'panels 3 to 4 of run 1',
      ['tail', 3, 4, undefined, undefined],
    ],
    [
      'the second: the first must come off too',
      [10, 10],
      'panel 2 of run 1',
      ['head', 1, 2, [1, 1], undefined],
    ],
    [
      'the third: the fourth must come off too',
      [10, 10],
      'panel 3 of run 1',
      ['tail', 3, 4, [4, 4], undefined],
    ],
    ['the third, where only the tail closes', [10, 0], 'panel 3 of run 1', ['head', 1, 3, [1, 2], undefined]],
    [
      'the second, where only the head closes',
      [0, 10],
      'panel 2 of run 1',
      ['tail', 2, 4, [3, 4], undefined],
    ],
    ['two firm ends', [0, 0], 'all', ['head', 1, 4, undefined, [6, 0]]],
    ['two firm ends, of a part', [0, 0], 'panels 2 to 3 of run 1', ['head', 1, 3, [1, 1], [5, 0]]],
  ])('%s', (_, allowances, scope, expected) => {
    expect(runs(job(line([4], allowances), [scope]))).toEqual([expected]);
  });
  it('where no break takes the error, the fit says cut to fit, and the checker has nothing against it', () => {
    const of = job(line([4], [0, 0]), ['all']);
    const { steps } = proposeSteps(of, worldOf(of));
    expect(steps.filter(({ cutToFit }) => cutToFit).map(({ action }) => action)).toEqual(['fit']);
    const found = judge({ ...of, order: { steps, origin: of.origin } }, worldOf(of));
    expect(found.map(({ violation }) => violation.kind)).not.toContain('closing error too large');
  });
  it('each run by itself', () => {
    expect(runs(job(line([4, 3], [10, 0, 10]), ['all']))).toEqual([
      ['head', 1, 4, undefined, undefined],
      ['tail', 1, 3, undefined, undefined],
    ]);
  });
});

describe('gates above the work on a slope', () => {
  const gates = (
    incline: number,
    crews: number,
    facts: Partial<Conveyor> = {},
    scope: readonly string[] = ['all'],
  ): readonly string[] => {
    const of = line([4, 4], [10, 10, 10], { incline: stated('angle', incline), ...facts });
    return lines(
      job(of, scope, { crews: [crew('Alpha'), crew('Bravo'), crew('Charlie')].slice(0, crews) }),
    ).filter((text) => text.startsWith('gate'));
  };
  it('are shut before and opened after, above each stretch', () => {
    expect(gates(20, 2)).toEqual(['gate shut Gate1', 'gate open Gate1']);
    expect(gates(-20, 3)).toEqual(['gate shut Gate1', 'gate open Gate1']);
  });
  it('whether one crew or several work below them, and not where the work is all above', () => {
    expect(gates(20, 1)).toEqual(['gate shut Gate1', 'gate open Gate1']);
    expect(gates(20, 2, {}, ['run 1'])).toEqual(['gate shut Gate1', 'gate open Gate1']);
    expect(gates(20, 2, {}, ['run 2'])).toEqual([]);
    expect(gates(-20, 2, {}, ['run 1'])).toEqual([]);
    expect(gates(-20, 2, {}, ['run 2'])).toEqual(['gate shut Gate1', 'gate open Gate1']);
  });
  it('of several gates the nearest above each stretch', () => {
    const of = (incline: number, ...scope: string[]): readonly string[] =>
      lines(job(line([2, 2, 2], [10, 10, 10, 10], { incline: stated('angle', incline) }), scope)).filter(
        (text) => text.startsWith('gate shut'),
      );
    expect(of(20, 'run 1')).toEqual(['gate shut Gate1']);
    expect(of(20, 'run 2')).toEqual(['gate shut Gate2']);
    expect(of(20, 'run 1', 'run 3')).toEqual(['gate shut Gate1']);
    expect(of(-20, 'run 3')).toEqual(['gate shut Gate2']);
    expect(of(-20, 'all')).toEqual(['gate shut Gate1', 'gate shut Gate2']);
  });
  it('where the spiral comes out too', () => {
    const of = (crews: number, scope: readonly string[]): readonly string[] => {
      const made = line([4, 4], [10, 10, 10], { incline: stated('angle', 20) });
      const all = [crew('Alpha'), crew('Bravo')].slice(0, crews);
      const change = { screw: made.screw, origin: origin() };
      return lines(job(made, scope, { crews: all, screwChange: change })).filter((text) =>
        text.startsWith('gate shut'),
      );
    };
    expect(of(2, ['all'])).toEqual(['gate shut Gate1']);
    expect(of(1, ['all'])).toEqual(['gate shut Gate1']);
    expect(of(2, ['run 1'])).toEqual(['gate shut Gate1']);
    expect(of(2, ['run 2'])).toEqual([]);
  });
  it('not on the level, and only gates', () => {
    expect(gates(0, 2)).toEqual([]);
    const inlet = [
      gap('Tail', 'end plate', 0, 0, 10),
      gap('In', 'inlet', 4000, 4200, 10),
      gap('Head', 'end plate', 8200, 8200, 10),
    ];
    expect(gates(20, 2, { breaks: inlet })).toEqual([]);
  });
  it('are shut before the isolation that may lock them', () => {
    const of = line([4, 4], [10, 10, 10], { incline: stated('angle', 20), confinedSpace: true });
    const all = lines(job(of, ['all'], { crews: [crew('Alpha'), crew('Bravo')] }));
    expect(all.slice(0, 5)).toEqual(['empty', 'gate shut Gate1', 'isolate', 'prove dead', 'gas test all']);
    expect(all.slice(-5)).toEqual(['covers on run 2', 'gate open Gate1', ...last]);
  });
  it('and opened only after it where a drive moves them', () => {
    const of = line([4, 4], [10, 10, 10], { incline: stated('angle', 20) });
    const breaks = of.breaks.map((each) =>
      each.kind === 'slide gate' ? { ...each, drive: 'hydraulics' as const } : each,
    );
    const all = lines(job({ ...of, breaks }, ['all']));
    expect(all.slice(0, 3)).toEqual(['empty', 'gate shut Gate1', 'isolate']);
    expect(all.slice(-4)).toEqual(['remove isolation', 'gate open Gate1', 'run empty', 'run loaded']);
  });
});

describe('a new screw', () => {
  const spiral = screw({
    outsideDiameter: mm(300),
    pitch: mm(300),
    flight: { width: mm(60), thickness: mm(20), origin: origin() },
  });
  type Change = NonNullable<Job['screwChange']>;
  const of = (how: Partial<Change>, limit: number, facts: Partial<Conveyor> = {}): Job =>
    job(line([4], [10, 0], { screw: spiral, ...facts }), [], {
      screwChange: { screw: spiral, origin: origin(), ...how },
      liftLimit: stated('mass', limit),
    });
  const heat = 'hot work shielded wet fire watch 60 min to be confirmed';
  const work = (made: Job): readonly string[] => lines(made).filter((text) => /screw|watch/.test(text));
  it('whole: opened all along, out before and in after, cut hot and watched', () => {
    const over = {
      covers: [cover(0, 2000), cover(2000, 4000)],
      braces: [brace(1000)],
      holdDowns: [holdDown(2000)],
    };
    expect(lines(of({}, 500, over))).toEqual([
      ...first,
      'covers off all',
      'braces off all',
      'hold-downs off all',
      'restrain screw',
      'unbolt drive',
      `remove screw ${heat}`,
      'fire watch takes 60 min',
      'insert screw cold work',
      'bolt drive',
      'release screw',
      'hold-downs on all',
      'braces on all',
      'clear up all',
      'covers on all',
      ...last,
    ]);
  });
  it('with a reline: the liner between', () => {
    const all = lines({
      ...of({ cut: 'cold', joints: 'bolted' }, 500),
      relines: job(line([4], [10, 0]), ['run 1']).relines,
    });
    expect(all.slice(3, -3)).toEqual([
      'covers off all',
      'restrain screw',
      'unbolt drive',
      'remove screw',
      'strip run 1',
      'clean run 1',
      'fit run 1 starting at head',
      'insert screw',
      'bolt drive',
      'release screw',
      'clear up all',
      'covers on all',
    ]);
  });
  it('in pieces: a joint of its own from middle to middle, from the tail to the head', () => {
    // 102 kg at 35 kg: three pieces of 1.35, 1.35 and 1.3 m, the second with its middle at 2.025.
    expect(work(of({ cut: 'cold' }, 35))).toEqual([
      'restrain screw',
      'remove screw',
      'insert screw',
      `join screw from 0 m to 2.025 m ${heat}`,
      `join screw from 2.025 m to 4 m ${heat}`,
      'fire watch takes 60 min',
      'release screw',
    ]);
    // Four pieces of a metre: three joints.
    expect(work(of({ cut: 'cold', joints: 'bolted' }, 26))).toEqual([
      'restrain screw',
      'remove screw',
      'insert screw',
      'join screw from 0 m to 1.5 m',
      'join screw from 1.5 m to 2.5 m',
      'join screw from 2.5 m to 4 m',
      'release screw',
    ]);
    expect(work(of({ cut: 'cold', joints: 'bolted' }, 52))).toEqual([
      'restrain screw',
      'remove screw',
      'insert screw',
      'join screw from 0 m to 4 m',
      'release screw',
    ]);
  });
  it('of unknown mass it is laid in as one, welded and watched, or bolted', () => {
    const bare = screw();
    expect(work(of({ screw: bare, cut: 'cold' }, 100, { screw: bare }))).toEqual([
      'restrain screw',
      'remove screw',
      `insert screw ${heat}`,
      'fire watch takes 60 min',
      'release screw',
    ]);
    expect(work(of({ screw: bare, cut: 'cold', joints: 'bolted' }, 100, { screw: bare }))).toEqual([
      'restrain screw',
      'remove screw',
      'insert screw',
      'release screw',
    ]);
  });
  it('what is hot is hot work, watched for an hour', () => {
    const made = of({}, 35);
    const { steps } = proposeSteps(made, worldOf(made));
    const hot = steps.filter(({ heat }) => heat?.kind === 'hot');
    expect(hot.map(({ action }) => action)).toEqual(['remove screw', 'join screw', 'join screw']);
    for (const { heat } of hot)
      expect(heat).toMatchObject({
        fireWatch: { dimension: 'duration', value: 1, text: '60 min' },
        confirmed: false,
      });
    const [joint] = steps.filter(({ action }) => action === 'join screw');
    expect(joint?.stretch).toMatchObject({
      from: { dimension: 'length', value: 0 },
      to: { dimension: 'length', value: 2025 },
    });
    expect(steps.filter(({ action }) => action === 'fire watch').map(({ takes }) => takes?.value)).toEqual([
      1, 1,
    ]);
  });
  it('in one piece that is bolted nothing is said of heat', () => {
    expect(work(of({ joints: 'bolted', cut: 'cold' }, 500))).toEqual([
      'restrain screw',
      'remove screw',
      'insert screw',
      'release screw',
    ]);
  });
});

it('a new step stands nowhere in a text: its place is the name of the job', () => {
  const of = job(line([4], [10, 0]), ['all']);
  expect(newStep(of, 'isolate')).toEqual({
    action: 'isolate',
    crews: [],
    after: [],
    origin: of.nameOrigin,
    actionOrigin: of.nameOrigin,
  });
  for (const { origin: at, actionOrigin } of proposeSteps(of, worldOf(of)).steps)
    expect([at, actionOrigin]).toEqual([of.nameOrigin, of.nameOrigin]);
});
