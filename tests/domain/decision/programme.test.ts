// The programme against brute force over every combination of small estates, and against a second formulation of the same
// question in the same solver: crews assigned to outages by shares of a crew's window instead of by candidate rows.

import { createRequire } from 'node:module';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type {
  IntegerProgramme,
  Row,
  ProgrammeSolver,
  Term,
} from '../../../src/domain/decision/integer-programme.js';
import { fitIntoOutage } from '../../../src/domain/decision/outage-schedule.js';
import { programmeOf, type Programme } from '../../../src/domain/decision/programme.js';
import {
  breachOf,
  formulate,
  priceOf,
  type Choice,
} from '../../../src/domain/decision/programme-formulation.js';
import { placedIn, solveProgramme } from '../../../src/domain/decision/programme-solve.js';
import type { Candidate, ProgrammeProblem } from '../../../src/domain/decision/programme-problem.js';
import { addDays } from '../../../src/domain/units/calendar.js';
import { highsSolver, lpText } from '../../../src/solver/highs.js';
import { today } from './kit.js';

let solver: ProgrammeSolver;
beforeAll(async () => {
  solver = await highsSolver(createRequire(import.meta.url).resolve('highs/runtime'));
});

interface Job {
  readonly hours: number;
  readonly units: number;
  /** Expected cost and chance by outage; the accepted chance is 5 %. */
  readonly expected: readonly number[];
  readonly condemn: readonly number[];
  readonly nothing?: number;
  readonly panels?: number;
}

function problemOf(
  jobs: readonly Job[],
  windows: readonly number[],
  crews: readonly string[],
  units: number,
  shelf = 99,
): ProgrammeProblem {
  const teams = [crews, ...(crews.length > 1 ? crews.map((crew) => [crew]) : [])];
  return {
    plant: 'Tarnholt',
    currency: 'EUR',
    crews,
    units,
    outages: windows.map((hours, i) => ({
      name: `O${i}`,
      from: addDays(today, 60 * (i + 1)),
      to: addDays(today, 60 * (i + 1) + 4),
      hours,
    })),
    shelf: new Map([['TwoLayer12', shelf]]),
    conveyors: jobs.map((job, j) => ({
      name: `C${j}`,
      decision: {
        passedSeen: undefined,
        options: [],
      } as unknown as ProgrammeProblem['conveyors'][number]['decision'], // only these are read
      nothing: job.nothing ?? 1e4,
      nothingWithin: job.nothing !== undefined,
      candidates: windows.flatMap((_, o) =>
        teams.map((team): Candidate => ({
          conveyor: `C${j}`,
          scope: 'the whole conveyor',
          outage: o,
          crews: team,
          hours: team.length > 1 ? job.hours * 0.6 : job.hours,
          personHours: job.hours * 3,
          units: job.units,
          fromShelf: job.panels === undefined ? [] : [{ liner: 'TwoLayer12', panels: job.panels }],
          expected: job.expected[o] ?? 0,
          cost: 9500,
          condemn: job.condemn[o] ?? 0,
          contact: 0,
          within: (job.condemn[o] ?? 0) <= 0.05,
          expedited: false,
          order: { kind: 'order', day: today, why: 'for an outage', outage: undefined, latest: today },
        })),
      ),
    })),
  };
}

/** Breaches before money: a breach weighs more than all money together. */
function priced(problem: ProgrammeProblem): ReadonlyMap<string, number> {
  const { programme, breaches } = formulate(problem);
  const breach = new Map(breaches.map(({ by, of }) => [of, by]));
  return new Map(programme.cost.map(({ by, of }) => [of, by + 1e6 * (breach.get(of) ?? 0)]));
}

function never(): never {
  throw new Error('no such conveyor');
}

/** Every combination of candidates, nothing and left out; the cheapest that fits hour by hour. */
function bruteForce(problem: ProgrammeProblem): number {
  const { meaning } = formulate(problem);
  const price = priced(problem);
  const names = problem.conveyors.map((_, i) =>
    [...meaning].filter(([, { conveyor }]) => conveyor === i).map(([name]) => name),
  );
  let best = Infinity;
  const walk = (i: number, cost: number, jobs: readonly Candidate[]): void => {
    if (cost >= best) return;
    if (i === names.length) {
      const stock = jobs.reduce((sum, { fromShelf }) => sum + (fromShelf[0]?.panels ?? 0), 0);
      const fits = problem.outages.every(
        (outage, o) =>
          fitIntoOutage(
            jobs.filter((job) => job.outage === o),
            outage.hours,
            problem.units,
          ) !== undefined,
      );
      if (fits && stock <= (problem.shelf.get('TwoLayer12') ?? 0)) best = cost;
      return;
    }
    for (const name of names[i] ?? []) {
      const choice = meaning.get(name)?.choice;
      walk(i + 1, cost + (price.get(name) ?? 0), typeof choice === 'object' ? [...jobs, choice] : jobs);
    }
  };
  walk(0, 0, []);
  return best;
}

function costOf(problem: ProgrammeProblem, made: Programme): number {
  const { meaning } = formulate(problem);
  const price = priced(problem);
  return made.lines.reduce((sum, { choice }, i) => {
    const name = [...meaning].find(
      ([, each]) =>
        each.conveyor === i &&
        (choice.kind === 'reline'
          ? each.choice === choice.candidate
          : each.choice === (choice.kind === 'nothing' ? 'nothing' : 'left out')),
    )?.[0];
    return sum + (price.get(name ?? '') ?? Infinity);
  }, 0);
}

const jobs = fc.array(
  fc.record({
    hours: fc.integer({ min: 5, max: 45 }),
    units: fc.integer({ min: 0, max: 2 }),
    expected: fc.array(fc.integer({ min: 500, max: 9000 }), { minLength: 2, maxLength: 2 }),
    condemn: fc.constantFrom([0.01, 0.03], [0.01, 0.2], [0.1, 0.4]),
    panels: fc.constantFrom(undefined, 4, 8),
  }),
  { minLength: 1, maxLength: 4 },
);

describe('a programme', () => {
  it('costs what the cheapest of all combinations costs', () => {
    fc.assert(
      fc.property(
        jobs,
        fc.integer({ min: 20, max: 60 }),
        fc.integer({ min: 0, max: 2 }),
        (some, hours, units) => {
          const problem = problemOf(
            some.map(({ panels, ...job }) => ({ ...job, ...(panels === undefined ? {} : { panels }) })),
            [hours, hours],
            ['Alpha', 'Bravo'],
            units,
            10,
          );
          const answer = programmeOf(problem, solver);
          if (answer.kind !== 'programme') throw new Error(answer.why);
          expect(costOf(problem, answer.programme)).toBeCloseTo(bruteForce(problem), 1);
          for (const load of answer.programme.loads)
            for (const used of load.used.values()) expect(used).toBeLessThanOrEqual(hours + 1e-6);
        },
      ),
      { numRuns: 12, seed: 20261126 },
    );
  });

  it('searched, keeps every hour, and is no farther from the least cost than its gap says', () => {
    fc.assert(
      fc.property(
        jobs,
        fc.integer({ min: 20, max: 60 }),
        fc.integer({ min: 0, max: 2 }),
        (some, hours, units) => {
          const problem = problemOf(
            some.map(({ panels, ...job }) => ({ ...job, ...(panels === undefined ? {} : { panels }) })),
            [hours, hours],
            ['Alpha', 'Bravo'],
            units,
            10,
          );
          const [whole, searched] = [undefined, 0].map((most) => solveProgramme(problem, solver, most));
          if (whole?.kind !== 'chosen' || searched?.kind !== 'chosen') throw new Error('not chosen');
          problem.outages.forEach((_, o) => expect(placedIn(problem, o, searched.chosen)).toBeDefined());
          const cost = (chosen: readonly Choice[]): number =>
            chosen.reduce((sum, choice, i) => sum + priceOf(problem.conveyors[i] ?? never(), choice), 0);
          const beyond = (chosen: readonly Choice[]): number =>
            chosen.reduce((sum, choice) => sum + breachOf(choice), 0);
          // The bound knows nothing of hour by hour, so breaches may be more than it proves; then that is told.
          const more = beyond(searched.chosen) - beyond(whole.chosen);
          expect(more).toBeGreaterThan(-1e-6);
          if (more > 1e-6) expect(searched.breachesOverLeast).toBeGreaterThan(0);
          else
            expect(cost(searched.chosen) / (1 + searched.gap)).toBeLessThanOrEqual(cost(whole.chosen) + 0.01);
        },
      ),
      { numRuns: 10, seed: 20261126 },
    );
  });

  it('agrees with a second formulation', () => {
    const random = (k: number): number => ((k * 7919) % 97) / 97;
    const many = Array.from({ length: 7 }, (_, k): Job => ({
      hours: 10 + Math.round(30 * random(k + 1)),
      units: 0,
      expected: [2000 + 4000 * random(k + 20), 1500 + 5000 * random(k + 40), 1000 + 9000 * random(k + 60)],
      condemn: [0.01, 0.03, random(k + 80) > 0.5 ? 0.2 : 0.04],
    }));
    const problem = problemOf(many, [40, 40, 40], ['Alpha', 'Bravo'], 0);
    const answer = programmeOf(problem, solver);
    if (answer.kind !== 'programme') throw new Error(answer.why);
    const second = solver(secondFormulation(problem));
    if (second.kind !== 'solved') throw new Error(second.kind);
    expect(costOf(problem, answer.programme)).toBeCloseTo(second.cost, 1);
  });

  it('moves what can wait when an outage is full, and says what one more crew would save', () => {
    const problem = problemOf(
      [
        { hours: 40, units: 0, expected: [1000, 5000], condemn: [0.01, 0.2] },
        { hours: 40, units: 0, expected: [1000, 1500], condemn: [0.01, 0.02] },
      ],
      [50, 50],
      ['Alpha'],
      0,
    );
    const answer = programmeOf(problem, solver);
    if (answer.kind !== 'programme') throw new Error(answer.why);
    const { lines, savings, aloneFits, loads } = answer.programme;
    expect(
      lines.map(({ choice }) => (choice.kind === 'reline' ? choice.candidate.outage : choice.kind)),
    ).toEqual([0, 1]);
    expect(aloneFits).toBe(false);
    expect(loads[0]?.alone).toBeCloseTo(80 / 50, 9);
    expect(savings.find(({ what }) => what === 'one more crew')?.saves).toBeCloseTo(500, 6);
    expect(savings.find(({ what }) => what === 'one more platform')?.saves).toBe(0);
  });

  it('names what cannot be kept: too long for any window, hours taken by others', () => {
    const problem = problemOf(
      [
        { hours: 90, units: 0, expected: [1000], condemn: [0.01] },
        { hours: 40, units: 0, expected: [1000], condemn: [0.01] },
        { hours: 40, units: 0, expected: [2000], condemn: [0.02] },
      ],
      [50],
      ['Alpha'],
      0,
    );
    const answer = programmeOf(problem, solver);
    if (answer.kind !== 'programme') throw new Error(answer.why);
    expect(answer.programme.lines.map(({ choice, reason }) => [choice.kind, reason])).toEqual([
      ['left out', 'it takes 90.0 h and no outage has more than 50.0 h'],
      ['reline', undefined],
      ['left out', 'crews, platforms or panels on the shelf are all taken in the outages it could use'],
    ]);
  });

  it('says that nobody could work where no crew is declared', () => {
    const problem = problemOf([{ hours: 10, units: 0, expected: [1], condemn: [0] }], [50], [], 0);
    expect(programmeOf(problem, solver)).toEqual({
      kind: 'none',
      why: 'plant Tarnholt declares no crew, so nobody could work in its outages',
    });
  });

  it('gives the same bytes to the solver whatever the run', () => {
    const problem = problemOf(
      [{ hours: 10, units: 1, expected: [1, 2], condemn: [0, 0] }],
      [50, 50],
      ['Alpha', 'Bravo'],
      1,
    );
    expect(lpText(formulate(problem).programme)).toBe(lpText(formulate(problem).programme));
  });
});

describe('jobs in one outage', () => {
  const job = (conveyor: string, crews: readonly string[], hours: number, units = 0) => ({
    conveyor,
    crews,
    hours,
    units,
  });
  it('go side by side where crews and platforms are free, and one after another where not', () => {
    const placed = fitIntoOutage([job('A', ['Alpha'], 20, 1), job('B', ['Bravo'], 20, 1)], 40, 1);
    expect(placed?.map(({ from, to }) => [from, to])).toEqual([
      [0, 20],
      [20, 40],
    ]);
    expect(fitIntoOutage([job('A', ['Alpha'], 20, 1), job('B', ['Bravo'], 20, 1)], 20, 2)).toBeDefined();
    expect(fitIntoOutage([job('A', ['Alpha'], 20), job('B', ['Alpha', 'Bravo'], 21)], 40, 0)).toBeUndefined();
  });
});

/** The same question with a variable for conveyor and outage and another for outage and team, linked; hours by a big sum. */
function secondFormulation(problem: ProgrammeProblem): IntegerProgramme {
  const { meaning } = formulate(problem);
  const price = priced(problem);
  const cost: Term[] = [];
  const rows: Row[] = [];
  const choices: string[] = [];
  const add = (name: string, by = 0): string => {
    choices.push(name);
    if (by !== 0) cost.push({ by, of: name });
    return name;
  };
  problem.conveyors.forEach((conveyor, i) => {
    const left = add(`out${i}`, price.get(`l${i}`));
    const at = problem.outages.map((_, o) => add(`at${i}o${o}`));
    rows.push({ sum: [left, ...at].map((of) => ({ by: 1, of })), is: '=', value: 1 });
    conveyor.candidates.forEach((candidate, k) => {
      if (!meaning.has(`c${i}k${k}`)) return;
      add(`t${i}k${k}`, price.get(`c${i}k${k}`));
    });
    problem.outages.forEach((_, o) => {
      const teams = conveyor.candidates.flatMap((candidate, k) =>
        candidate.outage === o && meaning.has(`c${i}k${k}`) ? [`t${i}k${k}`] : [],
      );
      rows.push({
        sum: [...teams.map((of) => ({ by: 1, of })), { by: -1, of: `at${i}o${o}` }],
        is: '=',
        value: 0,
      });
    });
  });
  problem.outages.forEach((outage, o) => {
    for (const crew of problem.crews)
      rows.push({
        sum: problem.conveyors.flatMap(({ candidates }, i) =>
          candidates.flatMap((candidate, k) =>
            candidate.outage === o && candidate.crews.includes(crew) && meaning.has(`c${i}k${k}`)
              ? [{ by: candidate.hours / outage.hours, of: `t${i}k${k}` }]
              : [],
          ),
        ),
        is: '<=',
        value: 1,
      });
  });
  return { cost, rows, choices };
}
