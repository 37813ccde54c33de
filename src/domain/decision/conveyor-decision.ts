// The row of one conveyor in the table of decisions: what governs, what may be accepted, when the risk passes, by which outage
// it can be relined and when it cannot, how soon at the earliest, what to order by when, and every option with its numbers.
// All pages, data and editor features print from this row.

import type { Conveyor } from '../model/conveyor.js';
import type { Estate } from '../model/estate.js';
import type { Outage } from '../model/plant.js';
import type { LinerSpecification } from '../model/specifications.js';
import type { Place } from '../model/records.js';
import { addDays, type CalendarDay } from '../units/calendar.js';
import { dueUntil, planFor, type ConveyorPlan } from './conveyor-plan.js';
import type { OutageDecision } from './outage-decision.js';
import { jobState, type JobState } from './jobs-written.js';
import { moneyOf, type PlantMoney } from './money.js';
import { newScrew, type ScrewOutlook } from './new-screw.js';
import { ruledOutOf, type DecisionOption, type RuledOut } from './option.js';
import type { Exceeded } from './cost-of-work.js';
import { exceededCosts, missingCosts, type OptionSetting } from './option-setting.js';
import { optionsOf } from './options.js';
import { orderCall, type OrderCall, type OrderedFor } from './order-call.js';
import { scopesOf, type AcceptedRisk, type Scopes, type ScopeWork } from './scope.js';
import { leadDays, suppliesOf, type Supplies, type Supply } from './supply.js';
import type { LinerAt } from './trial-work.js';
import { chancesOn, keepsRisks, type GoesBy, type TwoChances } from './two-chances.js';
import { dayPassed, type ChanceBy, type PanelOutlook, type WearOutlook } from './wear-outlook.js';

export interface Passing {
  readonly day: CalendarDay;
  readonly by: 'condemn limit' | 'steel';
}

export interface ConveyorDecision {
  readonly conveyor: Conveyor;
  readonly asOf: CalendarDay;
  readonly panels: number;
  readonly panelsSeen: number;
  /** The panel likeliest to reach its limit first, or seen at it. */
  readonly governing: PanelOutlook | undefined;
  readonly accepted: AcceptedRisk & { readonly contactAssumed: boolean };
  /** First day on which one of the accepted risks is passed, or was, unseen panels counted in; undefined within 40 years. */
  readonly passed: Passing | undefined;
  /** The same of what was seen. */
  readonly passedSeen: CalendarDay | undefined;
  /** Which of them it is on that day. */
  readonly passedSeenBy: Passing['by'] | undefined;
  readonly today: TwoChances;
  /** On any other day. */
  readonly chancesOn: (day: CalendarDay) => TwoChances;
  readonly outages: readonly OutageDecision[];
  /** The last outage that keeps both risks and that the liner can reach; undefined where there is none. */
  readonly chosen: OutageDecision | undefined;
  /** The same by what was seen alone, where only what nobody has seen stands against it; else undefined. */
  readonly chosenBySeen: OutageDecision | undefined;
  /** The panels that the accepted risks are held against. */
  readonly goesBy: GoesBy;
  readonly plan: ConveyorPlan;
  /** How soon the whole conveyor, and the smallest scope, can be relined, and the chances on that day. */
  readonly earliest: Earliest | undefined;
  readonly earliestPart: Earliest | undefined;
  /** Sooner than `earliest`, for a price; undefined where no faster delivery is declared, or it is no faster. */
  readonly expedited: CalendarDay | undefined;
  /** Undefined where nothing is due. */
  readonly order: OrderCall | undefined;
  readonly leadTime: { readonly days: number; readonly declared: boolean };
  /** Undefined where neither risk passes within the horizon: then nothing has to be decided. */
  readonly scopes: Scopes | undefined;
  readonly supplies: ReadonlyMap<ScopeWork, Supplies>;
  readonly options: readonly DecisionOption[];
  /** Where nothing can be done and waiting keeps no risk; undefined otherwise. */
  readonly ruledOut: RuledOut | undefined;
  readonly setting: OptionSetting | undefined;
  readonly jobs: readonly JobState[];
  readonly money: PlantMoney;
  /** Costs that are not declared though others are, so that no expected cost can be told: `cost unplanned reline`. */
  readonly missingCosts: readonly string[];
  /** Costs that are declared, where what is reckoned comes to more and counts in their place. */
  readonly exceededCosts: readonly Exceeded[];
  /** Last day that counts: of the last outage, or a year on. */
  readonly horizon: CalendarDay;
}

export interface Earliest extends TwoChances {
  readonly day: CalendarDay;
  readonly scope: string;
  readonly why: string;
}

export interface DecisionInput {
  readonly estate: Estate;
  readonly conveyor: Conveyor;
  /** What would be fitted; like for like where `linerAt` says what lies at a chainage. */
  readonly liner: LinerSpecification;
  readonly linerAt?: LinerAt;
  readonly outlook: WearOutlook;
  /** The point that the report calls governing; undefined where none was seen. */
  readonly governs?: Pick<Place, 'name' | 'at'> | undefined;
  readonly newLife: number | undefined;
  readonly gauge: number;
  /** Undefined where nothing tells how long the screw lasts. */
  readonly screw?: ScrewOutlook | undefined;
  /** The last look found the liner at its limit or through, or the trough at its minimum. */
  readonly atLimit?: boolean;
}

const fortyYears = 14_610;

export function decideConveyor(input: DecisionInput): ConveyorDecision {
  const { conveyor, outlook, estate, liner, linerAt = () => liner } = input;
  const { asOf } = outlook;
  const { plant } = conveyor;
  const accepted = acceptedBy(conveyor);
  const outages = outagesFrom(asOf, plant.outages);
  const horizon = outages.at(-1)?.to.day ?? addDays(asOf, 366);
  const passed = passing(outlook, accepted);
  const due = passed !== undefined && passed.day <= dueUntil(outages, horizon);
  const money = moneyOf(plant, [liner, conveyor.screw]);
  const until = outages[1]?.from.day ?? horizon;
  const named = panelAt(outlook, input.governs);
  const scopes = due
    ? scopesOf(conveyor, linerAt, { ...outlook, first: named }, accepted, until, estate)
    : undefined;
  const governing = named ? { ...named, ...placeOf(input.governs) } : firstPanel(outlook, until);
  const supplies = new Map(
    (scopes?.works ?? []).map((scope) => [scope, suppliesOf(plant, scope.work.pieces, asOf, estate.relines)]),
  );
  const whole = scopes?.works.at(-1);
  const [small] = scopes?.works ?? [];
  const lead = leadDays(plant, 'liner');
  const leadTime = { days: lead ?? 0, declared: lead !== undefined };
  const ways = whole && supplies.get(whole)?.ways;
  const waited = (scope: ScopeWork | undefined): readonly Supply[] | undefined =>
    scope && supplies.get(scope)?.ways.filter(({ by }) => by !== 'expedited');
  const usual = waited(whole);
  const promised = ways?.find(({ by }) => by === 'ordered')?.day;
  const arrives = usual?.[0]?.day ?? (lead === undefined ? undefined : addDays(asOf, lead));
  const rows = outages.map((outage) =>
    outageRow(outage, outlook, accepted, { arrives, promised }, leadTime.days),
  );
  const chosen = rows.findLast((row) => row.within && row.reachable);
  const seenPassing = outlook.seen && passing({ ...outlook, counted: outlook.seen }, accepted);
  const passedSeen = seenPassing?.day;
  const chosenBySeen = chosen ? undefined : lastBySeen(rows, accepted);
  const goesBy: GoesBy = chosen || !outlook.seen ? 'all panels' : 'what was seen';
  const setting: OptionSetting | undefined = scopes && {
    conveyor,
    outlook,
    accepted,
    scopes,
    supplies,
    linerAt,
    outages,
    money: money.kind === 'money' ? money.money : undefined,
    newLife: input.newLife,
    horizon,
    gauge: input.gauge,
    goesBy,
  };
  const options = setting ? optionsOf(setting, newScrew(input.screw, setting, estate)) : [];
  return {
    conveyor,
    asOf,
    panels: outlook.panels.length,
    panelsSeen: outlook.panels.filter(({ seen }) => seen).length,
    governing,
    accepted,
    passed,
    passedSeen,
    passedSeenBy: seenPassing?.by,
    today: chancesOn(outlook, asOf),
    chancesOn: (day) => chancesOn(outlook, day),
    outages: rows,
    chosen,
    chosenBySeen,
    goesBy,
    plan: planFor({ asOf, outages: rows, passed: passed?.day, passedSeen, chosen, chosenBySeen }),
    earliest: whole && earliestOf(outlook, whole, usual),
    earliestPart: small && small !== whole ? earliestOf(outlook, small, waited(small)) : undefined,
    expedited: ways?.find(({ by, day }) => by === 'expedited' && !(usual?.[0] && usual[0].day <= day))?.day,
    order:
      due || input.atLimit
        ? orderCall({
            asOf,
            chosen: chosen ?? chosenBySeen ?? beforeRisk(rows, passed?.day, leadTime.days),
            first: rows.find(({ reachable }) => reachable) ?? rows[0],
            atLimit: input.atLimit === true,
            leadDeclared: leadTime.declared,
            onShelf: ways?.some(({ by, day }) => by === 'shelf' && day <= asOf) ?? false,
            promised,
          })
        : undefined,
    leadTime,
    scopes,
    supplies,
    options,
    ruledOut: ruledOutOf(options),
    setting,
    jobs: estate.jobs
      .filter((job) => job.conveyor === conveyor && (job.window === undefined || job.window.to.day >= asOf))
      .map((job) => jobState(job, estate, due ? governing : undefined, supplyOf(whole, supplies), asOf)),
    money,
    missingCosts: setting ? missingCosts(setting) : [],
    exceededCosts: setting ? exceededCosts(setting) : [],
    horizon,
  };
}

function outagesFrom(asOf: CalendarDay, outages: readonly Outage[]): readonly Outage[] {
  return outages.filter(({ from }) => from.day >= asOf).sort((a, b) => a.from.day - b.from.day);
}

function lastBySeen(rows: readonly OutageDecision[], accepted: AcceptedRisk): OutageDecision | undefined {
  return rows.findLast(
    ({ condemnSeen = 1, contactSeen = 1, reachable }) =>
      keepsRisks({ condemn: condemnSeen, contact: contactSeen }, accepted) && reachable,
  );
}

/** Where no outage is declared the liner has to be there when a risk passes. */
function beforeRisk(
  rows: readonly OutageDecision[],
  passed: CalendarDay | undefined,
  days: number,
): OrderedFor | undefined {
  return rows.length > 0 || passed === undefined
    ? undefined
    : { name: undefined, orderBy: addDays(passed, -days) };
}

function outageRow(
  { name, from, to }: Outage,
  outlook: WearOutlook,
  accepted: AcceptedRisk,
  { arrives, promised }: Record<'arrives' | 'promised', CalendarDay | undefined>,
  leadDays: number,
): OutageDecision {
  const both = chancesOn(outlook, from.day);
  const orderBy = addDays(from.day, -leadDays);
  const reachable = arrives === undefined || arrives <= from.day;
  return {
    name,
    from: from.day,
    to: to.day,
    ...both,
    within: keepsRisks(both, accepted),
    arrives,
    reachable,
    orderBy,
    // What is ordered and comes in time is not to be ordered by any day.
    orderIsLate: orderBy < outlook.asOf && !(promised !== undefined && reachable),
  };
}

export function acceptedBy(conveyor: Conveyor): ConveyorDecision['accepted'] {
  const contact = conveyor.contactRisk ?? conveyor.plant.contactRisk;
  return {
    condemn: (conveyor.risk ?? conveyor.plant.risk).value,
    contact: contact.value,
    contactAssumed: contact.assumed !== undefined,
  };
}

function passing(
  { counted, asOf, since = asOf }: Pick<WearOutlook, 'counted' | 'asOf' | 'since'>,
  accepted: AcceptedRisk,
): Passing | undefined {
  const until = addDays(asOf, fortyYears);
  // What counts as passed from the first day on is known from the looks since: nobody can say on which day it was.
  const passedOn = (chance: ChanceBy, level: number): CalendarDay | undefined =>
    dayPassed(chance, level, chance(asOf) > level && chance(since) <= level ? since : asOf, until);
  const limit = passedOn(counted.condemnBy, accepted.condemn);
  const steel = passedOn(counted.contactBy, accepted.contact);
  if (steel !== undefined && (limit === undefined || steel < limit)) return { day: steel, by: 'steel' };
  return limit === undefined ? undefined : { day: limit, by: 'condemn limit' };
}

function panelAt({ panels }: WearOutlook, point: DecisionInput['governs']): PanelOutlook | undefined {
  return point && panels.find(({ seen, from, to }) => seen && from <= point.at && point.at <= to);
}

/** The point's own name and chainage: its panel may have a place of its own that goes before it by the forecast. */
function placeOf(point: DecisionInput['governs']): Partial<Pick<PanelOutlook, 'place' | 'at'>> {
  return point ? { place: point.name, at: point.at } : {};
}

/** Seen panels govern before unseen ones: what was seen can be named. */
function firstPanel({ panels }: WearOutlook, until: CalendarDay): PanelOutlook | undefined {
  const likeliest = (some: readonly PanelOutlook[]): PanelOutlook | undefined =>
    some.reduce<PanelOutlook | undefined>(
      (a, b) => (!a || b.condemnBy(until) > a.condemnBy(until) ? b : a),
      undefined,
    );
  return likeliest(panels.filter(({ seen }) => seen)) ?? likeliest(panels);
}

function earliestOf(
  outlook: WearOutlook,
  { work }: ScopeWork,
  ways: readonly Supply[] | undefined,
): Earliest | undefined {
  const way = ways?.[0];
  return way && { day: way.day, scope: work.scope, why: way.why, ...chancesOn(outlook, way.day) };
}

function supplyOf(
  scope: ScopeWork | undefined,
  supplies: ReadonlyMap<ScopeWork, Supplies>,
): { readonly scope: ScopeWork; readonly supplies: Supplies } | undefined {
  const found = scope && supplies.get(scope);
  return scope && found && { scope, supplies: found };
}
