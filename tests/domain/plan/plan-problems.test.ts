// What stands in the way of a plan, word for word: somebody acts on these. Each case is a plan of which one thing is wrong.

import { describe, expect, it, test } from 'vitest';
import type { Conveyor } from '../../../src/domain/model/conveyor.js';
import type { Job } from '../../../src/domain/model/job.js';
import type { Run } from '../../../src/domain/model/runs.js';
import type { Violation } from '../../../src/domain/order/violation.js';
import type { JobPlan, PlannedStep, PlanProblem } from '../../../src/domain/plan/job-plan.js';
import type { LiftProblem } from '../../../src/domain/plan/lifts.js';
import { planProblems } from '../../../src/domain/plan/plan-problems.js';
import { teamsOf, type Team } from '../../../src/domain/plan/teams.js';
import { workCalendar } from '../../../src/domain/plan/work-calendar.js';
import { gap, hours, mm, on, origin, plant, screw, stated } from '../../kit/estate.js';
import { crew, job, line, plannedStep, step } from '../order/stories.js';

const heldUp = { gear: 'chain hoist', rating: stated('mass', 500), spacing: mm(3000), origin: origin() };
const base = job(line([4], [10, 0]), ['all'], { crews: [crew('Alpha', 4)], heldUp });
const planned = (text: string, start: number, finish: number, more?: Partial<PlannedStep>): PlannedStep =>
  plannedStep(step(text, base), start, finish, more);
const some = planned('isolate', 0, 1);

interface Told {
  readonly job?: Job;
  readonly plan?: Partial<JobPlan>;
  readonly teams?: readonly Team[];
  readonly tooMany?: { readonly steps: number; readonly teams: number };
}

function problems({ job: of = base, plan = {}, teams, tooMany }: Told): readonly PlanProblem[] {
  const whole = {
    job: of,
    order: 'proposed',
    steps: [some],
    duration: 5,
    lowerBound: 5,
    longerThanShift: [],
    openTooLong: 0,
    watchTooLate: 0,
    available: undefined,
    runs: [],
    lifts: { spiral: undefined, byHand: [], slingAngle: { value: 45 }, problems: [] },
    violations: [],
    ground: { runs: [] },
    ...plan,
  } as unknown as JobPlan; // all that is read of it
  return planProblems(whole, workCalendar(of), teams ?? teamsOf(of), tooMany);
}
const told = (of: Told): readonly (readonly unknown[])[] =>
  problems(of).map(({ kind, stops, message, todo }) => [kind, stops, message, todo]);

test.each<[string, Partial<Job>, readonly string[], readonly string[]]>([
  [
    'is asked for by a proposal that cannot know it',
    {},
    ['clean run 1', 'strip run 1'],
    ['"strip run 1" as proposed works under a spiral that stays in, and J1 does not say what holds it up.'],
  ],
  ['where it is said', { heldUp }, ['strip run 1'], []],
  ['where no panel is touched', {}, ['clean run 1'], []],
  ['where the spiral comes out', { screwChange: { screw: screw(), origin: origin() } }, ['strip run 1'], []],
  [
    'where a shaft carries it',
    {
      conveyor: {
        ...base.conveyor,
        screw: { ...base.conveyor.screw, kind: { kind: 'shafted' } } as Conveyor['screw'],
      },
    },
    ['strip run 1'],
    [],
  ],
])('what holds a spiral up %s', (_, facts, lines, expected) => {
  const { heldUp: _known, ...unsaid } = base;
  const steps = lines.map((text) => planned(text, 0, 1));
  const found = problems({ job: { ...unsaid, ...facts }, plan: { steps } });
  expect(found.map(({ message }) => message)).toEqual(expected);
  expect(found.every(({ stops, todo }) => !stops && todo.includes('spiral held up by'))).toBe(true);
});

test('nothing is wrong', () => expect(problems({})).toEqual([]));

describe('nothing to plan', () => {
  it('a job without work, and one whose work lies nowhere', () => {
    expect(told({ plan: { steps: [] }, job: { ...base, relines: [] } })).toEqual([
      [
        'nothing to do',
        true,
        'the job has neither a reline nor a screw change.',
        'Say what is renewed: `reline all`, `reline run 2`, or `change screw`.',
      ],
    ]);
    const nowhere = [
      ['no run', true, 'no lined run lies in the scope of the job.', 'Name a run that L1 has.'],
    ];
    expect(told({ plan: { steps: [] } })).toEqual(nowhere);
    const change = { ...base, relines: [], screwChange: { screw: screw(), origin: origin() } };
    expect(told({ plan: { steps: [] }, job: change })).toEqual(nowhere);
  });
  it('is said where the job is named', () => {
    expect(problems({ plan: { steps: [] } })[0]?.origin).toBe(base.nameOrigin);
  });
});

describe('runs', () => {
  const run = {
    number: 2,
    label: 'run 2 (Gate1 to Head)',
    tailBreak: gap('Gate1', 'slide gate', 4000, 4200, 0),
    headBreak: gap('Head', 'end plate', 8200, 8200, 5),
  } as unknown as Run; // what is read of it
  const of = (facts: object): Told => ({
    plan: {
      runs: [{ run, start: 'tail', first: 1, last: 4, ...facts }] as unknown as JobPlan['runs'],
      ground: {
        runs: [
          { run: {}, panels: [{}] },
          { run, panels: [{}, {}, {}, {}] },
        ],
      } as unknown as JobPlan['ground'],
    },
  });
  it('one whose length no break takes up is closed by cutting, which stops nothing', () => {
    const cutToFit = { worst: 6, allowance: 5, breakName: 'Head' };
    expect(
      told(of({ cutToFit, beyond: { first: 1, last: 1 } })).map(([kind, stops]) => [kind, stops]),
    ).toEqual([
      ['cut to fit', false],
      ['scope too small', true],
    ]);
    expect(told(of({ cutToFit }))).toEqual([
      [
        'cut to fit',
        false,
        'run 2 (Gate1 to Head) closes only with its last panel cut to the gap as measured: ' +
          'lengths add up to ±6 mm, and Head takes 5 mm.',
        'Measure the gap on site and cut the closing panel to fit; or state what the break takes, or declare a joint ring within the run.',
      ],
    ]);
  });
  test.each<[object, string, string]>([
    [
      { first: 1, last: 3, beyond: { first: 1, last: 1 } },
      'panel 1',
      'Reline panels 1 to 3 of run 2 instead; or write the order of work, with `cut to fit` at the step that fits.',
    ],
    [
      { first: 2, last: 4, beyond: { first: 3, last: 4 } },
      'panels 3 to 4',
      'Reline panels 2 to 4 of run 2 instead; or write the order of work, with `cut to fit` at the step that fits.',
    ],
    [
      { first: 1, last: 4, beyond: { first: 3, last: 4 } },
      'panels 3 to 4',
      'Reline run 2 instead; or write the order of work, with `cut to fit` at the step that fits.',
    ],
  ])('one of which more must come off: %j', (facts, which, todo) => {
    expect(told(of(facts))).toEqual([
      [
        'scope too small',
        true,
        `${which} of run 2 (Gate1 to Head) must come off too: a hole between panels that stay can be closed at a break only, or with a piece cut to it as measured.`,
        todo,
      ],
    ]);
  });
  it('one that is as it should be', () => expect(told(of({}))).toEqual([]));
});

describe('what the checker has against the order', () => {
  const violation = (facts: object): Violation =>
    ({
      kind: 'live',
      grade: 'unsafe',
      message: 'Stripping comes before the power is off.',
      origin: origin(),
      repairs: [],
      step: step('strip run 1'),
      ...facts,
    }) as unknown as Violation; // what is read of it
  const of = (facts: object, plan: Partial<JobPlan> = {}): Told => ({
    plan: { violations: [violation(facts)], ...plan },
  });
  test.each<[string, object, readonly unknown[]]>([
    [
      'with its repair',
      { repairs: [{ title: 'Isolate first' }, { title: 'Else' }] },
      ['order', true, 'stripping comes before the power is off.', 'Isolate first.'],
    ],
    [
      'whose repair ends as a sentence',
      { repairs: [{ title: 'Isolate first.' }] },
      ['order', true, 'stripping comes before the power is off.', 'Isolate first.'],
    ],
    [
      'without a repair: the step',
      {},
      ['order', true, 'stripping comes before the power is off.', 'Look at "strip run 1".'],
    ],
    [
      'without a step: the order',
      { step: undefined },
      ['order', true, 'stripping comes before the power is off.', 'Look at the order.'],
    ],
    [
      'that only lacks something stops nothing',
      { grade: 'incomplete' },
      ['order', false, 'stripping comes before the power is off.', 'Look at "strip run 1".'],
    ],
    [
      'a name in capitals stays',
      { message: 'MP1 is in two places with Alpha.' },
      ['order', true, 'MP1 is in two places with Alpha.', 'Look at "strip run 1".'],
    ],
    [
      'a sentence within is not touched',
      { message: 'the step. Then more.' },
      ['order', true, 'the step. Then more.', 'Look at "strip run 1".'],
    ],
  ])('%s', (_, facts, expected) => {
    expect(told(of(facts))).toEqual([expected]);
  });
  it('is said where it stands', () => {
    const at = origin();
    expect(problems(of({ origin: at }))[0]?.origin).toBe(at);
  });
});

describe('shifts and the window', () => {
  const window = { from: on('2027-04-12'), to: on('2027-04-16'), origin: origin() };
  const within = { ...base, window };
  it('no shift on any day', () => {
    const shift = {
      from: { hours: 7, text: '', origin: origin() },
      to: { hours: 15, text: '', origin: origin() },
      days: [9],
      origin: origin(),
    };
    const of = job(line([4], [10, 0], { plant: plant({ shifts: [shift] }) }), ['all'], {
      crews: [crew('Alpha')],
      window,
    });
    expect(told({ job: of, plan: { available: 0 } })).toEqual([
      [
        'no shift',
        true,
        'no shift of the plant falls on any day.',
        'State the days of the shift, or leave them out for every day.',
      ],
    ]);
  });
  test.each<[string, Partial<JobPlan>, readonly string[]]>([
    ['as long as the window', { duration: 40, available: 40 }, []],
    [
      'longer, though it might be shorter',
      { duration: 41, lowerBound: 40, available: 40 },
      [
        'the work takes 41 h of shift time and the window 2027-04-12 to 2027-04-16 has 40 h.',
        'A longer window, longer shifts, or another crew.',
      ],
    ],
    [
      'longer at best',
      { duration: 50, lowerBound: 41, available: 40 },
      [
        'the work takes 50 h of shift time and the window 2027-04-12 to 2027-04-16 has 40 h.',
        'Even the shortest possible takes 41 h: more crews, longer shifts, or a longer window.',
      ],
    ],
  ])('%s', (_, plan, words) => {
    const found = problems({ job: within, plan });
    expect(found.flatMap(({ message, todo }) => [message, todo])).toEqual(words);
    for (const each of found)
      expect([each.kind, each.stops, each.origin]).toEqual(['window too short', true, window.origin]);
  });
  it('without a window nothing is too long', () => {
    expect(told({ plan: { duration: 50, available: 40 } })).toEqual([]);
    expect(told({ job: within, plan: { duration: 50 } })).toEqual([]);
  });
});

describe('crews', () => {
  it('none is named: those of the plant, if it has any', () => {
    const named = (crews: readonly ReturnType<typeof crew>[]): unknown =>
      told({
        job: job(line([4], [10, 0], { plant: plant({ crews: crews.flatMap((each) => each.crew ?? []) }) }), [
          'all',
        ]),
      });
    expect(named([])).toEqual([
      ['no crew', true, 'the job names no crew.', 'Add `crews …`; Tarnholt has none declared.'],
    ]);
    expect(named([crew('Alpha'), crew('Bravo')])).toEqual([
      ['no crew', true, 'the job names no crew.', 'Add `crews …`; Tarnholt has Alpha, Bravo.'],
    ]);
  });
  it('one of nobody is said where it is named', () => {
    const of = { ...base, crews: [crew('Alpha', 4), crew('Bravo', 0)] };
    const [found, ...more] = problems({ job: of });
    expect([found?.kind, found?.stops, found?.message, found?.todo, more]).toEqual([
      'crew of nobody',
      true,
      'crew Bravo has nobody in it.',
      'State how many people the crew has.',
      [],
    ]);
    expect(found?.origin).toBe(of.crews[1]?.use.origin);
  });
  it('one of a single person is a crew', () => {
    expect(told({ job: { ...base, crews: [crew('Alpha', 1)] } })).toEqual([]);
  });
  it('one that the plant does not know is taken with three, and is no problem; nor is a platform without people', () => {
    const unknown = { ...base, crews: [{ use: { name: 'Guests', origin: origin() } }] };
    expect(told({ job: unknown })).toEqual([]);
    expect(told({ teams: [{ name: 'MP1', kind: 'access unit', people: 0 }] })).toEqual([]);
  });
  describe('a welder', () => {
    const of = (skills: readonly string[]): Job => ({
      ...base,
      crews: [crew('Alpha', 4, skills), crew('Bravo', 2, ['fitting'])],
    });
    const patch = (text: string, skills: readonly string[]): Told => {
      const made = of(skills);
      return { job: made, plan: { steps: [some, { ...some, step: step(text, made) }] } };
    };
    it('is asked for by name of the step', () => {
      expect(told(patch('patch panel 2 of run 1 by Alpha', ['fitting']))).toEqual([
        [
          'no welder',
          false,
          '"patch panel 2 of run 1" needs a welder, and no crew of the job has the skill.',
          "Add a crew with the skill welding, or say so in the crew's skills.",
        ],
      ]);
    });
    test.each<[string, string, readonly string[]]>([
      ['who has the skill', 'patch panel 2 of run 1 by Alpha', ['Welding']],
      ['one of two has the skill', 'patch panel 2 of run 1 by Bravo, Alpha', ['welder']],
      ['for what is done cold', 'patch panel 2 of run 1 by Alpha cold work', ['fitting']],
      ['for what is not welded', 'clean run 1 by Alpha', ['fitting']],
      ['where nobody is named', 'patch panel 2 of run 1', ['fitting']],
    ])('is not asked for: %s', (_, text, skills) => {
      expect(told(patch(text, skills))).toEqual([]);
    });
  });
});

describe('the clock', () => {
  it('what may not be split and is longer than a shift, where it stands', () => {
    const long = planned('remove screw', 2, 12);
    const [found, ...more] = problems({ plan: { steps: [some, long], longerThanShift: [1, 7] } });
    expect([found?.kind, found?.stops, found?.message, found?.todo, more]).toEqual([
      'longer than a shift',
      false,
      '"remove screw" takes 10 h and the longest shift is 8 h: it would be left half done when the shift ends.',
      'Divide it into steps that each end within a shift, with nothing in the air and nothing hot, or declare a longer shift.',
      [],
    ]);
    expect(found?.origin).toBe(long.step.origin);
  });
  it('covers that lie open, and a watch that comes late', () => {
    expect(told({ plan: { openTooLong: 2.5, watchTooLate: 1.5 } })).toEqual([
      [
        'covers open too long',
        false,
        'covers come off 2.5 h more than a shift before the work under them begins.',
        'Take covers off stretch by stretch, shortly before the work there.',
      ],
      [
        'fire watch too late',
        true,
        'the fire watch begins 1.5 h after the hot work has ended: what glows in a gap is found by nobody.',
        'Let the watch follow the hot work at once, by a crew that is free then and within the same shift.',
      ],
    ]);
  });
  it('more than a plan is made for', () => {
    const steps = Array.from({ length: 3 }, () => some);
    expect(told({ plan: { steps }, tooMany: { steps: 2, teams: 1 } })).toEqual([
      [
        'too many',
        true,
        '3 steps by 1 crews and access units are more than a plan is made for: at most 2 steps and 1 crews and units.',
        'Divide the job into several with windows of their own.',
      ],
    ]);
  });
});

describe('the air of an enclosed trough', () => {
  const enclosed = (interval: number | undefined, confinedSpace = true): Job =>
    job(
      line([4], [10, 0], {
        confinedSpace,
        plant: plant(
          interval === undefined ? {} : { gasTestInterval: { ...hours(interval), text: `${interval} h` } },
        ),
      }),
      ['all'],
      { crews: [crew('Alpha')], heldUp },
    );
  const of = (steps: readonly PlannedStep[], made = enclosed(2)): unknown =>
    told({ job: made, plan: { steps } }).map(([, , message, todo]) => [message, todo]);
  const gas = (start: number, text = 'gas test all', more: Partial<PlannedStep> = {}): PlannedStep =>
    planned(text, start, start + 0.5, more);
  const strip = (start: number, finish: number): PlannedStep => planned('strip run 1', start, finish);
  const late = (until: string): unknown => [
    [
      `"strip run 1" goes on until ${until} after the last gas test, and the air counts as tested for 2 h.`,
      'Write `every 2 h` on the gas test, or test again before that.',
    ],
  ];
  test.each<[string, readonly PlannedStep[], unknown]>([
    ['work that ends just in time', [gas(0), strip(0.5, 2.5)], []],
    ['work that ends a minute late', [gas(0), strip(0.5, 2.6)], late('2.1 h')],
    ['work that begins late', [gas(0), strip(2, 3)], late('2.5 h')],
    ['tested again meanwhile', [gas(0), strip(0.5, 4), gas(1.5)], []],
    ['tested again meanwhile, and then too long', [gas(0), strip(0.5, 4.5), gas(1.5)], late('2.5 h')],
    ['tested again too late', [gas(0), strip(0.5, 3.5), gas(2.5)], late('2.5 h')],
    ['the test counts from its end', [gas(0), gas(2), strip(2.5, 4.5)], []],
    ['every two hours, as asked', [gas(0, 'gas test all every 2 h'), strip(0.5, 9)], []],
    ['every hour', [gas(0, 'gas test all every 1 h'), strip(0.5, 9)], []],
    ['every three hours', [gas(0, 'gas test all every 3 h'), strip(0.5, 9)], late('8.5 h')],
    [
      'by repeated tests of the plan',
      [gas(0), strip(0.5, 4), gas(1.5, 'gas test all', { repeat: 'interval' })],
      [],
    ],
    ['the first that is late is told, and only that', [gas(0), strip(1, 3), strip(3, 5)], late('2.5 h')],
    ['work before any test is for the checker', [strip(0, 5), gas(5)], []],
    ['other work is no test', [gas(0), planned('isolate', 1.5, 2), strip(2, 4)], late('3.5 h')],
    ['a test that comes when it is over', [gas(0), strip(0.5, 2.6), gas(5)], late('2.1 h')],
    [
      'a later test that says how often',
      [gas(0), strip(0.5, 3), gas(5, 'gas test all every 2 h')],
      late('2.5 h'),
    ],
    ['work outside', [gas(0), planned('remove isolation', 0.5, 9)], []],
    [
      'the last test said how often, the first did not',
      [gas(0), gas(1, 'gas test all every 2 h'), strip(1.5, 9)],
      [],
    ],
    [
      'the last test did not say how often, the first did',
      [gas(0, 'gas test all every 2 h'), gas(1), strip(1.5, 4)],
      late('2.5 h'),
    ],
  ])('%s', (_, steps, expected) => {
    expect(of(steps)).toEqual(expected);
  });
  it('is said where the test stands, and stops nothing', () => {
    const steps = [gas(0), strip(0.5, 9)];
    const [found] = problems({ job: enclosed(2), plan: { steps } });
    expect([found?.kind, found?.stops, found?.origin]).toEqual([
      'gas test not repeated',
      false,
      steps[0]?.step.actionOrigin,
    ]);
  });
  it('nothing where it is open, no interval is asked for, or nothing tests it', () => {
    const steps = [gas(0), strip(0.5, 9)];
    expect(of(steps, enclosed(2, false))).toEqual([]);
    expect(of(steps, enclosed(undefined))).toEqual([]);
    expect(of(steps, enclosed(0))).toEqual([]);
    expect(of([strip(0.5, 9)])).toEqual([]);
    expect(of([strip(0.5, 9), gas(0, 'gas test all', { repeat: 'break' })])).toEqual([]);
  });
});

describe('lifts', () => {
  const lifts = (problem: LiftProblem, written = false): Told => ({
    plan: {
      lifts: {
        spiral: {
          written,
          pieces: [
            { from: 0, to: 4000 },
            { from: 4000, to: 9500 },
          ],
        },
        problems: [problem],
      } as unknown as JobPlan['lifts'],
    },
  });
  const over: LiftProblem = { kind: 'piece over limit', piece: 2, mass: 140, limit: 120 };
  const heavy =
    'Cut it shorter, raise the lift limit, add a lifting point, or move what the cut must keep clear of.';
  const near = 'Lift it near its centre: declare a crane that reaches it, or a lifting point above it.';
  test.each<[string, Told, readonly unknown[]]>([
    [
      'a piece over the limit',
      lifts(over),
      [
        'lift over limit',
        true,
        'piece 2 of the spiral (4.00 m to 9.50 m) weighs 140 kg, over the limit of 120 kg, and no cut clear of hold-downs and access edges makes it lighter.',
        heavy,
      ],
    ],
    [
      'as the order has it',
      lifts(over, true),
      [
        'lift over limit',
        true,
        'piece 2 of the spiral (4.00 m to 9.50 m) weighs 140 kg, over the limit of 120 kg, and the order lifts it in one.',
        heavy,
      ],
    ],
    [
      'a piece that is not in the table',
      lifts({ ...over, piece: 3 }),
      [
        'lift over limit',
        true,
        'piece 3 of the spiral weighs 140 kg, over the limit of 120 kg, and no cut clear of hold-downs and access edges makes it lighter.',
        heavy,
      ],
    ],
    [
      'a step over the limit',
      lifts({ kind: 'step over limit', step: step('insert screw'), mass: 153, limit: 120 }),
      [
        'lift over limit',
        true,
        '"insert screw" lifts 153 kg in one, over the limit of 120 kg there.',
        'Divide it into pieces within the limit, or declare what lifts more.',
      ],
    ],
    [
      'a pull sideways',
      lifts({ kind: 'side pull', piece: 1, pull: 900, point: 'L1' }),
      [
        'side pull',
        true,
        'piece 1 of the spiral (0.00 m to 4.00 m) hangs from L1, 900 mm beside its centre of gravity.',
        near,
      ],
    ],
    [
      'no crane that reaches',
      lifts({ kind: 'side pull', piece: 1, pull: undefined, point: undefined }),
      ['side pull', true, 'no crane of the job reaches piece 1 of the spiral (0.00 m to 4.00 m).', near],
    ],
    [
      'over the team lift',
      lifts({ kind: 'over team lift', what: 'cover', mass: 40, limit: 35 }),
      [
        'too heavy by hand',
        true,
        'a cover weighs 40 kg, over the team lift of 35 kg.',
        'Use shorter panels or a lifting aid, or raise the team lift.',
      ],
    ],
    [
      'more than one person should',
      lifts({ kind: 'too heavy by hand', what: 'panel of X', mass: 30, people: 1 }),
      [
        'too heavy by hand',
        false,
        'a panel of X weighs 30 kg, more than one person should lift by the usual guideline.',
        'Use a lifting aid, shorter panels, or more people; let a competent person assess the handling.',
      ],
    ],
    [
      'more than three should',
      lifts({ kind: 'too heavy by hand', what: 'cover', mass: 60, people: 3 }),
      [
        'too heavy by hand',
        false,
        'a cover weighs 60 kg, more than 3 people should lift by the usual guideline.',
        'Use a lifting aid, shorter panels, or more people; let a competent person assess the handling.',
      ],
    ],
    [
      'no limit',
      lifts({ kind: 'no lift limit' }),
      [
        'no lift limit',
        false,
        'no lift limit and no lifting point says how heavy a piece of the spiral may be; pieces of at most 6.00 m are taken.',
        'Add `lift limit … kg` to the job.',
      ],
    ],
    [
      'no mass',
      lifts({ kind: 'mass unknown', what: 'screw S1' }),
      [
        'mass unknown',
        false,
        'the mass of screw S1 is not known: its flight is not described.',
        'Add `flight … by …` to the screw.',
      ],
    ],
  ])('%s', (_, of, expected) => {
    expect(told(of)).toEqual([expected]);
  });
  it('a step is told where it stands', () => {
    const one = step('insert screw');
    expect(problems(lifts({ kind: 'step over limit', step: one, mass: 2, limit: 1 }))[0]?.origin).toBe(
      one.origin,
    );
  });
});
