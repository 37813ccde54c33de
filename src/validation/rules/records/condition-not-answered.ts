// What became of what was found wrong? The newest look has to say of each open condition that it is still there, that it was put
// right, or that nobody could look.

import { openConditions } from '../../../domain/conditions/follow-up.js';
import { conditionAnswerText, conditionWords } from '../../../domain/conditions/kinds.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Fix } from '../../finding.js';
import { insertBefore } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';

const before =
  'inspection DG1 2024-09-09 meter 3600 h {\n  view downstream\n  panel torn at 4.2 m serious\n}';

export const conditionNotAnswered: Rule = {
  code: 'TL350',
  title: 'Open condition not answered',
  severity: 'warning',
  why: 'A torn panel that nobody speaks of any more is taken for mended, and the next one to hear of it is whoever finds the screw in the steel.',
  todo: 'Write of each open condition whether it is still there, closed, or could not be seen.',
  given: 'estate',
  bad: `${before}
inspection «DG1» 2025-03-10 meter 6000 h {
  view downstream
  P1 colour ivory
}`,
  good: `${before}
inspection DG1 2025-03-10 meter 6000 h {
  view downstream
  P1 colour ivory
  panel torn at 4.2 m
}`,
  cases: [
    {
      name: 'the same within a hand’s breadth',
      text: `${before}\ninspection DG1 2025-03-10 meter 6000 h {\n  view downstream\n  panel torn at 4.4 m\n}`,
    },
    {
      name: 'closed since',
      text: `${before}\ninspection DG1 2025-03-10 meter 6000 h {\n  view downstream\n  closed panel torn at 4.2 m\n}`,
    },
    {
      name: 'nobody could look',
      text: `${before}\ninspection DG1 2025-03-10 meter 6000 h {\n  view downstream\n  not seen panel torn at 4.2 m "covers stayed on"\n}`,
    },
    {
      name: 'the panel went out with a reline',
      text:
        `${before}\nreline DG1 2024-10-07 meter 3900 h {\n  liner TwoLayer12\n}\n` +
        'inspection DG1 2025-03-10 meter 6000 h {\n  view downstream\n  P1 colour ivory\n}',
    },
  ],
  *check({ estate }) {
    for (const conveyor of estate.conveyors) {
      for (const condition of openConditions(estate, conveyor)) {
        const { unanswered, first, last } = condition;
        if (!unanswered) continue;
        const line = conditionAnswerText(first.line, last.line);
        const brace = { ...unanswered.origin, start: unanswered.origin.end - 1 };
        const write = (title: string, text: string): Fix => insertBefore(brace, `  ${text}\n`, title);
        yield {
          origin: unanswered.conveyorUse.origin,
          message:
            `This look does not say what became of ${conditionWords(first.line)}, ` +
            `found on ${formatDay(first.inspection.date.day)}${first === last ? '' : ` and seen again on ${formatDay(last.inspection.date.day)}`}.`,
          related: [{ origin: last.line.origin, message: 'Seen here last.' }],
          fixes: [
            write('Write that it is still there', line),
            write('Write that it was put right', `closed ${line}`),
            write('Write that nobody could look', `not seen ${line}`),
          ],
        };
      }
    }
  },
};
