// What a plant's declared costs come to for a scope of work. All amounts are of one currency or none is used; what is not
// declared stays undefined and is said so, never taken for nothing.

import type { CostItem, Plant } from '../model/plant.js';
import type { LinerSpecification, ScrewSpecification } from '../model/specifications.js';
import { formatNumber } from '../units/format.js';

export interface Money {
  readonly currency: string;
  /** Of a whole conveyor so many metres long, as declared for all of it together. */
  planned(metres: number): number | undefined;
  unplanned(metres: number): number | undefined;
  repair(metres: number): number;
  /** A running hour lost. */
  readonly downtime: number | undefined;
  readonly inspection: number | undefined;
  /** So many metres of a liner: its own price, else what the plant says a liner costs. */
  liner(bought: Pick<LinerSpecification, 'price'>, metres: number): number | undefined;
  /** A screw so many metres long: its own price, else what the plant says a screw costs. */
  screw(bought: Pick<ScrewSpecification, 'price'>, metres: number): number | undefined;
  /** These crews for so many hours; undefined where one of them has no rate. */
  labour(crews: readonly string[], hours: number): number | undefined;
}

export type PlantMoney =
  | { readonly kind: 'money'; readonly money: Money }
  | { readonly kind: 'no costs' }
  /** Refused: two currencies. */
  | { readonly kind: 'currencies'; readonly currencies: readonly string[] };

/** `bought`: what would be fitted, whose prices count too. */
export function moneyOf(
  plant: Plant,
  bought: readonly Pick<LinerSpecification | ScrewSpecification, 'price'>[] = [],
): PlantMoney {
  const currencies = [
    ...new Set(
      [
        ...bought.map(({ price }) => price?.currency),
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
  const rate = (name: string): number => plant.crews.find((crew) => crew.name === name)?.rate?.value ?? NaN;
  return {
    kind: 'money',
    money: {
      currency,
      planned: (metres) => over('reline', metres),
      unplanned: (metres) => over('unplanned reline', metres),
      repair: (metres) => over('trough repair', Math.min(metres, 1)) ?? 0,
      downtime: an('downtime', 'money a duration'),
      inspection: an('inspection', 'money'),
      liner: ({ price }, metres) => (price ? price.value * metres : over('liner', metres)),
      screw: ({ price }, metres) => price?.value ?? over('screw', metres),
      labour: (crews, hours) => {
        const sum = crews.reduce((all, crew) => all + rate(crew), 0) * hours;
        return crews.length === 0 || Number.isNaN(sum) ? undefined : sum;
      },
    },
  };
}

/** To the ten, as amounts of this kind are known. */
export function amountText(value: number, currency: string): string {
  return `${formatNumber(Math.round(value / 10) * 10, 0)} ${currency}`;
}
