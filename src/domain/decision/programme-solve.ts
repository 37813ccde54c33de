// How a programme is chosen: risks before money, and hour by hour. A small one is solved to the end: the fewest and smallest
// breaches of a risk, then the least cost that has no more of them; a set of jobs that does not fit an outage is barred, in every
// outage that is no longer, and it is solved again. A large one is searched (choice-search.ts) from the prices of the relaxed
// programme, whose cost is a bound; the gap to it is told. Where a searched outage is crowded, its hours are made a little fewer.

import { searchChoices, type GroupOption } from './choice-search.js';
import type { ProgrammeSolver, Row, Term } from './integer-programme.js';
import { fitIntoOutage, type PlacedJob } from './outage-schedule.js';
import { choiceOf, formulate, type Choice, type Formulation } from './programme-formulation.js';
import type { Candidate, ProgrammeProblem } from './programme-problem.js';

export type Chosen =
  | {
      readonly kind: 'chosen';
      readonly chosen: readonly Choice[];
      /** Of the cost over what is proven to be the least with as few breaches. */
      readonly gap: number;
      /** Where more or larger breaches were taken than are proven to be needed. */
      readonly breachesOverLeast?: number;
    }
  | { readonly kind: 'infeasible' }
  | { readonly kind: 'out of time' };

const mostCuts = 60;
/** More choices than that are searched: the solver would take minutes for the last percent. */
const mostToSolve = 6000;
const rounds = 1500;

/** `most`: choices up to which it is solved to the end. */
export function solveProgramme(
  problem: ProgrammeProblem,
  solver: ProgrammeSolver,
  most = mostToSolve,
): Chosen {
  const made = formulate(problem);
  return made.programme.choices.length > most
    ? searched(problem, made, solver)
    : solved(problem, made, solver);
}

/** Too large to be solved again for every question. */
export function isLarge(problem: ProgrammeProblem): boolean {
  return formulate(problem).programme.choices.length > mostToSolve;
}

/** What the relaxed programme costs with no more breaches than given: its differences tell about what more would save. */
export function relaxedCost(
  problem: ProgrammeProblem,
  solver: ProgrammeSolver,
  breaches: number,
): number | undefined {
  const made = formulate(problem);
  const held: Row = { sum: made.breaches, is: '<=', value: breaches + 1e-6 };
  const answer = solver({ ...made.programme, rows: [...made.programme.rows, held], relaxed: true });
  return answer.kind === 'solved' ? answer.cost : undefined;
}

function solved(
  problem: ProgrammeProblem,
  { programme, breaches, meaning }: Formulation,
  solver: ProgrammeSolver,
): Chosen {
  const cuts: Row[] = [];
  for (let round = 0; round <= mostCuts; round++) {
    const rows = [...programme.rows, ...cuts];
    const least = solver({ ...programme, rows, cost: breaches });
    if (least.kind !== 'solved') return least;
    const held: Row = { sum: breaches, is: '<=', value: least.cost + 1e-6 };
    const best = solver({ ...programme, rows: [...rows, held] });
    if (best.kind !== 'solved') return best;
    const chosen = problem.conveyors.map((_, i) => choiceOf(best, meaning, i));
    const more = problem.outages.flatMap((_, index) =>
      placedIn(problem, index, chosen) ? [] : barred(problem, index, chosen, meaning),
    );
    if (more.length === 0) return { kind: 'chosen', chosen, gap: best.gap };
    cuts.push(...more);
  }
  return { kind: 'out of time' };
}

/** As few of the crowded jobs as do not fit by themselves, barred here and wherever the window is no longer. */
function barred(
  problem: ProgrammeProblem,
  index: number,
  chosen: readonly Choice[],
  meaning: Formulation['meaning'],
): readonly Row[] {
  let jobs = jobsIn(chosen, index);
  const hours = problem.outages[index]?.hours ?? 0;
  for (const job of jobs) {
    const fewer = jobs.filter((each) => each !== job);
    if (!fitIntoOutage(fewer, hours, problem.units)) jobs = fewer;
  }
  const names = [...meaning];
  return problem.outages.flatMap((outage, o) => {
    if (outage.hours > hours) return [];
    const same = jobs.flatMap(
      (job) =>
        names.find(
          ([, { choice }]) => typeof choice === 'object' && choice.outage === o && sameWork(choice, job),
        )?.[0] ?? [],
    );
    return same.length < jobs.length
      ? []
      : [{ sum: same.map((of) => ({ by: 1, of })), is: '<=', value: same.length - 1 } as const];
  });
}

function sameWork(a: Candidate, b: Candidate): boolean {
  return (
    a.conveyor === b.conveyor &&
    a.scope === b.scope &&
    a.units === b.units &&
    a.hours === b.hours &&
    a.crews.join() === b.crews.join()
  );
}

/** A breach weighs more than all money together. */
const heavy = 1e7;
const mostTries = 12;
const shorter = 0.96;

function searched(problem: ProgrammeProblem, made: Formulation, solver: ProgrammeSolver): Chosen {
  const { programme, breaches } = made;
  const least = solver({ ...programme, cost: breaches });
  if (least.kind !== 'solved') return least;
  // The cost of the relaxed programme with no more breaches than must be: nothing that has as few can cost less.
  const must = least.cost / (1 + least.gap);
  const relaxed = solver({
    ...programme,
    rows: [...programme.rows, { sum: breaches, is: '<=', value: least.cost + 1e-6 }],
    relaxed: true,
  });
  if (relaxed.kind !== 'solved') return relaxed;
  const search = searchOf(problem, made, relaxed.prices ?? []);
  let capacity = search.capacity;
  let from: readonly number[] | undefined = search.names.map((names) =>
    Math.max(
      0,
      names.findIndex((name) => least.chosen.has(name)),
    ),
  );
  for (let round = 0; round < mostTries; round++) {
    const taken = searchChoices({ ...search, capacity, rounds, from });
    const chosen = taken.map((k, i) => made.meaning.get(search.names[i]?.[k] ?? '')?.choice ?? 'left out');
    const crowded = problem.outages.flatMap((_, index) => (placedIn(problem, index, chosen) ? [] : [index]));
    if (crowded.length === 0) {
      const [cost, beyond] = [programme.cost, breaches].map((terms) => sumOf(terms, search.names, taken));
      const gap = Math.max(0, (cost ?? 0) / relaxed.cost - 1);
      return {
        kind: 'chosen',
        chosen,
        gap: relaxed.cost > 0 ? gap : 0,
        ...((beyond ?? 0) > must + 1e-6 ? { breachesOverLeast: (beyond ?? 0) - must } : {}),
      };
    }
    capacity = capacity.map((value, row) =>
      crowded.some((index) => search.outageOf[row] === index) ? value * shorter : value,
    );
    from = undefined;
  }
  return { kind: 'out of time' };
}

interface Searched {
  readonly groups: readonly (readonly GroupOption[])[];
  readonly capacity: readonly number[];
  readonly prices: readonly number[];
  /** By conveyor and option. */
  readonly names: readonly (readonly string[])[];
  /** Outage of each row; undefined for the shelf. */
  readonly outageOf: readonly (number | undefined)[];
}

function searchOf(
  problem: ProgrammeProblem,
  { programme, breaches, meaning }: Formulation,
  prices: readonly number[],
): Searched {
  const breach = new Map(breaches.map(({ by, of }) => [of, by]));
  const cost = new Map(programme.cost.map(({ by, of }) => [of, by]));
  const bounding = programme.rows.flatMap((row, i) =>
    row.is === '<=' ? [{ row, price: prices[i] ?? 0 }] : [],
  );
  const uses = new Map<string, { row: number; by: number }[]>(programme.choices.map((name) => [name, []]));
  bounding.forEach(({ row }, r) => row.sum.forEach(({ by, of }) => uses.get(of)?.push({ row: r, by })));
  const names: string[][] = problem.conveyors.map(() => []);
  for (const name of programme.choices) names[meaning.get(name)?.conveyor ?? 0]?.push(name);
  return {
    names,
    groups: names.map((own) =>
      own.map((name) => ({
        cost: (cost.get(name) ?? 0) + heavy * (breach.get(name) ?? 0),
        uses: uses.get(name) ?? [],
      })),
    ),
    capacity: bounding.map(({ row }) => row.value),
    prices: bounding.map(({ price }) => price),
    outageOf: bounding.map(({ row }) => row.outage),
  };
}

function sumOf(
  terms: readonly Term[],
  names: readonly (readonly string[])[],
  taken: readonly number[],
): number {
  const by = new Map(terms.map((term) => [term.of, term.by]));
  return taken.reduce((sum, k, i) => sum + (by.get(names[i]?.[k] ?? '') ?? 0), 0);
}

function jobsIn(chosen: readonly Choice[], index: number): readonly Candidate[] {
  return chosen.flatMap((choice) => (typeof choice === 'object' && choice.outage === index ? [choice] : []));
}

/** Who works when in an outage; undefined where it does not fit. */
export function placedIn(
  problem: ProgrammeProblem,
  index: number,
  chosen: readonly Choice[],
): readonly PlacedJob[] | undefined {
  return fitIntoOutage(jobsIn(chosen, index), problem.outages[index]?.hours ?? 0, problem.units);
}
