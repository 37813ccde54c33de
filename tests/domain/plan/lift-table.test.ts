// The table of lifts at its borders: what is just within a limit and what is just beyond it, and what is not known.

import { describe, expect, it, test } from 'vitest';
import type { Conveyor } from '../../../src/domain/model/conveyor.js';
import type { Job } from '../../../src/domain/model/job.js';
import type { ScrewSpecification } from '../../../src/domain/model/specifications.js';
import { panelCentreDepth, panelMass } from '../../../src/domain/geometry/trough.js';
import { groundOf } from '../../../src/domain/order/ground.js';
import { mostSidePull } from '../../../src/domain/order/lifting-gear.js';
import { liftsOf, screwMassPerMetre, type LiftTable } from '../../../src/domain/plan/lifts.js';
import { gap, liner, mm, origin, screw, stated } from '../../kit/estate.js';
import { cover, crew, job, line, withOrder, worldOf } from '../order/stories.js';

const flight = { width: mm(60), thickness: mm(20), origin: origin() };
const spiral = screw({ outsideDiameter: mm(300), pitch: mm(300), flight });
const perMetre = screwMassPerMetre(spiral) ?? NaN;
const point = (name: string, at: number, limit: number) => ({
  name,
  at: mm(at),
  limit: stated('mass', limit),
  origin: origin(),
});

function change(facts: Partial<Conveyor> = {}, more: Partial<Job> = {}): Job {
  return job(line([4], [0, 0], { screw: spiral, ...facts }), [], {
    screwChange: { screw: spiral, origin: origin() },
    ...more,
  });
}
const lifts = (of: Job): LiftTable => liftsOf(of, []);
const said = (of: Job): readonly string[] => lifts(of).problems.map(({ kind }) => kind);
const limited = (limit: number): Partial<Job> => ({ liftLimit: stated('mass', limit) });

describe('the mass of a spiral', () => {
  // A shaft of 60 mm at 7850 kg/m³: π/4 · 0.06² · 7850 = 22.195 kg/m.
  it('with a shaft is that of flight and shaft', () => {
    const shafted = screw({
      ...spiral,
      kind: { kind: 'shafted', shaft: mm(60) } as ScrewSpecification['kind'],
    });
    expect((screwMassPerMetre(shafted) ?? NaN) - perMetre).toBeCloseTo(22.195, 3);
  });
  test.each([
    ['wider than the screw is round', 151],
    ['that leaves nothing inside', 150],
  ])('is not known of a flight %s', (_, width) => {
    expect(screwMassPerMetre(screw({ ...spiral, flight: { ...flight, width: mm(width) } }))).toBeUndefined();
  });
  it('is known of one that leaves a millimetre', () => {
    expect(screwMassPerMetre(screw({ ...spiral, flight: { ...flight, width: mm(149) } }))).toBeGreaterThan(0);
  });
  it('counts an inner flight only where it has a width', () => {
    const inner = (inside: number) => ({
      outside: mm(160),
      inside: mm(inside),
      pitch: mm(300),
      thickness: mm(12),
      origin: origin(),
    });
    const more = (inside: number): number =>
      (screwMassPerMetre(screw({ ...spiral, innerFlight: inner(inside) })) ?? NaN) - perMetre;
    expect(more(160)).toBe(0);
    expect(more(170)).toBe(0);
    expect(more(159)).toBeGreaterThan(0);
  });
  it('is asked for once where the same screw goes out and in, by name where it is one of two', () => {
    const bare = screw();
    const unknown = (old: ScrewSpecification, fresh: ScrewSpecification): unknown =>
      lifts(change({ screw: old }, { ...limited(500), screwChange: { screw: fresh, origin: origin() } }))
        .problems;
    expect(unknown(bare, bare)).toEqual([{ kind: 'mass unknown', what: 'screw Spiral400' }]);
    expect(unknown(spiral, screw({ name: 'New' }))).toEqual([{ kind: 'mass unknown', what: 'screw New' }]);
    expect(unknown(screw({ name: 'Old' }), spiral)).toEqual([{ kind: 'mass unknown', what: 'screw Old' }]);
  });
});

describe('what lifts the pieces', () => {
  it('a limit, a lifting point or a crane: any of them is something to go by', () => {
    const crane = {
      name: 'C1',
      origin: origin(),
      nameOrigin: origin(),
      chart: [{ load: stated('mass', 900), radius: mm(9000) }],
    };
    const place = {
      use: { name: 'C1', origin: origin() },
      crane,
      at: mm(2000),
      offset: mm(3000),
      origin: origin(),
    };
    expect(said(change())).toEqual(['no lift limit']);
    expect(said(change({}, limited(500)))).toEqual([]);
    expect(said(change({ liftingPoints: [point('L1', 2000, 500)] }))).toEqual([]);
    expect(said(change({}, { cranes: [place] }))).toEqual([]);
    expect(lifts(change({}, { cranes: [place] })).spiral?.pieces[0]?.crane?.radius).toBe(3000);
  });

  it('a limit that is just the mass of the piece will do', () => {
    const fixed = withOrder(change({}, limited(2 * perMetre)), [
      'remove screw from 0 mm to 2000 mm',
      'remove screw from 2000 mm to 4000 mm',
    ]);
    expect(lifts(fixed).spiral?.pieces.map(({ withinLimit }) => withinLimit)).toEqual([true, true]);
    const tight = withOrder(change({}, limited(2 * perMetre - 0.001)), [
      'remove screw from 0 mm to 1000 mm',
      'remove screw from 1000 mm to 4000 mm',
    ]);
    expect(lifts(tight).problems).toEqual([
      {
        kind: 'piece over limit',
        piece: 2,
        mass: expect.closeTo(3 * perMetre, 9),
        limit: 2 * perMetre - 0.001,
      },
    ]);
    expect(lifts(tight).spiral?.pieces.map(({ withinLimit }) => withinLimit)).toEqual([true, false]);
  });

  test.each([
    [mostSidePull, []],
    [mostSidePull + 1, [{ kind: 'side pull', piece: 1, pull: mostSidePull + 1, point: 'L1' }]],
  ])('a point %d mm beside the middle of the piece', (beside, problems) => {
    // One piece of 4 m, its middle at 2 m.
    expect(
      lifts(change({ liftingPoints: [point('L1', 2000 + beside, 900)], holdDowns: everyPlace })).problems,
    ).toEqual(problems);
  });
  it('what no crane gets at is said without a pull', () => {
    const crane = {
      name: 'C1',
      origin: origin(),
      nameOrigin: origin(),
      chart: [{ load: stated('mass', 900), radius: mm(500) }],
    };
    const place = {
      use: { name: 'C1', origin: origin() },
      crane,
      at: mm(9000),
      offset: mm(0),
      origin: origin(),
    };
    expect(lifts(change({}, { cranes: [place] })).problems).toEqual([
      { kind: 'side pull', piece: 1, pull: undefined, point: undefined },
    ]);
  });

  it('pieces are numbered from the tail, with their ends, middles and masses', () => {
    const halves = ['remove screw from 0 mm to 1000 mm', 'remove screw from 1000 mm to 4000 mm'];
    const { pieces = [], written, limit } = lifts(withOrder(change({}, limited(500)), halves)).spiral ?? {};
    expect([written, limit]).toEqual([true, 500]);
    expect(pieces.map(({ number, from, to, centre }) => [number, from, to, centre])).toEqual([
      [1, 0, 1000, 500],
      [2, 1000, 4000, 2500],
    ]);
    expect(pieces.map(({ mass }) => mass)).toEqual([
      expect.closeTo(perMetre, 9),
      expect.closeTo(3 * perMetre, 9),
    ]);
    expect(lifts(change({}, limited(500))).spiral?.written).toBe(false);
  });
});

/** No cut is clear of these. */
const everyPlace: Conveyor['holdDowns'] = [
  { from: mm(0), to: mm(4000), side: 'both sides', origin: origin() },
];

describe('once it is unbolted', () => {
  it('slides down the same force whichever way the conveyor leans', () => {
    const force = (deg: number): number =>
      lifts(change({ incline: stated('angle', deg) }, limited(500))).spiral?.downSlopeForce ?? NaN;
    // 4 m of 25.51 kg/m on 30°: half its weight.
    expect(force(30)).toBeCloseTo((4 * perMetre * 9.80665) / 2, 9);
    expect(force(-30)).toBe(force(30));
    expect(force(0)).toBe(0);
  });
  it('springs back only where there is no shaft and the flight is known', () => {
    const springs = (old: ScrewSpecification): boolean =>
      lifts(change({ screw: old, incline: stated('angle', 30) }, limited(900))).spiral?.springBack !==
      undefined;
    expect(springs(spiral)).toBe(true);
    expect(
      springs(screw({ ...spiral, kind: { kind: 'shafted', shaft: mm(60) } as ScrewSpecification['kind'] })),
    ).toBe(false);
  });
});

describe('pieces that the order lifts in one', () => {
  const heavy = screw({ ...spiral, name: 'Heavy', flight: { ...flight, thickness: mm(40) } });
  const steps = (verb: string): readonly string[] => [
    `${verb} screw from 0 mm to 1000 mm`,
    `${verb} screw from 1000 mm to 4000 mm`,
  ];
  const over = (of: Job, limit: number): readonly unknown[] =>
    lifts({ ...of, ...limited(limit) }).problems.flatMap((each) =>
      each.kind === 'step over limit' ? [[each.step.action, Math.round(each.mass)]] : [],
    );
  const swap = (old: ScrewSpecification, fresh: ScrewSpecification): Job =>
    change({ screw: old }, { screwChange: { screw: fresh, origin: origin() } });
  it('what goes in counts with the new spiral, at its limit and beyond', () => {
    const of = withOrder(swap(spiral, heavy), steps('insert'));
    // 3 m of 51.02 kg/m.
    expect(over(of, 6 * perMetre)).toEqual([]);
    expect(over(of, 6 * perMetre - 0.001)).toEqual([['insert screw', 153]]);
  });
  it('each by what is above its own middle', () => {
    // 26 kg under L1 at 20 kg, 77 kg under L2 at 90 kg.
    const points = [point('L1', 500, 20), point('L2', 2500, 90)];
    const of = withOrder(change({ liftingPoints: points }), steps('insert'));
    expect(over(of, 1000)).toEqual([['insert screw', 26]]);
  });
  it('what goes in is told though what comes out is in the table', () => {
    const of = withOrder(swap(spiral, heavy), [...steps('remove'), ...steps('insert')]);
    expect(over(of, 6 * perMetre - 0.001)).toEqual([['insert screw', 153]]);
  });
  it('what comes out counts with the old one, where the table has not told it already', () => {
    const rest = ['remove screw from 0 mm to 1000 mm', 'remove screw from 1000 mm to 3900 mm'];
    // The order leaves 100 mm, so the table cuts by itself: 2.9 m of 51.02 kg/m are lifted in one step.
    expect(over(withOrder(swap(heavy, spiral), rest), 5.8 * perMetre)).toEqual([]);
    expect(over(withOrder(swap(heavy, spiral), rest), 5.8 * perMetre - 0.001)).toEqual([
      ['remove screw', 148],
    ]);
    expect(over(withOrder(swap(heavy, spiral), steps('remove')), 5 * perMetre)).toEqual([]);
  });
});

describe('by hand', () => {
  const trough = { insideRadius: mm(175), sideHeight: mm(150), plate: mm(4), origin: origin() };
  const byHand = (of: Job, ranges?: readonly (readonly [number, number])[]): LiftTable => {
    const ground = groundOf(of, [], worldOf(of));
    return liftsOf(
      of,
      ground.runs.flatMap((run) =>
        (ranges ?? [[0, of.conveyor.length.value]]).map(([from, to]) => ({ run, from, to })),
      ),
    );
  };
  const ends = (at: number): Conveyor['breaks'] => [
    gap('Tail', 'end plate', 0),
    gap('Head', 'end plate', at),
  ];
  const section = { insideRadius: 175, sideHeight: 150, thickness: 12 };

  it('the panels whose middles are in the part, each once; the heaviest is told', () => {
    const spec = liner({ panelLengths: [mm(1000)], panelTolerance: mm(1) });
    // 5.6 m: five panels of a metre and one of 600 mm.
    const of = job(
      line([5], [0, 0], { liner: spec, trough, length: mm(5600), breaks: ends(5600) }),
      ['all'],
      {
        crews: [crew('Alpha', 4)],
      },
    );
    const [panel] = byHand(of).byHand;
    expect(panel).toMatchObject({ what: 'panel of TwoLayer12', count: 6, people: 1, teamLift: undefined });
    expect(panel?.mass).toBeCloseTo(panelMass(section, 1000, 935), 9);
    expect(panel?.centre).toEqual({ along: 500, below: panelCentreDepth(section) });
  });

  test.each<[string, readonly (readonly [number, number])[], number | undefined]>([
    ['all of it', [[0, 4000]], 4],
    ['from the middle of the first to that of the third, both counted', [[500, 2500]], 3],
    ['a millimetre less on either side', [[501, 2499]], 1],
    ['nothing', [[510, 900]], undefined],
  ])('%s', (_, ranges, count) => {
    const of = job(line([4], [0, 0], { trough }), ['all']);
    expect(byHand(of, ranges).byHand[0]?.count).toBe(count);
  });

  it('the heavier of two lengths is told wherever it stands, with its own middle', () => {
    const spec = liner({ panelLengths: [mm(1000)], panelTolerance: mm(1) });
    // 2.6 m towards the tail: 600 mm first, then two of a metre.
    const of = job(line([2], [0, 0], { liner: spec, trough, length: mm(2600), breaks: ends(2600) }), ['all']);
    const lengths = groundOf(of, [], worldOf(of)).runs[0]?.panels.map(({ from, to }) => to - from);
    expect([...(lengths ?? [])].sort()).toEqual([1000, 1000, 600]);
    expect(byHand(of).byHand[0]?.centre?.along).toBe(500);
    // The other way round, from the tail: the short one last.
    const fromTail = [gap('Tail', 'end plate', 0), gap('Head', 'end plate', 2600, 2600, 60)];
    const other = job(line([2], [0, 0], { liner: spec, trough, length: mm(2600), breaks: fromTail }), [
      'all',
    ]);
    expect(groundOf(other, [], worldOf(other)).runs[0]?.panels.map(({ from, to }) => to - from)).toEqual([
      1000, 1000, 600,
    ]);
    expect(byHand(other).byHand[0]?.centre?.along).toBe(500);
    expect(byHand(other, [[1000, 2600]]).byHand[0]?.centre?.along).toBe(500);
  });

  test.each([
    [0, 0],
    [12, 1],
    [174, 1],
    // A shell as thick as the trough's radius closes it: there is no such panel, and no mass.
    [175, 0],
    [349, 0],
    [400, 0],
  ])('a liner of %d mm in a trough of 175 mm radius: %d row', (thickness, rows) => {
    const layers = [{ name: 'white', thickness: mm(thickness), origin: origin() }];
    const spec = liner({ panelLengths: [mm(1000)], panelTolerance: mm(1), layers });
    expect(byHand(job(line([1], [0, 0], { liner: spec, trough }), ['all'])).byHand).toHaveLength(rows);
  });

  const covers = (...masses: readonly (number | undefined)[]): Conveyor['covers'] =>
    masses.map((mass, k) => ({
      ...cover(k * 1000, (k + 1) * 1000),
      ...(mass === undefined ? {} : { mass: stated('mass', mass) }),
    }));
  const of = (masses: readonly (number | undefined)[], more: Partial<Job> = {}): LiftTable =>
    lifts(job(line([4], [0, 0], { covers: covers(...masses) }), [], more));

  it('covers: all of them counted, the heaviest told; none where no mass is stated', () => {
    expect(of([18, undefined, 24]).byHand).toEqual([
      {
        what: 'cover',
        count: 3,
        mass: 24,
        centre: undefined,
        people: 1,
        teamOfTwo: expect.closeTo(100 / 3, 9),
        teamOfThree: 37.5,
        teamLift: undefined,
      },
    ]);
    expect(of([undefined, undefined]).byHand).toEqual([]);
  });

  test.each<[string, number, Partial<Job>, readonly unknown[]]>([
    ['just the team’s limit', 30, { teamLift: stated('mass', 30), crews: [crew('A', 4)] }, []],
    [
      'above the team’s limit',
      30.5,
      { teamLift: stated('mass', 30), crews: [crew('A', 4)] },
      [{ kind: 'over team lift', what: 'cover', mass: 30.5, limit: 30 }],
    ],
    ['for two, and a crew of two', 30, { crews: [crew('A', 2)] }, []],
    ['for two, and crews of one and two', 30, { crews: [crew('A', 1), crew('B', 2)] }, []],
    [
      'for two, and a crew of one',
      30,
      { crews: [crew('A', 1)] },
      [{ kind: 'too heavy by hand', what: 'cover', mass: 30, people: 1 }],
    ],
    ['for two, and no crew', 30, {}, []],
    [
      'for two, and a crew that the plant does not know',
      30,
      { crews: [{ use: { name: 'Guests', origin: origin() } }] },
      [],
    ],
    ['for three at most: 37.5 kg', 37.5, { crews: [crew('A', 3)] }, []],
    [
      'for no team',
      38,
      { crews: [crew('A', 9)] },
      [{ kind: 'too heavy by hand', what: 'cover', mass: 38, people: 3 }],
    ],
  ])('a cover %s', (_, mass, more, problems) => {
    expect(of([mass], more).problems).toEqual(problems);
  });
});

test('an angle of the slings that is stated is taken as it is; the usual one is said to be assumed', () => {
  expect(lifts(change({}, { ...limited(500), slingAngle: stated('angle', 30) })).slingAngle).toEqual({
    value: 30,
  });
  expect(lifts(change({}, limited(500))).slingAngle).toEqual({
    value: 45,
    assumed: 'No sling angle is stated: 45° from the vertical is taken, the usual limit.',
  });
});
