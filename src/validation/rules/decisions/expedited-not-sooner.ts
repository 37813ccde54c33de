// Is what is paid extra for sooner at all?

import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const expeditedNotSooner: Rule = {
  code: 'TL542',
  title: 'Expedited lead time that is no shorter',
  severity: 'warning',
  restsOn: [],
  why: 'Money would be spent on a delivery that comes no sooner than the usual one.',
  todo: 'Check both lead times with the supplier.',
  given: 'plant',
  bad: '  expedited lead time liner «12 week» price 1800 EUR',
  good: '  expedited lead time liner 4 week price 1800 EUR',
  check: each(
    (estate) => estate.plants,
    function* (plant) {
      for (const { item, time } of plant.expedited) {
        const usual = plant.leadTimes.find((each) => each.item === item);
        if (!usual || time.value < usual.time.value) continue;
        yield {
          origin: time.origin,
          message: `Expedited, the ${item} takes ${time.text}; the usual lead time is ${usual.time.text}.`,
          related: [{ origin: usual.origin, message: 'the usual lead time' }],
        };
      }
    },
  ),
};
