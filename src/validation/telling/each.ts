// The check of a rule that looks at one thing at a time: a conveyor, a liner, a crew's plant. The model never changes in
// place, so what was found on an object once holds as long as the object is the same one; typing in one file then costs
// nothing for the others.

import type { Estate } from '../../domain/model/estate.js';
import type { Found } from '../finding.js';
import type { RuleInput } from '../rule.js';

export function each<T extends object>(
  pick: (estate: Estate) => readonly T[],
  look: (thing: T) => Iterable<Found>,
) {
  const known = new WeakMap<T, readonly Found[]>();
  return function* (input: RuleInput): Iterable<Found> {
    for (const thing of pick(input.estate)) {
      let found = known.get(thing);
      if (!found) {
        found = [...look(thing)];
        known.set(thing, found);
      }
      yield* found;
    }
  };
}
