import { describe, expect, test } from 'vitest';
import type { Conveyor } from '../../../src/domain/model/conveyor.js';
import type { Job } from '../../../src/domain/model/job.js';
import type { Shift } from '../../../src/domain/model/plant.js';
import { checkOrder } from '../../../src/domain/order/check-order.js';
import { stepText } from '../../../src/domain/order/words.js';
import { planJob, type PlanEffort } from '../../../src/domain/plan/plan-job.js';
import { writeOrder } from '../../../src/domain/plan/write-order.js';
import { formatDay } from '../../../src/domain/units/calendar.js';
import { gap, mm, on, origin, plant, screw, stated } from '../../kit/estate.js';
import { crew, everywhere, holdDown, job, line, platform, withOrder, worldOf } from '../order/stories.js';
import type { JobPlan } from '../../../src/domain/plan/job-plan.js';

const heldUp = { gear: 'chain hoist', rating: stated('mass', 500), spacing: mm(3000), origin: origin() };
const plan = (of: Job, effort: PlanEffort = { quick: true, shakes: 200 }): JobPlan =>
  planJob({ heldUp, ...of }, worldOf(of), effort);
const shift = (from: number, to: number, days: readonly number[] = []): Shift => ({
  from: { hours: from, text: '', origin: origin() },
  to: { hours: to, text: '', origin: origin() },
  days,
  origin: origin(),
});
const window = (from: string, to: string): Pick<Job, 'window'> => ({
  window: { from: on(from), to: on(to), origin: origin() },
});
const said = (found: JobPlan): string[] => found.problems.map((each) => each.kind);

describe('a proposed order', () => {
  const of = job(line([4], [10, 0]), ['all'], { crews: [crew('Alpha', 4)] });

  test('is timed from unit times and people: 4 m at 2 h/m by four people are 2 h', () => {
    const found = plan(of);
    expect(found.order).toBe('proposed');
    const fit = found.steps.find((each) => each.step.action === 'fit');
    expect((fit?.finish ?? 0) - (fit?.start ?? 0)).toBeCloseTo(2, 9);
    expect([fit?.people, fit?.work.personHours]).toEqual([4, 8]);
    expect(found.problems).toEqual([]);
    expect(found.buildable).toBe(true);
  });

  test('can be pasted: its text means the same', () => {
    const found = plan(of);
    const lines = writeOrder(found);
    expect(lines[0]).toBe('order {');
    expect(lines.at(-1)).toBe('}');
    const again = withOrder(of, lines.slice(1, -1));
    expect(checkOrder(again, worldOf(of))).toEqual([]);
    expect(plan(again).duration).toBeCloseTo(found.duration, 9);
  });

  test('is proven shortest, and its critical path is as long as it takes', () => {
    const found = plan(of);
    expect([found.optimal, found.gap]).toEqual([true, 0]);
    const chain = found.criticalPath.map((p) => found.steps[p]);
    expect(chain.reduce((sum, each) => sum + (each ? each.finish - each.start : 0), 0)).toBeCloseTo(
      found.duration,
      9,
    );
  });

  test('two crews in two runs are quicker than one, and one more crew is said to help one', () => {
    const two = line([4, 4], [10, 10, 10], { incline: stated('angle', 0) });
    const alone = plan(job(two, ['all'], { crews: [crew('Alpha', 4)] }), { shakes: 200 });
    const both = plan(job(two, ['all'], { crews: [crew('Alpha', 4), crew('Bravo', 4)] }));
    expect(both.duration).toBeLessThan(alone.duration);
    expect(alone.shorten[0]?.what).toBe('one more crew like Alpha (4 people)');
    expect(alone.shorten[0]?.saves).toBeGreaterThan(0);
  });

  test('on an incline nobody is put below loose panels: the two runs are fitted one after the other', () => {
    const open = (incline: number): Conveyor => {
      const of = line([4, 4], [10, 10, 10], { incline: stated('angle', incline) });
      return {
        ...of,
        breaks: of.breaks.map((each) =>
          each.name === 'Gate1' ? gap('Gate1', 'inlet', each.from.value, each.to.value, 10) : each,
        ),
      };
    };
    const crews = [crew('Alpha', 4), crew('Bravo', 4)];
    const overlap = (found: JobPlan): boolean => {
      const fits = found.steps.filter((each) => each.step.action === 'fit');
      return fits.some((a) => fits.some((b) => a !== b && a.start < b.finish && b.start < a.finish));
    };
    expect(overlap(plan(job(open(0), ['all'], { crews })))).toBe(true);
    expect(overlap(plan(job(open(20), ['all'], { crews })))).toBe(false);
  });

  test('starts where the run can be closed from', () => {
    expect(
      plan(job(line([4], [0, 10]), ['all'], { crews: [crew('Alpha')] })).runs.map((each) => each.start),
    ).toEqual(['tail']);
    expect(
      plan(job(line([4], [10, 0]), ['all'], { crews: [crew('Alpha')] })).runs.map((each) => each.start),
    ).toEqual(['head']);
  });

  test('a screw change: out before the strip, in after the fit', () => {
    const spiral = screw({ flight: { width: mm(80), thickness: mm(25), origin: origin() } });
    const found = plan(
      job(line([4], [10, 0], { holdDowns: [holdDown(1500)], screw: spiral }), ['all'], {
        crews: [crew('Alpha', 4)],
        screwChange: { screw: spiral, origin: origin() },
        liftLimit: stated('mass', 200),
      }),
    );
    const at = (action: string): number => found.steps.findIndex((each) => each.step.action === action);
    expect(at('restrain screw')).toBeLessThan(at('unbolt drive'));
    expect(at('remove screw')).toBeLessThan(at('insert screw'));
    expect(at('fit')).toBeLessThan(at('insert screw'));
    expect(at('bolt drive')).toBeLessThan(at('remove isolation'));
    expect(found.violations).toEqual([]);
  });
});

describe('a written order', () => {
  const base = job(line([4], [10, 0]), ['all'], { crews: [crew('Alpha', 4)] });
  const lines = [
    'isolate',
    'prove dead',
    'strip',
    'clean',
    'fit takes 6 h',
    'remove isolation',
    'run empty',
    'run loaded',
  ];

  test('is timed as written, with its own times', () => {
    const found = plan(withOrder(base, lines));
    expect(found.order).toBe('as written');
    expect(found.steps.map((each) => stepText(each.step))).toEqual(lines);
    const fit = found.steps.find((each) => each.step.action === 'fit');
    expect(fit && fit.finish - fit.start).toBe(6);
  });
  test('that cannot be built still comes back as a plan, with the reason', () => {
    const found = plan(
      withOrder(
        base,
        lines.filter((each) => each !== 'strip'),
      ),
    );
    expect([found.buildable, said(found)]).toEqual([false, ['order']]);
    expect(found.steps.length).toBe(7);
  });
  test('that goes in a circle too', () => {
    const found = plan(
      withOrder(base, [
        'isolate',
        'prove dead',
        'a: strip after b',
        'b: clean after a',
        'fit',
        'remove isolation',
        'run empty',
        'run loaded',
      ]),
    );
    expect(found.buildable).toBe(false);
    expect(found.problems[0]?.message).toContain('wait for one another');
    expect(found.steps.length).toBe(8);
  });
});

describe('shifts and windows', () => {
  const day = plant({ shifts: [shift(7, 17, [1, 2, 3, 4, 5])] });
  const of = (facts: Partial<Job>, works = day): Job =>
    job(line([20], [30, 0], { plant: works }), ['all'], { crews: [crew('Alpha', 4)], ...facts });

  test('work goes on in the next shift: over a weekend to Monday', () => {
    // 2027-04-16 is a Friday: ten hours then, the rest on Monday 19.
    const found = plan(of(window('2027-04-16', '2027-04-23')));
    expect(found.available).toBe(60);
    expect(found.duration).toBeGreaterThan(10);
    expect(found.finish && formatDay(found.finish.day)).toBe('2027-04-19');
    expect(found.steps[0]?.from).toMatchObject({ hour: 7 });
    expect(said(found)).toEqual([]);
  });
  test('a window that is too short says by how much, and what would do', () => {
    const found = plan(of(window('2027-04-16', '2027-04-16')));
    expect(said(found)).toEqual(['window too short']);
    expect(found.problems[0]?.message).toMatch(
      /takes 1\d\.\d h of shift time and the window 2027-04-16 to 2027-04-16 has 10 h/,
    );
    expect(found.buildable).toBe(false);
  });
  test('a night shift belongs to the day it begins on', () => {
    const found = plan(of(window('2027-04-12', '2027-04-14'), plant({ shifts: [shift(22, 6)] })));
    expect(found.available).toBe(2 + 8 + 8); // 22 to 24 on the last evening, and the two nights before
    expect(found.steps[0]?.from).toMatchObject({ hour: 22 });
  });
  test('a shift on no day', () => {
    expect(
      said(plan(of(window('2027-04-12', '2027-04-14'), plant({ shifts: [{ ...shift(7, 15), days: [9] }] })))),
    ).toContain('no shift');
  });
  test('no shift declared: one is assumed and said', () => {
    expect(
      plan(of(window('2027-04-12', '2027-04-14'), plant())).defaults.some((each) =>
        each.startsWith('No shift is declared'),
      ),
    ).toBe(true);
  });
});

describe('what stands in the way', () => {
  test('two firm ends do not: the closing panel is cut to the gap', () => {
    const found = plan(job(line([4], [0, 0]), ['all'], { crews: [crew('Alpha')] }));
    expect([found.buildable, found.problems.map(({ kind, stops }) => [kind, stops])]).toEqual([
      true,
      [['cut to fit', false]],
    ]);
  });
  const base = line([4], [10, 0]);
  test.each<[string, Job, string[]]>([
    ['no crew', job(base, ['all']), ['no crew']],
    ['a crew of nobody', job(base, ['all'], { crews: [crew('Alpha', 0)] }), ['crew of nobody']],
    ['nothing to do', job(base, [], { crews: [crew('Alpha')] }), ['nothing to do']],
    [
      'a hole between two old panels',
      job(line([4], [10, 10]), ['panel 2 of run 1'], { crews: [crew('Alpha')] }),
      ['scope too small'],
    ],
    ['no access', job({ ...base, access: [] }, ['all'], { crews: [crew('Alpha')] }), ['order']],
    [
      'no platform that reaches',
      job({ ...base, access: [{ ...everywhere, kind: 'mobile platform', height: mm(9000) }] }, ['all'], {
        crews: [crew('Alpha')],
        accessUnits: [platform('Low', 5000)],
      }),
      ['order'],
    ],
    [
      'a panel over the team lift',
      job(base, ['all'], { crews: [crew('Alpha')], teamLift: stated('mass', 5) }),
      ['too heavy by hand'],
    ],
  ])('%s', (_, of, expected) => {
    const found = plan(of);
    expect(said(found)).toEqual(expected);
    expect(found.buildable).toBe(false);
    for (const each of found.problems) expect(each.todo).not.toBe('');
  });

  test('the panels beyond are named, and the plan takes them off', () => {
    const found = plan(job(line([4], [10, 10]), ['panel 2 of run 1'], { crews: [crew('Alpha')] }));
    expect(found.problems[0]?.message).toContain('panel 1 of run 1 (Tail to Head) must come off too');
    expect(found.problems[0]?.todo).toBe(
      'Reline panels 1 to 2 of run 1 instead; or write the order of work, with `cut to fit` at the step that fits.',
    );
    expect(
      found.steps
        .map((each) => stepText(each.step))
        .some((text) => text.startsWith('strip panels 1 to 2 of run 1')),
    ).toBe(true);
    expect(found.violations).toEqual([]);
  });

  test('a welder is asked for where the crews say what they can', () => {
    const spiral = screw({ flight: { width: mm(80), thickness: mm(25), origin: origin() } });
    const change = (skills: string[]): Job =>
      job({ ...base, screw: spiral }, [], {
        crews: [crew('Alpha', 4, skills)],
        liftLimit: stated('mass', 100),
        screwChange: { screw: spiral, origin: origin() },
      });
    expect(said(plan(change(['fitting'])))).toEqual(['no welder']);
    expect(said(plan(change(['welding'])))).toEqual([]);
    expect(said(plan(change([])))).toEqual([]);
  });

  test("an enclosed trough is tested again at the plant's interval", () => {
    const enclosed = line([10], [15, 0], {
      confinedSpace: true,
      plant: plant({ gasTestInterval: stated('duration', 2) }),
    });
    const found = plan(job(enclosed, ['all'], { crews: [crew('Alpha', 3)] }));
    expect(found.steps.some((each) => each.step.action === 'gas test')).toBe(true);
    expect(found.repeatGasTests?.every).toBe(2);
    expect(found.repeatGasTests?.times).toBeGreaterThan(0);
  });
});
