// Are all amounts of a plant in one currency? Nothing here knows a rate of exchange.

import type { Estate } from '../../../domain/model/estate.js';
import type { Plant } from '../../../domain/model/plant.js';
import type { Origin } from '../../../domain/model/origin.js';
import type { Rule } from '../../rule.js';

export const costsInTwoCurrencies: Rule = {
  code: 'TL541',
  title: 'Costs in two currencies',
  severity: 'error',
  restsOn: [],
  why: 'Sums of different currencies mean nothing, so the report compares no costs for this plant at all.',
  todo: 'State every amount of the plant in one currency.',
  given: 'plant',
  bad: '  cost reline 9500 EUR\n  cost downtime «420 USD/h»',
  good: '  cost reline 9500 EUR\n  cost downtime 420 EUR/h',
  check: function* ({ estate }) {
    for (const plant of estate.plants) {
      const [first, ...others] = amountsOf(plant, estate);
      const other = first && others.find(({ currency }) => currency !== first.currency);
      if (!first || !other) continue;
      yield {
        origin: other.origin,
        message: `${other.what} of plant ${plant.name} is stated in ${other.currency}, and ${first.what} in ${first.currency}.`,
        related: [{ origin: first.origin, message: first.what }],
      };
    }
  },
};

interface Amount {
  readonly what: string;
  readonly currency: string;
  readonly origin: Origin;
}

/** Every amount that names a currency: costs, expedited lead times, crews, then what its conveyors are fitted with. */
function amountsOf(plant: Plant, { conveyors }: Estate): readonly Amount[] {
  const amount = (
    what: string,
    stated: { readonly currency?: string; readonly origin: Origin } | undefined,
  ): readonly Amount[] =>
    stated?.currency === undefined ? [] : [{ what, currency: stated.currency, origin: stated.origin }];
  const own = conveyors.filter((conveyor) => conveyor.plant === plant);
  const bought = new Set(own.flatMap(({ liner, screw }) => [liner, screw]));
  return [
    ...plant.costs.flatMap(({ item, amount: stated }) => amount(`the cost of ${item}`, stated)),
    ...plant.expedited.flatMap(({ item, price }) => amount(`the price of an expedited ${item}`, price)),
    ...plant.crews.flatMap(({ name, rate }) => amount(`the cost of crew ${name}`, rate)),
    ...[...bought].flatMap(({ name, price }) => amount(`the price of ${name}`, price)),
  ];
}
