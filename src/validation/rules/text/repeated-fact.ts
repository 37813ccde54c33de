// The same fact twice in one block. The first is used; the second is reported.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';
import { remove } from '../../telling/fixes.js';

/** Facts of which one line holds several. */
const lists: ReadonlyMap<string, string> = new Map([
  ['panel length', 'panel length 1200 mm, 1000 mm ± 1.5 mm'],
  ['stock length', 'stock length 2400 mm, 3000 mm'],
  ['crews', 'crews Alpha, Bravo'],
  ['access units', 'access units MP1, MP2'],
]);

export const repeatedFact: Rule = {
  code: 'TL112',
  title: 'Fact stated twice',
  severity: 'error',
  restsOn: [],
  why: 'Two people reading the block may each go by another line; only the first is used in reports and packs.',
  todo: 'Keep the line that is right and take the other out.',
  given: 'whole',
  bad: `
screw Spiral315 {
  shaftless
  outside diameter 315 mm
  pitch 280 mm
  «pitch 250 mm»
}`,
  good: `
screw Spiral315 {
  shaftless
  outside diameter 315 mm
  pitch 280 mm
}`,
  check: onProblem('repeated fact', (problem) => ({
    message: `The ${problem.block} states its ${problem.fact} twice; the first is used.`,
    ...(lists.has(problem.fact)
      ? {
          todo: `Several stand on one line, with commas between: \`${lists.get(problem.fact) ?? ''}\`. Else take one line out.`,
        }
      : {}),
    related: [{ origin: problem.first, message: `the first ${problem.fact}` }],
    fixes: [remove(problem.origin, 'Take this line out'), remove(problem.first, 'Take the first one out')],
  })),
};
