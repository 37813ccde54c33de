// Has a declared safeguard never been tried, or not for longer than a year [judgement], by what the records say?

import { safeguardWords } from '../../../domain/conditions/safeguards-declared.js';
import { lastTried, trialsOfSafeguard } from '../../../domain/conditions/trials.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { Origin } from '../../../domain/model/origin.js';
import { addDays, formatDay, type CalendarDay } from '../../../domain/units/calendar.js';
import { list } from '../../../domain/units/wording.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';
import { todayOf, todayWords } from '../../telling/today.js';

const threshold: RuleThreshold = {
  usual: '365 d',
  dimension: 'duration',
  what: 'How long ago a safeguard may have been tried.',
  basis:
    'judgement: a yearly round; the makers’ instructions, the site’s own rules and the law of the place ask for a stop or a ' +
    'switch more often in many cases, and they come first',
};

export const safeguardNotTried: Rule = {
  code: 'TL568',
  title: 'Safeguard that was not tried for long',
  severity: 'information',
  restsOn: ['looks', 'conditions', 'history', 'machine'],
  why: 'A stop that nobody has pressed for years is found out when it is needed.',
  todo: 'Have it tried as the site’s rules say, by who may, and write it down: `emergency stop tried at tail by "electrician"`.',
  threshold,
  byTheCalendar: true,
  given: 'conveyor',
  around: {
    inspection:
      '  zero-speed sensor tried by "electrician"\n‹|  emergency stop tried at tail by "electrician"›',
  },
  example: '  «emergency stop at tail»\n  zero-speed sensor at tail',
  cases: [
    { name: 'the one at the other end was', text: '  «emergency stop at head»' },
    { name: 'there is only one', text: '  zero-speed sensor at head' },
  ],
  *check(input) {
    const today = todayOf(input);
    if (today === undefined) return;
    for (const conveyor of input.estate.conveyors) {
      const since = addDays(today, -settled(conveyor.plant, 'TL568', threshold) / 24);
      const due = dueIn(input.estate, conveyor, since);
      const [first] = due;
      if (first)
        yield {
          origin: first.origin,
          message: `${conveyor.name}: ${list(due.map(({ words }) => words))}, and ${todayWords(input, today)}.`,
        };
    }
  },
};

interface Due {
  readonly words: string;
  readonly origin: Origin;
}

/** Of those declared, what is not on record as tried since that day; nothing where the machine itself is younger. */
function dueIn(estate: Estate, conveyor: Conveyor, since: CalendarDay): readonly Due[] {
  const { commissioned, safeguards } = conveyor;
  if (!commissioned || commissioned.date.day >= since) return [];
  return safeguards.flatMap((each): readonly Due[] => {
    const day = lastTried(each, trialsOfSafeguard(conveyor, each, estate.services));
    if (day !== undefined && day >= since) return [];
    const how = day === undefined ? 'is not on record as tried' : `was last tried on ${formatDay(day)}`;
    return [{ words: `${safeguardWords(each)} ${how}`, origin: each.origin }];
  });
}
