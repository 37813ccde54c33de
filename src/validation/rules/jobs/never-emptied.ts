// Does a written order isolate a machine that carries something without having run it empty? A run without feed before the
// isolation empties it as well as `empty` does.

import { emptiedBy } from '../../../domain/order/emptying.js';
import type { Step } from '../../../domain/model/job.js';
import { editsOf } from '../../../domain/order/edits.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

const given = (order: string, carries = 'conveys "digestate cake"'): string => `
conveyor DG1 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  ${carries}
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2024-01-08 meter 0 h
  break Gate at 7 m to 7.5 m slide gate allowance 20 mm
  access Floor at 0 m to 12 m ground
  isolation Q1 electrical
  isolation Feed material
}
job J1 {
  spiral held up by "chain hoist" rated 500 kg every 3 m
  conveyor DG1
  outage Spring27
  reline run above Gate
  crews Alpha, Bravo
${order}
}`;

export const neverEmptied: Rule = {
  code: 'TL492',
  title: 'Order that never empties the trough',
  severity: 'warning',
  restsOn: [],
  why:
    'Once isolated nothing moves what lies in the trough: it is weight on the spiral, gives off gas when it is ' +
    'disturbed, and is shovelled out by hand.',
  todo:
    'Run the trough empty while there is power: `empty` before `isolate` (`run empty` does as well there; ' +
    'after the work it is the trial run).',
  given: 'specifications',
  example: given(but(soundOrder, ['  isolate', '  «isolate|empty\n  isolate»'])),
  cases: [
    {
      name: 'run without feed before isolation',
      text: given(but(soundOrder, ['  isolate', '  run empty\n  isolate'])),
    },
    {
      name: 'run loaded after it was emptied',
      text: given(but(soundOrder, ['  isolate', '  empty\n  run empty\n  run loaded\n  «isolate»'])),
    },
    {
      name: 'a machine that says only how heavy its material is',
      text: given(but(soundOrder, ['  isolate', '  «isolate»']), 'bulk density 850 kg/m3'),
    },
    { name: 'a machine that says nothing of material', text: given(soundOrder, '') },
  ],
  *check({ estate }) {
    for (const job of estate.jobs) {
      const { conveyor, order, partOf } = job;
      // A job that is part of another finds the machine isolated.
      if (!order || partOf || !(conveyor.conveys ?? conveyor.bulkDensity)) continue;
      const at = order.steps.findIndex((step) => step.action === 'isolate');
      const isolate = order.steps[at];
      if (!isolate || emptiedBy(order.steps)) continue;
      // Emptied too late is told by the order.
      if (order.steps.slice(at).some((step) => step.action === 'empty')) continue;
      const here = { ...isolate.origin, end: isolate.origin.start };
      const empty: Step = { action: 'empty', crews: [], after: [], origin: here, actionOrigin: here };
      const carried = conveyor.conveys?.material ?? `material of ${conveyor.bulkDensity?.text}`;
      yield {
        origin: isolate.actionOrigin,
        message: `${conveyor.name} carries ${carried}, and job ${job.name} isolates it with neither \`empty\` nor \`run empty\` before.`,
        fixes: [
          {
            title: 'Empty the trough before it is isolated',
            edits: editsOf(job, [{ change: 'insert', step: empty, place: 'before', other: isolate }]),
          },
        ],
      };
    }
  },
};
