// What a programme chooses from: for every conveyor whose risk passes within the horizon, each scope at each outage that its liner
// can reach, with the crews that would do it. Hours are the planner's; costs and chances are those of the options, by what was
// seen, because where little was seen a look comes first.

import type { Plant } from '../model/plant.js';
import type { CalendarDay } from '../units/calendar.js';
import type { ConveyorDecision } from './conveyor-decision.js';
import type { DecisionOption } from './option.js';
import { ordersOn, shelfOn, type LinerWentIn } from '../model/shelf.js';
import { isNow, orderWith, type OrderCall } from './order-call.js';
import { isBought, type Supply } from './supply.js';
import { hoursIn, type TeamWork } from './trial-work.js';
import type { WhatStays } from './what-stays.js';

export interface ProgrammeOutage {
  readonly name: string;
  readonly from: CalendarDay;
  readonly to: CalendarDay;
  /** Working hours of the window. */
  readonly hours: number;
}

export interface Candidate {
  readonly conveyor: string;
  readonly scope: string;
  /** Position in `outages`. */
  readonly outage: number;
  readonly crews: readonly string[];
  /** From first step to last, of the plan that a pack prints for it. */
  readonly hours: number;
  /** The job whose plan that is; left out where none is written for it. */
  readonly job?: string;
  readonly personHours: number;
  /** Platforms it holds at once. */
  readonly units: number;
  /** Whole panels it takes from the shelf, where nothing else arrives in time; else none. */
  readonly fromShelf: readonly { readonly liner: string; readonly panels: number }[];
  readonly expected: number;
  readonly cost: number | undefined;
  /** Chances until then by what was seen. */
  readonly condemn: number;
  readonly contact: number;
  /** What a part leaves lying; left out where nothing stays. */
  readonly stays?: WhatStays | undefined;
  readonly within: boolean;
  /** Its liner is in time by the dearer, faster delivery alone, whose price is in the cost. */
  readonly expedited: boolean;
  /** On the shelf where all of it lies there. */
  readonly order: OrderCall;
}

export interface ProgrammeConveyor {
  readonly name: string;
  readonly decision: ConveyorDecision;
  /** Expected cost of relining nothing, and whether the conveyor's own plan allows it. */
  readonly nothing: number;
  readonly nothingWithin: boolean;
  readonly candidates: readonly Candidate[];
}

export interface ProgrammeProblem {
  readonly plant: string;
  readonly currency: string | undefined;
  /** Costs without which no expected cost can be told; chances are weighed in their place. */
  readonly missingCosts?: readonly string[];
  readonly crews: readonly string[];
  readonly units: number;
  readonly outages: readonly ProgrammeOutage[];
  readonly shelf: ReadonlyMap<string, number>;
  readonly conveyors: readonly ProgrammeConveyor[];
}

/** Undefined where the plant has no outage to come or no conveyor is due. */
export function programmeProblem(
  plant: Plant,
  decisions: readonly ConveyorDecision[],
  relines: readonly LinerWentIn[],
): ProgrammeProblem | undefined {
  const due = decisions.filter(({ conveyor, setting }) => conveyor.plant === plant && setting !== undefined);
  const [first] = due;
  const declared = first?.setting?.outages ?? [];
  if (!first || declared.length === 0) return undefined;
  const outages = declared.map((outage) => ({
    name: outage.name,
    from: outage.from.day,
    to: outage.to.day,
    hours: hoursIn(outage, first.conveyor),
  }));
  return {
    plant: plant.name,
    currency: first.money.kind === 'money' ? first.money.money.currency : undefined,
    missingCosts: [...new Set(due.flatMap((decision) => decision.missingCosts))],
    crews: plant.crews.map(({ name }) => name),
    units: plant.accessUnits.length,
    outages,
    shelf: panelsBought(plant, first.asOf, relines),
    conveyors: due.map((decision) => conveyorOf(decision, outages)),
  };
}

/** Panels of each liner on the shelf and on their way, of all lengths; a liner of which none was ever counted or ordered is left out. */
function panelsBought(
  plant: Plant,
  asOf: CalendarDay,
  relines: readonly LinerWentIn[],
): ReadonlyMap<string, number> {
  const names = new Set([...plant.shelf, ...(plant.ordered ?? [])].map(({ liner }) => liner.name));
  const bought = new Map<string, number>();
  for (const name of names)
    for (const { item, count } of [
      ...shelfOn(plant, { name }, asOf),
      ...ordersOn(plant, { name }, asOf, relines),
    ])
      if (item === 'panels') bought.set(name, (bought.get(name) ?? 0) + count.count);
  return bought;
}

function conveyorOf(decision: ConveyorDecision, outages: readonly ProgrammeOutage[]): ProgrammeConveyor {
  const nothing = decision.options.find(({ kind }) => kind === 'do nothing');
  return {
    name: decision.conveyor.name,
    decision,
    nothing: weightOf(nothing),
    nothingWithin: decision.plan.kind === 'nothing due' || decision.plan.kind === 'look',
    candidates: (decision.scopes?.works ?? []).flatMap((scope) => {
      const ways = decision.supplies.get(scope)?.ways ?? [];
      return outages.flatMap((outage, index) => {
        const work = scope.work.at(outage.from);
        const teams = [work.together, ...work.others()];
        const option = decision.options.find(
          (each) => each.scope === work.scope && each.outage === outage.name && each.day === outage.from,
        );
        if (!option || option.obstacle !== undefined) return [];
        const soon = ways.filter((way) => way.day <= outage.from);
        const boughtOnly = soon.length > 0 && soon.every(isBought);
        const order = orderFor(decision, index, outage, ways);
        return distinct(teams).map((team): Candidate => ({
          conveyor: decision.conveyor.name,
          scope: work.scope,
          outage: index,
          crews: team.crews,
          hours: team.duration,
          ...(team.job === undefined ? {} : { job: team.job }),
          personHours: team.personHours,
          units: team.units.length,
          fromShelf: boughtOnly
            ? work.pieces.map(({ liner, lengths }) => ({ liner: liner.name, panels: lengths.length }))
            : [],
          expected: weightOf(option) + (option.used ?? 1) * dearer(decision, work.together, team),
          cost: option.cost && option.cost + dearer(decision, work.together, team),
          condemn: option.condemnSeen ?? option.condemn ?? 1,
          contact: option.contactSeen ?? option.contact ?? 1,
          ...(option.stays && { stays: option.stays }),
          within: option.within,
          expedited: option.kind === 'expedite',
          order,
        }));
      });
    }),
  };
}

/** What is left to order for a scope at an outage. */
function orderFor(
  { order, outages, asOf, leadTime }: ConveyorDecision,
  index: number,
  { name, from }: ProgrammeOutage,
  ways: readonly Supply[],
): OrderCall {
  // A part from the shelf does not spare the whole, where that cannot wait for an outage.
  if (!ways.some(isBought) || (order && isNow(order)))
    return orderWith(
      order,
      { name, orderBy: outages[index]?.orderBy ?? from },
      { asOf, leadDeclared: leadTime.declared },
    );
  const bought = ways.find((way) => isBought(way) && way.day <= from);
  return bought?.by === 'ordered'
    ? { kind: 'ordered', arrives: bought.day, outage: name }
    : { kind: 'on the shelf', outage: name };
}

/** What a crew costs more, or less where below 0, than all of them together for the same work. */
function dearer({ money }: ConveyorDecision, together: TeamWork, team: TeamWork): number {
  const labour = ({ crews, duration }: TeamWork): number =>
    (money.kind === 'money' ? money.money.labour(crews, duration) : undefined) ?? NaN;
  const more = labour(team) - labour(together);
  return Number.isNaN(more) ? 0 : more;
}

/** Without costs the chance of steel stands for them, a point in a thousand as one. */
function weightOf(option: DecisionOption | undefined): number {
  if (!option) return 0;
  return (
    option.expectedSeen ??
    1000 * (option.contactSeen ?? option.contact ?? 1) + (option.condemnSeen ?? option.condemn ?? 1)
  );
}

/** A plant with one crew has it alone and together. */
function distinct(teams: readonly TeamWork[]): readonly TeamWork[] {
  return teams.filter(
    (team, i) => teams.findIndex((other) => other.crews.join() === team.crews.join()) === i,
  );
}
