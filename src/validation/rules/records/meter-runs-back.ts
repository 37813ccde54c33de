// Does the hour meter ever show less than before, without a meter change between? Judged by counter.ts, which sets aside the
// fewest readings that make the rest agree.

import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { CounterReading } from '../../../domain/model/counter.js';
import { dutyOn, hoursByDuty } from '../../../domain/model/duty.js';
import type { Estate } from '../../../domain/model/estate.js';
import { historyOf } from '../../../domain/model/history.js';
import { addDays, formatDay } from '../../../domain/units/calendar.js';
import { formatHours } from '../../../domain/units/format.js';
import { beforeCommissioning, conflictsOf, placeOf } from '../../evidence/counter-conflicts.js';
import type { Fix } from '../../finding.js';
import { insertBefore } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';

export const meterRunsBack: Rule = {
  code: 'TL301',
  title: 'Meter that runs back',
  severity: 'error',
  restsOn: ['history'],
  why: 'Wear is reckoned by running hours: with a meter that jumps, rates and dates are wrong, or the reading is left out altogether.',
  todo: 'Look the reading up in the day book; if the meter was replaced, add a meter change with both readings.',
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 10.9 mm
}
‹|meter change DG1 2025-02-03 from 5900 h to 0 h "control panel replaced"
›inspection DG1 2025-03-10 meter «600 h» {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
}`,
  *check({ estate }) {
    for (const { conveyor, kind, reading, against } of conflictsOf(estate, 'hours')) {
      if (beforeCommissioning(conveyor, reading) || beforeCommissioning(conveyor, against)) continue; // has its own finding
      if (kind !== 'runs back') continue;
      const earlier = against.day <= reading.day;
      yield {
        origin: placeOf(estate, conveyor, reading, 'hours'),
        message:
          `The meter of ${conveyor.name} shows ${formatHours(reading.value)} on ${formatDay(reading.day)}, ` +
          `and ${formatHours(against.value)} ${earlier ? 'before, on' : 'after, on'} ${formatDay(against.day)}.`,
        related: [
          {
            origin: placeOf(estate, conveyor, against, 'hours'),
            message: `${formatHours(against.value)} on ${formatDay(against.day)}`,
          },
        ],
        fixes: earlier ? meterChangeBetween(estate, conveyor, against, reading) : [],
      };
    }
  },
};

/** Running hours a day where no duty is known, shown to whoever takes the fix (judgement: half of the day). */
const usualDay = 12;

/** A new meter that started at nought, put in so long before the reading as the duty needs to reach it. */
function meterChangeBetween(
  estate: Estate,
  conveyor: Conveyor,
  before: CounterReading,
  after: CounterReading,
): readonly Fix[] {
  if (after.record === undefined) return [];
  const { duties } = historyOf(estate, conveyor);
  const known = dutyOn(duties, after.day)?.perDay;
  const perDay = known ?? usualDay;
  const day = addDays(after.day, -Math.ceil(after.value / Math.max(perDay, 1)));
  if (day <= before.day) return [];
  const old = before.value + (hoursByDuty(duties, before.day, day) ?? 0);
  const line = `meter change ${conveyor.name} ${formatDay(day)} from ${Math.round(old)} h to 0 h`;
  return [
    insertBefore(
      after.origin,
      `${line}\n\n`,
      known === undefined
        ? `Add a meter change, reckoned at ${usualDay} h a day as no duty is known (put in the true day and readings)`
        : 'Add a meter change, reckoned by the duty (put in the true day and readings)',
    ),
  ];
}
