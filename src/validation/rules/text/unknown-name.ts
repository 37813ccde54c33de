// A name that nothing of its kind has. Near spellings are offered.

import type { Fix } from '../../finding.js';
import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';
import { replace } from '../../telling/fixes.js';
import { list } from '../../telling/wording.js';

/** What can stand on its own, with sizes that are examples only; it is written at the top of the text. */
const blocks: Readonly<Record<string, (name: string) => string>> = {
  plant: (name) => `plant ${name} {\n  duty 110 h/week\n}\n`,
  liner: (name) =>
    `liner ${name} {\n  layer grey 6 mm\n  layer orange 6 mm\n  panel length 1200 mm\n  condemn at 3 mm\n}\n`,
  screw: (name) => `screw ${name} {\n  shaftless\n  outside diameter 400 mm\n  pitch 400 mm\n}\n`,
};

function addBlock(what: string, name: string, source: number): readonly Fix[] {
  const block = blocks[what];
  if (!block || !/^[A-Za-z_][\w-]*$/.test(name)) return [];
  return [
    {
      title: `Add a ${what} named ${name} (an example: put in your own values)`,
      edits: [{ origin: { source, start: 0, end: 0 }, text: `${block(name)}\n` }],
    },
  ];
}

export const unknownName: Rule = {
  code: 'TL114',
  title: 'Name that nothing has',
  severity: 'error',
  restsOn: [],
  why: 'The fact hangs in the air: the record or the step it stands in is left out until the name is right.',
  todo: 'Correct the spelling, or add the block that the name is meant for.',
  given: 'conveyor',
  example: '  liner «TwoLayer21|TwoLayer12»',
  check: onProblem('unknown name', (problem) => ({
    message: `There is no ${problem.what} named ${problem.name}${problem.elsewhere === undefined ? '' : `; ${problem.elsewhere}`}.`,
    ...(problem.known.length === 0
      ? {}
      : { todo: `Choose ${list(problem.known, 'or')}, or add a ${problem.what} of that name.` }),
    fixes: [
      ...problem.known.slice(0, 3).map((name) => replace(problem.origin, name)),
      ...(problem.known.length === 0 ? addBlock(problem.what, problem.name, problem.origin.source) : []),
    ],
  })),
};
