// Does a thickness taken at a reline lie where the liner was changed?

import { scopeOf } from '../../../domain/model/liner-sets.js';
import { installedPanelEnds } from '../../../domain/model/panels.js';
import { intervalOf, type Interval } from '../../../domain/model/runs.js';
import { stretchText } from '../../../domain/order/words.js';
import type { Rule } from '../../rule.js';

export const asFittedOutsideTheScope: Rule = {
  code: 'TL337',
  title: 'New thickness where nothing was changed',
  severity: 'warning',
  restsOn: ['block'],
  why: 'Either the scope is wrong, and a new liner counts as old, or the reading is of the old liner and belongs into an inspection.',
  todo: 'Correct the scope or the point.',
  given: 'estate',
  example: `
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
  scope run 3
  «P1|P2» thickness 12.1 mm
}`,
  cases: [
    {
      name: 'a panel of a run that was laid with other lengths before',
      text: `
reline DG1 2024-09-02 meter 3500 h {
  liner TwoLayer12
  scope run 2
  fitted run 2 panels 700 mm, 1200 mm, 1200 mm, 1200 mm, 1200 mm
}
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
  scope panel 1 of run 2
  fitted panel 1 of run 2 thickness 12.0 mm
}`,
    },
    {
      name: 'a panel of another run',
      text: `
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
  scope run 3
  fitted «panel 1 of run 2» thickness 12.1 mm
}`,
    },
  ],
  *check({ estate }) {
    for (const reline of estate.relines) {
      if (reline.scope.length === 0) continue;
      // A panel is where the panels lie of which it is counted, as the history of the liner has it.
      const ends = installedPanelEnds(estate, reline.date.day);
      const scope = scopeOf(reline.conveyor, reline, ends);
      for (const { point: use } of reline.asFitted) {
        const point = reline.conveyor.points.find((one) => one.name === use.name);
        if (!point || scope.some(({ from, to }) => point.at.value >= from && point.at.value <= to)) continue;
        yield {
          origin: use.origin,
          message: `${point.name} lies at ${point.at.text}, outside what this reline of ${reline.conveyor.name} covers.`,
          related: reline.scope.map((stretch) => ({ origin: stretch.origin, message: 'the scope' })),
        };
      }
      for (const { stretch } of reline.panelThicknesses) {
        const place = intervalOf(reline.conveyor, stretch, ends);
        if (!place || isCovered(place, scope)) continue;
        yield {
          origin: stretch.origin,
          message: `The liner at ${stretchText(stretch)} lies outside what this reline of ${reline.conveyor.name} covers.`,
          related: reline.scope.map((each) => ({ origin: each.origin, message: 'the scope' })),
        };
      }
    }
  },
};

/** By its middle, because a tape and a joint between old and new never agree to the millimetre. */
function isCovered(
  { from, to }: Interval,
  scope: readonly { readonly from: number; readonly to: number }[],
): boolean {
  const middle = (from + to) / 2;
  return scope.some((each) => middle >= each.from && middle <= each.to);
}
