// The programme for 200 conveyors over 8 outages with 3 scopes each (and each crew alone or both together): seconds and gap.
// npx tsx tests/bench/programme.ts [conveyors] [outages]

import { createRequire } from 'node:module';
import { programmeOf } from '../../src/domain/decision/programme.js';
import { formulate } from '../../src/domain/decision/programme-formulation.js';
import type { Candidate, ProgrammeProblem } from '../../src/domain/decision/programme-problem.js';
import { addDays, type CalendarDay } from '../../src/domain/units/calendar.js';
import { highsSolver } from '../../src/solver/highs.js';

const conveyors = Number(process.argv[2] ?? 200);
const outages = Number(process.argv[3] ?? 8);
const crews = ['Alpha', 'Bravo', 'Carla'];
const first = 20_000 as CalendarDay; // any day will do
let state = 20261126;
const random = (): number => {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
  return state / 4294967296;
};

const problem: ProgrammeProblem = {
  plant: 'Bench',
  currency: 'EUR',
  crews,
  units: 3,
  outages: Array.from({ length: outages }, (_, o) => ({
    name: `O${o}`,
    from: addDays(first, 120 * (o + 1)),
    to: addDays(first, 120 * (o + 1) + 11),
    hours: 100,
  })),
  shelf: new Map(),
  conveyors: Array.from({ length: conveyors }, (_, c) => {
    const whole = 20 + 25 * random();
    const limit = 1 + Math.floor(outages * 1.4 * random());
    return {
      name: `C${c}`,
      decision: {
        passedSeen: undefined,
        options: [],
      } as unknown as ProgrammeProblem['conveyors'][number]['decision'], // only these are read
      nothing: 3000 + 20_000 * random(),
      nothingWithin: limit >= outages,
      candidates: [0.4, 0.7, 1].flatMap((share, s) =>
        Array.from({ length: outages }, (_, o) => o).flatMap((o) =>
          [crews, ...crews.map((crew) => [crew])].map((team): Candidate => {
            const condemn = o < limit ? 0.01 : 0.3;
            return {
              conveyor: `C${c}`,
              scope: `scope ${s}`,
              outage: o,
              crews: team,
              hours: whole * share * (team.length > 1 ? 0.45 : 1),
              personHours: whole * share * 3,
              units: team.length > 1 ? 2 : 1,
              fromShelf: [],
              expected:
                9500 * share * (1 - o / (outages + 2)) + 3000 * (1 - share) * random() + 8000 * condemn,
              cost: 9500 * share,
              condemn,
              contact: condemn / 50,
              within: condemn <= 0.05,
              expedited: false,
              order: { kind: 'no lead time', outage: undefined },
            };
          }),
        ),
      ),
    };
  }),
};

const solver = await highsSolver(createRequire(import.meta.url).resolve('highs/runtime'));
const { programme } = formulate(problem);
console.log(
  `${conveyors} conveyors, ${outages} outages: ${programme.choices.length} choices, ${programme.rows.length} rows`,
);
const start = process.cpuUsage();
const answer = programmeOf(problem, solver);
console.log(
  `whole programme, with fitting hour by hour and what more would save: ${(process.cpuUsage(start).user / 1e6).toFixed(1)} s of processor, ${answer.kind}`,
);
if (answer.kind === 'programme') {
  const { lines, aloneFits, gap } = answer.programme;
  console.log(
    `relined ${lines.filter(({ choice }) => choice.kind === 'reline').length}, left out ${lines.filter(({ choice }) => choice.kind === 'left out').length}, alone fits: ${aloneFits}, gap ${gap}`,
  );
}
