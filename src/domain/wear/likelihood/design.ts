// Which pool offsets act on which unit? ln rate of a unit = general level + one offset from each pool it belongs to + its own.
// The pool with the most levels is kept apart: its part of the information matrix is diagonal, so that thousands of levels
// (positions, runs) cost no more than a few. Index arithmetic runs within lengths made here, so `!` after an index is safe.

import { cholesky, invertCholesky, logDeterminant } from '../numeric/cholesky.js';

export interface Pool {
  readonly name: string;
  /** Level of each unit, from 0; −1 where the unit belongs to none. */
  readonly level: ArrayLike<number>;
  /** Names of the levels, for the report. */
  readonly labels?: readonly string[];
}

export interface Design {
  readonly pools: readonly Pool[];
  readonly levels: readonly number[];
  /** Dense columns: 0 the general level, then the levels of every pool but the apart one. */
  readonly dense: number;
  /** First dense column of each pool; −1 for the one kept apart. */
  readonly firstColumn: readonly number[];
  /** Index of the pool kept apart, −1 where there is none. */
  readonly apart: number;
  readonly apartLevels: number;
  /** Dense columns of unit i: `column[i·width … i·width + width)`, −1 padded; the first is always 0. */
  readonly column: Int32Array;
  readonly width: number;
  readonly apartOf: Int32Array;
  /** Units with the same offsets share a cell; `cellUnit` is one unit of each. */
  readonly cell: Int32Array;
  readonly cellUnit: readonly number[];
}

export function designOf(count: number, pools: readonly Pool[]): Design {
  const levels = pools.map((pool) => {
    let most = 0;
    for (let unit = 0; unit < count; unit++) most = Math.max(most, (pool.level[unit] ?? -1) + 1);
    return most;
  });
  let apart = -1;
  levels.forEach((n, k) => {
    if (n > 0 && (apart < 0 || n > levels[apart]!)) apart = k;
  });
  let dense = 1;
  const firstColumn = levels.map((n, k) => {
    if (k === apart) return -1;
    const first = dense;
    dense += n;
    return first;
  });
  const width = 1 + Math.max(0, pools.length - (apart >= 0 ? 1 : 0));
  const column = new Int32Array(count * width).fill(-1);
  const apartOf = new Int32Array(count).fill(-1);
  for (let unit = 0; unit < count; unit++) {
    column[unit * width] = 0;
    let at = 1;
    pools.forEach((pool, k) => {
      const level = pool.level[unit] ?? -1;
      if (k === apart) apartOf[unit] = level;
      else column[unit * width + at++] = level >= 0 ? firstColumn[k]! + level : -1;
    });
  }
  const cell = new Int32Array(count);
  const cellUnit: number[] = [];
  const known = new Map<string, number>();
  for (let unit = 0; unit < count; unit++) {
    const key =
      pools.length === 0
        ? ''
        : `${apartOf[unit]!}/${column.subarray(unit * width, (unit + 1) * width).join()}`;
    let index = known.get(key);
    if (index === undefined) {
      known.set(key, (index = cellUnit.length));
      cellUnit.push(unit);
    }
    cell[unit] = index;
  }
  return {
    pools,
    levels,
    dense,
    firstColumn,
    apart,
    apartLevels: apart >= 0 ? levels[apart]! : 0,
    column,
    width,
    apartOf,
    cell,
    cellUnit,
  };
}

/** The general level and offsets: `dense` as in the design, `apart` one a level. */
export interface Effects {
  readonly dense: Float64Array;
  readonly apart: Float64Array;
}

export function effectOn(design: Design, effects: Effects, unit: number): number {
  let sum = 0;
  for (let k = 0; k < design.width; k++) {
    const c = design.column[unit * design.width + k]!;
    if (c >= 0) sum += effects.dense[c]!;
  }
  const j = design.apartOf[unit]!;
  return j >= 0 ? sum + effects.apart[j]! : sum;
}

/** Information matrix of the effects (and of `extra` further dense parameters at the end), with a gradient. */
export interface System {
  readonly size: number;
  readonly matrix: Float64Array;
  readonly gradient: Float64Array;
  readonly apartDiagonal: Float64Array;
  readonly apartRow: Float64Array;
  readonly apartGradient: Float64Array;
}

export function emptySystem(design: Design, extra: number): System {
  const size = design.dense + extra;
  return {
    size,
    matrix: new Float64Array(size * size),
    gradient: new Float64Array(size),
    apartDiagonal: new Float64Array(design.apartLevels),
    apartRow: new Float64Array(design.apartLevels * size),
    apartGradient: new Float64Array(design.apartLevels),
  };
}

/** Adds one unit: gradient and information of its effect, and the cross terms with the extra parameters. */
export function addUnit(
  design: Design,
  system: System,
  unit: number,
  gradient: number,
  information: number,
  cross: readonly number[],
): void {
  const { size } = system;
  const base = unit * design.width;
  const j = design.apartOf[unit]!;
  for (let a = 0; a < design.width; a++) {
    const ca = design.column[base + a]!;
    if (ca < 0) continue;
    system.gradient[ca]! += gradient;
    for (let b = 0; b < design.width; b++) {
      const cb = design.column[base + b]!;
      if (cb >= 0) system.matrix[ca * size + cb]! += information;
    }
    for (let x = 0; x < cross.length; x++) {
      const cx = design.dense + x;
      system.matrix[ca * size + cx]! += cross[x]!;
      system.matrix[cx * size + ca]! += cross[x]!;
    }
    if (j >= 0) system.apartRow[j * size + ca]! += information;
  }
  if (j >= 0) {
    system.apartGradient[j]! += gradient;
    system.apartDiagonal[j]! += information;
    for (let x = 0; x < cross.length; x++) system.apartRow[j * size + design.dense + x]! += cross[x]!;
  }
}

/** The system with the apart pool eliminated, factored; undefined where it is not positive definite. */
export interface Solved {
  readonly size: number;
  readonly factor: Float64Array;
  readonly inverse: Float64Array;
  readonly logDeterminant: number;
}

/** @param size how many of the dense parameters to use, from the first: the effects alone, or with the extra ones. */
export function solveSystem(system: System, size: number): Solved | undefined {
  const matrix = new Float64Array(size * size);
  for (let a = 0; a < size; a++)
    for (let b = 0; b < size; b++) matrix[a * size + b] = system.matrix[a * system.size + b]!;
  let logApart = 0;
  for (let j = 0; j < system.apartDiagonal.length; j++) {
    const d = system.apartDiagonal[j]!;
    if (!(d > 0)) return undefined;
    logApart += Math.log(d);
    for (let a = 0; a < size; a++) {
      const ra = system.apartRow[j * system.size + a]!;
      if (ra === 0) continue;
      for (let b = 0; b <= a; b++) matrix[a * size + b]! -= (ra * system.apartRow[j * system.size + b]!) / d;
    }
  }
  const factor = cholesky(matrix, size);
  if (!factor) return undefined;
  return {
    size,
    factor,
    inverse: invertCholesky(factor, size),
    logDeterminant: logDeterminant(factor, size) + logApart,
  };
}

/** inverse × gradient for dense and apart parameters alike, and the decrement gradient·step. */
export function newtonStep(
  system: System,
  solved: Solved,
): { readonly dense: Float64Array; readonly apart: Float64Array; readonly decrement: number } {
  const { size } = solved;
  const right = system.gradient.slice(0, size);
  const apart = new Float64Array(system.apartDiagonal.length);
  for (let j = 0; j < apart.length; j++) {
    const share = system.apartGradient[j]! / system.apartDiagonal[j]!;
    for (let a = 0; a < size; a++) right[a]! -= system.apartRow[j * system.size + a]! * share;
  }
  const dense = new Float64Array(size);
  for (let a = 0; a < size; a++) {
    let sum = 0;
    for (let b = 0; b < size; b++) sum += solved.inverse[a * size + b]! * right[b]!;
    dense[a] = sum;
  }
  let decrement = 0;
  for (let a = 0; a < size; a++) decrement += dense[a]! * system.gradient[a]!;
  for (let j = 0; j < apart.length; j++) {
    let sum = system.apartGradient[j]!;
    for (let a = 0; a < size; a++) sum -= system.apartRow[j * system.size + a]! * dense[a]!;
    apart[j] = sum / system.apartDiagonal[j]!;
    decrement += apart[j]! * system.apartGradient[j]!;
  }
  return { dense, apart, decrement };
}

/** Σ over all pairs of effects of a unit of their covariance: the variance of the unit's pool mean. */
export function effectVariance(design: Design, system: System, solved: Solved, unit: number): number {
  return effectCovariance(design, system, solved, unit, unit);
}

/** Covariance of two units' pool means. */
export function effectCovariance(
  design: Design,
  system: System,
  solved: Solved,
  one: number,
  other: number,
): number {
  // With the apart pool eliminated, unit i acts through its dense columns less row j / diagonal j; what is left of level j is its own.
  const { size, inverse } = solved;
  reducedRow(design, system, size, one, left);
  const right = one === other ? left : otherRow;
  if (one !== other) reducedRow(design, system, size, other, right);
  let sum = 0;
  for (let p = 0; p < left.count; p++) {
    const row = left.column[p]! * size;
    let inner = 0;
    for (let q = 0; q < right.count; q++) inner += right.value[q]! * inverse[row + right.column[q]!]!;
    sum += left.value[p]! * inner;
  }
  const j = design.apartOf[one]!;
  return j >= 0 && j === design.apartOf[other]! ? sum + 1 / system.apartDiagonal[j]! : sum;
}

/** A unit's row with few entries: columns, one of which may come twice, and values. Refilled; grown as needed. */
interface Row {
  count: number;
  column: Int32Array;
  value: Float64Array;
}

const emptyRow = (): Row => ({ count: 0, column: new Int32Array(64), value: new Float64Array(64) });
const left = emptyRow();
const otherRow = emptyRow();

function reducedRow(design: Design, system: System, size: number, unit: number, out: Row): void {
  if (out.column.length < size + design.width) {
    out.column = new Int32Array(size + design.width);
    out.value = new Float64Array(size + design.width);
  }
  const base = unit * design.width;
  out.count = 0;
  for (let k = 0; k < design.width; k++) {
    const c = design.column[base + k]!;
    if (c < 0) continue;
    out.column[out.count] = c;
    out.value[out.count++] = 1;
  }
  const j = design.apartOf[unit]!;
  if (j < 0) return;
  const d = system.apartDiagonal[j]!;
  for (let a = 0; a < size; a++) {
    const r = system.apartRow[j * system.size + a]!;
    if (r === 0) continue;
    out.column[out.count] = a;
    out.value[out.count++] = -r / d;
  }
}
