// What do a conveyor's thicknesses come down to at given noise and power? For each unit a Kalman filter (Durbin & Koopman 2012,
// chapter 6) whitens its wear, its effective hours in every stretch and its looks together; the Gram sums of the whitened columns are
// all that Newton needs, whatever the clock, and the filtered state is what the forecast starts from.
// Index arithmetic runs within lengths made here and in blocks.ts, so `!` after an index is safe.

import type { Block } from './blocks.js';
import { clockPriors } from './priors.js';
import type { Theta } from './theta.js';
import { ageClock } from './theta.js';

export interface Sums {
  readonly theta: Theta;
  readonly reference: number;
  /** By unit, M stretches and L looks that may read off: hours×hours (M·M), hours×looks (M·L), looks×looks (L·L). */
  readonly hh: Float64Array;
  readonly hl: Float64Array;
  readonly ll: Float64Array;
  /** hours×wear (M), looks×wear (L), wear×wear. */
  readonly hw: Float64Array;
  readonly lw: Float64Array;
  readonly ww: Float64Array;
  /** −½·Σ ln of whitened variances − ½·n·ln 2π, by unit. */
  readonly constant: Float64Array;
  /** Over all units: looks×looks and looks×wear. */
  readonly allLl: Float64Array;
  readonly allLw: Float64Array;
  /** State at each unit's last thickness: filtered deviation's wear, hours (M) and looks (L) parts, its variance; age there. */
  readonly stateWear: Float64Array;
  readonly stateHours: Float64Array;
  readonly stateLooks: Float64Array;
  readonly stateVariance: Float64Array;
  readonly lastAge: Float64Array;
  readonly lastHours: Float64Array;
  /**
   * Effective hours at each colour edge (M), and its softness, mm. Of one after the unit's last thickness from the state there on:
   * `edgeFrom` is then 1, and the state's wear and looks belong to it too.
   */
  readonly edgeHours: Float64Array;
  readonly edgeSoft: Float64Array;
  readonly edgeFrom: Uint8Array;
}

/** Effective hours of a unit at an age, stretch by stretch, into `out` from `to` on. */
export function hoursAt(
  block: Block,
  unit: number,
  age: number,
  power: number,
  reference: number,
  out: Float64Array,
  to: number,
): void {
  const { meter, stretches, fitted } = block;
  const from = fitted[unit]!;
  // Age where the last whole stretch ends: readings of a look lie within it even where their own meter is a little off.
  let before = 0;
  for (let j = 0; j < stretches; j++) {
    const last = j === stretches - 1;
    const end = last ? age : Math.min(age, Math.max(0, meter[j + 1]! - from));
    const here = ageClock(Math.max(end, 0), power, reference);
    out[to + j] = Math.max(0, here - before);
    before = Math.max(before, here);
  }
}

/** @param weight of each thickness, 0 to 1; near 0 leaves it out. */
export function sumsOf(block: Block, theta: Theta, reference: number, weight: Float64Array): Sums {
  const n = block.units.length;
  const m = block.stretches;
  const l = block.biases;
  const sums: Sums = {
    theta,
    reference,
    hh: new Float64Array(n * m * m),
    hl: new Float64Array(n * m * l),
    ll: new Float64Array(n * l * l),
    hw: new Float64Array(n * m),
    lw: new Float64Array(n * l),
    ww: new Float64Array(n),
    constant: new Float64Array(n),
    allLl: new Float64Array(l * l),
    allLw: new Float64Array(l),
    stateWear: new Float64Array(n),
    stateHours: new Float64Array(n * m),
    stateLooks: new Float64Array(n * l),
    stateVariance: new Float64Array(n),
    lastAge: new Float64Array(n),
    lastHours: new Float64Array(n * m),
    edgeHours: new Float64Array(block.edgeAge.length * m),
    edgeSoft: new Float64Array(block.edgeAge.length),
    edgeFrom: new Uint8Array(block.edgeAge.length),
  };
  const work: Work = { column: new Float64Array(m + l + 1), state: new Float64Array(m + l + 1) };
  for (let unit = 0; unit < n; unit++) {
    filterUnit(block, sums, weight, unit, work);
    edgesOfUnit(block, sums, unit);
  }
  for (let unit = 0; unit < n; unit++) {
    for (let a = 0; a < l; a++) {
      sums.allLw[a]! += sums.lw[unit * l + a]!;
      for (let b = 0; b < l; b++) sums.allLl[a * l + b]! += sums.ll[(unit * l + a) * l + b]!;
    }
  }
  return sums;
}

interface Work {
  readonly column: Float64Array;
  readonly state: Float64Array;
}

function filterUnit(block: Block, sums: Sums, weight: Float64Array, unit: number, work: Work): void {
  const { theta, reference } = sums;
  const m = block.stretches;
  const l = block.biases;
  const { column, state } = work;
  const drift = theta.pointNoise ** 2 * block.step * block.crude[unit]! ** 2;
  state.fill(0);
  let variance = 0;
  let before = 0;
  let log = 0;
  let counted = 0;
  for (let r = block.start[unit]!; r < block.start[unit + 1]!; r++) {
    const w = weight[r]!;
    const age = block.age[r]!;
    hoursAt(block, unit, age, theta.power, reference, column, 0);
    column.fill(0, m, m + l);
    const look = block.bias[r]!;
    if (look >= 0) column[m + look] = 1;
    column[m + l] = block.wear[r]!;
    variance += drift * (age - before);
    before = age;
    if (w < 1e-6) continue;
    // A look too old to carry a bias of its own has it as plain noise.
    const own =
      (theta.scatter * block.error[r]!) ** 2 + (look < 0 ? (clockPriors.lookBias * block.error[r]!) ** 2 : 0);
    const spread = variance + own / w;
    const gain = variance / spread;
    const scale = 1 / Math.sqrt(spread);
    variance *= 1 - gain;
    log += w * Math.log(spread);
    counted += w;
    for (let c = 0; c <= m + l; c++) {
      const news = column[c]! - state[c]!;
      state[c]! += gain * news;
      column[c] = news * scale;
    }
    addGram(sums, unit, m, l, column);
  }
  sums.constant[unit] = -0.5 * log - 0.9189385332046727 * counted;
  sums.stateVariance[unit] = variance;
  sums.lastAge[unit] = before;
  sums.stateWear[unit] = state[m + l]!;
  sums.stateHours.set(state.subarray(0, m), unit * m);
  sums.stateLooks.set(state.subarray(m, m + l), unit * l);
  hoursAt(block, unit, before, theta.power, reference, sums.lastHours, unit * m);
}

function addGram(sums: Sums, unit: number, m: number, l: number, column: Float64Array): void {
  const y = column[m + l]!;
  sums.ww[unit]! += y * y;
  for (let a = 0; a < m; a++) {
    const x = column[a]!;
    if (x === 0) continue;
    sums.hw[unit * m + a]! += x * y;
    const row = (unit * m + a) * m;
    for (let b = 0; b < m; b++) sums.hh[row + b]! += x * column[b]!;
    const other = (unit * m + a) * l;
    for (let b = 0; b < l; b++) sums.hl[other + b]! += x * column[m + b]!;
  }
  for (let a = 0; a < l; a++) {
    const x = column[m + a]!;
    if (x === 0) continue;
    sums.lw[unit * l + a]! += x * y;
    const row = (unit * l + a) * l;
    for (let b = 0; b < l; b++) sums.ll[row + b]! += x * column[m + b]!;
  }
}

function edgesOfUnit(block: Block, sums: Sums, unit: number): void {
  const { theta, reference } = sums;
  const { stretches: m } = block;
  const drift = theta.pointNoise ** 2 * block.step * block.crude[unit]! ** 2;
  for (let e = block.edgeStart[unit]!; e < block.edgeStart[unit + 1]!; e++) {
    const age = block.edgeAge[e]!;
    hoursAt(block, unit, age, theta.power, reference, sums.edgeHours, e * m);
    let wander = drift * age;
    if (isAfterLast(block, sums, unit, age)) {
      sums.edgeFrom[e] = 1;
      for (let j = 0; j < m; j++) sums.edgeHours[e * m + j]! -= sums.stateHours[unit * m + j]!;
      wander = sums.stateVariance[unit]! + drift * (age - sums.lastAge[unit]!);
    }
    sums.edgeSoft[e] = Math.sqrt((block.edgeTolerance[e]! * block.edgeDepth[e]!) ** 2 + wander);
  }
}

/** Seen after the unit's last thickness: where the path stood then is known, and the colour speaks of how it went on. */
function isAfterLast(block: Block, sums: Sums, unit: number, age: number): boolean {
  return block.start[unit + 1]! > block.start[unit]! && age > sums.lastAge[unit]!;
}

/** Wear at the unit's last thickness that is no matter of its rate, mm: what a later colour's depth is counted from. */
export function stateOff(block: Block, sums: Sums, v: Float64Array, unit: number): number {
  const { stretches: m, biases: l } = block;
  let off = sums.stateWear[unit]!;
  for (let a = 0; a < l; a++) off -= v[m + a]! * sums.stateLooks[unit * l + a]!;
  return off;
}
