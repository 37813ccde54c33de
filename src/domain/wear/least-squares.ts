// Which straight line do the readings follow? Ordinary least squares, through the origin (wear starts at nothing when the
// liner is fitted) or with an intercept (to show how much a reading disagrees with that). Sums are taken about the mean where
// there is one, which keeps the digits that NIST asks for.

export interface FittedLine {
  readonly slope: number;
  /** 0 for a line through the origin. */
  readonly intercept: number;
  /** Standard error of the slope and standard deviation of the residuals; undefined with no degree of freedom left. */
  readonly slopeError: number | undefined;
  readonly residual: number | undefined;
  readonly count: number;
}

/** y = slope·x. Undefined where every x is zero or there is no pair. `x` and `y` finite and of equal length. */
export function lineThroughOrigin(x: readonly number[], y: readonly number[]): FittedLine | undefined {
  let sxx = 0;
  let sxy = 0;
  for (let i = 0; i < x.length; i++) {
    const xi = x[i] ?? NaN;
    sxx += xi * xi;
    sxy += xi * (y[i] ?? NaN);
  }
  if (!(sxx > 0) || !Number.isFinite(sxy)) return undefined;
  return withErrors(sxy / sxx, 0, sxx, x, y, 1);
}

/** y = intercept + slope·x. Undefined where all x are equal. */
export function lineWithIntercept(x: readonly number[], y: readonly number[]): FittedLine | undefined {
  const n = x.length;
  if (n < 2 || y.length !== n) return undefined;
  const meanX = mean(x);
  const meanY = mean(y);
  let sxx = 0;
  let sxy = 0;
  for (let i = 0; i < n; i++) {
    const dx = (x[i] ?? NaN) - meanX;
    sxx += dx * dx;
    sxy += dx * ((y[i] ?? NaN) - meanY);
  }
  if (!(sxx > 0) || !Number.isFinite(sxy)) return undefined;
  const slope = sxy / sxx;
  return withErrors(slope, meanY - slope * meanX, sxx, x, y, 2);
}

function withErrors(
  slope: number,
  intercept: number,
  sxx: number,
  x: readonly number[],
  y: readonly number[],
  parameters: number,
): FittedLine {
  let sse = 0;
  for (let i = 0; i < x.length; i++) {
    const residual = (y[i] ?? NaN) - intercept - slope * (x[i] ?? NaN);
    sse += residual * residual;
  }
  const freedom = x.length - parameters;
  const residual = freedom > 0 ? Math.sqrt(sse / freedom) : undefined;
  return {
    slope,
    intercept,
    residual,
    slopeError: residual === undefined ? undefined : residual / Math.sqrt(sxx),
    count: x.length,
  };
}

function mean(values: readonly number[]): number {
  const first = values.reduce((a, b) => a + b, 0) / values.length;
  return first + values.reduce((a, b) => a + (b - first), 0) / values.length;
}
