// What is taken for granted of a wear clock before any record: weak, declared, on natural logarithms, our judgement throughout.
// Each is one line of the model's page in the developers' guide.

import type { NormalPrior } from '../likelihood/parameters.js';

export const clockPriors = {
  /** Chance of a change at each of the last looks of a conveyor by itself, and of one shared by those that carry the same. */
  ownChange: 0.09,
  sharedChange: 0.09,
  /** Where it is stated that hours are even, changes and a curved clock are so much less likely: their commonest causes are ruled out. */
  evenHours: 1 / 3,
  /** Looks back that a change may have come at: by itself, and shared. */
  looksBack: 4,
  sharedLooksBack: 3,
  /** ln of the factor on the rate: speeding up is likelier, on purpose. */
  logFactor: { mean: 0.35, spread: 0.45 } satisfies NormalPrior,
  /** How far the factors of conveyors that change together differ. */
  factorSpread: 0.15,
  /** wear ~ exposure^power: exactly 1 with this chance, otherwise about a little more than 1. */
  straightChance: 0.6,
  power: { mean: 1.1, spread: 0.25 } satisfies NormalPrior,
  powerRange: [0.25, 3] as const,
  /** A whole look reads a little off, as a share of its gauge's error; and the last one with this chance by much more. */
  lookBias: 0.45,
  lookOff: { chance: 0.12, spread: 1 },
  /** Spread of ln rates between points, and of conveyors about their common level. */
  logSpread: { mean: Math.log(0.3), spread: 0.5 } satisfies NormalPrior,
  logLevelSpread: { mean: Math.log(0.15), spread: 0.5 } satisfies NormalPrior,
  /** Factor on the declared error of every thickness. */
  logScatter: { mean: 0, spread: 0.35 } satisfies NormalPrior,
  /** How far the wear of one point, and of a whole conveyor, wanders over a usual interval: a share of that wear. */
  logPointNoise: { mean: Math.log(0.15), spread: 0.5 } satisfies NormalPrior,
  logSharedNoise: { mean: Math.log(0.03), spread: 0.7 } satisfies NormalPrior,
  /** ln rate of the right side over the left, and of the discharge over the inlet. */
  side: 0.5,
  along: 1.2,
} as const;
