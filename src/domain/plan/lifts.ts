// What is lifted in a job, how heavy it is, where its centre is, and what lifts it: the spiral in pieces within the limit, cut
// clear of hold-downs and access edges; panels and covers by hand with the usual reductions for teams. Masses come from
// geometry and density and leave out wear and what sticks to the parts. Advice for planning: lifts are planned, the tackle
// chosen and the loads proved by competent people under the law and the site's rules.

import { linerSide } from '../model/liner-side.js';
import { lyingScrew } from '../model/lying-screw.js';
import {
  downSlopeForce,
  handlingGuideline,
  peopleNeeded,
  slopingLegTension,
  teamCapability,
  usualSlingAngle,
} from '../geometry/handling.js';
import {
  flightMassPerMetre,
  ownWeightStretch,
  shaftMassPerMetre,
  type FlightShape,
} from '../geometry/helix.js';
import { panelCentreDepth, panelMassIfSound } from '../geometry/trough.js';
import type { Job, Step } from '../model/job.js';
import type { LiftingPoint } from '../model/conveyor.js';
import type { ScrewSpecification } from '../model/specifications.js';
import type { RunGround } from '../order/ground.js';
import { gearFor, mostSidePull, type LiftingGear } from '../order/lifting-gear.js';
import { cutSpiral, liftedInOne, writtenCuts, type SpiralCut } from './spiral-cuts.js';

export interface LiftTable {
  readonly spiral: SpiralLifts | undefined;
  readonly byHand: readonly HandLift[];
  /** Of each sling leg from the vertical, degrees. */
  readonly slingAngle: { readonly value: number; readonly assumed?: string };
  readonly problems: readonly LiftProblem[];
}

export type LiftProblem =
  | {
      readonly kind: 'piece over limit';
      readonly piece: number;
      readonly mass: number;
      readonly limit: number;
    }
  /** A written step that lifts a piece in one. */
  | { readonly kind: 'step over limit'; readonly step: Step; readonly mass: number; readonly limit: number }
  | {
      readonly kind: 'side pull';
      readonly piece: number;
      /** mm beside the lifting point; undefined where nothing declared gets at the piece. */
      readonly pull: number | undefined;
      readonly point: string | undefined;
    }
  | { readonly kind: 'over team lift'; readonly what: string; readonly mass: number; readonly limit: number }
  | {
      readonly kind: 'too heavy by hand';
      readonly what: string;
      readonly mass: number;
      readonly people: number;
    }
  | { readonly kind: 'no lift limit' }
  | { readonly kind: 'mass unknown'; readonly what: string };

export interface SpiralLifts {
  /** kg/m of the spiral that comes out, and of the one that goes in. */
  readonly out: { readonly screw: ScrewSpecification; readonly massPerMetre: number };
  readonly in: { readonly screw: ScrewSpecification; readonly massPerMetre: number };
  readonly pieces: readonly SpiralPieceLift[];
  /** True where the pieces are those of the order's own steps. */
  readonly written: boolean;
  /** Once unbolted, N down the slope for the whole spiral; friction left out. */
  readonly downSlopeForce: number;
  /** How far it springs when the drive plate lets go, mm; undefined where the flight is not described. */
  readonly springBack: number | undefined;
  /** Mean diameter over the width of its bar: low for a stout spiral, whose stretch is known less well. */
  readonly springIndex: number | undefined;
  readonly limit: number | undefined;
}

export interface SpiralPieceLift {
  readonly number: number;
  /** Chainages, mm. */
  readonly from: number;
  readonly to: number;
  readonly centre: number;
  /** The heavier of old and new, kg. */
  readonly mass: number;
  readonly limit: number | undefined;
  readonly liftingPoint: LiftingPoint | undefined;
  readonly crane: LiftingGear['crane'];
  /** From the middle of the piece to its lifting point along the trough, mm. */
  readonly sidePull: number;
  /** In the heavier leg of a two-leg sling, the piece hanging at the slope of the trough, N. */
  readonly legTension: number;
  readonly withinLimit: boolean;
}

export interface HandLift {
  readonly what: string;
  readonly count: number;
  /** Of the heaviest, kg. */
  readonly mass: number;
  /**
   * Centre of gravity: from an end along the trough, and below the centre line of the trough (negative above it), mm; undefined
   * where the shape is not known.
   */
  readonly centre: { readonly along: number; readonly below: number } | undefined;
  /** By the team rule, at the guideline of 25 kg for one person close to the body; undefined where more than three would be needed. */
  readonly people: number | undefined;
  /** What two and three people can lift together by the team rule, kg. */
  readonly teamOfTwo: number;
  readonly teamOfThree: number;
  /** The job's own limit for the team, kg. */
  readonly teamLift: number | undefined;
}

export function liftsOf(
  job: Job,
  relined: readonly { readonly run: RunGround; readonly from: number; readonly to: number }[],
): LiftTable {
  const problems: LiftProblem[] = [];
  const slingAngle = job.slingAngle
    ? { value: job.slingAngle.value }
    : {
        value: usualSlingAngle,
        assumed: `No sling angle is stated: ${usualSlingAngle}° from the vertical is taken, the usual limit.`,
      };
  const spiral = job.screwChange
    ? spiralLifts(job, job.screwChange.screw, slingAngle.value, problems)
    : undefined;
  const byHand = [...panelLifts(job, relined), ...coverLifts(job)];
  const most = Math.max(0, ...job.crews.map(({ crew }) => crew?.size.count ?? 0));
  for (const lift of byHand) {
    if (lift.teamLift !== undefined && lift.mass > lift.teamLift)
      problems.push({ kind: 'over team lift', what: lift.what, mass: lift.mass, limit: lift.teamLift });
    if (lift.people === undefined)
      problems.push({ kind: 'too heavy by hand', what: lift.what, mass: lift.mass, people: 3 });
    else if (most > 0 && lift.people > most)
      problems.push({ kind: 'too heavy by hand', what: lift.what, mass: lift.mass, people: most });
  }
  return { spiral, byHand, slingAngle, problems };
}

/** kg/m along the axis; undefined where neither flight nor shaft is described. */
export function screwMassPerMetre(screw: ScrewSpecification): number | undefined {
  const flight = flightOf(screw);
  if (!flight) return undefined;
  const density = screw.density.value;
  const inner = screw.innerFlight && {
    outside: screw.innerFlight.outside.value,
    inside: screw.innerFlight.inside.value,
    pitch: screw.innerFlight.pitch.value,
    thickness: screw.innerFlight.thickness.value,
  };
  return (
    flightMassPerMetre(flight.shape, flight.thickness, density) +
    (inner && inner.inside < inner.outside ? flightMassPerMetre(inner, inner.thickness, density) : 0) +
    (screw.kind.kind === 'shafted' ? shaftMassPerMetre(screw.kind.shaft.value, 0, density) : 0)
  );
}

function flightOf(
  screw: ScrewSpecification,
): { readonly shape: FlightShape; readonly thickness: number } | undefined {
  if (!screw.flight) return undefined;
  const outside = screw.outsideDiameter.value;
  const inside = outside - 2 * screw.flight.width.value;
  if (inside <= 0) return undefined;
  return { shape: { outside, inside, pitch: screw.pitch.value }, thickness: screw.flight.thickness.value };
}

function spiralLifts(
  job: Job,
  fresh: ScrewSpecification,
  angle: number,
  problems: LiftProblem[],
): SpiralLifts | undefined {
  const { conveyor } = job;
  const old = lyingScrew(job);
  const massOut = screwMassPerMetre(old);
  const massIn = screwMassPerMetre(fresh);
  for (const [screw, mass] of new Map([
    [old, massOut],
    [fresh, massIn],
  ]))
    if (mass === undefined) problems.push({ kind: 'mass unknown', what: `screw ${screw.name}` });
  if (massOut === undefined || massIn === undefined) return undefined;
  const perMetre = Math.max(massOut, massIn);
  const limit = job.liftLimit?.value;
  if (limit === undefined && conveyor.liftingPoints.length === 0 && (job.cranes ?? []).length === 0)
    problems.push({ kind: 'no lift limit' });
  const cuts: readonly SpiralCut[] = writtenCuts(job) ?? cutSpiral(job, perMetre);
  problems.push(...writtenLifts(job, massOut, massIn));
  const pieces = cuts.map((cut, i): SpiralPieceLift => {
    const mass = (perMetre * (cut.to - cut.from)) / 1000;
    const withinLimit = cut.limit === undefined || mass <= cut.limit + 1e-9;
    if (!withinLimit) problems.push({ kind: 'piece over limit', piece: i + 1, mass, limit: cut.limit });
    if (cut.outOfReach || cut.sidePull > mostSidePull)
      problems.push({
        kind: 'side pull',
        piece: i + 1,
        pull: cut.liftingPoint ? cut.sidePull : undefined,
        point: cut.liftingPoint?.name,
      });
    return {
      number: i + 1,
      from: cut.from,
      to: cut.to,
      centre: (cut.from + cut.to) / 2,
      mass,
      limit: cut.limit,
      liftingPoint: cut.liftingPoint,
      crane: cut.crane,
      sidePull: cut.sidePull,
      legTension: slopingLegTension(mass, angle, Math.min(90, Math.abs(conveyor.incline.value))),
      withinLimit,
    };
  });
  const incline = Math.abs(conveyor.incline.value);
  const force = downSlopeForce((massOut * conveyor.length.value) / 1000, incline);
  const flight = flightOf(old);
  return {
    out: { screw: old, massPerMetre: massOut },
    in: { screw: fresh, massPerMetre: massIn },
    pieces,
    written: writtenCuts(job) !== undefined,
    limit,
    downSlopeForce: force,
    springBack:
      flight && old.kind.kind === 'shaftless'
        ? ownWeightStretch({ shape: flight.shape, thickness: flight.thickness }, force, conveyor.length.value)
        : undefined,
    springIndex:
      flight && (flight.shape.outside + flight.shape.inside) / (flight.shape.outside - flight.shape.inside),
  };
}

/** Pieces that the order lifts in one and that are heavier than what lifts them; those of the table are told there. */
function writtenLifts(job: Job, massOut: number, massIn: number): LiftProblem[] {
  const told = writtenCuts(job) !== undefined;
  return (['remove screw', 'insert screw'] as const).flatMap((action) =>
    (told && action === 'remove screw' ? [] : liftedInOne(job, action)).flatMap(
      ({ step, from, to }): LiftProblem[] => {
        const mass = ((action === 'remove screw' ? massOut : massIn) * (to - from)) / 1000;
        const { limit } = gearFor(job, (from + to) / 2);
        return limit !== undefined && mass > limit + 1e-9
          ? [{ kind: 'step over limit', step, mass, limit }]
          : [];
      },
    ),
  );
}

function panelLifts(
  job: Job,
  relined: readonly { readonly run: RunGround; readonly from: number; readonly to: number }[],
): HandLift[] {
  const { trough } = job.conveyor;
  const byLiner = new Map<string, { mass: number; count: number; length: number; below: number }>();
  for (const { run, from, to } of relined) {
    const section = {
      insideRadius: trough.insideRadius.value,
      sideHeight: linerSide(job.conveyor).value,
      thickness: run.liner.thickness.value,
    };
    for (const panel of run.panels) {
      if ((panel.from + panel.to) / 2 < from || (panel.from + panel.to) / 2 > to) continue;
      const { length } = panel;
      const mass = panelMassIfSound(section, length, run.liner.density.value);
      if (mass === undefined) continue;
      const known = byLiner.get(run.liner.name);
      if (!known)
        byLiner.set(run.liner.name, {
          mass,
          count: 1,
          length,
          below: panelCentreDepth(section),
        });
      else {
        known.count++;
        if (mass > known.mass) Object.assign(known, { mass, length });
      }
    }
  }
  return [...byLiner].map(([name, { mass, count, length, below }]) =>
    handLift(job, `panel of ${name}`, count, mass, { along: length / 2, below }),
  );
}

function coverLifts(job: Job): HandLift[] {
  const masses = job.conveyor.covers.flatMap((cover) => (cover.mass ? [cover.mass.value] : []));
  return masses.length === 0
    ? []
    : [handLift(job, 'cover', job.conveyor.covers.length, Math.max(...masses), undefined)];
}

function handLift(job: Job, what: string, count: number, mass: number, centre: HandLift['centre']): HandLift {
  return {
    what,
    count,
    mass,
    centre,
    people: peopleNeeded(mass, handlingGuideline),
    teamOfTwo: teamCapability(handlingGuideline, 2),
    teamOfThree: teamCapability(handlingGuideline, 3),
    teamLift: job.teamLift?.value,
  };
}
