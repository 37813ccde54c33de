// What stands in a pack: counts, masses, numbering, what stops a job. Figures are worked out by hand or come from the source named.

import { describe, expect, test } from 'vitest';
import { hourBlocks } from '../../../src/generators/work-pack/print/hour-blocks.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import type { WorkPack } from '../../../src/generators/work-pack/pack.js';
import { day, liftConveyor, read, theJob, type EstateFacts } from '../estate.js';

function pack(facts: EstateFacts = {}, name = 'J1'): WorkPack {
  const analysis = read(liftConveyor(facts));
  return workPack(analysis.estate, theJob(analysis, name), { asOf: day('2026-10-31') });
}

describe('masses', () => {
  // A trough of 175 mm with 150 mm sides and a 12 mm liner at 0.935 g/cm³: 9.32 kg/m, 27.97 kg for a panel of 3 m (worked out
  // from the developed width π(175 − 6) + 300 = 830.9 mm).
  test('of a panel come from the sheet’s width, thickness and density', () => {
    const panels = pack({ liner: 'panel length 3000 mm ± 1 mm' }).panels;
    const whole = pack().panels.find((panel) => panel.length === 1000);
    expect(panels.length).toBeGreaterThan(0);
    expect(whole?.mass).toBeCloseTo(9.32, 2);
  });

  // 60 × 20 mm at 7850 kg/m³ on 300 mm outside and 300 mm pitch: 7.654 kg a turn, 25.51 kg/m (handbook form of the flight's area).
  // 25.5 kg/m × 12 m at 25°: 1.27 kN down the slope.
  test('of the spiral and its pull down the slope come from the flight', () => {
    const { spiral } = pack({ job: 'change screw' }).lifts;
    expect(spiral?.massOut).toBeCloseTo(25.51, 2);
    expect((spiral?.downSlopeForce ?? 0) / 1000).toBeCloseTo(1.27, 2);
    expect(pack({ job: 'change screw' }).cautions[0]?.text.join(' ')).toContain('1.27 kN');
  });

  test('of the spiral’s pieces add up to the whole and stay within the limit', () => {
    const { spiral } = pack({ job: 'change screw' }).lifts;
    expect(spiral?.pieces.reduce((sum, piece) => sum + piece.mass, 0)).toBeCloseTo(12 * 25.51, 0);
    expect(spiral?.pieces.every((piece) => piece.mass <= 250 && piece.withinLimit)).toBe(true);
  });
});

describe('what comes off', () => {
  test('over the scope alone where only the liner changes', () => {
    // Run above the gate: 7.5 m to 12 m. Covers every 1.5 m from 0: numbers 6, 7 and 8 lie over it. Hold-downs at 0.5, 1.5, …:
    // 7.5, 8.5, 9.5, 10.5, 11.5, a pair each. Braces at 1.6, 4.6, 7.6, 10.6: two.
    const counts = Object.fromEntries(
      pack().takings.map((taking) => [taking.part, [taking.off, taking.back]]),
    );
    expect(counts).toEqual({ cover: [3, 3], brace: [2, 2], 'hold-down': [10, 10], 'liner panel': [5, 5] });
    expect(pack().takings.find((taking) => taking.part === 'cover')?.which).toBe(
      'C6 to C8, 7.50 m to 12.00 m',
    );
  });

  test('is everything where the screw changes, with the bolts of the drive plate', () => {
    const counts = Object.fromEntries(
      pack({ job: 'change screw' }).takings.map((taking) => [taking.part, [taking.off, taking.back]]),
    );
    expect(counts).toMatchObject({
      cover: [8, 8],
      brace: [4, 4],
      'hold-down': [24, 24],
      spiral: [1, 1],
      'drive plate bolt': [6, 6],
    });
  });

  test('goes back in the same number, whatever the job', () => {
    for (const job of ['', 'change screw', 'reline run 1'])
      expect(pack({ job }).takings.every((taking) => taking.off === taking.back)).toBe(true);
  });

  test('is left to be counted on site where the conveyor declares none', () => {
    const text = liftConveyor({ more: '' }).replace(/^ {2}cover .*$/m, '');
    const analysis = read(text);
    const takings = workPack(analysis.estate, theJob(analysis)).takings;
    expect(takings.find((taking) => taking.part === 'cover')).toMatchObject({
      which: 'not declared for this conveyor',
      note: 'count on site: ____ off, ____ back',
    });
  });
});

describe('panels', () => {
  test('are numbered from the tail, fitted from the upper end, and close at the gate', () => {
    const rows = pack().panels.filter((panel) => panel.renewed);
    expect(rows.map((panel) => panel.panel)).toEqual([1, 2, 3, 4, 5]);
    expect(rows.map((panel) => panel.turn)).toEqual([5, 4, 3, 2, 1]);
    expect(rows.filter((panel) => panel.closing).map((panel) => panel.panel)).toEqual([1]);
    expect(rows.reduce((sum, panel) => sum + panel.length, 0)).toBeCloseTo(4500, 6);
    expect(rows[0]?.from).toBe(7500);
    expect(rows.at(-1)?.to).toBe(12_000);
  });

  test('that stay are listed as staying', () => {
    expect(
      pack()
        .panels.filter((panel) => panel.run === 1)
        .every((panel) => !panel.renewed && panel.turn === undefined),
    ).toBe(true);
  });

  test('appear in the record form with a blank for each', () => {
    const [reline] = pack().asFitted.relines;
    expect(reline).toMatchObject({
      liner: 'TwoLayer12',
      runs: [{ run: 2, whole: true }],
      points: [{ name: 'P3' }],
    });
    // In the order of the work: the run is fitted from its head end.
    expect(reline?.runs[0]?.panels.map((panel) => panel.panel)).toEqual([5, 4, 3, 2, 1]);
  });
});

describe('steps', () => {
  test('begin with isolation and end with the loaded run, each with what to check', () => {
    const { steps, order } = pack();
    expect(order).toBe('proposed');
    expect(steps.slice(0, 2).map(({ action }) => action)).toEqual(['empty', 'isolate']);
    expect(steps.at(-1)?.action).toBe('run loaded');
    expect(steps.every((step) => step.work.length > 20 && step.check.length > 10)).toBe(true);
  });

  test('never name a later step as done before', () => {
    for (const step of pack({ job: 'change screw' }).steps)
      expect(step.after.every((before) => before < step.number)).toBe(true);
  });

  test('carry dates and hours of the window’s shifts', () => {
    const { steps, schedule } = pack();
    expect(steps[0]?.startText).toBe('2027-04-12 07:00');
    expect(schedule.available).toBe(50); // five days of ten hours
    expect(schedule.duration).toBeGreaterThanOrEqual(schedule.lowerBound - 1e-9);
    // What the longest chain begins with waits for nothing but a shift.
    const [begins = 0] = schedule.criticalPath;
    expect(steps[begins - 1]?.startText?.slice(-5)).toBe('07:00');
  });
});

describe('a job that cannot be done', () => {
  const twoFronts = `order {
    isolate
    prove dead
    gas test
    covers off
    braces off
    hold-downs off
    strip run above Gate
    clean run above Gate
    fit panels 1 to 2 of run above Gate starting at tail
    fit panels 3 to 5 of run above Gate starting at head
    hold-downs on
    braces on
    covers on
    remove isolation
    run empty
    run loaded
  }`;

  test('still gets its pack, with the reason and what would do', () => {
    const made = pack({ job: twoFronts });
    expect(made.order).toBe('as written');
    expect(
      made.obstacles.some(
        (obstacle) =>
          /two fronts/i.test(obstacle.message) && obstacle.reason.length > 20 && obstacle.repairs.length > 0,
      ),
    ).toBe(true);
    expect(made.panels.length).toBeGreaterThan(0);
    expect(made.drawings.length).toBeGreaterThan(3);
  });

  test('because the window is too short says so', () => {
    const analysis = read(
      liftConveyor()
        .replace('2027-04-12 to 2027-04-16', '2027-04-12 to 2027-04-12')
        .replace('shift 07:00 to 17:00', 'shift 07:00 to 09:00'),
    );
    const made = workPack(analysis.estate, theJob(analysis));
    expect(made.obstacles.map((obstacle) => obstacle.message).join(' ')).toContain('window');
  });

  test('a good one has no obstacles', () => {
    expect(pack().obstacles).toEqual([]);
    expect(pack({ job: 'change screw' }).obstacles).toEqual([]);
  });
});

describe('safety', () => {
  test('isolation points are those declared, and permits follow from the machine and the job', () => {
    const made = pack({ job: 'change screw' });
    expect(made.isolations).toMatchObject([
      { name: 'Q1', title: 'local isolator', kind: 'electrical', at: 11_500 },
    ]);
    expect(Object.fromEntries(made.permits.map((permit) => [permit.name, permit.need]))).toEqual({
      Isolation: 'needed',
      'Confined-space entry': 'needed',
      'Gas test': 'needed',
      'Hot work': 'needed',
      'Work at height': 'needed',
      Lifting: 'needed',
    });
  });

  test('a conveyor without a declaration is judged on site, never cleared', () => {
    const analysis = read(
      liftConveyor().replace('  confined space\n', '').replace('  gas test interval 2 h\n', ''),
    );
    const made = workPack(analysis.estate, theJob(analysis));
    expect(
      made.permits
        .filter((permit) => permit.name === 'Confined-space entry' || permit.name === 'Gas test')
        .every((permit) => permit.need === 'to be judged on site'),
    ).toBe(true);
    expect(JSON.stringify(made)).not.toMatch(/safe to (enter|work|start)|cleared for/i);
  });
});

describe('materials', () => {
  test('order by the window less the lead time: ten weeks before 2027-04-12', () => {
    // 70 days before 2027-04-12 is 2027-02-01.
    expect(pack().orderBy).toEqual([{ item: 'liner', date: '2027-02-01', leadTime: '10 week' }]);
    expect(pack().materials.find((row) => row.kind === 'liner')?.orderBy).toBe('2027-02-01');
  });

  test('every new panel is cut from some stock', () => {
    const made = pack();
    const cut = made.cutLists
      .flatMap((list) =>
        list.sticks.flatMap((stick) => stick.cuts.map((piece) => `${piece.run}.${piece.panel}`)),
      )
      .sort();
    expect(cut).toEqual(
      made.panels
        .filter((panel) => panel.renewed)
        .map((panel) => `${panel.run}.${panel.panel}`)
        .sort(),
    );
  });
});

test('a machine declared in inches is told in feet and inches first', () => {
  const analysis = read(
    liftConveyor()
      .replace('layer ivory 6 mm', 'layer ivory 1/4 in')
      .replace('layer teal 6 mm', 'layer teal 1/4 in'),
  );
  const made = workPack(analysis.estate, theJob(analysis));
  expect(made.unit).toBe('in');
  // 7.5 m is 24.61 ft, 12 m is 39.37 ft.
  expect(made.scope[0]).toContain('24.61 ft (7.50 m) to 39.37 ft (12.00 m)');
});

test.each([
  // A panel of half a metre above the gate at 7.5 m, then of one: whole ones whose middle lies in the stretch.
  [
    'from 9.2 m to 12 m',
    /TwoLayer12: panels come off and go in whole, so panels 3 to 5 of run 2, 9\.00 m to 12\.00 m\.$/,
  ],
  ['from 9 m to 12 m', /with TwoLayer12\.$/],
  ['from 7.5 m to 12 m', /with TwoLayer12\.$/],
])(
  'a scope %s says which panels come off where it ends within one, and which must come off too',
  (stretch, words) => {
    const analysis = read(liftConveyor().replace('reline run above Gate', `reline ${stretch}`));
    const { scope, panels } = workPack(analysis.estate, theJob(analysis));
    expect(scope[0]).toMatch(words);
    expect(panels.filter((panel) => panel.renewed).map(({ panel }) => panel)).toEqual([1, 2, 3, 4, 5]);
    if (stretch.startsWith('from 9'))
      expect(scope[1]).toMatch(/^The order works on panels 1 to 2 of run 2 too/);
    else expect(scope).toHaveLength(1);
  },
);

test('the date is the newest record’s where none is given', () => {
  const analysis = read(
    liftConveyor({ more: 'inspection DG1 2026-05-04 meter 4000 h {\n  P1 thickness 9.4 mm\n}' }),
  );
  expect(workPack(analysis.estate, theJob(analysis)).asOf).toBe('2026-05-04');
});

describe('what keeps people safe in a step', () => {
  test('is printed with the step, and what is only demanded says so', () => {
    const { steps } = pack({
      job: `change screw
        order {
          isolate
          gas test by Alpha attended by Bravo every 2 h
          patch from 8 m to 8.5 m hot work shielded wet fire watch 60 min
          join screw hot work shielded to be confirmed
          patch from 9 m to 9.5 m cold work
        }`,
    });
    const own = steps.filter(({ repeat }) => repeat === undefined);
    expect(own.map(({ measures }) => measures)).toEqual([
      [],
      ['Stands by outside, does nothing else: Bravo.', 'Repeat every 2 h while anybody is inside.'],
      ['HOT WORK: liner shielded, kept wet, fire watch 60 min after it ends.'],
      [
        'HOT WORK: liner shielded, wetting not declared, no fire watch declared. TO BE CONFIRMED before it starts.',
      ],
      ['Cold work: no flame, arc or sparks.'],
    ]);
  });
});

test('a place that is welded early is watched until the one watch begins', () => {
  const { steps } = pack({
    job: `order {
      isolate by Alpha
      prove dead by Alpha
      gas test all by Alpha
      patch from 8 m to 8.5 m by Alpha takes 1 h hot work shielded wet fire watch 60 min
      patch from 9 m to 9.5 m by Alpha takes 90 min hot work shielded wet fire watch 60 min
      fire watch run 2 by Alpha
    }`,
  });
  const told = steps
    .filter(({ action }) => action === 'patch')
    .map(({ measures }) => measures.filter((each) => each.includes('begins')));
  // An hour for the platform to the second place, an hour and a half of welding there.
  expect(told).toEqual([
    ['The fire watch begins 2.5 h after it ends: until then somebody stays and watches this place too.'],
    [],
  ]);
});

test('who stands by has a place in the plan by the hour', () => {
  const found = read(
    liftConveyor({
      job: `order {
        isolate by Alpha
        prove dead by Alpha
        gas test all by Alpha
        covers off run 1 by Alpha attended by Bravo
      }`,
    })
      .replace('crew Alpha', 'crew Bravo 3 people\n  crew Alpha')
      .replace('crews Alpha', 'crews Alpha, Bravo'),
  );
  const made = workPack(found.estate, theJob(found), { asOf: day('2026-10-31') });
  const doing = made.hours.flatMap((hour) => hour.doing);
  expect(doing.filter(({ standBy }) => standBy === 'Bravo').map(({ action }) => action)).toContain(
    'covers off',
  );
  const table = hourBlocks(made).flatMap((block) => (block.kind === 'table' ? block.rows : []));
  expect(table.some((row) => /Alpha, Bravo standing by: 4 covers off; run 1/.test(`${row[1]}`))).toBe(true);
});

describe('sheets of one pack agree', () => {
  // The conveyor has 8 covers and 12 pairs of hold-downs; over the run above the gate lie 3 covers and 5 pairs.
  test('covers lifted and gaps measured are those that come off', () => {
    const { takings, lifts, holdDowns } = pack();
    const off = (part: string): number | undefined => takings.find((taking) => taking.part === part)?.off;
    expect(lifts.byHand.find(({ what }) => what === 'cover')?.count).toBe(off('cover'));
    expect(off('cover')).toBe(3);
    expect(holdDowns.length * 2).toBe(off('hold-down'));
    expect(holdDowns.map(({ at }) => at)).toEqual([7500, 8500, 9500, 10500, 11500]);
  });
});
