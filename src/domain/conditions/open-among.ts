// What stands open by the records alone, of a conveyor that is left out because something of it cannot be read: what a line opened and no
// line or work since has ended. Without the machine nobody knows where a name lies, and what a reline took away: the answer is for one who
// mends a first draft, and for no report.

import type { CalendarDay } from '../units/calendar.js';
import type { ToldOnly } from '../model/estate.js';
import type { ConditionLine } from '../model/records.js';
import { couldBeOne, isMeasurement, isSameCondition, saysNoPlace, whereWords } from './kinds.js';
import { putsRight } from './service.js';

export interface OpenLine {
  readonly first: ConditionLine;
  readonly last: ConditionLine;
  readonly since: CalendarDay;
}

/** Oldest first. A finding without a severity is a note. */
export function openAmong(told: readonly ToldOnly[], until: CalendarDay): readonly OpenLine[] {
  let open: readonly OpenLine[] = [];
  const records = told.filter(({ day }) => day <= until).sort((a, b) => a.day - b.day);
  for (const { day, conditions, work } of records) {
    if (work) open = open.filter(({ last }) => !putsRight(work, last));
    for (const line of conditions) {
      const { answer, kind, severity, closed } = line;
      if (isMeasurement(line) || answer === 'not seen' || (kind === 'finding' && !answer && !severity))
        continue;
      // Where a panel or an end lies nobody knows without the machine: by its name.
      const isIt = ({ last }: OpenLine): boolean =>
        (isSameCondition(last, line) && (!!(last.at && line.at) || whereWords(last) === whereWords(line))) ||
        (answer === 'closed' && saysNoPlace(line) && couldBeOne(last, line));
      const before = open.find(isIt);
      open = open.filter((each) => !isIt(each));
      if (answer !== 'closed' && !(closed && closed.day <= until))
        open = [...open, { first: before?.first ?? line, last: line, since: before?.since ?? day }];
    }
  }
  return open;
}
