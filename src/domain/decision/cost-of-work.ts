// What does it cost to reline a scope? What is declared for the whole conveyor (`cost reline`, `cost unplanned reline`) is for
// everything together. Of it the liner by its price and the crews by their rates are known apart, so a part costs its own liner
// and its own crew hours by the planner, and of the rest its share by person-hours. Where the whole is not declared, liner and
// crews stand for it, if both are known.

import { type LengthUnit, metresWords } from '../units/length-words.js';
import { formatNumber } from '../units/format.js';
import { amountText, type Money } from './money.js';
import type { StretchWork } from './trial-work.js';

export interface CostOfWork {
  readonly amount: number;
  /** How it came about, a sentence each without a full stop. */
  readonly words: readonly string[];
  /** What is declared for the whole, where its liner and crews alone come to more, which then counts. */
  readonly exceeded: Exceeded | undefined;
}

export interface Exceeded {
  readonly item: 'reline' | 'unplanned reline';
  readonly declared: number;
  readonly reckoned: number;
}

/** Undefined where too little is declared. */
export function costOfWork(
  money: Money,
  scope: StretchWork,
  all: StretchWork,
  planned: boolean,
  /** In which its words speak. */
  unit: LengthUnit = 'mm',
): CostOfWork | undefined {
  // What is declared for the whole is what the whole costs, whoever does it and however long.
  const whole = scope.whole ? scope : all;
  const declared = planned ? money.planned(whole.metres) : money.unplanned(whole.metres);
  const [ofAll, own] = [known(money, whole), known(money, scope)];
  if (declared === undefined && (ofAll.liner === undefined || ofAll.crews === undefined)) return undefined;
  const sum = ({ liner = 0, crews = 0 }: Known): number => liner + crews;
  const rest = declared === undefined ? 0 : Math.max(0, declared - sum(ofAll));
  const share = shareOf(scope, whole);
  const say = (value: number): string => amountText(value, money.currency);
  const parts = [
    ...(own.liner === undefined ? [] : [`liner ${say(own.liner)} (${metresWords(scope.metres, unit)})`]),
    ...(own.crews === undefined
      ? []
      : [
          `crews ${say(own.crews)} (${formatNumber(scope.together.duration, 1)} h of ${scope.together.crews.join(' and ')}, by the planner)`,
        ]),
  ];
  const name: Exceeded['item'] = planned ? 'reline' : 'unplanned reline';
  const exceeded =
    declared !== undefined && sum(ofAll) > declared
      ? { item: name, declared, reckoned: sum(ofAll) }
      : undefined;
  const dearer = exceeded
    ? `, which its liner and crews alone exceed (${say(sum(ofAll))}) and so stand for it`
    : '';
  const hours = (work: StretchWork): string => formatNumber(work.together.personHours, 0);
  const ofRest =
    `${formatNumber(share * 100, 0)} % of ` +
    (parts.length > 0
      ? `the ${say(rest)} that the ${name} of the whole costs besides`
      : `the ${name} of the whole`);
  return {
    amount: sum(own) + rest * share,
    words: [
      ...(declared === undefined ? [] : [`${name} of the whole ${say(declared)}, as declared${dearer}`]),
      ...(parts.length > 0 ? [parts.join(', ')] : []),
      ...(share < 1 && rest > 0
        ? [`${ofRest}, by person-hours (${hours(scope)} of ${hours(whole)}, by the planner)`]
        : parts.length > 0 && rest > 0
          ? [`all else ${say(rest)}`]
          : []),
    ],
    exceeded,
  };
}

interface Known {
  readonly liner: number | undefined;
  readonly crews: number | undefined;
}

function known(money: Money, { pieces, together }: StretchWork): Known {
  const liners = pieces.map(({ liner, lengths }) =>
    money.liner(liner, lengths.reduce((sum, length) => sum + length, 0) / 1000),
  );
  return {
    // With one price missing the sum would tell less than nothing.
    liner: liners.reduce(
      (sum, each) => (sum === undefined || each === undefined ? undefined : sum + each),
      0,
    ),
    crews: money.labour(together.crews, together.duration),
  };
}

function shareOf({ whole, together }: StretchWork, all: StretchWork): number {
  const [own, most] = [together.personHours, all.together.personHours];
  return whole || !own || !most ? 1 : Math.min(1, own / most);
}
