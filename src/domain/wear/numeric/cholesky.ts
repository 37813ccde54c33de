// Symmetric positive definite systems, small and dense, row-major in one Float64Array.
// Index arithmetic runs within size² entries, so `!` after an index is safe.

/** Lower factor L with L·Lᵀ = matrix, or undefined where the matrix is not positive definite. Reads the lower triangle. */
export function cholesky(matrix: Float64Array, size: number): Float64Array | undefined {
  const factor = new Float64Array(size * size);
  for (let j = 0; j < size; j++) {
    for (let i = j; i < size; i++) {
      let sum = matrix[i * size + j]!;
      for (let k = 0; k < j; k++) sum -= factor[i * size + k]! * factor[j * size + k]!;
      if (i === j) {
        if (!(sum > 1e-13 * Math.abs(matrix[j * size + j]!)) || !(sum > 0)) return undefined;
        factor[j * size + j] = Math.sqrt(sum);
      } else {
        factor[i * size + j] = sum / factor[j * size + j]!;
      }
    }
  }
  return factor;
}

/** Solves L·Lᵀ·x = right. */
export function solveCholesky(factor: Float64Array, size: number, right: Float64Array): Float64Array {
  const x = right.slice(0, size);
  for (let i = 0; i < size; i++) {
    let sum = x[i]!;
    for (let k = 0; k < i; k++) sum -= factor[i * size + k]! * x[k]!;
    x[i] = sum / factor[i * size + i]!;
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = x[i]!;
    for (let k = i + 1; k < size; k++) sum -= factor[k * size + i]! * x[k]!;
    x[i] = sum / factor[i * size + i]!;
  }
  return x;
}

/** The whole inverse, both triangles. */
export function invertCholesky(factor: Float64Array, size: number): Float64Array {
  const inverse = new Float64Array(size * size);
  const unit = new Float64Array(size);
  for (let j = 0; j < size; j++) {
    unit.fill(0);
    unit[j] = 1;
    inverse.set(solveCholesky(factor, size, unit), j * size);
  }
  return inverse;
}

/** ln of the determinant of L·Lᵀ. */
export function logDeterminant(factor: Float64Array, size: number): number {
  let sum = 0;
  for (let i = 0; i < size; i++) sum += Math.log(factor[i * size + i]!);
  return 2 * sum;
}
