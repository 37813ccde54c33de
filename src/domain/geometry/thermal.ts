// How a liner grows with heat, what happens where it is held, and how far apart bolts may then be.
// Linear expansion; temperatures are differences in kelvin. Guides disagree on joints: many ask for gaps and oversize
// holes, short bolted panels are commonly butted tight; so the policy is declared and this works out what follows from it.

import { finite, notNegative, positive, within } from './demand.js';

/** ΔL = L·α·ΔT, mm; negative on cooling. α in 1/K, ΔT in K. Free: nothing holds the sheet. */
export function freeGrowth(length: number, expansion: number, temperatureRise: number): number {
  return (
    notNegative('length', length, 'mm') *
    notNegative('expansion', expansion, '1/K') *
    finite('temperature rise', temperatureRise, 'K')
  );
}

/** Growth of the liner beyond that of the steel it lies in, mm: L·(α − α_steel)·ΔT. */
export function growthAgainst(
  length: number,
  expansion: number,
  steelExpansion: number,
  temperatureRise: number,
): number {
  return freeGrowth(length, expansion, temperatureRise) - freeGrowth(length, steelExpansion, temperatureRise);
}

/** Compression of a liner that cannot grow, MPa: E·Δα·ΔT (strength of materials); zero or less where it does not grow. It creeps, so this fades. */
export function restrainedStress(
  modulus: number,
  expansionDifference: number,
  temperatureRise: number,
): number {
  return (
    positive('modulus', modulus, 'MPa') *
    finite('difference of expansion', expansionDifference, '1/K') *
    finite('temperature rise', temperatureRise, 'K')
  );
}

/**
 * Bolt spacing above which a flat strip held at the bolts buckles, mm: πt/√(3·Δα·ΔT), Euler's strut with clamped ends
 * (derived). The strip must be free at its sides: a wide sheet held across as well buckles sooner, see `heldAcross`. The curved
 * bottom is stiffer than either. Undefined where the liner does not grow against its steel.
 */
export function bucklingPitch(
  thickness: number,
  expansionDifference: number,
  temperatureRise: number,
): number | undefined {
  positive('liner thickness', thickness, 'mm');
  const strain =
    finite('difference of expansion', expansionDifference, '1/K') *
    finite('temperature rise', temperatureRise, 'K');
  return strain > 0 ? (Math.PI * thickness) / Math.sqrt(3 * strain) : undefined;
}

/** Poisson's ratio of PE (handbook value, from memory). */
export const poissonOfPe = 0.46;

/**
 * Share of the free strip's spacing that is left to a sheet held across its width too: 1/√(1 + ν) (derived: the plate is stiffer by
 * 1/(1 − ν²), its stress grows by 1/(1 − ν)). About 0.83 for PE.
 */
export function heldAcross(poisson: number = poissonOfPe): number {
  return 1 / Math.sqrt(1 + within('Poisson’s ratio', poisson, 0, 0.5, ''));
}
