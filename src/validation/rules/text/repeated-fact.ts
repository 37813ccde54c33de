// The same fact twice in one block. The first is used; the second is reported.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';
import type { Origin } from '../../../domain/model/origin.js';
import type { Fix } from '../../finding.js';
import { remove, replace } from '../../telling/fixes.js';

/** Facts of which one line holds several. */
const lists: ReadonlyMap<string, string> = new Map([
  ['panel length', 'panel length 1200 mm, 1000 mm ± 1.5 mm'],
  ['stock length', 'stock length 2400 mm, 3000 mm'],
  ['crews', 'crews Alpha, Bravo'],
  ['access units', 'access units MP1, MP2'],
]);

/** Of one conveyor there is one; who writes two may mean two machines in one trough. */
const once: ReadonlySet<string> = new Set(['drive', 'drive at', 'screw', 'incline', 'duty', 'trough']);

function isOnce({ block, fact }: { readonly block: string; readonly fact: string }): boolean {
  return block.startsWith('conveyor ') && once.has(fact);
}

function asComment(origin: Origin): Fix {
  return replace({ ...origin, end: origin.start }, '// ', {
    title: 'Keep this line as a comment',
    preferred: false,
  });
}

const twoMachines =
  'Keep the line that is right and take the other out. Where both are, they are two conveyors, each with its own length, incline, screw, liner and ' +
  'drive, which meet at the gate between them; of two drives on one screw the power is that of both, and a comment keeps the other.';

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
  cases: [
    {
      name: 'two drives of one conveyor',
      text: `
conveyor K1 {
  drive at tail power 3 kW speed 18 rpm
  «drive at head power 7.5 kW speed 22 rpm»
}`,
    },
  ],
  check: onProblem('repeated fact', (problem) => ({
    message: `The ${problem.block} states its ${problem.fact} twice; the first is used.`,
    ...(lists.has(problem.fact)
      ? {
          todo: `Several stand on one line, with commas between: \`${lists.get(problem.fact) ?? ''}\`. Else take one line out.`,
        }
      : isOnce(problem)
        ? { todo: twoMachines }
        : {}),
    related: [{ origin: problem.first, message: `the first ${problem.fact}` }],
    fixes: [
      ...(isOnce(problem) ? [asComment(problem.origin)] : []),
      remove(problem.origin, 'Take this line out'),
      remove(problem.first, 'Take the first one out'),
    ],
  })),
};
