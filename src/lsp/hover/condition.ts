// A condition under the cursor: which panel it is on, since when it stands open, what became of it, and how a later look answers it.

import { followUp, type Condition, type SeenLine } from '../../domain/conditions/follow-up.js';
import { conditionAnswerText, conditionWords, isMeasurement } from '../../domain/conditions/kinds.js';
import { closingWords, placeWords, unansweredWords } from '../../domain/conditions/rows.js';
import { saidBeside } from '../../domain/conditions/said-beside.js';
import type { ConditionLine } from '../../domain/model/records.js';
import type { Estate } from '../../domain/model/estate.js';
import { formatDay } from '../../domain/units/calendar.js';
import { hoverMarkdown, line, plain } from './markdown.js';

export function conditionHover(estate: Estate, { record, line: written }: SeenLine): string {
  const { conveyor } = record;
  const { conditions, stray, notLooked } = followUp(estate, conveyor);
  const own = conditions.find((each) => linesOf(each).some((one) => isWritten(one, written)));
  return hoverMarkdown(`**${plain(conditionWords(written))}**`, [
    ...(written.at ? line('where', plain(placeWords(estate, conveyor, written, record.date.day))) : []),
    ...(isMeasurement(written)
      ? line('says', 'a measurement: without a severity there is nothing to be closed')
      : []),
    ...(written.wornThrough
      ? line('rate of wear', 'counts as bare steel read here: the liner was worn through')
      : written.answer === undefined && written.kind.startsWith('panel')
        ? line('rate of wear', 'says nothing of it; write `worn through` where wear made it')
        : []),
    ...(own ? line('since', formatDay(own.first.record.date.day)) : []),
    ...(own?.severity ? line('severity', own.severity) : []),
    ...(own ? line('now', plain(stateWords(estate, own))) : []),
    ...(own && !own.closed ? line('answer it by', answersWords(own)) : []),
    ...(stray.some((each) => isWritten(each.line, written))
      ? line('now', 'nothing of this kind stood open here')
      : []),
    ...(notLooked.some((each) => isWritten(each.line, written))
      ? line('now', 'nobody could look for it, and nobody has since; it is carried to the next sheet')
      : []),
  ]);
}

/** By its place in the text: a line that was moved along with its panel is another object. */
function isWritten({ origin }: ConditionLine, written: ConditionLine): boolean {
  return origin.source === written.origin.source && origin.start === written.origin.start;
}

function linesOf({ first, last, earlier, notSeen, closed }: Condition): readonly ConditionLine[] {
  const closing = closed && 'look' in closed ? [closed.look.line] : [];
  return [first.line, last.line, ...[...earlier, ...notSeen].map((each) => each.line), ...closing];
}

function answersWords({ first, last }: Condition): string {
  const answer = conditionAnswerText(first.line, last.line);
  return `\`${answer}\` while it is there, \`closed ${answer}\` once it is put right`;
}

function stateWords(estate: Estate, condition: Condition): string {
  const { closed, unanswered } = condition;
  if (closed) return closingWords(closed);
  if (!unanswered) return 'open';
  const { day } = unanswered.date;
  const isSpokenOf = saidBeside(estate, condition).some((each) => each.by === 'look' && each.day === day);
  return `open; ${unansweredWords(day, isSpokenOf)}`;
}
