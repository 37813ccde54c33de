// What the tool proposes, written into the file by which it was asked, gets no warning that a step would answer.

import { expect, test } from 'vitest';
import { planJob } from '../../../src/domain/plan/plan-job.js';
import { writeOrder } from '../../../src/domain/plan/write-order.js';
import { liftConveyor, read, theJob } from '../estate.js';

const works =
  'crew Bravo 3 people skills fitting\n  rescue contact "channel 3"\n  rescue means "tripod"\n  meeting point "gate"';
const conveyor = 'conveys "digestate cake"\n  bulk density 850 kg/m3';
const texts = (scope: string, crews: string, order = ''): string =>
  liftConveyor({ conveyor, job: order })
    .replace('crew Alpha', `${works}\n  crew Alpha`)
    .replace('reline run above Gate', scope)
    .replace('crews Alpha\n', `crews ${crews}\n`);

test.each([
  ['the run above the gate', 'reline run 2'],
  ['the run below the gate', 'reline run 1'],
  ['both runs', 'reline run 1\n  reline run 2'],
  ['a part at the gate', 'reline panels 6 to 7 of run 1'],
  ['a new spiral alone', 'change screw bolted joints cut cold'],
  ['a new spiral and new liner', 'reline run 1\n  reline run 2\n  change screw bolted joints cut cold'],
  ['a new spiral, welded', 'reline run 1\n  change screw'],
])('%s, by one crew and by two', (_, scope) => {
  for (const crews of ['Alpha', 'Alpha, Bravo']) {
    const asked = read(texts(scope, crews));
    const plan = planJob(theJob(asked), asked.estate, { quick: true, shakes: 5, nodes: 50 });
    const order = writeOrder(plan);
    const known = new Set(asked.findings.map(({ code }) => code));
    const answered = read(texts(scope, crews, order.join('\n')));
    // Whether shields and water are at hand, and what gear holds the spiral up, only the crew knows.
    const found = answered.findings.filter(
      ({ code }) => !known.has(code) && code !== 'TL472' && code !== 'TL551',
    );
    expect(order).toContain('  run loaded by Alpha');
    expect(found.map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
    expect(order.some((line) => /^\s*(\w+: )?empty /.test(line))).toBe(true);
  }
});

test('a gate above the work is shut before anything is opened, and opened before the machine is handed back', () => {
  const asked = read(texts('reline run 1', 'Alpha'));
  const lines = writeOrder(planJob(theJob(asked), asked.estate, { quick: true, shakes: 5, nodes: 50 }));
  const at = (action: string): number => lines.findIndex((line) => line.includes(action));
  expect(at('gate shut Gate')).toBeGreaterThan(0);
  expect(at('gate shut Gate')).toBeLessThan(at('covers off'));
  expect(at('gate open Gate')).toBeGreaterThan(at('covers on'));
  expect(at('gate open Gate')).toBeLessThan(at('remove isolation'));
});
