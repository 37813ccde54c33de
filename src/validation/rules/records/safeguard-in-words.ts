// Does a finding of something else speak of a safeguard in its own words? It stands open among all others then.

import { openConditions } from '../../../domain/conditions/follow-up.js';
import { conditionWords, whereWords } from '../../../domain/conditions/kinds.js';
import { safeguardSpokenOf } from '../../../domain/conditions/safeguards.js';
import type { Rule } from '../../rule.js';

export const safeguardInWords: Rule = {
  code: 'TL561',
  title: 'Finding whose words speak of a safeguard',
  severity: 'information',
  restsOn: ['conditions', 'history'],
  why:
    'What stands in quotes is for people: a stop that is bridged comes first in report, sheet and pack only where its line says that ' +
    'it is one.',
  todo: 'Where the safeguard itself is out of order, close this one and say so with its name.',
  given: 'inspection',
  example:
    '  «finding drive at tail slight "zero-speed sensor scratched"|finding zero-speed sensor at tail slight "scratched"»',
  cases: [
    { name: 'a note', text: '  finding drive at tail "zero-speed sensor cleaned"' },
    { name: 'no part', text: '  «finding at 3 m serious "pull cord caught behind the cover"»' },
    { name: 'nothing of a safeguard', text: '  finding drive at tail serious "runs slow at zero load"' },
    {
      name: 'put right',
      text: '  finding hatch at 4 m serious "interlock bent"\n  closed finding hatch at 4 m "interlock straight"',
    },
  ],
  *check({ estate }) {
    for (const conveyor of estate.conveyors)
      for (const { last, severity } of openConditions(estate, conveyor)) {
        const part = safeguardSpokenOf(last.line);
        if (part === undefined || severity === undefined) continue;
        yield {
          origin: last.line.origin,
          message:
            `${conveyor.name}: "${conditionWords(last.line)}" speaks of a safeguard and stands open as any finding; ` +
            `\`finding ${part}${whereWords(last.line)} ${severity} "…"\` would come first.`,
        };
      }
  },
};
