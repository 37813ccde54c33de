// Was there time enough before the newest round for the wear to show beyond the reading error? Judged by each spot's own
// long-term rate (API 570 form: fitted less read, over exposure); told when it holds for every spot that was read again.

import type { Estate } from '../../../domain/model/estate.js';
import { exposureBetween } from '../../../domain/model/exposure.js';
import { historyOf, momentOf } from '../../../domain/model/history.js';
import type { Inspection } from '../../../domain/model/records.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { handLives, type HandLife } from '../../evidence/hand-lives.js';
import { errorOf } from '../../../domain/model/reading-error.js';
import type { Rule } from '../../rule.js';

export const intervalWithinTheError: Rule = {
  code: 'TL313',
  title: 'Rounds too close together for the gauge',
  severity: 'information',
  restsOn: ['looks', 'history'],
  tags: ['advice'],
  why: 'The difference between the two rounds is mostly error: a short-term rate from it may be nought or double, and frightens or lulls.',
  todo: 'Go by the long-term rate, use a finer gauge, or leave more hours between rounds.',
  given: 'estate',
  example: `
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge depth gauge ± 0.5 mm
  P1 thickness 9.8 mm
}
inspection DG1 «2025-03-24|2025-12-15» meter ‹6420|10600› h {
  view downstream
  gauge depth gauge ± 0.5 mm
  P1 thickness ‹9.6|8.1› mm
}`,
  *check({ estate }) {
    for (const [conveyor, lives] of handLives(estate)) {
      const newest = historyOf(estate, conveyor).inspections.at(-1)?.inspection;
      const again = lives.filter((life) => life.inspection === newest && life.before !== undefined);
      const steps = again.flatMap((life) => stepOf(estate, life) ?? []);
      const widest = steps.reduce<Step | undefined>(
        (a, b) => (!a || b.wear / b.error > a.wear / a.error ? b : a),
        undefined,
      );
      if (!newest || !widest || widest.wear >= widest.error) continue;
      yield {
        origin: newest.date.origin,
        message:
          `Since the round of ${formatDay(widest.since.date.day)} at most ${lengthOn(conveyor, widest.wear)} can ` +
          `have worn off on ${conveyor.name}, ` +
          `and two readings differ by ± ${lengthOn(conveyor, widest.error)} from error alone.`,
        related: [{ origin: widest.since.date.origin, message: 'the round before' }],
      };
    }
  },
};

interface Step {
  /** mm, by the long-term rate. */
  readonly wear: number;
  readonly error: number;
  readonly since: Inspection;
}

function stepOf(
  estate: Estate,
  { before = -1, row, history, set, inspection, result }: HandLife,
): Step | undefined {
  const since = estate.inspections[estate.readings.inspection[before] ?? -1];
  if (
    !since ||
    since.date.day === inspection.date.day ||
    result.kind === 'no reading' ||
    !(result.longTerm > 0)
  )
    return undefined;
  const now = exposureBetween(history, set, momentOf(history, inspection));
  const then = exposureBetween(history, set, momentOf(history, since));
  if (!now.known || !then.known || now.value <= then.value) return undefined;
  return {
    wear: result.longTerm * (now.value - then.value),
    error: Math.hypot(errorOf(estate, before), errorOf(estate, row)),
    since,
  };
}
