// What was said or done of the part and place of a condition that stands open, and does not say that it is over: the words of a look
// (`finding pull cord "ok"`), and work that ends nothing of it (`pull cord tightened`, where it is dead). Whoever reads that it is
// open wants to know them, and whoever wrote them may have meant that it is over.

import type { Estate } from '../model/estate.js';
import type { Origin } from '../model/origin.js';
import type { ConditionLine, Inspection, NotedFinding, Service } from '../model/records.js';
import type { CalendarDay } from '../units/calendar.js';
import type { Condition } from './follow-up.js';
import { partNameOf } from './kinds.js';
import { couldBeThere, saidOf } from './same-finding.js';
import { workWords } from './service.js';
import { isTrial, trialText } from './trials.js';

export type Beside = { readonly day: CalendarDay; readonly words: string; readonly origin: Origin } & (
  | {
      readonly by: 'look';
      readonly remark: NotedFinding;
      /** By a word that it is called by. */ readonly isNamed: boolean;
    }
  | { readonly by: 'work'; readonly work: Service }
);

/** Since it was seen first, oldest first. */
export function saidBeside(
  { inspections, services }: Pick<Estate, 'inspections' | 'services'>,
  { first, last, closed }: Condition,
  asOf?: CalendarDay,
): readonly Beside[] {
  if (closed) return [];
  const { conveyor, date } = first.record;
  const isSince = (each: { readonly conveyor: typeof conveyor; readonly date: typeof date }): boolean =>
    each.conveyor === conveyor && each.date.day >= date.day && each.date.day <= (asOf ?? Infinity);
  // Beside its own line a look tells more of it, but for what sounds as if it were over.
  const said = (look: Inspection, remark: NotedFinding): ReturnType<typeof saidOf> =>
    look !== first.record || soundsOver(remark.text)
      ? saidOf(last.line, { remarks: [remark], conditions: [] })
      : [];
  const looks = inspections.filter(isSince).flatMap((look) =>
    look.remarks.flatMap((remark) =>
      said(look, remark).map(({ words, isNamed }): Beside => ({
        by: 'look',
        day: look.date.day,
        words,
        origin: remark.origin,
        remark,
        isNamed,
      })),
    ),
  );
  const done = services
    .filter((work) => isSince(work) && isWorkThere(work, last.line))
    .map((work): Beside => ({
      by: 'work',
      day: work.date.day,
      words: isTrial(work) ? trialText(work) : workWords(work),
      origin: work.origin,
      work,
    }));
  return [...looks, ...done].sort((a, b) => a.day - b.day);
}

/** Work of the part of a condition, there or at no place that is said; it is open, so it ended nothing of it. */
export function isWorkThere({ part, place, ended }: Service, line: ConditionLine): boolean {
  if (ended !== undefined || part === undefined || partNameOf(line) !== part) return false;
  return couldBeThere(place, line);
}

const over =
  /\b(no|none|without|gone|over|ok|okay|fine|good|well|mended|repaired|fixed|welded|closed|renewed|replaced|cleared|dry|quiet|tight|tried|tested)\b/i;

/** Words that may say that something is well again: whether they do, only whoever wrote them knows. */
export function soundsOver(words: string): boolean {
  return over.test(words);
}
