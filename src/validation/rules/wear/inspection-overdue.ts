// Has half the remaining life passed since the last look (API 570: the interval is at most half the remaining life)? Judged at
// the newest record of the estate, hours by the duty.

import { wearTotal } from '../../../domain/model/liner-sets.js';
import { momentOn } from '../../../domain/model/history.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { formatHours, formatNumber } from '../../../domain/units/format.js';
import type { Overruled } from '../../../domain/wear/known.js';
import { firstToGo, onTheMeter } from '../../evidence/hand-lives.js';
import type { Rule } from '../../rule.js';
import { todayOf, todayWords } from '../../telling/today.js';
import { soundConveyor } from '../../telling/sound-conveyor.js';

export const inspectionOverdue: Rule = {
  code: 'TL502',
  title: 'Next inspection due',
  severity: 'warning',
  restsOn: ['looks', 'history', 'jobs'],
  why: 'More than half of the life that was left at the last look has been used; a rate that rose since then would not be noticed in time.',
  todo: 'Inspect at the next stop, the named spot first.',
  given: 'specifications',
  example: `
${soundConveyor('«DG1»', 'Tarnholt', 'point P1 at 4 m clock 7:30')}
${soundConveyor('DG2', 'Tarnholt', 'point P1 at 4 m clock 7:30')}
inspection DG1 ‹2025-09-08|2026-01-19› meter ‹9000|11000› h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness ‹6.2|6.6› mm
}
inspection DG2 2026-03-09 meter 12000 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 colour ivory
}
`,
  byTheCalendar: true,
  *check(input) {
    const { estate } = input;
    const newest = todayOf(input);
    if (newest === undefined) return;
    for (const { place, history, result, unit, end, from, overruled } of firstToGo(estate)) {
      const last = history.inspections.findLast(
        ({ inspection }) => inspection.endRow > inspection.firstRow,
      )?.inspection;
      if (!last || last.date.day >= newest) continue;
      const now = momentOn(history, newest);
      const total = wearTotal(history, now);
      if (total === undefined) continue;
      const read = end - result.remaining;
      if (total - read <= result.nextInspection) continue;
      const [run, left] = [total, end].map((until) => onTheMeter(history, unit, read, until));
      const say = (value: number): string =>
        unit === 't' ? `${formatNumber(Math.round(value))} t` : formatHours(Math.round(value));
      yield {
        origin: place.conveyor.nameOrigin,
        message:
          `${place.conveyor.name} has run about ${say(run ?? NaN)} since ${place.name} ${seenWords(overruled)} on ${formatDay(from.date.day)}, ` +
          `${total < end ? 'more than half' : 'more than all'} of the ${say(left ?? NaN)} that it had left; ` +
          (last.date.day === from.date.day ? '' : `the last look was on ${formatDay(last.date.day)}, `) +
          `${todayWords(input, newest)}.`,
      };
    }
  },
};

function seenWords(overruled: Overruled | undefined): string {
  if (overruled === undefined) return 'was measured';
  return overruled.by === 'steel' ? 'showed its trough' : 'was seen by its colour';
}
