// Was the screw changed twice within a fortnight? Usually one change written down by two people, or a block pasted twice.

import { changedBy, sameJoint } from '../../../domain/model/screw-sets.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { counted } from '../../../domain/units/wording.js';
import type { Rule } from '../../rule.js';

export const screwChangeTwice: Rule = {
  code: 'TL532',
  title: 'Two screw changes, days apart',
  severity: 'warning',
  restsOn: [],
  why: 'A spiral that turned for a few days enters the history, and the wear of the one before is counted from the wrong day.',
  todo: 'Keep one of the two; where both are true, say in a remark why the first was changed again.',
  given: 'estate',
  bad: `
screw change DG1 2025-03-10 meter 6200 h {
  screw Spiral400
}
screw change DG1 «2025-03-12» meter 6230 h {
  screw Spiral400
}`,
  good: `
screw change DG1 2025-03-10 meter 6200 h {
  screw Spiral400
}`,
  cases: [
    {
      name: 'two lengths of one spiral',
      text: `
screw change DG1 2025-03-10 meter 6200 h {
  scope from 0 m to 6 m
}
screw change DG1 2025-03-12 meter 6230 h {
  scope from 6 m to 12 m
}`,
    },
    {
      name: 'a fortnight apart, and on another day of the year',
      text: `
screw change DG1 2025-03-10 meter 6200 h {
  screw Spiral400
}
screw change DG1 «2025-03-24» meter 6400 h {
  screw Spiral400
}
screw change DG1 2025-04-08 meter 6500 h {
  screw Spiral400
}`,
    },
  ],
  *check({ estate }) {
    const changes = [...estate.screwChanges].sort((a, b) => a.date.day - b.date.day);
    for (const [i, later] of changes.entries()) {
      const earlier = changes
        .slice(0, i)
        .findLast(
          (one) =>
            one.conveyor === later.conveyor &&
            later.date.day - one.date.day <= fortnight &&
            meet(changedBy(one), changedBy(later)),
        );
      if (!earlier) continue;
      const days = later.date.day - earlier.date.day;
      yield {
        origin: later.date.origin,
        message:
          `The screw of ${later.conveyor.name} was changed on ${formatDay(earlier.date.day)} too, ` +
          `${days === 0 ? 'the same day' : `${counted(days, 'day')} before`}.`,
        related: [{ origin: earlier.date.origin, message: 'the change before' }],
      };
    }
  },
};

const fortnight = 14;

/** Two lengths beside each other were each changed once. */
function meet(one: ReturnType<typeof changedBy>, other: ReturnType<typeof changedBy>): boolean {
  return Math.min(one.to, other.to) - Math.max(one.from, other.from) > sameJoint;
}
