import { describe, expect, test } from 'vitest';
import type { Conveyor, LiftingPoint } from '../../../src/domain/model/conveyor.js';
import type { Job } from '../../../src/domain/model/job.js';
import { groundOf } from '../../../src/domain/order/ground.js';
import { liftsOf, screwMassPerMetre, type LiftTable } from '../../../src/domain/plan/lifts.js';
import { liner, mm, origin, screw, stated } from '../../kit/estate.js';
import { cover, crew, everywhere, holdDown, job, line, worldOf } from '../order/stories.js';

// A flight of 60 by 20 mm bar, outside 300, inside 180, pitch 300 mm, at 7850 kg/m³: 7.654 kg a turn, 25.51 kg/m (surface
// integral of the helix, derived); the inner flight 160/80/300 by 12 mm is 6.08 kg/m.
const spiral = screw({
  outsideDiameter: mm(300),
  pitch: mm(300),
  flight: { width: mm(60), thickness: mm(20), origin: origin() },
});
const point = (name: string, at: number, limit: number): LiftingPoint => ({
  name,
  at: mm(at),
  limit: stated('mass', limit),
  origin: origin(),
});

function lifts(of: Job): LiftTable {
  const ground = groundOf(of, [], worldOf(of));
  return liftsOf(
    of,
    ground.scope.flatMap((area) => ground.runs.map((run) => ({ run, from: area.from, to: area.to }))),
  );
}
function change(facts: Partial<Conveyor> = {}, more: Partial<Job> = {}): Job {
  const conveyor = line([12], [10, 0], { screw: spiral, incline: stated('angle', 25), ...facts });
  return job(conveyor, [], {
    screwChange: { screw: spiral, origin: origin() },
    crews: [crew('Alpha', 4)],
    ...more,
  });
}

describe('the spiral', () => {
  test('weighs what its surface says: 25.51 kg/m, and 6.08 kg/m more with the inner flight', () => {
    expect(screwMassPerMetre(spiral)).toBeCloseTo(25.51, 2);
    const inner = { outside: mm(160), inside: mm(80), pitch: mm(300), thickness: mm(12), origin: origin() };
    expect(
      (screwMassPerMetre(screw({ ...spiral, innerFlight: inner })) ?? 0) - (screwMassPerMetre(spiral) ?? 0),
    ).toBeCloseTo(6.08, 2);
    expect(screwMassPerMetre(screw())).toBeUndefined();
  });

  test('unbolted on 25° over 12 m it pulls 1.27 kN down the slope, and springs back', () => {
    const found = lifts(change({}, { liftLimit: stated('mass', 400) })).spiral;
    expect((found?.downSlopeForce ?? 0) / 1000).toBeCloseTo(1.27, 2);
    // About 1.03 mm a turn for each kN; under its own weight half of that over 40 turns.
    expect(found?.springBack).toBeCloseTo((1.03 * 40 * 1.27) / 2, 0);
  });

  test('goes out in the fewest pieces the limit allows, as even as can be', () => {
    const found = lifts(change({}, { liftLimit: stated('mass', 110) })).spiral;
    // 306 kg in all: three pieces of at most 110 kg, 102 kg each.
    expect(found?.pieces.map((piece) => Math.round(piece.mass))).toEqual([102, 102, 102]);
    expect(found?.pieces.map((piece) => piece.centre)).toEqual([2000, 6000, 10_000]);
    expect(found?.pieces.reduce((sum, piece) => sum + piece.to - piece.from, 0)).toBe(12_000);
  });

  test('is cut clear of hold-downs and of where access zones end', () => {
    const access = [
      { ...everywhere, to: mm(8000) },
      { ...everywhere, from: mm(8000) },
    ];
    const found = lifts(
      change(
        { holdDowns: [holdDown(4000)], access },
        { liftLimit: stated('mass', 110), jointClearance: mm(100) },
      ),
    ).spiral;
    const cuts = found?.pieces.slice(1).map((piece) => piece.from) ?? [];
    expect(cuts.length).toBe(2);
    for (const at of cuts)
      for (const keep of [4000, 8000]) expect(Math.abs(at - keep)).toBeGreaterThanOrEqual(100);
    expect(found?.pieces.every((piece) => piece.withinLimit)).toBe(true);
  });

  test('hangs from the nearest lifting point, at its limit', () => {
    const found = lifts(
      change(
        { liftingPoints: [point('L1', 2000, 60), point('L2', 10_000, 250)] },
        { liftLimit: stated('mass', 300) },
      ),
    ).spiral;
    expect(found?.pieces.every((piece) => piece.mass <= (piece.liftingPoint?.name === 'L1' ? 60 : 250))).toBe(
      true,
    );
    expect(found?.pieces.at(-1)?.liftingPoint?.name).toBe('L2');
  });

  test('a limit that no cut can meet is said, with the piece', () => {
    const found = lifts(
      change(
        { holdDowns: Array.from({ length: 60 }, (_, k) => holdDown(3000 + k * 100)) },
        { liftLimit: stated('mass', 110), jointClearance: mm(100) },
      ),
    );
    expect(found.problems.map((each) => each.kind)).toEqual(['piece over limit']);
  });

  // Level, each leg of a two-leg sling bears W/(2 cos β), the usual rigging relation: 0.577 W at 30°, 0.707 W at 45°. On a slope
  // of 20° the lower leg of 45° is √(cos²20° + (1 + sin 20°)²) / 2 of W.
  test.each([
    [30, 0, 0.577],
    [45, 0, 0.707],
    [45, 20, 0.819],
  ])('sling legs at %d° on a slope of %d° carry up to %d of the load', (angle, incline, share) => {
    const [piece] =
      lifts(
        change(
          { incline: stated('angle', incline) },
          { liftLimit: stated('mass', 400), slingAngle: stated('angle', angle) },
        ),
      ).spiral?.pieces ?? [];
    expect((piece?.legTension ?? 0) / ((piece?.mass ?? 1) * 9.80665)).toBeCloseTo(share, 3);
  });

  test('an angle that nobody states is the usual limit, and said to be assumed', () => {
    expect(lifts(change({}, { liftLimit: stated('mass', 400) })).slingAngle).toMatchObject({
      value: 45,
      assumed: expect.any(String) as string,
    });
  });

  // Twice the bar is twice the mass: 51.02 kg/m against 25.51 kg/m.
  const heavy = screw({
    ...spiral,
    name: 'Heavy',
    flight: { width: mm(60), thickness: mm(40), origin: origin() },
  });
  test.each([
    ['the one that comes out', heavy, spiral],
    ['the one that goes in', spiral, heavy],
  ])('is cut for the heavier of the two spirals: %s', (_, old, fresh) => {
    const found = lifts(
      change(
        { screw: old },
        { liftLimit: stated('mass', 210), screwChange: { screw: fresh, origin: origin() } },
      ),
    ).spiral;
    // 612 kg in all: three pieces of 204 kg. By the lighter one two pieces would do, and each would weigh 306 kg.
    expect(found?.pieces.map((piece) => Math.round(piece.mass))).toEqual([204, 204, 204]);
    expect([found?.out.massPerMetre, found?.in.massPerMetre].map((mass) => Math.round(mass ?? 0))).toEqual(
      old === heavy ? [51, 26] : [26, 51],
    );
    // What slides once it is unbolted is the old one: 12 m on 25°.
    expect((found?.downSlopeForce ?? 0) / 1000).toBeCloseTo(old === heavy ? 2.54 : 1.27, 2);
  });

  test('that comes out is the one that lies there', () => {
    const outWith = (more: Partial<Job>): string | undefined =>
      liftsOf(change({}, { liftLimit: stated('mass', 700), ...more }), []).spiral?.out.screw.name;
    expect([outWith({}), outWith({ screwLying: heavy })]).toEqual([spiral.name, 'Heavy']);
  });

  test('without limit or description there is a problem, not a number', () => {
    expect(lifts(change()).problems.map((each) => each.kind)).toEqual(['no lift limit']);
    const bare = job(line([4], [10, 0]), [], { screwChange: { screw: screw(), origin: origin() } });
    expect(lifts(bare).spiral).toBeUndefined();
    expect(lifts(bare).problems.map((each) => each.kind)).toEqual(['mass unknown', 'mass unknown']);
  });
});

describe('by hand', () => {
  // HSE: two people lift two thirds of what they could lift one by one, three people half; the guideline is 25 kg.
  const heavy = liner({ panelLengths: [mm(3000)], panelTolerance: mm(1) });
  const trough = { insideRadius: mm(175), sideHeight: mm(150), plate: mm(4), origin: origin() };

  test('a 3 m panel of 27.97 kg is above 25 kg and needs two, who can lift 33.3 kg', () => {
    const conveyor = line([3], [10, 0], { liner: heavy, trough });
    const [panel] = lifts(job(conveyor, ['all'], { crews: [crew('Alpha', 3)] })).byHand;
    expect(panel?.mass).toBeCloseTo(27.97, 2);
    expect([panel?.count, panel?.people]).toEqual([1, 2]);
    expect(panel?.teamOfTwo).toBeCloseTo(33.3, 1);
    expect(panel?.teamOfThree).toBe(37.5);
    expect(panel?.centre?.along).toBe(1500);
  });
  test('a crew too small for it is said', () => {
    const conveyor = line([3], [10, 0], { liner: heavy, trough });
    expect(
      lifts(job(conveyor, ['all'], { crews: [crew('Alpha', 1)] })).problems.map((each) => each.kind),
    ).toEqual(['too heavy by hand']);
  });
  test("covers count with their stated mass, against the job's own team lift", () => {
    const conveyor = line([2], [10, 0], { covers: [{ ...cover(0, 2000), mass: stated('mass', 40) }] });
    const found = lifts(job(conveyor, ['all'], { crews: [crew('Alpha', 4)], teamLift: stated('mass', 35) }));
    expect(found.problems).toEqual([
      { kind: 'over team lift', what: 'cover', mass: 40, limit: 35 },
      { kind: 'too heavy by hand', what: 'cover', mass: 40, people: 3 },
    ]);
  });
});
