// Does a guard, a stop, a pull cord or an interlock stand open that does not do what it is there for?

import { conditionAnswerText, conditionWords } from '../../../domain/conditions/kinds.js';
import { openConditions } from '../../../domain/conditions/follow-up.js';
import { isSafeguardOut } from '../../../domain/conditions/safeguards.js';
import { saidBeside } from '../../../domain/conditions/said-beside.js';
import { list } from '../../../domain/units/wording.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';

export const safeguardOut: Rule = {
  code: 'TL268',
  title: 'Safeguard out of order',
  severity: 'warning',
  restsOn: ['conditions', 'history'],
  why:
    'The spiral draws in whatever it takes hold of, and nobody can stop it from where they are caught: a guard that is off and a ' +
    'stop that does nothing are found out when they are needed.',
  todo: 'Whether it may run until then is for the site’s competent person to decide; put it right, try it, and close it with the day.',
  given: 'inspection',
  example: '  «guard missing at head|guard loose at head»',
  cases: [
    { name: 'whatever it is rated', text: '  «emergency stop dead at tail slight»' },
    { name: 'a cord that hangs is rated by whoever saw it', text: '  pull cord slack' },
    { name: 'and here it is serious', text: '  «pull cord slack serious»' },
    { name: 'in words of one’s own', text: '  «finding guard at head serious "two screws missing"»' },
    { name: 'a note', text: '  finding guard at head "painted"' },
    { name: 'put right on the day', text: '  interlock dead at 4 m closed on 2025-03-11' },
    {
      name: 'tried since, and nobody says that it is put right',
      text: '  «emergency stop dead at head»\n  emergency stop tried at head "stops"',
    },
    { name: 'a sign is no safeguard', text: '  sign missing at 4 m serious' },
  ],
  *check({ estate }) {
    for (const conveyor of estate.conveyors)
      for (const condition of openConditions(estate, conveyor)) {
        const { first, last, severity } = condition;
        if (!isSafeguardOut(last.line, severity)) continue;
        const beside = saidBeside(estate, condition);
        yield {
          origin: last.line.origin,
          message:
            `${conveyor.name}: ${conditionWords(last.line)}, open since ${formatDay(first.record.date.day)}. ` +
            `Once it is put right, write \`closed ${conditionAnswerText(first.line)}\`.` +
            (beside.length === 0
              ? ''
              : ` What was said or done there since closes nothing: ${list(
                  beside.map(
                    ({ by, words, day }) => `${by === 'look' ? `“${words}”` : words} (${formatDay(day)})`,
                  ),
                  'and',
                  4,
                )}.`),
          related: beside.map(({ origin, words }) => ({ origin, message: words })),
        };
      }
  },
};
