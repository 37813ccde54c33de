// Lifts: by sling, by hand, and what slides down the slope when it is let go. Advice for planning only: the law, the site's
// rules, the lifting equipment's own marks and a competent person come first.

import { notNegative, positive, within } from './demand.js';

/** Standard acceleration of free fall, m/s² (CGPM 1901). */
export const gravity = 9.80665;

/** Angles of a sling leg from the vertical: the usual limit, and the one never to be passed (common practice). */
export const usualSlingAngle = 45;
/** Mass (kg) that HSE's guideline diagram shows for a man lifting close to the body at knuckle height (L23, INDG143). */
export const handlingGuideline = 25;

/** Share of the load in each leg of a two-leg sling: 1/(2cos β), β in degrees from the vertical, 0 ≤ β < 90. */
export function slingLegShare(angle: number): number {
  return 1 / (2 * Math.cos((within('sling angle', angle, 0, 89, 'deg') * Math.PI) / 180));
}

/**
 * Pull in the heavier leg of a two-leg sling, N, where the load keeps the slope it lay on (degrees): hooks at both ends alike far from
 * its middle, the hook of the crane above the middle, `angle` that of the legs if it hung level. The leg to the lower end is the
 * longer one and bears more: (m·g/2)·√((tan β·cos θ)² + (1 + tan β·sin θ)²) (statics; level it is m·g/(2·cos β)).
 */
export function slopingLegTension(mass: number, angle: number, incline: number): number {
  const spread = Math.tan((within('sling angle', angle, 0, 89, 'deg') * Math.PI) / 180);
  const slope = (within('incline', incline, 0, 90, 'deg') * Math.PI) / 180;
  const half = (notNegative('load', mass, 'kg') * gravity) / 2;
  return half * Math.hypot(spread * Math.cos(slope), 1 + spread * Math.sin(slope));
}

/** Force down the slope of a mass (kg) on an incline (degrees), N; friction is left out, which is the safe side for restraint. */
export function downSlopeForce(mass: number, incline: number): number {
  return (
    notNegative('mass', mass, 'kg') *
    gravity *
    Math.sin((within('incline', incline, 0, 90, 'deg') * Math.PI) / 180)
  );
}

export interface Lift {
  /** Hands in front of the ankles, hands above the floor at the start, distance raised: mm. */
  readonly reach: number;
  readonly height: number;
  readonly travel: number;
  /** Turn of the body, degrees. */
  readonly twist: number;
  /** Multipliers for how often and how well gripped, from the tables of the source, 0 … 1. */
  readonly frequency: number;
  readonly coupling: number;
}

/**
 * Recommended weight limit, kg, of the revised NIOSH lifting equation (DHHS publication 94-110, metric form):
 * 23·(25/H)·(1 − 0.003|V − 75|)·(0.82 + 4.5/D)·(1 − 0.0032A)·FM·CM, lengths in cm. As the source has it, H and D below
 * 25 cm count as 25, and the limit is zero for H above 63 cm, V or D above 175 cm, A above 135°.
 */
export function recommendedWeightLimit(lift: Lift): number {
  const reach = Math.max(25, notNegative('reach', lift.reach, 'mm') / 10);
  const height = notNegative('height', lift.height, 'mm') / 10;
  const travel = Math.max(25, notNegative('travel', lift.travel, 'mm') / 10);
  const twist = within('twist', lift.twist, 0, 180, 'deg');
  within('frequency multiplier', lift.frequency, 0, 1, '');
  within('coupling multiplier', lift.coupling, 0, 1, '');
  if (reach > 63 || height > 175 || travel > 175 || twist > 135) return 0;
  const posture = (25 / reach) * (1 - 0.003 * Math.abs(height - 75)) * (0.82 + 4.5 / travel);
  return 23 * posture * (1 - 0.0032 * twist) * lift.frequency * lift.coupling;
}

/** Lifting index: load over limit; above 1 the risk grows. Undefined where the limit is zero: no load is acceptable there. */
export function liftingIndex(mass: number, limit: number): number | undefined {
  notNegative('load', mass, 'kg');
  return notNegative('recommended weight limit', limit, 'kg') === 0 ? undefined : mass / limit;
}

/**
 * How somebody stands who lays a liner panel into a trough (inside radius and side height in mm): hands over the middle of
 * the trough with the feet 100 mm outside its wall, from knuckle height (750 mm), over the side, turned by 30°, seldom
 * (1.00) and with a poor grip on a bent sheet (0.90). Multipliers from the tables of the source, from memory; the posture
 * is our judgement, and a foothold on a slope or a platform is worse.
 */
export function panelPosture(insideRadius: number, sideHeight: number): Lift {
  return {
    reach: positive('inside radius', insideRadius, 'mm') + 100,
    height: 750,
    travel: Math.max(250, notNegative('side height', sideHeight, 'mm')),
    twist: 30,
    frequency: 1,
    coupling: 0.9,
  };
}

/**
 * What a team can lift together, kg, where each could lift `single` alone: two people two thirds of the sum, three half
 * (HSE, L23). The source stops at three; a larger team is given no more than three, on the safe side (our judgement).
 */
export function teamCapability(single: number, people: number): number {
  notNegative('capability of one person', single, 'kg');
  if (!Number.isInteger(people) || people < 1)
    throw new RangeError(`A team has whole people, at least one, not ${people}.`);
  if (people === 1) return single;
  return people === 2 ? (2 * 2 * single) / 3 : (3 * single) / 2;
}

/** People that a lift by hand needs at least, from the team rule; undefined where more than three would not do. */
export function peopleNeeded(mass: number, single: number): 1 | 2 | 3 | undefined {
  notNegative('load', mass, 'kg');
  positive('capability of one person', single, 'kg');
  return ([1, 2, 3] as const).find((people) => teamCapability(single, people) >= mass);
}
