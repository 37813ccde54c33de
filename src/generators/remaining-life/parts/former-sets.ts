// How long did the liners before these last? Each set that was taken out, with the exposure it reached; whether it was worn
// out or taken out early is not known from the date alone, so its life is what it reached, no more.

import { exposureBetween, type Exposure } from '../../../domain/model/exposure.js';
import type { History } from '../../../domain/model/history.js';
import type { LinerSet } from '../../../domain/model/liner-sets.js';

export interface FormerSet {
  readonly set: LinerSet;
  /** Exposure when it was taken out. */
  readonly reached: Exposure;
}

/** In order of the day they were taken out, then by chainage. */
export function formerSetsOf(history: History): readonly FormerSet[] {
  return history.linerSets
    .flatMap((set) => (set.removed ? [{ set, reached: exposureBetween(history, set, set.removed) }] : []))
    .sort((a, b) => (a.set.removed?.day ?? 0) - (b.set.removed?.day ?? 0) || a.set.from - b.set.from);
}
