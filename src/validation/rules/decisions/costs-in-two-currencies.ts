// Are all amounts of a plant in one currency? Nothing here knows a rate of exchange.

import type { Plant } from '../../../domain/model/plant.js';
import type { Origin } from '../../../domain/model/origin.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const costsInTwoCurrencies: Rule = {
  code: 'TL541',
  title: 'Costs in two currencies',
  severity: 'error',
  why: 'Sums of different currencies mean nothing, so the report compares no costs for this plant at all.',
  todo: 'State every amount of the plant in one currency.',
  given: 'plant',
  bad: '  cost reline 9500 EUR\n  cost downtime «420 USD/h»',
  good: '  cost reline 9500 EUR\n  cost downtime 420 EUR/h',
  check: each(
    (estate) => estate.plants,
    function* (plant) {
      const [first, ...others] = amountsOf(plant);
      const other = first && others.find(({ currency }) => currency !== first.currency);
      if (!first || !other) return;
      yield {
        origin: other.origin,
        message: `${other.what} of plant ${plant.name} is stated in ${other.currency}, and ${first.what} in ${first.currency}.`,
        related: [{ origin: first.origin, message: first.what }],
      };
    },
  ),
};

interface Amount {
  readonly what: string;
  readonly currency: string;
  readonly origin: Origin;
}

/** Every amount that names a currency, in the order costs, expedited lead times, crews. */
function amountsOf(plant: Plant): readonly Amount[] {
  const amount = (
    what: string,
    stated: { readonly currency?: string; readonly origin: Origin } | undefined,
  ): readonly Amount[] =>
    stated?.currency === undefined ? [] : [{ what, currency: stated.currency, origin: stated.origin }];
  return [
    ...plant.costs.flatMap(({ item, amount: stated }) => amount(`the cost of ${item}`, stated)),
    ...plant.expedited.flatMap(({ item, price }) => amount(`the price of an expedited ${item}`, price)),
    ...plant.crews.flatMap(({ name, rate }) => amount(`the cost of crew ${name}`, rate)),
  ];
}
