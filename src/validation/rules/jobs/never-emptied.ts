// Does a written order isolate a machine that carries something without having run it empty?

import type { Step } from '../../../domain/model/job.js';
import { editsOf } from '../../../domain/order/edits.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const neverEmptied: Rule = {
  code: 'TL492',
  title: 'Order that never empties the trough',
  severity: 'warning',
  why:
    'Once isolated nothing moves what lies in the trough: it is weight on the spiral, gives off gas when it is ' +
    'disturbed, and is shovelled out by hand.',
  todo: 'Run the trough empty while there is power: `empty` before `isolate`.',
  given: 'specifications',
  example: `
conveyor DG1 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  conveys "digestate cake"
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
  conveyor DG1
  outage Spring27
  reline run above Gate
  crews Alpha, Bravo
${but(soundOrder, ['  isolate', '  «isolate|empty\n  isolate»'])}
}`,
  *check({ estate }) {
    for (const job of estate.jobs) {
      const { conveyor, order, partOf } = job;
      // A job that is part of another finds the machine isolated.
      if (!order || partOf || !conveyor.conveys) continue;
      const isolate = order.steps.find((step) => step.action === 'isolate');
      if (!isolate || order.steps.some((step) => step.action === 'empty')) continue;
      const at = { ...isolate.origin, end: isolate.origin.start };
      const empty: Step = { action: 'empty', crews: [], after: [], origin: at, actionOrigin: at };
      yield {
        origin: isolate.actionOrigin,
        message: `${conveyor.name} conveys ${conveyor.conveys.material}, and job ${job.name} isolates it without running it empty first.`,
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
