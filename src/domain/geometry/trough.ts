// The U-shaped liner sheet: how wide it is unrolled, what it weighs, where a clock position lies on it.
// A half circle of the trough's inside radius R with a straight side of height h on either hand; the liner of thickness t
// lies inside it. Lengths are measured along the sheet's middle, which bending neither stretches nor squeezes.

import { below, finite, notNegative, positive } from './demand.js';

export interface LinerSection {
  /** Steel inside radius of the trough, mm. */
  readonly insideRadius: number;
  /** Straight side above the centre line, mm, zero or more. */
  readonly sideHeight: number;
  /** Liner thickness, mm, below the inside radius. */
  readonly thickness: number;
}

/** Width of the flat sheet, mm: W = π(R − t/2) + 2h. Derived from the section; π(R − t/2) is the middle arc. */
export function developedWidth({ insideRadius, sideHeight, thickness }: LinerSection): number {
  check(insideRadius, sideHeight, thickness);
  return Math.PI * (insideRadius - thickness / 2) + 2 * sideHeight;
}

/** Mass of a metre of liner, kg/m: developed width × thickness × density (kg/m³). */
export function linerMassPerMetre(section: LinerSection, density: number): number {
  return developedWidth(section) * section.thickness * positive('density', density, 'kg/m³') * 1e-6;
}

/** Mass of a panel of a length (mm), kg. All layers are taken at the liner's density: the colours are one material. */
export function panelMass(section: LinerSection, length: number, density: number): number {
  return (linerMassPerMetre(section, density) * notNegative('panel length', length, 'mm')) / 1000;
}

/** As `panelMass`; undefined where there can be no such panel: a thickness or a density that other rules tell of. */
export function panelMassIfSound(section: LinerSection, length: number, density: number): number | undefined {
  const sound =
    section.thickness > 0 &&
    section.thickness < section.insideRadius &&
    section.sideHeight >= 0 &&
    density > 0;
  return sound ? panelMass(section, length, density) : undefined;
}

/**
 * Depth of a bent panel's centre of gravity below the centre line of the trough, mm; negative where tall sides lift it
 * above. Half ring: 4(R³ − r³)/3π(R² − r²); sides: h/2 above the centre line. Along the panel it lies at half length.
 */
export function panelCentreDepth({ insideRadius, sideHeight, thickness }: LinerSection): number {
  check(insideRadius, sideHeight, thickness);
  const inner = insideRadius - thickness;
  const ring = (Math.PI / 2) * (insideRadius ** 2 - inner ** 2);
  const ringMoment = (2 / 3) * (insideRadius ** 3 - inner ** 3);
  const sides = 2 * thickness * sideHeight;
  return (ringMoment - (sides * sideHeight) / 2) / (ring + sides);
}

/**
 * Where a clock position (hours) lies on the sheet's screw side, mm from the bottom line, positive towards 3 o'clock
 * (the right, looking with the flow): y = r(6 − clock)π/6 on the arc from 3 to 9 o'clock, r the liner's inside radius.
 * Above the arc the line of sight meets the straight side; undefined where that would be above its top.
 */
export function sheetOffset(linerRadius: number, clock: number, sideHeight = 0): number | undefined {
  positive('liner radius', linerRadius, 'mm');
  finite('clock position', clock, 'h');
  const hours = ((((6 - clock) % 12) + 18) % 12) - 6; // hours from the bottom, −6 … 6, + towards 3 o'clock
  const angle = (hours * Math.PI) / 6;
  if (Math.abs(hours) <= 3) return linerRadius * angle;
  if (Math.abs(hours) > 5.99) return undefined;
  const height = linerRadius * Math.tan(Math.abs(angle) - Math.PI / 2);
  return height <= sideHeight ? Math.sign(angle) * ((linerRadius * Math.PI) / 2 + height) : undefined;
}

/** True for 3 to 9 o'clock, where the liner is curved and the screw can lie. */
export function isOnArc(clock: number): boolean {
  return clock >= 3 && clock <= 9;
}

function check(insideRadius: number, sideHeight: number, thickness: number): void {
  positive('inside radius of the trough', insideRadius, 'mm');
  notNegative('side height', sideHeight, 'mm');
  positive('liner thickness', thickness, 'mm');
  below('liner thickness', thickness, 'inside radius of the trough', insideRadius, 'mm');
}
