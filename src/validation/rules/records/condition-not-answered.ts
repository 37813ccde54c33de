// What became of what was found wrong? Each look after it has to say of an open condition that it is still there, that it was put
// right, or that nobody could look. It is told once, with the first look that leaves it out. What was answered later is told of
// what was urgent only: a weld that nobody spoke of for weeks is a gap in the records, a loose bolt is not.

import { followUp, type Condition, type SeenLine } from '../../../domain/conditions/follow-up.js';
import { saidOf } from '../../../domain/conditions/same-finding.js';
import { conditionAnswerText, conditionWords } from '../../../domain/conditions/kinds.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Inspection } from '../../../domain/model/records.js';
import type { Fix, Found } from '../../finding.js';
import { listing } from '../../../domain/order/words.js';
import { insertBefore } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';

const before =
  'inspection DG1 2024-09-09 meter 3600 h {\n  view downstream\n  panel torn at 4.2 m serious\n}';

export const conditionNotAnswered: Rule = {
  code: 'TL350',
  title: 'Open condition not answered',
  severity: 'warning',
  restsOn: ['conditions', 'history'],
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
      name: 'of several that one look leaves out it is told once',
      text:
        'inspection DG1 2024-09-09 meter 3600 h {\n  view downstream\n  panel torn at 4.2 m serious\n  panel lifted at 9 m\n}\n' +
        'inspection «DG1» 2025-03-10 meter 6000 h {\n  view downstream\n  P1 colour ivory\n}',
    },
    {
      name: 'the same within a hand’s breadth',
      text: `${before}\ninspection DG1 2025-03-10 meter 6000 h {\n  view downstream\n  panel torn at 4.4 m\n}`,
    },
    {
      name: 'told once, with the first look that leaves it out',
      text:
        `${before}\ninspection «DG1» 2025-03-10 meter 6000 h {\n  view downstream\n  P1 colour ivory\n}\n` +
        'inspection DG1 2025-09-08 meter 9000 h {\n  view downstream\n  P1 colour ivory\n}',
    },
    {
      name: 'urgent, left out, and closed later',
      text:
        'inspection DG1 2024-09-09 meter 3600 h {\n  view downstream\n  panel torn at 4.2 m urgent\n}\n' +
        'inspection «DG1» 2025-03-10 meter 6000 h {\n  view downstream\n  P1 colour ivory\n}\n' +
        'inspection DG1 2025-09-08 meter 9000 h {\n  view downstream\n  closed panel torn at 4.2 m\n}',
    },
    {
      name: 'no longer urgent, left out, and closed later',
      text:
        `${before}\ninspection DG1 2025-03-10 meter 6000 h {\n  view downstream\n  P1 colour ivory\n}\n` +
        'inspection DG1 2025-09-08 meter 9000 h {\n  view downstream\n  closed panel torn at 4.2 m\n}',
    },
    {
      name: 'closed since',
      text: `${before}\ninspection DG1 2025-03-10 meter 6000 h {\n  view downstream\n  closed panel torn at 4.2 m\n}`,
    },
    {
      name: 'told in words that name it',
      text:
        'inspection DG1 2024-09-09 meter 3600 h {\n  view downstream\n  spiral weld cracked at 9.5 m slight\n}\n' +
        'inspection DG1 2025-03-10 meter 6000 h {\n  view downstream\n  finding spiral at 9.5 m "hair crack not longer"\n}',
    },
    {
      name: 'words of its part and place that may be of another thing',
      text:
        'inspection DG1 2024-09-09 meter 3600 h {\n  view downstream\n  spiral weld cracked at 9.5 m slight\n}\n' +
        'inspection «DG1» 2025-03-10 meter 6000 h {\n  view downstream\n  finding spiral at 9.5 m "flange holes reamed"\n}',
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
      const byLook = new Map<Inspection, Condition[]>();
      for (const condition of followUp(estate, conveyor).conditions) {
        const { unanswered, passedOver } = condition;
        for (const look of [...passedOver, ...(unanswered ? [unanswered] : [])])
          byLook.set(look, [...(byLook.get(look) ?? []), condition]);
      }
      for (const [look, left] of byLook) yield leftOut(left, look);
    }
  },
};

/** All that one look leaves out, in one finding. */
function leftOut(conditions: readonly Condition[], look: Inspection): Found {
  const brace = { ...look.origin, start: look.origin.end - 1 };
  const lines = conditions.map(({ first, last }) => conditionAnswerText(first.line, last.line));
  const write = (title: string, before: string): Fix =>
    insertBefore(brace, lines.map((line) => `  ${before}${line}\n`).join(''), title);
  const told = conditions.map((each) => ({
    ...each,
    said: [...new Set(saidOf(each.last.line, look).map(({ words }) => `“${words}”`))],
  }));
  const [one] = told;
  const only = told.length === 1 && one && one.said.length > 0 ? listing(one.said) : undefined;
  const over = told.filter(({ said }) => said.length > 0);
  const [it, was] = conditions.length === 1 ? ['it is', 'it was'] : ['they are all', 'all were'];
  return {
    origin: look.conveyorUse.origin,
    message:
      `This look does not say what became of ${listing(told.map((each) => spokenOf(each, look) + (only === undefined ? besideWords(each.said) : '')))}.` +
      (only === undefined ? '' : ` It says ${only} of that part, and not whether that is meant.`),
    ...(over.length > 0 && {
      todo:
        `If it is over with that, write ${listing(over.map(({ first, last }) => `\`closed ${conditionAnswerText(first.line, last.line)}\``))}; ` +
        'else that it is still there, or could not be seen.',
    }),
    related: conditions.map((each) => ({
      origin: lastSpokenOf(each, look).line.origin,
      message: 'Spoken of here last.',
    })),
    fixes: [
      write(`Write that ${it} still there`, ''),
      write(`Write that ${was} put right`, 'closed '),
      write('Write that nobody could look', 'not seen '),
    ],
  };
}

function besideWords(said: readonly string[]): string {
  return said.length === 0 ? '' : ` (it says ${listing(said)} there, and not whether that is meant)`;
}

/** The newest line of it before a look. */
function lastSpokenOf({ first, notSeen, last }: Condition, look: Inspection): SeenLine {
  return [first, ...notSeen, last]
    .filter(({ record }) => record.date.day < look.date.day)
    .reduce((a, b) => (b.record.date.day >= a.record.date.day ? b : a), first);
}

function spokenOf(condition: Condition, look: Inspection): string {
  const { first } = condition;
  const last = lastSpokenOf(condition, look);
  const since =
    last.record.date.day === first.record.date.day
      ? ''
      : ` and ${last.line.answer === 'not seen' ? 'looked for' : 'seen again'} on ${formatDay(last.record.date.day)}`;
  return `${conditionWords(first.line)}, found on ${formatDay(first.record.date.day)}${since}`;
}
