// Where does a rising function cross a level? Bracketed, so that it cannot run away; quick where the function is smooth.

/** The place between low and high where rise(x) = level, to `tolerance` in x; undefined where it does not cross there. */
export function crossing(
  rise: (x: number) => number,
  level: number,
  low: number,
  high: number,
  tolerance: number,
): number | undefined {
  let a = low;
  let b = high;
  let fa = rise(a) - level;
  let fb = rise(b) - level;
  if (fa > 0 || fb < 0) return undefined;
  if (fa === 0) return a;
  if (fb === 0) return b;
  let side = 0;
  for (let step = 0; step < 200; step++) {
    // Illinois false position with a bisection every third step that fails to halve the bracket.
    const before = b - a;
    let x = (fa * b - fb * a) / (fa - fb);
    if (!(x > a && x < b) || step % 3 === 2) x = 0.5 * (a + b);
    const fx = rise(x) - level;
    if (fx === 0) return x;
    if (fx < 0) {
      a = x;
      fa = fx;
      if (side === -1) fb *= 0.5;
      side = -1;
    } else {
      b = x;
      fb = fx;
      if (side === 1) fa *= 0.5;
      side = 1;
    }
    if (b - a < tolerance || Math.abs(fx) < 1e-13) return Math.abs(fx) < 1e-13 ? x : 0.5 * (a + b);
    if (b - a === before) break;
  }
  return 0.5 * (a + b);
}
