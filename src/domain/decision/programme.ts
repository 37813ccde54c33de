// Which conveyor at which outage, with which scope and crews, so that everything fits at the least expected cost? Each conveyor
// takes one candidate, or none where both risks allow that, or is left out for a price beyond all others; crews and platforms
// have the hours of the window, the shelf its panels (programme-formulation.ts); programme-solve.ts chooses. What cannot be kept
// is named with its reason.

import type { CalendarDay } from '../units/calendar.js';
import { formatDay } from '../units/calendar.js';
import { formatNumber } from '../units/format.js';
import type { ProgrammeSolver } from './integer-programme.js';
import { percent } from './option-setting.js';
import type { ConveyorDecision } from './conveyor-decision.js';
import type { PlacedJob } from './outage-schedule.js';
import { staysText } from './stays-words.js';
import { keepsRisks } from './two-chances.js';
import { breachOf, priceOf, type Choice } from './programme-formulation.js';
import { isLarge, placedIn, relaxedCost, solveProgramme } from './programme-solve.js';
import type { Candidate, ProgrammeConveyor, ProgrammeOutage, ProgrammeProblem } from './programme-problem.js';

export interface ProgrammeLine {
  readonly conveyor: string;
  readonly choice:
    | { readonly kind: 'reline'; readonly candidate: Candidate }
    | { readonly kind: 'nothing'; readonly expected: number }
    | { readonly kind: 'left out' };
  /** Why not all is kept: the accepted risk, the crews, the window. Undefined where all is. */
  readonly reason: string | undefined;
}

export interface OutageLoad {
  readonly outage: ProgrammeOutage;
  readonly jobs: readonly PlacedJob[];
  /** By crew. */
  readonly used: ReadonlyMap<string, number>;
  /** Hours that platforms are held, of hours × platforms. */
  readonly unitsUsed: number;
  /** Hours the crews would need if each conveyor chose alone, over what they have; above 1 it does not fit. */
  readonly alone: number;
}

export interface Saving {
  readonly what: string;
  /** Expected money saved, ≥ 0; undefined where the solver did not answer. */
  readonly saves: number | undefined;
  /** Conveyors that would then be within their risk and are not now. */
  readonly helps: readonly string[];
  /** By the relaxed programme, because a whole one for each would take too long. */
  readonly about: boolean;
}

export interface Programme {
  readonly plant: string;
  readonly currency: string | undefined;
  readonly lines: readonly ProgrammeLine[];
  readonly loads: readonly OutageLoad[];
  readonly expected: number;
  /** Of choosing each conveyor alone, whether it fits or not. */
  readonly expectedAlone: number;
  readonly aloneFits: boolean;
  /** Of the expected cost over what is proven to be the least; 0 where it is proven. */
  readonly gap: number;
  /** Above 0 where breaches of a risk are not proven to be as few and small as can be. */
  readonly breachesOverLeast: number;
  readonly savings: readonly Saving[];
  /** Month as YYYY-MM: money for work done then, and conveyors whose liner is to be ordered by then. */
  readonly months: readonly ProgrammeMonth[];
  readonly problem: ProgrammeProblem;
}

export interface ProgrammeMonth {
  readonly month: string;
  /** Undefined where the cost of one of the relines is not known. */
  readonly money: number | undefined;
  readonly relines: readonly string[];
  readonly orders: readonly string[];
}

export type ProgrammeAnswer =
  | { readonly kind: 'programme'; readonly programme: Programme }
  | { readonly kind: 'none'; readonly why: string };

export function programmeOf(problem: ProgrammeProblem, solver: ProgrammeSolver): ProgrammeAnswer {
  if (problem.crews.length === 0)
    return {
      kind: 'none',
      why: `plant ${problem.plant} declares no crew, so nobody could work in its outages`,
    };
  const best = solveProgramme(problem, solver);
  if (best.kind !== 'chosen')
    return {
      kind: 'none',
      why: best.kind === 'infeasible' ? clash(problem) : 'the solver found no answer in its time',
    };
  const alone = problem.conveyors.map((conveyor) => bestAlone(conveyor));
  const lines = problem.conveyors.map((conveyor, i) => lineOf(problem, conveyor, best.chosen[i], alone[i]));
  const loads = problem.outages.map((outage, index) => loadOf(problem, outage, index, best.chosen, alone));
  return {
    kind: 'programme',
    programme: {
      plant: problem.plant,
      currency: problem.currency,
      lines,
      loads,
      expected: expectedOf(problem, best.chosen),
      expectedAlone: expectedOf(problem, alone),
      aloneFits: problem.outages.every((_, index) => placedIn(problem, index, alone) !== undefined),
      gap: best.gap,
      breachesOverLeast: best.breachesOverLeast ?? 0,
      savings: savingsOf(problem, solver, best.chosen, alone),
      months: monthsOf(problem, lines),
      problem,
    },
  };
}

/** What a conveyor would choose if it were the only one: by risk first, then by cost, all crews at hand. */
function bestAlone(conveyor: ProgrammeConveyor): Choice {
  const choices: Choice[] = [
    ...conveyor.candidates,
    ...(conveyor.nothingWithin ? (['nothing'] as const) : []),
  ];
  return choices.reduce<Choice>(
    (a, b) =>
      breachOf(b) < breachOf(a) ||
      (breachOf(b) === breachOf(a) && priceOf(conveyor, b) < priceOf(conveyor, a))
        ? b
        : a,
    'left out',
  );
}

function lineOf(
  problem: ProgrammeProblem,
  conveyor: ProgrammeConveyor,
  choice: Choice | undefined,
  alone: Choice | undefined,
): ProgrammeLine {
  const { name, decision } = conveyor;
  if (choice === undefined || choice === 'left out')
    return { conveyor: name, choice: { kind: 'left out' }, reason: whyLeftOut(problem, conveyor) };
  if (choice === 'nothing')
    return { conveyor: name, choice: { kind: 'nothing', expected: conveyor.nothing }, reason: undefined };
  const squeezed = typeof alone === 'object' && alone.within;
  const late =
    `the accepted risk ${decision.passedSeenBy === 'steel' ? 'of steel ' : ''}${passedWords(decision)}, ` +
    `before any outage that its liner can reach: ${percent(choice.condemn)} of the limit and ${percent(choice.contact)} of steel by then`;
  const reason = choice.within
    ? undefined
    : squeezed
      ? `within the risk it would fit only at ${problem.outages[alone.outage]?.name ?? ''}, where the hours are taken`
      : choice.stays?.keeps === false
        ? [...(keepsRisks(choice, decision.accepted) ? [] : [late]), staysText(choice.stays)].join('; ')
        : late;
  return { conveyor: name, choice: { kind: 'reline', candidate: choice }, reason };
}

function passedWords({ passedSeen, asOf }: ConveyorDecision): string {
  if (passedSeen === undefined) return 'is passed';
  if (passedSeen < asOf) return `has been passed since ${formatDay(passedSeen)}`;
  return passedSeen === asOf ? 'is passed already' : `is passed on ${formatDay(passedSeen)}`;
}

function whyLeftOut(problem: ProgrammeProblem, { candidates, decision }: ProgrammeConveyor): string {
  if (candidates.length === 0) {
    const obstacle = decision.options.find(
      ({ kind, obstacle: why }) => kind === 'planned reline' && why !== undefined,
    )?.obstacle;
    return obstacle ?? 'no outage can be reached';
  }
  const shortest = Math.min(...candidates.map(({ hours }) => hours));
  const longest = Math.max(...problem.outages.map(({ hours }) => hours));
  const fewest = Math.min(...candidates.map(({ units }) => units));
  if (fewest > problem.units)
    return `it takes ${fewest} platforms at once and there ${problem.units === 1 ? 'is' : 'are'} ${problem.units}`;
  return shortest > longest
    ? `it takes ${formatNumber(shortest, 1)} h and no outage has more than ${formatNumber(longest, 1)} h`
    : 'crews, platforms or panels on the shelf are all taken in the outages it could use';
}

function clash({ outages, crews }: ProgrammeProblem): string {
  return `nothing fits: ${outages.length} outages and ${crews.length} crews have no hours for any scope`;
}

function loadOf(
  problem: ProgrammeProblem,
  outage: ProgrammeOutage,
  index: number,
  chosen: readonly Choice[],
  alone: readonly Choice[],
): OutageLoad {
  const jobs = placedIn(problem, index, chosen) ?? [];
  const used = new Map(
    problem.crews.map((crew) => [
      crew,
      jobs.filter(({ crews }) => crews.includes(crew)).reduce((sum, { hours }) => sum + hours, 0),
    ]),
  );
  const crewHours = alone.reduce(
    (sum, each) =>
      typeof each === 'object' && each.outage === index ? sum + each.hours * each.crews.length : sum,
    0,
  );
  return {
    outage,
    jobs,
    used,
    unitsUsed: jobs.reduce((sum, job) => sum + job.units * job.hours, 0),
    alone: outage.hours > 0 ? crewHours / (outage.hours * problem.crews.length) : 0,
  };
}

function expectedOf(problem: ProgrammeProblem, chosen: readonly Choice[]): number {
  return problem.conveyors.reduce((sum, conveyor, i) => {
    const choice = chosen[i];
    if (typeof choice === 'object') return sum + choice.expected;
    return sum + conveyor.nothing;
  }, 0);
}

/** One more of each kind, the rest as it is: solved again, and the difference told. */
function savingsOf(
  problem: ProgrammeProblem,
  solver: ProgrammeSolver,
  now: readonly Choice[],
  alone: readonly Choice[],
): readonly Saving[] {
  // Where everybody has what it would choose alone, nothing more can save anything.
  const content = Math.abs(expectedOf(problem, now) - expectedOf(problem, alone)) < 1e-6;
  const more: { what: string; problem: ProgrammeProblem }[] = [
    { what: 'one more crew', problem: withCrew(problem) },
    { what: 'one more platform', problem: { ...problem, units: problem.units + 1 } },
    ...problem.outages.map((outage, index) => ({
      what: `one day more at ${outage.name}`,
      problem: {
        ...problem,
        outages: problem.outages.map((each, i) =>
          i === index ? { ...each, hours: each.hours + hoursADay(each) } : each,
        ),
      },
    })),
  ];
  const about = isLarge(problem);
  const breaches = now.reduce((sum, choice) => sum + breachOf(choice), 0);
  const relaxed = about && !content ? relaxedCost(problem, solver, breaches) : undefined;
  return more.map(({ what, problem: changed }) => {
    if (content) return { what, saves: 0, helps: [], about: false };
    if (about) {
      const then = relaxedCost(changed, solver, breaches);
      const saves = relaxed === undefined || then === undefined ? undefined : Math.max(0, relaxed - then);
      return { what, saves, helps: [], about };
    }
    const solved = solveProgramme(changed, solver);
    if (solved.kind !== 'chosen') return { what, saves: undefined, helps: [], about };
    const helps = problem.conveyors.flatMap(({ name }, i) =>
      !kept(now[i]) && kept(solved.chosen[i]) ? [name] : [],
    );
    const saves = expectedOf(problem, now) - expectedOf(changed, solved.chosen);
    return { what, saves: helps.length > 0 ? saves : Math.max(0, saves), helps, about };
  });
}

function kept(choice: Choice | undefined): boolean {
  return choice === 'nothing' || (typeof choice === 'object' && choice.within);
}

/** A crew like the quickest that works alone. */
function withCrew(problem: ProgrammeProblem): ProgrammeProblem {
  const name = 'one more crew';
  return {
    ...problem,
    crews: [...problem.crews, name],
    conveyors: problem.conveyors.map((conveyor) => {
      const single = conveyor.candidates.filter(({ crews }) => crews.length === 1);
      const quickest = (of: Candidate): boolean =>
        single.every(
          (other) => other.scope !== of.scope || other.outage !== of.outage || other.hours >= of.hours,
        );
      return {
        ...conveyor,
        candidates: [
          ...conveyor.candidates,
          ...single.filter(quickest).map((candidate) => ({ ...candidate, crews: [name] })),
        ],
      };
    }),
  };
}

/** As many hours as a day of this window has, the days without a shift counted in. */
function hoursADay({ hours, from, to }: ProgrammeOutage): number {
  return hours / Math.max(1, to - from + 1);
}

function monthsOf(problem: ProgrammeProblem, lines: readonly ProgrammeLine[]): readonly ProgrammeMonth[] {
  const months = new Map<string, { money: number | undefined; relines: string[]; orders: string[] }>();
  const at = (day: CalendarDay): { money: number | undefined; relines: string[]; orders: string[] } => {
    const month = formatDay(day).slice(0, 7);
    const known = months.get(month) ?? { money: 0, relines: [], orders: [] };
    months.set(month, known);
    return known;
  };
  for (const { conveyor, choice } of lines) {
    if (choice.kind !== 'reline') continue;
    const { candidate } = choice;
    const outage = problem.outages[candidate.outage];
    if (!outage) continue;
    const month = at(outage.from);
    month.money =
      month.money === undefined || candidate.cost === undefined ? undefined : month.money + candidate.cost;
    month.relines.push(conveyor);
    if (candidate.order.kind === 'order') at(candidate.order.day).orders.push(conveyor);
  }
  return [...months].sort(([a], [b]) => (a < b ? -1 : 1)).map(([month, each]) => ({ month, ...each }));
}
