// The shape a screw wears into its liner: a crescent, deepest where the screw lies.
// A circle of the screw's radius, sunk by the wear, cuts the circle of the liner's inside radius (derived). With the
// radial clearance e = liner radius − screw radius and the deepest wear w₀, the wear at an angle ψ from the deepest
// line is (e + w₀)cos ψ − e. The screw's radius is taken as unworn and the screw as straight.

import { notNegative, positive, within } from './demand.js';

/** Wear at an angle (degrees from the deepest line), mm; zero outside the crescent. `e` and `deepest` in mm, not negative. */
export function crescentWear(e: number, deepest: number, angle: number): number {
  check(e, deepest);
  within('angle', angle, -180, 180, 'deg');
  return Math.max(0, (e + deepest) * Math.cos(radians(angle)) - e);
}

/** Half the angle that the crescent spans, degrees: cos ψ₀ = e/(e + w₀). Zero without wear, 90 where the screw has no clearance. */
export function crescentEdge(e: number, deepest: number): number {
  check(e, deepest);
  if (deepest === 0) return 0;
  return degrees(Math.acos(e / (e + deepest)));
}

/** Deepest wear told by the angle at which it begins (degrees from the deepest line, below 90), mm: e/cos ψ₀ − e. */
export function depthFromEdge(e: number, edge: number): number {
  positive('radial clearance', e, 'mm');
  within('edge of the worn strip', edge, 0, 89.9, 'deg');
  return e / Math.cos(radians(edge)) - e;
}

/** Cross-section worn away, mm²: 2r((e + w₀)sin ψ₀ − eψ₀), r the liner's inside radius (mm); thin-crescent form. */
export function crescentArea(e: number, deepest: number, linerRadius: number): number {
  positive('liner radius', linerRadius, 'mm');
  const edge = radians(crescentEdge(e, deepest));
  return 2 * linerRadius * ((e + deepest) * Math.sin(edge) - e * edge);
}

/** Deepest wear for a worn cross-section (mm²), mm: the inverse of crescentArea, by halving to 1e-9 mm. */
export function depthFromArea(e: number, area: number, linerRadius: number): number {
  notNegative('worn cross-section', area, 'mm²');
  let low = 0;
  let high = 1;
  while (crescentArea(e, high, linerRadius) < area) high *= 2;
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (crescentArea(e, middle, linerRadius) < area) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function check(e: number, deepest: number): void {
  notNegative('radial clearance', e, 'mm');
  notNegative('wear', deepest, 'mm');
}

function radians(angle: number): number {
  return (angle * Math.PI) / 180;
}

function degrees(angle: number): number {
  return (angle * 180) / Math.PI;
}
