// Was anything measured on panels that were turned or exchanged, then or since?

import { historyOf } from '../../../domain/model/history.js';
import { installedPanelEnds } from '../../../domain/model/panels.js';
import { intervalOf } from '../../../domain/model/runs.js';
import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import { stretchText } from '../../../domain/order/words.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';

export const movedPanelNotMeasured: Rule = {
  code: 'TL372',
  title: 'Panel moved and not measured',
  severity: 'warning',
  restsOn: ['block', 'looks', 'history'],
  why: 'A turned panel lies thick where it was thin. Without a thickness its forecast goes on as if it lay as before, and what is seen on it tells nothing.',
  todo: 'Write what was left at a point on it into the record of the move (P2 thickness 9.1 mm), or measure it at the next look.',
  given: 'estate',
  around: { liner: 'may be turned end for end' },
  example: `
panels moved DG1 2024-10-07 meter 3900 h {
  «panel 3 of run 2 turned end for end|panel 3 of run 2 turned end for end»‹|
  P1 thickness 11.4 mm›
}`,
  cases: [
    {
      name: 'of two that changed places only one was',
      text: `
panels moved DG1 2024-10-07 meter 3900 h {
  «panel 3 of run 2 exchanged with panel 4 of run 2»
  P1 thickness 11.4 mm
}`,
    },
    {
      name: 'the next look measured it',
      text: `
panels moved DG1 2024-10-07 meter 3900 h {
  panel 3 of run 2 turned end for end
}
inspection DG1 2025-03-10 meter 6000 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 10.9 mm
}`,
    },
  ],
  *check({ estate }) {
    for (const moved of estate.panelsMoved) {
      const ends = installedPanelEnds(estate, moved.date.day);
      const { linerSets } = historyOf(estate, moved.conveyor);
      for (const { panel, other, origin } of moved.moves) {
        const unmeasured = [panel, ...(other ? [other] : [])].flatMap((each) => {
          // One that is not there has a finding of its own.
          const place = intervalOf(moved.conveyor, each, ends);
          const isMeasured = linerSets.some(({ reline }) => reline?.moved && reline.scope.includes(each));
          return place && !isMeasured ? [{ each, place }] : [];
        });
        if (unmeasured.length === 0) continue;
        const names = unmeasured
          .map(
            ({ each, place }) =>
              `${stretchText(each)} (${chainageOn(moved.conveyor, place.from)} to ${chainageOn(moved.conveyor, place.to)})`,
          )
          .join(' and ');
        yield {
          origin,
          message: `Nothing was measured on ${names}, moved on ${formatDay(moved.date.day)}, then or since.`,
        };
      }
    }
  },
};
