// What every option of a conveyor is reckoned with: the outlook, the accepted risks, the supplies, the money, the horizon.
// Expected cost of an option = what the work costs (cost-of-work.ts) where steel is not touched before + chance of steel × what steel
// costs, as an age replacement is reckoned. The work counts with the share of the new liner's life that is used up by the end of the
// horizon: relining sooner throws life away. Steel is touched once: then everything is relined, so what stays adds only what is left.

import { unitOfMachine } from '../model/unit-of-machine.js';
import type { Conveyor } from '../model/conveyor.js';
import type { Outage } from '../model/plant.js';
import { formatDay, type CalendarDay } from '../units/calendar.js';
import { formatNumber } from '../units/format.js';
import { costOfWork, type Exceeded } from './cost-of-work.js';
import { amountText, type Money } from './money.js';
import type { AcceptedRisk, ScopeWork, Scopes } from './scope.js';
import type { Supplies } from './supply.js';
import type { GoesBy } from './two-chances.js';
import type { LinerAt } from './trial-work.js';
import type { Chances, WearOutlook } from './wear-outlook.js';

export interface OptionSetting {
  readonly conveyor: Conveyor;
  readonly outlook: WearOutlook;
  readonly accepted: AcceptedRisk;
  readonly scopes: Scopes;
  readonly supplies: ReadonlyMap<ScopeWork, Supplies>;
  /** What is to lie where. */
  readonly linerAt: LinerAt;
  /** Still to come, in order. */
  readonly outages: readonly Outage[];
  readonly money: Money | undefined;
  /** Exposure a new liner lasts at the governing place, middle value. */
  readonly newLife: number | undefined;
  /** Until when costs are counted: the last outage, or a year. */
  readonly horizon: CalendarDay;
  /** Standard deviation of a reading, mm. */
  readonly gauge: number;
  /** The panels that the accepted risks are held against. */
  readonly goesBy: GoesBy;
}

export interface Reckoned {
  readonly cost: number | undefined;
  readonly expected: number | undefined;
  readonly expectedSeen: number | undefined;
  /** Share of the work's cost that the time until the horizon uses up, 0 to 1. */
  readonly used?: number;
  readonly working: readonly string[];
}

export interface Reckoning {
  readonly day: CalendarDay;
  readonly scope: ScopeWork | undefined;
  readonly planned: boolean;
  /** The day whose chances hold on `day`, where running less keeps them until then. */
  readonly asWornOn?: CalendarDay | undefined;
  /** Money for whatever comes on top, with words. */
  readonly extra?: { readonly amount: number; readonly words: string } | undefined;
}

/** Cost of relining a scope on a day, expected cost by the horizon, and how they came about. */
export function reckon(
  setting: OptionSetting,
  { day, scope, planned, extra, asWornOn = day }: Reckoning,
): Reckoned {
  const { money, outlook, horizon } = setting;
  const whole = setting.scopes.works.at(-1)?.work;
  const work =
    money && scope && whole && costOfWork(money, scope.work, whole, planned, unitOfMachine(setting.conveyor));
  if (!work) return nothingReckoned;
  const say = (value: number): string => amountText(value, money.currency);
  const stop = planned ? 0 : stopCost(setting, scope);
  const besides = stop + (extra?.amount ?? 0);
  const used = usedShare(setting, day);
  const working = [
    ...work.words,
    ...(stop > 0
      ? [
          `downtime ${say(stop)}: ${formatNumber(stopHours(setting, scope), 0)} running hours lost at ` +
            `${say(money.downtime ?? 0)} while the crews work ${formatNumber(scope.work.together.duration, 1)} h`,
        ]
      : []),
    ...(extra && extra.amount > 0 ? [`${extra.words} ${say(extra.amount)}`] : []),
  ];
  const cost = work.amount + besides;
  const damage = contactCost(setting);
  if (damage === undefined) return { ...nothingReckoned, cost, used, working };
  const restUntil = day < setting.scopes.until ? setting.scopes.until : horizon;
  const days = [asWornOn, restUntil] as const;
  const { contact, rest } = steelWith(scope, outlook.counted, (gone) => outlook.rest(gone), days);
  const seen = outlook.seen
    ? steelWith(scope, outlook.seen, (gone) => outlook.restSeen(gone), days)
    : { contact, rest };
  const bySeen = outlook.seen && seen.contact;
  // An expedited delivery is paid on the day of its order, the work only where it comes to it.
  const expectedOf = (by: SteelChances): number =>
    (extra?.amount ?? 0) + (1 - by.contact) * (work.amount * used + stop) + (by.contact + by.rest) * damage;
  return {
    cost,
    expected: expectedOf({ contact, rest }),
    expectedSeen: expectedOf(seen),
    used,
    working: [
      ...working,
      `expected: ${formatNumber(used * 100, 0)} % of the new liner’s life is used by ${formatDay(horizon)}; ` +
        `steel by ${formatDay(day)} with a chance of ${percent(contact)}` +
        `${bySeen !== undefined && bySeen < contact - 0.0005 ? ` (of what was seen ${percent(bySeen)})` : ''}` +
        `${rest > 0 ? `, of what stays after that by ${formatDay(restUntil)} ${percent(rest)}` : ''}, ` +
        `which would cost ${say(damage)}: ${contactWords(setting, money)}`,
    ],
  };
}

const nothingReckoned: Reckoned = {
  cost: undefined,
  expected: undefined,
  expectedSeen: undefined,
  working: [],
};

/** Steel touched: an unplanned reline, the repair of the trough, and the running hours lost meanwhile. */
export function contactCost(setting: OptionSetting): number | undefined {
  const { money } = setting;
  const whole = setting.scopes.works.at(-1);
  const unplanned = money && whole && costOfWork(money, whole.work, whole.work, false);
  if (!unplanned) return undefined;
  return unplanned.amount + money.repair(whole.work.metres) + stopCost(setting, whole);
}

/** Costs that are declared and passed over, because liner and crews alone come to more. */
export function exceededCosts({ money, scopes }: OptionSetting): readonly Exceeded[] {
  const whole = scopes.works.at(-1)?.work;
  if (!money || !whole) return [];
  return [true, false].flatMap((planned) => costOfWork(money, whole, whole, planned)?.exceeded ?? []);
}

/** What is not declared and leaves expected costs open, as it would be written; empty where the plant declares no costs at all. */
export function missingCosts({ money, scopes }: OptionSetting): readonly string[] {
  const whole = scopes.works.at(-1)?.work;
  if (!money || !whole) return [];
  return [
    ...(costOfWork(money, whole, whole, true) ? [] : ['cost reline']),
    ...(costOfWork(money, whole, whole, false) ? [] : ['cost unplanned reline']),
  ];
}

function contactWords(setting: OptionSetting, money: Money): string {
  const whole = setting.scopes.works.at(-1);
  const unplanned = whole && costOfWork(money, whole.work, whole.work, false);
  if (!unplanned) return '';
  const say = (value: number): string => amountText(value, money.currency);
  return (
    `unplanned reline ${say(unplanned.amount)}, repair of the trough ` +
    `${say(money.repair(whole.work.metres))}, downtime ${say(stopCost(setting, whole))}`
  );
}

function stopHours(setting: OptionSetting, { work }: ScopeWork): number {
  return hoursLost(setting, work.together.duration);
}

/** Running hours lost while crews work so long: they work in shifts, the conveyor stands from the first hour to the last. */
export function hoursLost({ conveyor, outlook }: OptionSetting, hours: number): number {
  const shifts = conveyor.plant.shifts;
  const perDay =
    shifts.length === 0 ? 8 : Math.max(...shifts.map((s) => shiftLength(s.from.hours, s.to.hours)));
  const days = hours / perDay;
  const clock = Math.floor(days) * 24 + (days - Math.floor(days)) * perDay;
  const running = outlook.hoursBy((outlook.asOf + 28) as CalendarDay) / 28; // four weeks on is a calendar day
  return (clock * running) / 24;
}

function shiftLength(from: number, to: number): number {
  return to > from ? to - from : to + 24 - from;
}

export function stopCost(setting: OptionSetting, scope: ScopeWork): number {
  return (setting.money?.downtime ?? 0) * stopHours(setting, scope);
}

/** Share of a new liner's life that is used from a day to the horizon, 0 to 1. */
function usedShare({ outlook, newLife, horizon }: OptionSetting, day: CalendarDay): number {
  if (newLife === undefined || !(newLife > 0)) return 1;
  const left = outlook.exposureBy(horizon) - outlook.exposureBy(day);
  return Math.max(0, Math.min(1, left / newLife));
}

interface SteelChances {
  /** Before the work, anywhere. */
  readonly contact: number;
  /** After it, where the old liner stays, and not before. */
  readonly rest: number;
}

/**
 * Steel before the work, or after it at what stays: (1 − C(t))·(R(u) − R(t))/(1 − R(t)), exact where what stays and what goes do not
 * depend on one another, and never more than if nothing went.
 */
function steelWith(
  { work, relined }: ScopeWork,
  { contactBy }: Chances,
  restOf: WearOutlook['rest'],
  [day, until]: readonly [CalendarDay, CalendarDay],
): SteelChances {
  const contact = contactBy(day);
  if (work.whole || contact >= 1) return { contact, rest: 0 };
  const { contactBy: restBy } = restOf(relined);
  const before = restBy(day);
  const rest = before < 1 ? ((1 - contact) * (restBy(until) - before)) / (1 - before) : 0;
  return { contact, rest: Math.max(0, Math.min(rest, contactBy(until) - contact)) };
}

/** A chance that is worked out as nothing is not known to be nothing: it reads as any other that is too small to print. */
export function percent(chance: number): string {
  if (chance < 0.001) return '< 0.1 %';
  return `${formatNumber(chance * 100, chance < 0.0995 ? 1 : 0)} %`;
}
