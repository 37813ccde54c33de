// Should the screw be changed in the same stop? Where its flight is expected to reach its limit before the end of the horizon, a
// change is due anyway: at the last outage before, or unplanned on that day. Done with a reline it throws flight away, but covers,
// isolation and access are paid once. Expected cost of the two together = the reline's + screw and crews now − what a change by
// itself would cost.

import type { Estate } from '../model/estate.js';
import { screwsOrderedOn, spareScrewOn, type ScrewOnOrder } from '../model/spare-screw.js';
import type { Outage, SpareScrew } from '../model/plant.js';
import type { ScrewSpecification } from '../model/specifications.js';
import { addDays, formatDay, type CalendarDay } from '../units/calendar.js';
import { formatNumber } from '../units/format.js';
import { amountText } from './money.js';
import type { DecisionOption } from './option.js';
import { hoursLost, percent, type OptionSetting } from './option-setting.js';
import { leadDays } from './supply.js';
import { screwWorkOf, type TeamWork } from './trial-work.js';
import type { ChanceBy } from './wear-outlook.js';

/** What is known of the wear of the screw that turns there. */
export interface ScrewOutlook {
  readonly screw: ScrewSpecification;
  /** The day by which half of such flights reach their limit, and the chance of it by a day. */
  readonly middle: CalendarDay;
  readonly reachedBy: ChanceBy;
  /** Running hours at the drive's speed that a new one lasts, middle value. */
  readonly newLife: number;
}

/** Undefined where no change is due within the horizon. */
export interface NewScrew extends ScrewOutlook {
  /** On the shelf, less what went in since it was counted. */
  readonly spare: SpareScrew | undefined;
  /** On their way, the soonest first. */
  readonly ordered: readonly ScrewOnOrder[];
  /** The whole reline with the change of the screw, and the change by itself. */
  readonly together: TeamWork;
  readonly alone: TeamWork;
}

export function newScrew(
  outlook: ScrewOutlook | undefined,
  setting: OptionSetting,
  estate: Estate,
): NewScrew | undefined {
  if (!outlook || outlook.middle > setting.horizon) return undefined;
  const pieces = setting.scopes.works.at(-1)?.work.pieces;
  const { conveyor, linerAt } = setting;
  return (
    pieces && {
      ...outlook,
      spare: spareScrewOn(conveyor.plant, outlook.screw, setting.outlook.asOf, estate.screwChanges),
      ordered: screwsOrderedOn(conveyor.plant, outlook.screw, setting.outlook.asOf, estate.screwChanges),
      together: screwWorkOf(conveyor, outlook.screw, linerAt, estate),
      alone: screwWorkOf(conveyor, outlook.screw, undefined, estate),
    }
  );
}

/** Each planned reline of the whole conveyor once more, with the screw in the same stop. */
export function withNewScrew(
  setting: OptionSetting,
  due: NewScrew | undefined,
  relines: readonly DecisionOption[],
): readonly DecisionOption[] {
  if (!due) return [];
  return relines.flatMap((reline) => {
    const outage = setting.outages.find(
      ({ name, from }) => name === reline.outage && from.day === reline.day,
    );
    return reline.kind === 'planned reline' && outage ? [together(setting, due, reline, outage)] : [];
  });
}

function together(
  setting: OptionSetting,
  due: NewScrew,
  reline: DecisionOption,
  outage: Outage,
): DecisionOption {
  const { conveyor, money, outlook } = setting;
  const day = outage.from.day;
  const sooner = deliveryOf(setting, due, day);
  const price = money?.screw(due.screw, conveyor.length.value / 1000);
  const labour = (team: TeamWork): number | undefined => money?.labour(team.crews, team.duration);
  const whole = setting.scopes.works.at(-1)?.work.together;
  const [both, own, plain] = [labour(due.together), labour(due.alone), whole && labour(whole)];
  const more = both === undefined || plain === undefined ? 0 : Math.max(0, both - plain);
  const cost =
    reline.cost === undefined || price === undefined ? undefined : reline.cost + price + more + sooner.price;
  const apart = setting.outages.findLast(({ from }) => from.day <= due.middle);
  const apartDay = apart?.from.day ?? due.middle;
  const stop = apart ? 0 : (money?.downtime ?? 0) * hoursLost(setting, due.alone.duration);
  const used = (from: CalendarDay): number =>
    Math.max(0, Math.min(1, (outlook.turnedBy(setting.horizon) - outlook.turnedBy(from)) / due.newLife));
  const now = price === undefined ? undefined : price * used(day) + more + sooner.price;
  const later = price === undefined ? undefined : price * used(apartDay) + (own ?? 0) + stop;
  const expected =
    reline.expected === undefined || now === undefined || later === undefined
      ? undefined
      : reline.expected + now - later;
  const say = (amount: number): string => amountText(amount, money?.currency ?? '');
  return {
    ...reline,
    kind: 'reline with a new screw',
    what: `${reline.what}, and change the screw in the same stop`,
    scope: undefined,
    obstacle: reline.obstacle ?? sooner.obstacle,
    cost,
    expected,
    expectedSeen: undefined,
    needs: [
      ...reline.needs,
      `screw ${due.screw.name} ${sooner.why}`,
      `${formatNumber(due.together.duration, 1)} h of ${due.together.crews.join(' and ')} for both`,
      `its flight reaches its limit by then with a chance of ${percent(due.reachedBy(day))}, about ${formatDay(due.middle)} half of them`,
    ],
    working: [
      ...reline.working,
      ...(price === undefined || later === undefined
        ? ['no price of the screw is declared']
        : [
            `screw ${say(price)}, of whose life ${formatNumber(used(day) * 100, 0)} % is used by ` +
              formatDay(setting.horizon) +
              (more > 0 ? `; crews ${say(more)} more than for the reline` : '') +
              (sooner.price > 0 ? `; expedited screw ${say(sooner.price)}` : ''),
            `saved: a change by itself ${apart ? `at ${apart.name}` : `unplanned on ${formatDay(apartDay)}`}, ` +
              `expected ${say(later)} (screw ${say(price * used(apartDay))} of its life used, ` +
              `crews ${say(own ?? 0)}${stop > 0 ? `, downtime ${say(stop)}` : ''})`,
          ]),
    ],
  };
}

interface Delivery {
  readonly why: string;
  readonly price: number;
  readonly obstacle: string | undefined;
}

/** From the shelf; ordered already; by the usual lead time where it is in time, else expedited where that is. */
function deliveryOf(
  { conveyor, outlook }: OptionSetting,
  { spare, ordered }: NewScrew,
  day: CalendarDay,
): Delivery {
  const { plant } = conveyor;
  if (spare && spare.count.count > 0)
    return {
      why: `from the shelf, counted on ${formatDay(spare.counted.day)}`,
      price: 0,
      obstacle: undefined,
    };
  const promised = ordered[0]?.order.arrives.day;
  if (promised !== undefined && promised <= day)
    return { why: `is ordered, promised for ${formatDay(promised)}`, price: 0, obstacle: undefined };
  const usual = leadDays(plant, 'screw');
  if (usual === undefined && promised === undefined)
    return { why: '', price: 0, obstacle: 'no lead time for the screw is declared' };
  const bought = usual === undefined ? Infinity : addDays(outlook.asOf, usual);
  const arrives = Math.min(bought, promised ?? Infinity) as CalendarDay;
  if (arrives <= day)
    return { why: `ordered today, there on ${formatDay(arrives)}`, price: 0, obstacle: undefined };
  const fast = plant.expedited.find(({ item }) => item === 'screw');
  const soon = fast && addDays(outlook.asOf, Math.ceil(fast.time.value / 24 - 1e-9));
  return fast && soon !== undefined && soon <= day
    ? { why: `expedited, there on ${formatDay(soon)}`, price: fast.price.value, obstacle: undefined }
    : { why: '', price: 0, obstacle: `the screw arrives on ${formatDay(arrives)}` };
}
