// How much a screw conveys. The swept annulus times the pitch a turn, times how full it is: the usual form of ISO 7119 and
// DIN 15262. Slip, fall-back and the incline are in the factors; none of this measures a real conveyor.

import { below, notNegative, positive, within } from './demand.js';

export interface Sweep {
  /** Outside and shaft (or open core) diameter, mm; the core 0 where material fills it. */
  readonly outside: number;
  readonly core: number;
  readonly pitch: number;
  /** rpm, zero or more. */
  readonly speed: number;
  /** Part of the swept volume that is filled, 0 … 1. */
  readonly fill: number;
  /** What the incline leaves of it, 0 … 1; 1 on the level. */
  readonly inclineFactor?: number;
}

/** Volume flow, m³/h: 47.124·(D² − d²)·S·n·φ·k with D, d, S in metres; 47.124 is 15π exactly. */
export function volumeFlow({ outside, core, pitch, speed, fill, inclineFactor = 1 }: Sweep): number {
  positive('outside diameter', outside, 'mm');
  notNegative('core diameter', core, 'mm');
  below('core diameter', core, 'outside diameter', outside, 'mm');
  positive('pitch', pitch, 'mm');
  notNegative('speed', speed, 'rpm');
  within('fill', fill, 0, 1, '');
  within('incline factor', inclineFactor, 0, 1, '');
  return 15 * Math.PI * (outside ** 2 - core ** 2) * pitch * 1e-9 * speed * fill * inclineFactor;
}

/** Mass flow, t/h, for a bulk density in kg/m³. */
export function massFlow(sweep: Sweep, bulkDensity: number): number {
  return (volumeFlow(sweep) * positive('bulk density', bulkDensity, 'kg/m³')) / 1000;
}

export interface LoadingBand {
  readonly from: number;
  readonly to: number;
}

/**
 * What an incline (degrees) leaves of the level capacity, as a band, at a pitch of about one diameter. Published guides
 * give about 0.75 at 15° and 0.50 at 25°, and losses from 10 to 70 % at 30°; the band here grows in proportion up to that
 * spread. It is for warnings, not for design: declare the factor of the conveyor. Level or falling: 1. Above 30°: undefined.
 */
export function inclineBand(incline: number): LoadingBand | undefined {
  within('incline', incline, -90, 90, 'deg');
  if (incline <= 0) return { from: 1, to: 1 };
  if (incline > 30) return undefined;
  return { from: 1 - (0.7 * incline) / 30, to: 1 - (0.1 * incline) / 30 };
}
