// Repairs as changes of the author's text: applied to the text and read again, the order can be built, and everything the
// repair has no business with is still there.

import { expect, test } from 'vitest';
import type { Estate } from '../../../src/domain/model/estate.js';
import type { Job } from '../../../src/domain/model/job.js';
import { checkOrder } from '../../../src/domain/order/check-order.js';
import { changeJob } from '../../../src/domain/order/change-steps.js';
import { editsOf } from '../../../src/domain/order/edits.js';
import { assemble } from '../../../src/language/assemble.js';
import { lower } from '../../../src/language/lower.js';
import { parseText } from '../../../src/language/parse.js';

const machine = `plant Tarnholt {
  crew Alpha 4 people
  crew Bravo 3 people
}
liner TwoLayer12 {
  layer ivory 6 mm
  layer teal 6 mm
  panel length 1000 mm
  condemn at 3 mm
}
screw Spiral400 {
  shaftless
  outside diameter 400 mm
  pitch 350 mm
}
conveyor DG1 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  access Floor at 0 m to 12 m ground
  break Gate at 5.8 m to 6 m slide gate allowance 15 mm
  break Discharge at 11.5 m to 12 m discharge allowance 20 mm
}
`;
const jobText = (steps: string): string => `${machine}job J1 {
  conveyor DG1
  reline run above Gate
  crews Alpha, Bravo
  order {
${steps}
  }
}
`;

function read(text: string): { readonly job: Job; readonly estate: Estate } {
  const { estate, problems } = assemble([lower(parseText(text), 0, 'one.trough')]);
  expect(problems).toEqual([]);
  const job = estate.jobs[0];
  if (!job) throw new Error('no job');
  return { job, estate };
}

function apply(text: string, edits: ReturnType<typeof editsOf>): string {
  return [...edits]
    .sort((a, b) => b.origin.start - a.origin.start || b.origin.end - a.origin.end)
    .reduce((now, edit) => now.slice(0, edit.origin.start) + edit.text + now.slice(edit.origin.end), text);
}

const around = (...middle: string[]): string =>
  ['isolate', 'prove dead', ...middle, 'remove isolation', 'run empty', 'run loaded']
    .map((line) => `    ${line}`)
    .join('\n');

test.each([
  [
    'two fronts',
    around(
      'strip run 2',
      'clean run 2 // with the hose',
      'fit panels 1 to 3 of run 2 starting at tail by Alpha',
      'fit panels 4 to 6 of run 2 starting at head by Bravo takes 3.5 h "mind the flange"',
    ),
  ],
  ['cleaned before it is stripped', around('clean run 2', 'strip run 2', 'fit run 2 starting at head')],
  [
    'not isolated',
    ['strip run 2', 'clean run 2', 'fit run 2 starting at head', 'run empty', 'run loaded']
      .map((line) => `    ${line}`)
      .join('\n'),
  ],
  [
    'two that may swap',
    around(
      'a: strip run 2 by Alpha',
      'b: clean run 2 by Bravo',
      'fit run 2 starting at head by Alpha after a',
    ),
  ],
  [
    'no trial run',
    ['isolate', 'prove dead', 'strip run 2', 'clean run 2', 'fit run 2 starting at head', 'remove isolation']
      .map((line) => `    ${line}`)
      .join('\n'),
  ],
])('%s', (_, steps) => {
  const text = jobText(steps);
  const { job, estate } = read(text);
  const [first] = checkOrder(job, estate);
  const repair = first?.repairs[0];
  if (!repair) throw new Error('nothing to repair');
  const expected = checkOrder(changeJob(job, repair.changes), estate).map((each) => each.kind);
  const mended = apply(text, editsOf(job, repair.changes));
  const again = read(mended);
  expect(checkOrder(again.job, again.estate).map((each) => each.kind)).toEqual(expected);
  expect(expected).not.toContain(first?.kind);
  if (steps.includes('//')) expect(mended).toContain('// with the hose');
  if (steps.includes('mind the flange')) expect(mended).toContain('by Bravo takes 3.5 h "mind the flange"');
});

test('no change, no edit', () => {
  const { job } = read(jobText(around('strip run 2')));
  expect(editsOf(job, [])).toEqual([]);
});
