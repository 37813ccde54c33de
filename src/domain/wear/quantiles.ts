// Points of a distribution that every forecast travels with.

export interface Quantiles {
  readonly q05: number;
  readonly q10: number;
  readonly q50: number;
  readonly q90: number;
  readonly q95: number;
}
