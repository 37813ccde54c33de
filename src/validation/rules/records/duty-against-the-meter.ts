// Does the declared duty agree with what the meter counted over the last year of records? A third off [judgement], or twice the
// stated spread where that is more.

import { dutyOn } from '../../../domain/model/duty.js';
import { historyOf } from '../../../domain/model/history.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { formatValue } from '../../../domain/units/format.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '33 %',
  dimension: 'ratio',
  what: 'How far the counted duty may be from the declared one, where twice the declared spread is not more.',
  basis: 'judgement',
};

export const dutyAgainstTheMeter: Rule = {
  code: 'TL342',
  title: 'Declared duty far from what the meter counted',
  severity: 'information',
  restsOn: ['history'],
  why: 'Running hours are turned into dates by the duty: a reline planned by the wrong one comes months early or too late.',
  todo: 'If the duty has changed, add a duty record with the day from which it holds; otherwise correct the declared one.',
  threshold,
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  P1 colour ivory
}
inspection DG1 2025-09-08 meter «6000 h|9200 h» {
  P1 colour ivory
}`,
  *check({ estate }) {
    for (const conveyor of estate.conveyors) {
      const history = historyOf(estate, conveyor);
      const { observed } = history;
      const last = history.hours.knots.at(-1);
      if (
        !observed ||
        !last ||
        observed.from === undefined ||
        last.day - observed.from < 180 ||
        history.hours.knots.length < 2
      )
        continue;
      const declared = dutyOn(history.duties, last.day);
      // A duty that changed within the year is not what the year shows.
      if (
        !declared ||
        declared.perDay <= 0 ||
        declared.perDay > 24 ||
        (declared.from !== undefined && declared.from > observed.from)
      )
        continue;
      if (
        Math.abs(observed.perDay / declared.perDay - 1) <=
        Math.max(settled(conveyor.plant, 'TL342', threshold), 2 * (declared.spread ?? 0))
      )
        continue;
      const record = last.reading.record as
        { readonly meter?: { readonly hours: { readonly origin: typeof last.reading.origin } } } | undefined; // dated records all have a meter
      yield {
        origin: record?.meter?.hours.origin ?? last.reading.origin,
        message:
          `The meter of ${conveyor.name} counted ${formatValue(observed.perDay, 'duty', { digits: 0 })} from ` +
          `${formatDay(observed.from)} to ${formatDay(last.day)}, and its duty is declared as ${declared.text}.`,
        ...(declared.origin ? { related: [{ origin: declared.origin, message: 'the declared duty' }] } : {}),
      };
    }
  },
};
