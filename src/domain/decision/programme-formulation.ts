// The programme as an integer programme: each conveyor takes one of its candidates, or none where both risks allow that, or is left
// out; crews and platforms have the hours of the window, the shelf its panels. Rows are necessary: whether the jobs of an outage
// fit hour by hour is for outage-schedule.ts to say.

import type { IntegerProgramme, Row, SolvedProgramme, Term } from './integer-programme.js';
import type { Candidate, ProgrammeConveyor, ProgrammeProblem } from './programme-problem.js';
import { either } from './two-chances.js';

export type Choice = Candidate | 'nothing' | 'left out';

export interface Meaning {
  readonly conveyor: number;
  readonly choice: Choice;
}

export interface Formulation {
  readonly programme: IntegerProgramme;
  /** What is to be kept small before cost: being left out, and being beyond an accepted risk. */
  readonly breaches: readonly Term[];
  readonly meaning: ReadonlyMap<string, Meaning>;
}

/** The rows of the programme; `meaning` says what each choice stands for. Exported for a second formulation in the tests. */
export function formulate(problem: ProgrammeProblem): Formulation {
  const meaning = new Map<string, Meaning>();
  const cost: Term[] = [];
  const breaches: Term[] = [];
  const rows: Row[] = [];
  problem.conveyors.forEach((conveyor, i) => {
    const own: Term[] = [];
    const add = (name: string, choice: Choice): void => {
      meaning.set(name, { conveyor: i, choice });
      own.push({ by: 1, of: name });
      cost.push({ by: priceOf(conveyor, choice), of: name });
      const breach = breachOf(choice);
      if (breach > 0) breaches.push({ by: breach, of: name });
    };
    conveyor.candidates.forEach((candidate, k) => {
      const window = problem.outages[candidate.outage]?.hours ?? 0;
      if (candidate.hours <= window && candidate.units <= problem.units) add(`c${i}k${k}`, candidate);
    });
    if (conveyor.nothingWithin) add(`n${i}`, 'nothing');
    add(`l${i}`, 'left out');
    rows.push({ sum: own, is: '=', value: 1 });
  });
  const candidates = [...meaning].flatMap(([of, { choice }]) =>
    typeof choice === 'object' ? [{ of, candidate: choice }] : [],
  );
  const bound = (some: readonly Term[], value: number, outage?: number): void => {
    if (some.reduce((sum, { by }) => sum + by, 0) <= value) return;
    rows.push({ sum: some, is: '<=', value, ...(outage === undefined ? {} : { outage }) });
  };
  problem.outages.forEach((outage, index) => {
    const here = candidates.filter(({ candidate }) => candidate.outage === index);
    for (const crew of problem.crews)
      bound(
        here
          .filter(({ candidate }) => candidate.crews.includes(crew))
          .map(({ of, candidate }) => ({ of, by: candidate.hours })),
        outage.hours,
        index,
      );
    for (let k = 1; k <= Math.max(1, problem.units); k++)
      bound(
        here.flatMap(({ of, candidate }) => {
          const share = shareOfPlatforms(candidate, problem, k);
          return share > 0 ? [{ of, by: share * candidate.hours }] : [];
        }),
        outage.hours,
        index,
      );
  });
  for (const [liner, panels] of problem.shelf)
    bound(
      candidates.flatMap(({ of, candidate: { fromShelf } }) =>
        fromShelf.filter((taken) => taken.liner === liner).map(({ panels: by }) => ({ of, by })),
      ),
      panels,
    );
  return { programme: { cost, rows, choices: [...meaning.keys()] }, breaches, meaning };
}

/**
 * What part of all platforms a job counts for, so that jobs at work together never count for more than 1 (dual feasible functions,
 * Fekete and Schepers 2001): with k = 1 whatever holds more than half of them counts whole, so two of those go one after the
 * other; with k their number, each platform counts. A job of all crews has the place for itself.
 */
function shareOfPlatforms({ units, crews }: Candidate, problem: ProgrammeProblem, k: number): number {
  if (crews.length === problem.crews.length) return 1;
  if (units === 0) return 0;
  const share = (units * (k + 1)) / problem.units;
  return Number.isInteger(share) ? units / problem.units : Math.floor(share) / k;
}

/** Left out is worse than beyond the risk; how far beyond decides among equals. */
export function breachOf(choice: Choice): number {
  if (choice === 'left out') return 20;
  if (choice === 'nothing' || choice.within) return 0;
  const { condemn, contact, stays } = choice;
  const { condemnSeen: later = 0, contactSeen: laterSteel = 0 } = stays ?? {};
  return 1 + either(condemn, later) + either(contact, laterSteel);
}

export function priceOf(conveyor: ProgrammeConveyor, choice: Choice): number {
  if (typeof choice === 'string') return conveyor.nothing;
  // Of two that cost the same the one that holds fewer crew hours.
  return choice.expected + 1e-3 * choice.hours * choice.crews.length;
}

export function choiceOf(
  solved: Extract<SolvedProgramme, { kind: 'solved' }>,
  meaning: ReadonlyMap<string, Meaning>,
  conveyor: number,
): Choice {
  for (const name of solved.chosen) {
    const what = meaning.get(name);
    if (what?.conveyor === conveyor) return what.choice;
  }
  return 'left out';
}
