// Was the same stretch relined twice within a fortnight? Usually one job written down by two people.

import { historyOf } from '../../../domain/model/history.js';
import { scopeOf } from '../../../domain/model/liner-sets.js';
import { panelEnds } from '../../../domain/model/first-panels.js';
import type { Reline } from '../../../domain/model/records.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';
import { counted } from '../../../domain/units/wording.js';

export const relinesDaysApart: Rule = {
  code: 'TL316',
  title: 'Two relines of one stretch, days apart',
  severity: 'warning',
  restsOn: [],
  why: 'A liner that lasted a few days enters the history as the shortest life of all and pulls every forecast down.',
  todo: 'Keep one of the two; where both are true, say in a remark why the first was changed again.',
  given: 'estate',
  example: `
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12‹|
  scope run 2›
}
reline DG1 «2025-03-12» meter 6230 h {
  liner TwoLayer12
  scope run 3
}`,
  cases: [
    {
      name: 'a fortnight apart',
      text: `
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
}
reline DG1 «2025-03-24» meter 6400 h {
  liner TwoLayer12
}`,
    },
    {
      name: 'a day more',
      text: `
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
}
reline DG1 2025-03-25 meter 6410 h {
  liner TwoLayer12
}`,
    },
  ],
  *check({ estate }) {
    for (const conveyor of new Set(estate.relines.map((reline) => reline.conveyor))) {
      const { relines } = historyOf(estate, conveyor);
      for (const [i, later] of relines.entries()) {
        const earlier = relines
          .slice(0, i)
          .findLast((one) => later.date.day - one.date.day <= fortnight && overlap(one, later));
        if (!earlier) continue;
        const days = later.date.day - earlier.date.day;
        yield {
          origin: later.date.origin,
          message:
            `${later.conveyor.name} was relined over the same stretch on ${formatDay(earlier.date.day)}, ` +
            `${days === 0 ? 'the same day' : `${counted(days, 'day')} before`}.`,
          related: [{ origin: earlier.date.origin, message: 'the reline before' }],
        };
      }
    }
  },
};

const fortnight = 14;

function overlap(a: Reline, b: Reline): boolean {
  const theirs = scopeOf(b.conveyor, b, panelEnds);
  return scopeOf(a.conveyor, a, panelEnds).some((mine) =>
    theirs.some((their) => Math.min(mine.to, their.to) - Math.max(mine.from, their.from) > 1),
  );
}
