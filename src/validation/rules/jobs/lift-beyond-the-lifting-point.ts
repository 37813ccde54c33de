// May a lift of the job be heavier than a declared lifting point of the conveyor bears?

import type { Rule } from '../../rule.js';
import { list } from '../../telling/wording.js';

export const liftBeyondTheLiftingPoint: Rule = {
  code: 'TL437',
  title: 'Lift limit above what a lifting point bears',
  severity: 'warning',
  restsOn: [],
  why: 'Pieces are cut up to the lift limit; the one that hangs from the weaker point is too heavy for it.',
  todo: 'Lower the lift limit to the weakest point that will be used, or leave that point out of the lift.',
  given: 'estate',
  around: { conveyor: 'access Floor at 0 m to 12 m ground\nlifting point L1 at 6 m limit 250 kg' },
  example: `
job J1 {
  conveyor DG1
  outage Spring27
  change screw
  crews Alpha
  crane C1 at 6 m offset 4 m
  lift limit «500 kg|250 kg»
}`,
  *check({ estate }) {
    for (const { conveyor, liftLimit, screwChange } of estate.jobs) {
      if (!liftLimit || !screwChange) continue;
      const weak = conveyor.liftingPoints.filter((point) => point.limit.value < liftLimit.value);
      if (weak.length === 0) continue;
      yield {
        origin: liftLimit.origin,
        message: `Pieces of up to ${liftLimit.text} may be lifted, and ${list(weak.map((point) => `${point.name} bears ${point.limit.text}`))}.`,
        related: weak.map((point) => ({ origin: point.limit.origin, message: `limit of ${point.name}` })),
      };
    }
  },
};
