// Do two outages of one plant share days?

import { formatDay } from '../../../domain/units/calendar.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const outagesOverlap: Rule = {
  code: 'TL246',
  title: 'Outages that overlap',
  severity: 'warning',
  restsOn: [],
  why: 'The crews would be planned into both at once.',
  todo: 'Check the dates, or write the two as one outage.',
  given: 'plant',
  example: `
  outage Spring27 2027-04-12 to 2027-04-23
  outage «Press27» ‹2027-04-19|2027-04-26› to 2027-04-30`,
  check: each(
    (estate) => estate.plants,
    function* (plant) {
      const outages = plant.outages
        .filter((one) => one.from.day <= one.to.day)
        .sort((a, b) => a.from.day - b.from.day);
      for (let i = 1; i < outages.length; i++) {
        const [before, after] = [outages[i - 1]!, outages[i]!]; // 0 ≤ i − 1 < i < outages.length
        if (after.from.day > before.to.day) continue;
        yield {
          origin: after.nameOrigin,
          message: `Outage ${after.name} starts on ${formatDay(after.from.day)}, and outage ${before.name} lasts until ${formatDay(before.to.day)}.`,
          related: [{ origin: before.nameOrigin, message: `outage ${before.name}` }],
        };
      }
    },
  ),
};
