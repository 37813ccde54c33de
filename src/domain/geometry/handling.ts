// Lifts: by sling, by hand, and what slides down the slope when it is let go. Advice for planning only: the law, the site's
// rules, the lifting equipment's own marks and a competent person come first.

import { finite, notNegative, positive, within } from './demand.js';

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

/** Pull in each leg of a two-leg sling, N, for a load in kg hung midway between the legs. */
export function slingLegTension(mass: number, angle: number): number {
  return notNegative('load', mass, 'kg') * gravity * slingLegShare(angle);
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

/** What a turn of the body (degrees) leaves of a lift: 0.9 above 45°, 0.8 above 90° (HSE, L23). */
export function twistFactor(twist: number): number {
  finite('twist', twist, 'deg');
  if (Math.abs(twist) > 90) return 0.8;
  return Math.abs(twist) > 45 ? 0.9 : 1;
}

/** People that a lift by hand needs at least, from the team rule; undefined where more than three would not do. */
export function peopleNeeded(mass: number, single: number): 1 | 2 | 3 | undefined {
  notNegative('load', mass, 'kg');
  positive('capability of one person', single, 'kg');
  return ([1, 2, 3] as const).find((people) => teamCapability(single, people) >= mass);
}
