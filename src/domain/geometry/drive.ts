// Speed along the axis, power, torque, and how far the flight's edge slides on the liner.
// Power in the form of ISO 7119: moving the material along, lifting it, and turning the empty screw. The last term is for
// screws in bearings; a spiral without a centre tube lies on its liner and drags there, which is worked out beside it.

import { finite, notNegative, positive, within } from './demand.js';
import { gravity } from './handling.js';

/** v = S·n/60, m/s, for a pitch in mm and a speed in rpm: how fast the material travels if none slips back. */
export function axialSpeed(pitch: number, speed: number): number {
  return (positive('pitch', pitch, 'mm') * notNegative('speed', speed, 'rpm')) / 60_000;
}

/** Height gained over a length (mm) on an incline (degrees, positive upward in the direction of flow), mm. */
export function rise(length: number, incline: number): number {
  return notNegative('length', length, 'mm') * Math.sin((finite('incline', incline, 'deg') * Math.PI) / 180);
}

export interface PowerInput {
  /** t/h. */
  readonly massFlow: number;
  /** Length and height gained (positive upward), mm. */
  readonly length: number;
  readonly rise: number;
  /** λ: 2 to 4 by material. */
  readonly resistanceFactor: number;
  /** Screw diameter, mm. */
  readonly diameter: number;
}

export interface Power {
  /** All kW. Lift is negative where the conveyor falls; the total may then be below zero: the material drives the screw. */
  readonly material: number;
  readonly lift: number;
  readonly empty: number;
  readonly total: number;
}

/** P = Q_m(λL + H)/367 + D·L/20, kW, with L, H, D in metres (ISO 7119). 367 is 3600/9.81 rounded up by the standard. */
export function conveyingPower(input: PowerInput): Power {
  const flow = notNegative('mass flow', input.massFlow, 't/h');
  const length = notNegative('length', input.length, 'mm') / 1000;
  const height = finite('rise', input.rise, 'mm') / 1000;
  const material = (flow * notNegative('resistance factor', input.resistanceFactor, '') * length) / 367;
  const lift = (flow * height) / 367;
  const empty = ((positive('screw diameter', input.diameter, 'mm') / 1000) * length) / 20;
  return { material, lift, empty, total: material + lift + empty };
}

/** T = 9550·P/n, N·m, for kW and rpm; 9550 is 30 000/π rounded. */
export function torque(power: number, speed: number): number {
  return (9550 * notNegative('power', power, 'kW')) / positive('speed', speed, 'rpm');
}

/** Friction between a steel spiral and a wet PE liner (judgement; makers' sheets give 0.1 to 0.25 dry, from memory). */
export const spiralFriction = 0.2;

export interface DragInput {
  /** Mass of the whole spiral, kg. */
  readonly mass: number;
  /** Degrees. */
  readonly incline: number;
  /** Outside diameter, mm. */
  readonly diameter: number;
  readonly speed: number;
  /** μ, from 0 up; `spiralFriction` where left out. */
  readonly friction?: number;
}

/**
 * P = μ·m·g·cos α·π·D·n/60, kW: the weight that a spiral without a centre tube rests on its liner, sliding at the speed of its edge.
 * Too low where material wedges between spiral and liner, too high where material carries part of the spiral.
 */
export function dragPower({ mass, incline, diameter, speed, friction = spiralFriction }: DragInput): number {
  const normal =
    notNegative('mass of the spiral', mass, 'kg') *
    gravity *
    Math.cos((within('incline', incline, -90, 90, 'deg') * Math.PI) / 180);
  const edge =
    (Math.PI * positive('screw diameter', diameter, 'mm') * notNegative('speed', speed, 'rpm')) / 60_000;
  return (notNegative('friction', friction, '') * normal * edge) / 1000;
}
