// More hours a day than the day has?

import type { Stated } from '../../../domain/model/stated.js';
import { formatValue } from '../../../domain/units/format.js';
import type { Found } from '../../finding.js';
import type { Rule } from '../../rule.js';

export const dutyAboveTheClock: Rule = {
  code: 'TL244',
  title: 'Duty of more hours than there are',
  severity: 'error',
  restsOn: [],
  why: 'Dates are reckoned from running hours by the duty; every date would come out too early.',
  todo: 'A week has 168 hours and a day 24: check the number and whether a day or a week was meant.',
  given: 'conveyor',
  example: '  duty «190 h/week|110 h/week» ± 10 %',
  cases: [
    { name: 'around the clock', text: '  duty 168 h/week' },
    { name: 'an hour more a week than there are', text: '  duty «169 h/week»' },
  ],
  *check({ estate }) {
    for (const { name, duty } of estate.plants) yield* judge(name, duty?.nominal);
    for (const { name, duty } of estate.conveyors) yield* judge(name, duty?.nominal);
    for (const { conveyor, duty } of estate.dutyChanges) if (duty) yield* judge(conveyor.name, duty.nominal);
  },
};

function* judge(name: string, duty: Stated<'duty'> | undefined): Iterable<Found> {
  if (!duty || duty.value <= 24 + 1e-9) return;
  yield {
    origin: duty.origin,
    message: `The duty of ${name} is ${duty.text}, which is ${formatValue(duty.value, 'duty', { unit: 'h/d', digits: 1 })}.`,
  };
}
