// The spiral: length of its edges, the flat ring it is formed from, its area and mass, and how it gives as a spring.
// A flight is the ruled helical surface between an inner and an outer diameter; a turn advances one pitch.
// Edge and blank formulas are the usual handbook ones for sheet-metal screw flights; area and mass follow from the surface.

import { below, finite, notNegative, positive } from './demand.js';

export interface FlightShape {
  /** Outside and inside diameter and pitch, mm. */
  readonly outside: number;
  readonly inside: number;
  readonly pitch: number;
}

/** Length of a helical edge a turn, mm: √((πD)² + S²), for a diameter and a pitch in mm. */
export function edgeLength(diameter: number, pitch: number): number {
  return Math.hypot(Math.PI * positive('diameter', diameter, 'mm'), positive('pitch', pitch, 'mm'));
}

export interface FlatBlank {
  /** Radii of the flat ring, mm. */
  readonly innerRadius: number;
  readonly outerRadius: number;
  /** What is cut out of the ring, degrees. */
  readonly gap: number;
  readonly outerEdge: number;
  readonly innerEdge: number;
}

/** The flat ring that one turn is drawn out of: R_i = b·L_i/(L_o − L_i), R_o = R_i + b, gap 360°(1 − L_o/2πR_o). */
export function flatBlank({ outside, inside, pitch }: FlightShape): FlatBlank {
  checkShape(outside, inside, pitch);
  const width = (outside - inside) / 2;
  const outerEdge = edgeLength(outside, pitch);
  const innerEdge = edgeLength(inside, pitch);
  const innerRadius = (width * innerEdge) / (outerEdge - innerEdge);
  const outerRadius = innerRadius + width;
  return {
    innerRadius,
    outerRadius,
    gap: 360 * (1 - outerEdge / (2 * Math.PI * outerRadius)),
    outerEdge,
    innerEdge,
  };
}

/** Area of one face of a turn, mm²: ∫ √((2πr)² + S²) dr between the radii, in closed form. */
export function flightArea({ outside, inside, pitch }: FlightShape): number {
  checkShape(outside, inside, pitch);
  const upTo = (r: number): number =>
    (r / 2) * Math.hypot(2 * Math.PI * r, pitch) +
    (pitch ** 2 / (4 * Math.PI)) * Math.asinh((2 * Math.PI * r) / pitch);
  return upTo(outside / 2) - upTo(inside / 2);
}

/** Mass of a turn, kg: area × thickness (mm) × density (kg/m³). */
export function flightMassPerTurn(shape: FlightShape, thickness: number, density: number): number {
  return (
    flightArea(shape) *
    positive('flight thickness', thickness, 'mm') *
    positive('density', density, 'kg/m³') *
    1e-9
  );
}

/** Mass of a metre along the axis, kg/m. */
export function flightMassPerMetre(shape: FlightShape, thickness: number, density: number): number {
  return (flightMassPerTurn(shape, thickness, density) * 1000) / shape.pitch;
}

/** Mass of a metre of round shaft or pipe wall between two diameters (mm), kg/m; `inside` 0 for a solid shaft. */
export function shaftMassPerMetre(outside: number, inside: number, density: number): number {
  positive('shaft diameter', outside, 'mm');
  notNegative('shaft bore', inside, 'mm');
  below('shaft bore', inside, 'shaft diameter', outside, 'mm');
  return (Math.PI / 4) * (outside ** 2 - inside ** 2) * positive('density', density, 'kg/m³') * 1e-6;
}

export interface Spring {
  readonly shape: FlightShape;
  /** Axial thickness of the flat bar, mm. */
  readonly thickness: number;
  /** MPa. */
  readonly youngsModulus?: number;
  readonly shearModulus?: number;
}

/** Usual values for carbon and low-alloy steel, MPa (handbook values, from memory). */
export const steelYoungsModulus = 206_000;
export const steelShearModulus = 79_300;

/**
 * How much a spiral lengthens under an axial pull (N, negative for a push), mm over a length along the axis (mm):
 * δ = F·R²·ℓ·(cos²α/GJ + sin²α/EI), the close relation of strength-of-materials texts for an open-coiled helical spring;
 * R the mean radius, ℓ the bar's length, tan α = S/2πR. The ends are taken as free to turn; a bar of rectangular section.
 */
export function springStretch(spring: Spring, force: number, length: number): number {
  const { shape, thickness, youngsModulus = steelYoungsModulus, shearModulus = steelShearModulus } = spring;
  checkShape(shape.outside, shape.inside, shape.pitch);
  finite('force', force, 'N');
  notNegative('length', length, 'mm');
  const width = (shape.outside - shape.inside) / 2;
  const radius = (shape.outside + shape.inside) / 4;
  const bar = (edgeLength(2 * radius, shape.pitch) * length) / shape.pitch;
  const angle = Math.atan2(shape.pitch, 2 * Math.PI * radius);
  const bending = (positive('flight thickness', thickness, 'mm') * width ** 3) / 12;
  const torsion = torsionConstant(width, thickness);
  return (
    force *
    radius ** 2 *
    bar *
    (Math.cos(angle) ** 2 / (shearModulus * torsion) + Math.sin(angle) ** 2 / (youngsModulus * bending))
  );
}

/** The same under its own weight on an incline, held at one end: half of what the whole force at the free end would do. */
export function ownWeightStretch(spring: Spring, downSlopeForce: number, length: number): number {
  return springStretch(spring, downSlopeForce, length) / 2;
}

/** Torsion constant of a rectangular bar, mm⁴: a·b³(1/3 − 0.21(b/a)(1 − b⁴/12a⁴)), a ≥ b; handbook form, within 0.5 %. */
export function torsionConstant(side: number, otherSide: number): number {
  const a = Math.max(positive('bar width', side, 'mm'), positive('bar thickness', otherSide, 'mm'));
  const b = Math.min(side, otherSide);
  return a * b ** 3 * (1 / 3 - 0.21 * (b / a) * (1 - b ** 4 / (12 * a ** 4)));
}

function checkShape(outside: number, inside: number, pitch: number): void {
  positive('outside diameter', outside, 'mm');
  positive('inside diameter', inside, 'mm');
  positive('pitch', pitch, 'mm');
  below('inside diameter', inside, 'outside diameter', outside, 'mm');
}
