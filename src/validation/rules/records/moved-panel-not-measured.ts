// Was anything measured on panels that were turned or exchanged, then or since?

import { historyOf } from '../../../domain/model/history.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';

export const movedPanelNotMeasured: Rule = {
  code: 'TL372',
  title: 'Panel moved and not measured',
  severity: 'warning',
  why: 'A turned panel lies thick where it was thin. Without a thickness its forecast goes on as if it lay as before, and what is seen on it tells nothing.',
  todo: 'Write what was left at a point on it into the record of the move (P2 thickness 9.1 mm), or measure it at the next look.',
  given: 'estate',
  around: { liner: 'may be turned end for end' },
  example: `
«panels moved DG1 2024-10-07 meter 3900 h {
  panel 3 of run 2 turned end for end
}|panels moved DG1 2024-10-07 meter 3900 h {
  panel 3 of run 2 turned end for end
  P1 thickness 11.4 mm
}»`,
  *check({ estate }) {
    for (const { conveyor, date, origin } of estate.panelsMoved.filter((moved) => !isMeasured(moved)))
      yield {
        origin,
        message: `Nothing was measured on the panels of ${conveyor.name} that were moved on ${formatDay(date.day)}.`,
      };

    function isMeasured(moved: (typeof estate.panelsMoved)[number]): boolean {
      if (moved.moves.length === 0) return true;
      return historyOf(estate, moved.conveyor).linerSets.some(({ reline }) => reline?.moved === moved);
    }
  },
};
