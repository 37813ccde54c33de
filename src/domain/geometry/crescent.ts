// The shape a screw wears into its liner: a crescent, deepest where the screw lies. A circle of the screw's radius, sunk by the
// wear, cuts the circle of the liner's inside radius; both circles are taken exactly (law of cosines, derived). With the radial
// clearance e = liner radius − screw radius and the deepest wear w₀ the centres stand d = e + w₀ apart. The first order in
// d/radius, d·cos ψ − e, overstates late wear at the sides. The screw is taken as unworn and as straight.

import { notNegative, positive, within } from './demand.js';

/** Liner and screw when new, mm: radial clearance (not negative) and the screw's radius. */
export interface Crescent {
  readonly e: number;
  readonly screwRadius: number;
}

/** Wear at an angle (degrees from the deepest line), mm; zero outside the crescent. `deepest` in mm, not negative. */
export function crescentWear({ e, screwRadius }: Crescent, deepest: number, angle: number): number {
  check(e, screwRadius, deepest);
  within('angle', angle, -180, 180, 'deg');
  const d = e + deepest;
  const across = d * Math.sin(radians(angle));
  // Beyond this angle the line from the liner's centre passes the screw by.
  if (Math.abs(across) >= screwRadius) return 0;
  const reach = d * Math.cos(radians(angle)) + Math.sqrt(screwRadius ** 2 - across ** 2);
  return Math.max(0, reach - screwRadius - e);
}

/** Half the angle that the crescent spans, degrees: cos ψ₀ = (d² + R² − r²)/(2dR), R = r + e. Zero without wear. */
export function crescentEdge({ e, screwRadius }: Crescent, deepest: number): number {
  check(e, screwRadius, deepest);
  if (deepest === 0) return 0;
  const d = e + deepest;
  const liner = screwRadius + e;
  const cosine = (d ** 2 + liner ** 2 - screwRadius ** 2) / (2 * d * liner);
  return degrees(Math.acos(Math.min(1, Math.max(-1, cosine))));
}

/**
 * Deepest wear told by the angle at which it begins (degrees from the deepest line, below 90), mm: the nearer solution of
 * d² − 2dR·cos ψ₀ + R² − r² = 0, less e. Undefined where no screw of this size wears so wide a strip at any depth.
 */
export function depthFromEdge({ e, screwRadius }: Crescent, edge: number): number | undefined {
  positive('radial clearance', e, 'mm');
  positive('screw radius', screwRadius, 'mm');
  within('edge of the worn strip', edge, 0, 89.9, 'deg');
  const liner = screwRadius + e;
  const along = liner * Math.cos(radians(edge));
  const left = along ** 2 - e * (2 * screwRadius + e);
  return left < 0 ? undefined : along - Math.sqrt(left) - e;
}

function check(e: number, screwRadius: number, deepest: number): void {
  notNegative('radial clearance', e, 'mm');
  positive('screw radius', screwRadius, 'mm');
  notNegative('wear', deepest, 'mm');
}

function radians(angle: number): number {
  return (angle * Math.PI) / 180;
}

function degrees(angle: number): number {
  return (angle * 180) / Math.PI;
}
