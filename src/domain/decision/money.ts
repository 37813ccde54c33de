// What a plant's declared costs come to for a scope of work. All amounts are of one currency or none is used; what is not
// declared stays undefined and is said so, never taken for nothing.

import type { CostItem, Plant } from '../model/plant.js';
import { formatNumber } from '../units/format.js';

export interface Money {
  readonly currency: string;
  /** Of a whole conveyor so many metres long. */
  planned(metres: number): number | undefined;
  unplanned(metres: number): number | undefined;
  repair(metres: number): number;
  /** A running hour lost. */
  readonly downtime: number | undefined;
  readonly inspection: number | undefined;
  /** Of all crews together an hour; undefined where no crew has a rate. */
  readonly crews: number | undefined;
}

export type PlantMoney =
  | { readonly kind: 'money'; readonly money: Money }
  | { readonly kind: 'no costs' }
  /** Refused: two currencies. */
  | { readonly kind: 'currencies'; readonly currencies: readonly string[] };

export function moneyOf(plant: Plant): PlantMoney {
  const currencies = [
    ...new Set(
      [
        ...plant.costs.map(({ amount }) => amount.currency),
        ...plant.expedited.map(({ price }) => price.currency),
        ...plant.crews.map(({ rate }) => rate?.currency),
      ].flatMap((each) => each ?? []),
    ),
  ];
  const [currency, second] = currencies;
  if (second !== undefined) return { kind: 'currencies', currencies };
  if (currency === undefined || plant.costs.length === 0) return { kind: 'no costs' };
  const over = (item: CostItem, metres: number): number | undefined => {
    const cost = plant.costs.find((each) => each.item === item)?.amount;
    if (!cost) return undefined;
    return cost.dimension === 'money a length' ? cost.value * metres : cost.value;
  };
  const an = (item: CostItem, dimension: 'money' | 'money a duration'): number | undefined => {
    const cost = plant.costs.find((each) => each.item === item)?.amount;
    return cost?.dimension === dimension ? cost.value : undefined;
  };
  const rates = plant.crews.flatMap(({ rate }) => rate?.value ?? []);
  return {
    kind: 'money',
    money: {
      currency,
      planned: (metres) => over('reline', metres),
      unplanned: (metres) => over('unplanned reline', metres),
      repair: (metres) => over('trough repair', Math.min(metres, 1)) ?? 0,
      downtime: an('downtime', 'money a duration'),
      inspection: an('inspection', 'money'),
      crews: rates.length > 0 ? rates.reduce((sum, rate) => sum + rate, 0) : undefined,
    },
  };
}

/** To the ten, as amounts of this kind are known. */
export function amountText(value: number, currency: string): string {
  return `${formatNumber(Math.round(value / 10) * 10, 0)} ${currency}`;
}
