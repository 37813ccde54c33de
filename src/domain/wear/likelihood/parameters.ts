// The parameters of the model with their priors, and what one pass over the units leaves at a value of them.

import type { Effects, Solved, System } from './design.js';

/** What one pass over the units leaves. */
export interface Pass {
  readonly parameters: Parameters;
  readonly logLikelihood: number;
  /** ln likelihood with priors and the offsets' Laplace term. */
  readonly objective: number;
  readonly system: System;
  readonly effectsOnly: Solved | undefined;
  /** Of every unit: pool mean, score and information on it. */
  readonly mean: Float64Array;
  readonly score: Float64Array;
  readonly information: Float64Array;
}

export interface Parameters {
  readonly effects: Effects;
  readonly logSpread: number;
  readonly logError: number;
  /** Spread of each pool's offsets, ln rate. */
  readonly poolSpread: readonly number[];
}

export interface Priors {
  /** On the general ln rate; left out where nothing is declared. */
  readonly level: NormalPrior | undefined;
  readonly logSpread: NormalPrior | undefined;
  readonly logError: NormalPrior | undefined;
  readonly logPoolSpread: NormalPrior;
}

export interface NormalPrior {
  readonly mean: number;
  readonly spread: number;
}
