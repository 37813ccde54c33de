// Was anybody there soon after new parts went in? What was fitted wrong shows in the first weeks.

import { formatDay, type CalendarDay } from '../../../domain/units/calendar.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Origin } from '../../../domain/model/origin.js';
import { todayOf, todayWords } from '../../telling/today.js';
import type { Found } from '../../finding.js';
import type { Rule, RuleInput } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const reline =
  'reline «DG1» 2024-10-07 meter 4800 h {\n  liner TwoLayer12\n}\nmeter change DG1 2025-03-10 from 6200 h to 0 h';

const threshold: RuleThreshold = {
  usual: '92 d',
  dimension: 'duration',
  what: 'How long after new parts went in somebody has to have looked.',
  basis: 'judgement: a quarter of a year, before bolts that settled have let a panel go',
};

export const earlyLookDue: Rule = {
  code: 'TL520',
  title: 'No early look after new parts',
  severity: 'warning',
  restsOn: ['conditions', 'history'],
  byTheCalendar: true,
  why:
    'Bolts settle, joints open and a spiral that lies wrong rubs in the first weeks; found then it is an hour’s ' +
    'work, found at the next yearly look it is a torn liner.',
  todo: 'Look at joints, bolts and the worn strip now, and tighten what has settled.',
  threshold,
  given: 'estate',
  bad: reline,
  good: `${reline.replace(/[«»]/g, '')}
inspection DG1 2024-11-04 meter 5300 h {
  view downstream
  P1 colour ivory
}`,
  cases: [
    {
      name: 'within a quarter',
      text: 'reline DG1 2024-10-07 meter 4800 h {\n  liner TwoLayer12\n}\nmeter change DG1 2025-01-07 from 5900 h to 0 h',
    },
    {
      name: 'after a new spiral',
      text: 'screw change «DG1» 2024-10-07 meter 4800 h {\n  screw Spiral400\n}\nmeter change DG1 2025-03-10 from 6200 h to 0 h',
    },
  ],
  *check(input) {
    const today = todayOf(input);
    if (today === undefined) return;
    for (const { conveyor, date, conveyorUse } of input.estate.relines)
      yield* judge(input, today, conveyor, date.day, conveyorUse.origin, 'reline');
    for (const { conveyor, date, conveyorUse } of input.estate.screwChanges)
      yield* judge(input, today, conveyor, date.day, conveyorUse.origin, 'screw change');
  },
};

function* judge(
  input: RuleInput,
  today: CalendarDay,
  conveyor: Conveyor,
  day: CalendarDay,
  origin: Origin,
  what: string,
): Iterable<Found> {
  if (today <= day + settled(conveyor.plant, 'TL520', threshold) / 24) return;
  const seen = input.estate.inspections.some((each) => each.conveyor === conveyor && each.date.day >= day);
  if (seen) return;
  yield {
    origin,
    message: `Nobody has looked at ${conveyor.name} since its ${what} of ${formatDay(day)}, and ${todayWords(input, today)}.`,
  };
}
