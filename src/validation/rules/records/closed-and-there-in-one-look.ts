// Is something closed in a look that says further down that it is there? The other way round, found and put right the same day,
// is no contradiction.

import { datedRecords } from '../../../domain/model/dated-records.js';
import {
  conditionWords,
  isOfTemperature,
  isSameCondition,
  partOf,
} from '../../../domain/conditions/kinds.js';
import type { ConditionLine } from '../../../domain/model/records.js';
import type { Rule } from '../../rule.js';

export const closedAndThereInOneLook: Rule = {
  code: 'TL267',
  title: 'Closed and still there in one look',
  severity: 'warning',
  restsOn: [],
  why: 'The next crew finds it on no list, or on the list of a thing that was mended: somebody looks for nothing, or nobody looks.',
  todo:
    'Take the line out that is wrong. Where it was found and put right that day, write first that it is there and then that it is ' +
    'closed; where it came back, write it in the look of the day on which it was seen again.',
  given: 'estate',
  example: `
inspection DG1 2025-03-12 meter 6020 h {
  view downstream
  gearbox oil low
  panel torn at 3 m serious
}
inspection DG1 2025-03-17 meter 6080 h {
  view downstream
  closed panel torn at 3 m
  closed gearbox oil low
  «gearbox oil low|gearbox oil dirty»
}`,
  cases: [
    {
      name: 'the same place by hand',
      text: `
inspection DG1 2025-03-12 meter 6020 h {
  view downstream
  panel torn at 3 m
}
inspection DG1 2025-03-17 meter 6080 h {
  view downstream
  closed panel torn at 3 m
  «panel torn at 3.2 m»
}`,
    },
    {
      name: 'found and put right the same day',
      text: `
inspection DG1 2025-03-17 meter 6080 h {
  view downstream
  panel torn at 3 m
  closed panel torn at 3 m
}`,
    },
  ],
  *check({ estate }) {
    for (const { conveyor, conditions } of datedRecords(estate))
      for (const [index, line] of conditions.entries()) {
        if (line.answer !== undefined) continue;
        const closed = conditions
          .slice(0, index)
          .find((each) => each.answer === 'closed' && isSame(each, line));
        if (!closed) continue;
        yield {
          origin: line.origin,
          message: `This look of ${conveyor.name} closes "${conditionWords(closed)}" and says further down that it is there.`,
          related: [{ origin: closed.origin, message: 'closed here' }],
        };
      }
  },
};

function isSame(a: ConditionLine, b: ConditionLine): boolean {
  if (a.kind !== b.kind || a.aspect !== b.aspect) return false;
  if (partOf(a.kind) === 'drive') return isOfTemperature(a) === isOfTemperature(b);
  if (a.kind === 'finding') return a.words === b.words && isSameCondition(a, b);
  return a.at !== undefined && b.at !== undefined && isSameCondition(a, b);
}
