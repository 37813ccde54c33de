// What every option of a conveyor is reckoned with: the outlook, the accepted risks, the supplies, the money, the horizon.
// Expected cost of an option = what the work costs + chance of steel until then × what steel costs, where the work counts with
// the share of the new liner's life that is used up by the end of the horizon: relining sooner throws life away.

import type { Conveyor } from '../model/conveyor.js';
import type { Outage } from '../model/plant.js';
import { formatDay, type CalendarDay } from '../units/calendar.js';
import { formatNumber } from '../units/format.js';
import { amountText, type Money } from './money.js';
import type { AcceptedRisk, ScopeWork, Scopes } from './scope.js';
import type { Supplies } from './supply.js';
import type { WearOutlook } from './wear-outlook.js';

export interface OptionSetting {
  readonly conveyor: Conveyor;
  readonly outlook: WearOutlook;
  readonly accepted: AcceptedRisk;
  readonly scopes: Scopes;
  readonly supplies: ReadonlyMap<ScopeWork, Supplies>;
  /** Still to come, in order. */
  readonly outages: readonly Outage[];
  readonly money: Money | undefined;
  /** Exposure a new liner lasts at the governing place, middle value. */
  readonly newLife: number | undefined;
  /** Until when costs are counted: the last outage, or a year. */
  readonly horizon: CalendarDay;
  /** Standard deviation of a reading, mm. */
  readonly gauge: number;
}

export interface Reckoned {
  readonly cost: number | undefined;
  readonly expected: number | undefined;
  readonly expectedSeen: number | undefined;
  readonly working: readonly string[];
}

export interface Reckoning {
  readonly day: CalendarDay;
  readonly scope: ScopeWork | undefined;
  readonly planned: boolean;
  /** Money for whatever comes on top, with words. */
  readonly extra?: { readonly amount: number; readonly words: string } | undefined;
}

/** Cost of relining a scope on a day, expected cost by the horizon, and how they came about. */
export function reckon(setting: OptionSetting, { day, scope, planned, extra }: Reckoning): Reckoned {
  const { money, outlook, horizon } = setting;
  const metres = linedMetres(setting);
  const contact = outlook.counted.contactBy(day);
  const damage = money && contactCost(setting);
  if (!money || damage === undefined || !scope) return nothingReckoned;
  const say = (value: number): string => amountText(value, money.currency);
  const whole = planned ? money.planned(metres) : money.unplanned(metres);
  const wholeWork = setting.scopes.works.at(-1)?.work;
  if (whole === undefined || !wholeWork) return nothingReckoned;
  const share = shareOfWork(scope, wholeWork.together.personHours);
  const stop = planned ? 0 : stopCost(setting, scope);
  const cost = whole * share + stop + (extra?.amount ?? 0);
  const used = usedShare(setting, day);
  const restUntil = day < setting.scopes.until ? setting.scopes.until : horizon;
  const rest = scope.work.whole ? 0 : restContact(setting, scope, restUntil);
  const expected = whole * share * used + stop + (extra?.amount ?? 0) + (contact + rest) * damage;
  const working = [
    `${planned ? 'reline' : 'unplanned reline'} ` +
      `${say(whole)}${share < 1 ? ` × ${formatNumber(share * 100, 0)} % of the person-hours of the whole (${formatNumber(scope.work.together.personHours, 0)} of ${formatNumber(wholeWork.together.personHours, 0)} h, by the planner)` : ''}`,
    ...(stop > 0
      ? [
          `downtime ${say(stop)}: ${formatNumber(stopHours(setting, scope), 0)} running hours lost while the ` +
            `crews work ${formatNumber(scope.work.together.duration, 1)} h`,
        ]
      : []),
    ...(extra && extra.amount > 0 ? [`${extra.words} ${say(extra.amount)}`] : []),
    `expected: ${formatNumber(used * 100, 0)} % of the new liner’s life is used by ` +
      `${formatDay(horizon)}; steel by ${formatDay(day)} with a chance of ` +
      `${percent(contact)}${rest > 0 ? `, of what stays by ${formatDay(restUntil)} ${percent(rest)}` : ''}, which would cost ${say(damage)}`,
  ];
  const seen = outlook.seen?.contactBy(day) ?? contact;
  return { cost, expected, expectedSeen: expected - (contact - seen) * damage, working };
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
  const metres = linedMetres(setting);
  const unplanned = money?.unplanned(metres);
  if (!money || unplanned === undefined) return undefined;
  const whole = setting.scopes.works.at(-1);
  return unplanned + money.repair(metres) + (whole ? stopCost(setting, whole) : 0);
}

export function linedMetres({ scopes }: OptionSetting): number {
  return scopes.works.at(-1)?.work.metres ?? 0;
}

function shareOfWork({ work }: ScopeWork, whole: number | undefined): number {
  const own = work.together.personHours;
  return work.whole || !own || !whole ? 1 : Math.min(1, own / whole);
}

/** The crews work in shifts; the conveyor stands from the first hour to the last. */
function stopHours({ conveyor, outlook }: OptionSetting, { work }: ScopeWork): number {
  const hours = work.together.duration;
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

/** Chance that steel is touched where the old liner stays, beyond what was counted before the reline. */
function restContact({ outlook }: OptionSetting, scope: ScopeWork, until: CalendarDay): number {
  return outlook.rest(scope.relined).contactBy(until);
}

export function percent(chance: number): string {
  if (chance > 0 && chance < 0.001) return '< 0.1 %';
  return `${formatNumber(chance * 100, chance < 0.0995 ? 1 : 0)} %`;
}
