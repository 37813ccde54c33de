// Three sound orders, each with one step left out, done twice, or moved: what is told of it, at which step, and what is offered.
// The whole list stands in one-step-off.txt and is read before it is accepted; TROUGHLINE_RENEW=1 writes it anew. That what
// is accepted can be built, and the rest cannot, is held against a simulator in brute-force.test.ts; here it is what is said.

import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Job, Step } from '../../../src/domain/model/job.js';
import { checkOrder } from '../../../src/domain/order/check-order.js';
import { judge } from '../../../src/domain/order/judge.js';
import { stepText } from '../../../src/domain/order/words.js';
import { origin, screw, stated } from '../../kit/estate.js';
import { brace, cover, crew, holdDown, job, line, step, worldOf } from './stories.js';

const measures = 'hot work shielded wet';
const steep = line([2, 2], [0, 20, 20], {
  incline: stated('angle', 20),
  confinedSpace: true,
  covers: [cover(0, 2100), cover(2100, 4200)],
  braces: [brace(3000)],
  holdDowns: [holdDown(1000), holdDown(3500)],
});
const orders: Readonly<Record<string, readonly [Job, readonly string[]]>> = {
  'a reline, run by run': [
    job(steep, ['all']),
    [
      'empty',
      'gate shut Gate1',
      'isolate',
      'prove dead',
      'gas test all',
      'covers off all',
      'braces off all',
      'hold-downs off run 1',
      'hold-downs off run 2',
      'strip run 2',
      'strip run 1',
      'pause',
      'gas test all',
      'clean all',
      'fit panel 2 of run 2 starting at head',
      'fit panel 1 of run 2 starting at head',
      'fit run 1 starting at tail',
      'hold-downs on all',
      'braces on all',
      'clear up all',
      'covers on run 1',
      'covers on run 2',
      'gate off Gate1',
      'gate on Gate1',
      'remove isolation',
      'run empty',
      'run loaded',
    ],
  ],
  'a new spiral, in pieces': [
    job(line([2], [10, 10], { holdDowns: [holdDown(500)], covers: [cover(0, 2000)] }), ['all'], {
      screwChange: { screw: screw(), origin: origin() },
    }),
    [
      'isolate',
      'prove dead',
      'covers off',
      'hold-downs off',
      'restrain screw',
      'unbolt drive',
      `remove screw from 0 mm to 1000 mm ${measures}`,
      `remove screw from 1000 mm to 2000 mm ${measures}`,
      'fire watch takes 60 min',
      'strip',
      `patch panel 1 of run 1 ${measures} fire watch 90 min`,
      'fire watch takes 90 min',
      'clean',
      'fit starting at head',
      'insert screw from 0 mm to 1000 mm',
      'insert screw from 1000 mm to 2000 mm',
      `join screw ${measures}`,
      'fire watch',
      'bolt drive',
      'release screw',
      'hold-downs on',
      'covers on',
      'remove isolation',
      'run empty',
      'run loaded',
    ],
  ],
  'two crews, a gate shut between them': [
    job({ ...steep, confinedSpace: false, braces: [], holdDowns: [] }, ['all'], {
      crews: [crew('Alpha'), crew('Bravo')],
    }),
    [
      'isolate by Alpha',
      'd: prove dead by Alpha',
      'g: gate shut Gate1 by Alpha',
      'ca: covers off run 1 by Alpha after g',
      'cb: covers off run 2 by Bravo after g',
      'sa: strip run 1 by Alpha after ca',
      'sb: strip run 2 by Bravo after cb',
      'ka: clean run 1 by Alpha after sa',
      'kb: clean run 2 by Bravo after sb',
      'fa: fit run 1 starting at tail by Alpha after ka',
      'fb: fit run 2 starting at head by Bravo after kb',
      'oa: covers on run 1 by Alpha after fa',
      'ob: covers on run 2 by Bravo after fb',
      'gate open Gate1 by Alpha',
      'remove isolation by Alpha',
      'run empty by Alpha',
      'run loaded by Alpha',
    ],
  ],
};

/** What goes wrong with the step at a place: a name for it, and the order then. */
function slips(steps: readonly Step[], at: number): readonly (readonly [string, readonly Step[]])[] {
  const rest = steps.filter((_, i) => i !== at);
  const put = (to: number): readonly Step[] => [
    ...rest.slice(0, to),
    ...steps.slice(at, at + 1),
    ...rest.slice(to),
  ];
  return [
    ['left out', rest],
    ['twice', [...steps.slice(0, at + 1), ...steps.slice(at)]],
    ...(at > 0 ? [['one earlier', put(at - 1)] as const] : []),
    ...(at + 1 < steps.length ? [['at the end', put(steps.length - 1)] as const] : []),
  ];
}

/** What is offered takes most of the time: shown where a step is missing or one place off. */
function told(of: Job, steps: readonly Step[], offered: boolean): string[] {
  const job = { ...of, order: { steps, origin: origin() } };
  const found = offered
    ? checkOrder(job, worldOf(of))
    : judge(job, worldOf(of)).map(({ violation }) => ({ ...violation, repairs: [] }));
  return found.flatMap(({ kind, grade, step: at, message, conflicts, repairs }) => [
    `  ${kind} (${grade})${at ? ` at ${stepText(at)}` : ''}: ${message}`,
    ...conflicts.map((other) => `    ${stepText(other.step)}: ${other.words}`),
    ...repairs.map(({ title, changes }) => `    ${changes.length > 0 ? '→' : '…'} ${title}`),
  ]);
}

const file = 'tests/domain/order/one-step-off.txt';
const written = new Map(
  readFileSync(file, 'utf8')
    .split(/^(?=# )/m)
    .map((part) => [part.split('\n', 1)[0], part.trimEnd()]),
);
const fresh: string[] = [];
const titles: string[] = [];

for (const [name, [of, lines]] of Object.entries(orders))
  describe(name, () => {
    const made = lines.map((each) => step(each, of));
    test('is sound as it stands', () => expect(told(of, made, false)).toEqual([]));
    for (const [at, text] of lines.entries())
      for (const [what, steps] of slips(made, at)) {
        const title = `# ${name}; ${at + 1} ${text}: ${what}`;
        titles.push(title);
        test(title, () => {
          const now = [title, ...told(of, steps, what === 'left out' || what === 'one earlier')].join('\n');
          fresh.push(now);
          if (!process.env['TROUGHLINE_RENEW']) expect(now).toBe(written.get(title));
        });
      }
  });

test('every part of the list is of a slip that is tried', () => {
  if (process.env['TROUGHLINE_RENEW']) writeFileSync(file, `${fresh.join('\n')}\n`);
  else expect([...written.keys()]).toEqual(titles);
});
