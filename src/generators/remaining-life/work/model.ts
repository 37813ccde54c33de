// What the interval model says of a point, in the report's own terms.

export interface Quantiles {
  readonly q05: number;
  readonly q10: number;
  readonly q50: number;
  readonly q90: number;
  readonly q95: number;
}

export interface PointModel {
  /** mm per h or t. */
  readonly rate: Quantiles;
}
