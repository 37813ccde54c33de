// What do the readings of each unit come down to? Thickness rows by unit in order of exposure, and for every layer depth the
// two exposures that matter: the smallest at which it was reached and the largest at which it was not. Nothing is dropped in
// silence: whatever is odd becomes a remark. All index arithmetic runs within lengths made here, so `!` after an index is safe.

import type { LifeColumns, ReadingColumns, Remark, UnitColumns } from './columns.js';
import { defaultDepthTolerance } from './columns.js';
import { ReadingKind } from '../units/reading-kind.js';

export interface Units {
  readonly count: number;
  readonly columns: UnitColumns;
  /** Thickness rows of unit i: `start[i]` up to `start[i + 1]`, by rising exposure. */
  readonly start: Int32Array;
  readonly exposure: Float64Array;
  /** Wear, mm: fitted thickness less the reading; below zero where it read thicker than fitted. */
  readonly wear: Float64Array;
  /** Row of the reading columns. */
  readonly reading: Int32Array;
  /** One standard deviation of each thickness as declared, mm; NaN where its gauge declares none. */
  readonly error: Float64Array;
  /** Day of each thickness; NaN where the columns carry none. */
  readonly day: Float64Array;
  /** Variance of each thickness over that of the usual gauge, set by the fit; all 1 where left out. */
  readonly noise?: Float64Array | undefined;
  /** Edges of unit i: `edgeStart[i]` up to `edgeStart[i + 1]`, one a depth with a record. */
  readonly edgeStart: Int32Array;
  readonly edgeDepth: Float64Array;
  readonly edgeTolerance: Float64Array;
  /** Smallest exposure at which the depth was reached; Infinity where it never was. */
  readonly edgeReached: Float64Array;
  /** Largest exposure at which it was not yet; 0 where there is no such record. */
  readonly edgeNotYet: Float64Array;
  /** ln rate that a life states, NaN where none; and its standard deviation, 0 where the life is all that is known. */
  readonly life: Float64Array;
  readonly lifeSpread: Float64Array;
  readonly offset: Float64Array;
  /** Counts for each unit: thicknesses, colours (trough included) and lives, looks that saw nothing. */
  readonly thicknesses: Int32Array;
  readonly indicators: Int32Array;
  readonly notSeen: Int32Array;
  /** Largest exposure with a reading that counts; 0 where none. */
  readonly lastSeen: Float64Array;
  readonly remarks: readonly Remark[];
}

export interface ReduceOptions {
  /** One standard deviation of a thickness reading, mm, to judge growth by. 0.5 where left out: a depth gauge, our judgement. */
  readonly gaugeError?: number;
  /** Readings and lives after this day are not looked at: what was known then. */
  readonly upTo?: number;
}

export const defaultGaugeError = 0.5;

export function reduceReadings(
  readings: ReadingColumns,
  columns: UnitColumns,
  options: ReduceOptions = {},
): Units {
  const gauge = options.gaugeError ?? defaultGaugeError;
  const upTo = options.upTo ?? Infinity;
  const { count } = columns;
  const tally = emptyTally(columns, readings.unit.length);
  const { slots, thicknesses, indicators, lastSeen, remarks } = tally;
  for (let row = 0; row < readings.unit.length; row++)
    if (!readings.day || readings.day[row]! <= upTo) takeRow(readings, row, gauge, tally);
  findContradictions(tally);

  const thick = sortRows(readings, tally);
  findGrowth(thick, count, gauge, remarks);
  const lives = takeLives(columns, upTo, indicators, lastSeen);
  const edges = packEdges(columns, slots, tally.reachedAt, tally.notYetAt, lives);
  const lifeSpread = new Float64Array(count);
  for (let unit = 0; unit < count; unit++) {
    const n = lives.count[unit]!;
    if (n === 0) continue;
    const alone = n === 1 && thicknesses[unit] === 0 && edges.edgeStart[unit] === edges.edgeStart[unit + 1];
    lifeSpread[unit] = alone ? 0 : defaultDepthTolerance / Math.sqrt(n);
  }
  const offset = columns.offset ? Float64Array.from(columns.offset) : new Float64Array(count);
  return {
    count,
    columns,
    ...thick,
    ...edges,
    life: lives.mean,
    lifeSpread,
    offset,
    thicknesses,
    indicators,
    notSeen: tally.notSeen,
    lastSeen,
    remarks,
  };
}

/** What the rows come down to while they are read. */
interface Tally {
  readonly count: number;
  readonly fitted: Float64Array;
  readonly slots: Slots;
  /** Of each layer depth: the exposures that matter, and the rows that tell them (−1 for none). */
  readonly reachedAt: Float64Array;
  readonly notYetAt: Float64Array;
  readonly reachedBy: Int32Array;
  readonly notYetBy: Int32Array;
  /** Of each unit. */
  readonly thicknesses: Int32Array;
  readonly indicators: Int32Array;
  readonly notSeen: Int32Array;
  readonly lastSeen: Float64Array;
  /** Of each row: 1 for a thickness that counts. */
  readonly keep: Uint8Array;
  readonly remarks: Remark[];
}

function emptyTally(columns: UnitColumns, rows: number): Tally {
  const { count } = columns;
  const slots = layerSlots(columns);
  return {
    count,
    fitted: Float64Array.from(columns.fitted),
    slots,
    reachedAt: new Float64Array(slots.total).fill(Infinity),
    notYetAt: new Float64Array(slots.total),
    reachedBy: new Int32Array(slots.total).fill(-1),
    notYetBy: new Int32Array(slots.total).fill(-1),
    thicknesses: new Int32Array(count),
    indicators: new Int32Array(count),
    notSeen: new Int32Array(count),
    lastSeen: new Float64Array(count),
    keep: new Uint8Array(rows),
    remarks: [],
  };
}

function takeRow(readings: ReadingColumns, row: number, gauge: number, tally: Tally): void {
  const { remarks } = tally;
  const unit = readings.unit[row]!;
  const exposure = readings.exposure[row]!;
  if (!(unit >= 0 && unit < tally.count)) {
    remarks.push({ kind: 'no such unit', reading: row, unit, leftOut: true });
    return;
  }
  // A thickness of nothing is the trough showing: wear of the full thickness or more, not of exactly that.
  const kind =
    readings.kind[row] === ReadingKind.thickness && readings.value[row] === 0
      ? ReadingKind.trough
      : readings.kind[row]!;
  if (kind === ReadingKind.notSeen) {
    tally.notSeen[unit]!++;
    return;
  }
  const value = kind === ReadingKind.trough ? 0 : readings.value[row]!;
  if (!Number.isFinite(exposure) || !Number.isFinite(value)) {
    remarks.push({ kind: 'not a number', reading: row, unit, leftOut: true });
    return;
  }
  if (exposure < 0) {
    remarks.push({ kind: 'before fitting', reading: row, unit, exposure, leftOut: true });
    return;
  }
  const counts =
    kind === ReadingKind.thickness
      ? takeThickness(row, unit, exposure, value, declaredError(readings, row, gauge), tally)
      : takeColour(row, unit, exposure, value, kind, tally);
  if (counts && exposure > tally.lastSeen[unit]!) tally.lastSeen[unit] = exposure;
}

/** False where the thickness cannot be one of this liner. */
function takeThickness(
  row: number,
  unit: number,
  exposure: number,
  thickness: number,
  error: number,
  { fitted: fittedOf, keep, thicknesses, remarks }: Tally,
): boolean {
  const fitted = fittedOf[unit]!;
  if (thickness < 0) {
    remarks.push({ kind: 'negative thickness', reading: row, unit, thickness, leftOut: true });
    return false;
  }
  if (thickness - fitted > 3 * error) {
    const leftOut = thickness - fitted > 10 * error;
    remarks.push({ kind: 'thicker than fitted', reading: row, unit, thickness, fitted, leftOut });
    if (leftOut) return false;
  }
  if (exposure === 0) remarks.push({ kind: 'no exposure yet', reading: row, unit, leftOut: false });
  keep[row] = 1;
  thicknesses[unit]!++;
  return true;
}

/** Layer k shows: depth k was reached, and with it every depth above; depth k + 1 was not, nor any below. */
function takeColour(
  row: number,
  unit: number,
  exposure: number,
  value: number,
  kind: number,
  { slots, reachedAt, reachedBy, notYetAt, notYetBy, indicators, remarks }: Tally,
): boolean {
  const first = slots.start[unit]!;
  const layers = slots.start[unit + 1]! - first;
  const through = kind === ReadingKind.trough ? layers : value;
  const known = kind === ReadingKind.colour || kind === ReadingKind.trough;
  if (!Number.isInteger(through) || through < 0 || through > layers || !known) {
    remarks.push({ kind: 'no such layer', reading: row, unit, layer: through, leftOut: true });
    return false;
  }
  if (exposure === 0) {
    remarks.push({ kind: 'no exposure yet', reading: row, unit, leftOut: through > 0 });
    return false;
  }
  indicators[unit]!++;
  const reached = first + through - 1;
  if (through > 0 && exposure < reachedAt[reached]!) {
    reachedAt[reached] = exposure;
    reachedBy[reached] = row;
  }
  const notYet = first + through;
  if (through < layers && exposure > notYetAt[notYet]!) {
    notYetAt[notYet] = exposure;
    notYetBy[notYet] = row;
  }
  return true;
}

interface Slots {
  readonly start: Int32Array;
  readonly unit: Int32Array;
  readonly depth: Float64Array;
  readonly tolerance: Float64Array;
  readonly total: number;
}

/** One slot for every layer depth of every unit. */
function layerSlots(columns: UnitColumns): Slots {
  const start = new Int32Array(columns.count + 1);
  for (let unit = 0; unit < columns.count; unit++)
    start[unit + 1] = start[unit]! + (columns.builds[columns.build[unit]!]?.depths.length ?? 0);
  const total = start[columns.count]!;
  const unitOf = new Int32Array(total);
  const depth = new Float64Array(total);
  const tolerance = new Float64Array(total);
  for (let unit = 0; unit < columns.count; unit++) {
    const build = columns.builds[columns.build[unit]!];
    if (!build) continue;
    for (let k = 0; k < build.depths.length; k++) {
      const slot = start[unit]! + k;
      unitOf[slot] = unit;
      depth[slot] = build.depths[k]!;
      tolerance[slot] = build.tolerance ?? defaultDepthTolerance;
    }
  }
  return { start, unit: unitOf, depth, tolerance, total };
}

/** Where "not yet" comes after "reached" by more than the tolerance explains, the worse record stands alone. */
function findContradictions({ slots, reachedAt, notYetAt, reachedBy, notYetBy, remarks }: Tally): void {
  for (let slot = 0; slot < slots.total; slot++) {
    if (notYetAt[slot]! <= reachedAt[slot]!) continue;
    remarks.push({
      kind: 'contradiction',
      reading: notYetBy[slot]!,
      earlier: reachedBy[slot]!,
      unit: slots.unit[slot]!,
      depth: slots.depth[slot]!,
    });
    notYetAt[slot] = 0;
  }
  // A depth reached before a shallower one was "not yet" contradicts too: the shallower edge goes.
  for (let slot = 0; slot < slots.total; slot++) {
    for (let deeper = slot + 1; deeper < slots.total && slots.unit[deeper] === slots.unit[slot]; deeper++) {
      if (notYetAt[slot]! <= reachedAt[deeper]!) continue;
      remarks.push({
        kind: 'contradiction',
        reading: notYetBy[slot]!,
        earlier: reachedBy[deeper]!,
        unit: slots.unit[slot]!,
        depth: slots.depth[slot]!,
      });
      notYetAt[slot] = 0;
    }
  }
}

interface ThicknessRows {
  readonly start: Int32Array;
  readonly exposure: Float64Array;
  readonly wear: Float64Array;
  readonly reading: Int32Array;
  readonly error: Float64Array;
  readonly day: Float64Array;
}

/** What the row's gauge declares, mm; the usual error where it declares none. */
function declaredError(readings: ReadingColumns, row: number, usual: number): number {
  const own = readings.error?.[row] ?? NaN;
  return own > 0 && own < Infinity ? own : usual;
}

/** A counting sort by unit, then an insertion sort within a unit, which records in order leave at once. */
function sortRows(readings: ReadingColumns, { keep, thicknesses, fitted }: Tally): ThicknessRows {
  const count = thicknesses.length;
  const start = new Int32Array(count + 1);
  for (let unit = 0; unit < count; unit++) start[unit + 1] = start[unit]! + thicknesses[unit]!;
  const next = start.slice(0, count);
  const total = start[count]!;
  const exposure = new Float64Array(total);
  const wear = new Float64Array(total);
  const reading = new Int32Array(total);
  for (let row = 0; row < keep.length; row++) {
    if (keep[row] === 0) continue;
    const unit = readings.unit[row]!;
    const x = readings.exposure[row]!;
    let at = next[unit]!++;
    for (const first = start[unit]!; at > first && exposure[at - 1]! > x; at--) {
      exposure[at] = exposure[at - 1]!;
      wear[at] = wear[at - 1]!;
      reading[at] = reading[at - 1]!;
    }
    exposure[at] = x;
    wear[at] = fitted[unit]! - readings.value[row]!;
    reading[at] = row;
  }
  const error = new Float64Array(total);
  const day = new Float64Array(total);
  for (let at = 0; at < total; at++) {
    error[at] = declaredError(readings, reading[at]!, NaN);
    day[at] = readings.day?.[reading[at]!] ?? NaN;
  }
  return { start, exposure, wear, reading, error, day };
}

function findGrowth(rows: ThicknessRows, count: number, gauge: number, remarks: Remark[]): void {
  const own = (at: number): number => (rows.error[at]! > 0 ? rows.error[at]! : gauge);
  for (let unit = 0; unit < count; unit++) {
    let most = -1;
    for (let at = rows.start[unit]!; at < rows.start[unit + 1]!; at++) {
      if (
        most >= 0 &&
        rows.wear[most]! - rows.wear[at]! > 3 * Math.hypot(own(at), own(most)) &&
        rows.exposure[at]! > rows.exposure[most]!
      ) {
        remarks.push({
          kind: 'thicker than before',
          reading: rows.reading[at]!,
          earlier: rows.reading[most]!,
          unit,
          growth: rows.wear[most]! - rows.wear[at]!,
        });
      }
      if (most < 0 || rows.wear[at]! > rows.wear[most]!) most = at;
    }
  }
}

interface Lives {
  readonly count: Int32Array;
  readonly mean: Float64Array;
  /** Rows of the life columns that bound a rate from above only, by unit. */
  readonly running: readonly { readonly unit: number; readonly exposure: number; readonly depth: number }[];
}

function takeLives(
  columns: UnitColumns,
  upTo: number,
  indicators: Int32Array,
  lastSeen: Float64Array,
): Lives {
  const count = new Int32Array(columns.count);
  const mean = new Float64Array(columns.count).fill(NaN);
  const running: { unit: number; exposure: number; depth: number }[] = [];
  const lives: LifeColumns | undefined = columns.lives;
  for (let row = 0; row < (lives?.unit.length ?? 0); row++) {
    if (!lives || (lives.day && !(lives.day[row]! <= upTo))) continue;
    const unit = lives.unit[row]!;
    const exposure = lives.exposure[row]!;
    const depth = lives.depth[row]!;
    if (!(
      unit >= 0 &&
      unit < columns.count &&
      exposure > 0 &&
      depth > 0 &&
      Number.isFinite(exposure) &&
      Number.isFinite(depth)
    ))
      continue;
    indicators[unit]!++;
    if (exposure > lastSeen[unit]!) lastSeen[unit] = exposure;
    if (lives.reached[row] === 1) {
      const before = count[unit]!++;
      mean[unit] = ((before === 0 ? 0 : mean[unit]!) * before + Math.log(depth / exposure)) / (before + 1);
    } else {
      running.push({ unit, exposure, depth });
    }
  }
  return { count, mean, running };
}

interface Edges {
  readonly edgeStart: Int32Array;
  readonly edgeDepth: Float64Array;
  readonly edgeTolerance: Float64Array;
  readonly edgeReached: Float64Array;
  readonly edgeNotYet: Float64Array;
}

function packEdges(
  columns: UnitColumns,
  slots: Slots,
  reachedAt: Float64Array,
  notYetAt: Float64Array,
  lives: Lives,
): Edges {
  const edgeStart = new Int32Array(columns.count + 1);
  for (let slot = 0; slot < slots.total; slot++)
    if (reachedAt[slot]! < Infinity || notYetAt[slot]! > 0) edgeStart[slots.unit[slot]! + 1]!++;
  for (const bound of lives.running) edgeStart[bound.unit + 1]!++;
  for (let unit = 0; unit < columns.count; unit++) edgeStart[unit + 1]! += edgeStart[unit]!;
  const total = edgeStart[columns.count]!;
  const next = edgeStart.slice(0, columns.count);
  const edges = {
    edgeStart,
    edgeDepth: new Float64Array(total),
    edgeTolerance: new Float64Array(total),
    edgeReached: new Float64Array(total),
    edgeNotYet: new Float64Array(total),
  };
  const put = (unit: number, depth: number, tolerance: number, reached: number, notYet: number): void => {
    const at = next[unit]!++;
    edges.edgeDepth[at] = depth;
    edges.edgeTolerance[at] = tolerance;
    edges.edgeReached[at] = reached;
    edges.edgeNotYet[at] = notYet;
  };
  for (let slot = 0; slot < slots.total; slot++) {
    if (reachedAt[slot]! < Infinity || notYetAt[slot]! > 0)
      put(slots.unit[slot]!, slots.depth[slot]!, slots.tolerance[slot]!, reachedAt[slot]!, notYetAt[slot]!);
  }
  for (const bound of lives.running)
    put(
      bound.unit,
      bound.depth,
      columns.builds[columns.build[bound.unit]!]?.tolerance ?? defaultDepthTolerance,
      Infinity,
      bound.exposure,
    );
  return edges;
}
