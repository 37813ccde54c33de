// Is a run fitted from a firm lower end upward, though it could be fitted downward?

import { groundOf, touches } from '../../../domain/order/ground.js';
import { closingError } from '../../../domain/order/closing-error.js';
import { isSlippery, uphillEnd } from '../../../domain/order/start.js';
import { sayStep } from '../../../domain/order/words.js';
import { hasSizesToPlanWith } from '../../evidence/sizes-to-plan-with.js';
import type { Rule } from '../../rule.js';

export const fittedUpward: Rule = {
  code: 'TL484',
  title: 'Fitted upward where downward is usual',
  severity: 'information',
  restsOn: [],
  why:
    'From a firm lower end the panels hold one another, ' +
    'but each is lifted above the last and held until it is bolted; ' +
    'from the top each is pushed up against the one above.',
  todo: 'Leave it if the crew prefers it so; otherwise start at the upper end.',
  given: 'estate',
  example: `
conveyor DG2 {
  plant Tarnholt
  length 6 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2024-01-08 meter 0 h
  break Foot at 0 m to 0.1 m joint ring allowance 20 mm
  break Gate at 3 m to 3.5 m slide gate allowance 20 mm
  access Floor at 0 m to 6 m ground
  isolation Q1 electrical
  isolation Feed material
}
job J1 {
  spiral held up by "chain hoist" rated 500 kg every 3 m
  conveyor DG2
  outage Spring27
  reline run 1
  crews Alpha
  order {
    gate shut Gate
    isolate
    prove dead
    strip run 1
    clean run 1
    «fit» run 1 starting at ‹tail|head›
    gate open Gate
    remove isolation
    run empty
    run loaded
  }
}`,
  *check({ estate }) {
    for (const job of estate.jobs) {
      const upper = uphillEnd(job.conveyor);
      if (!job.order || !isSlippery(job.conveyor) || !hasSizesToPlanWith(job)) continue;
      const ground = groundOf(job, job.order.steps, estate);
      for (const [i, step] of job.order.steps.entries()) {
        if (step.action !== 'fit' || step.start === undefined || step.start === upper) continue;
        for (const { run, panels, liner } of ground.runs) {
          if (!panels.some((panel) => (ground.areas[i] ?? []).some((area) => touches(panel, area)))) continue;
          const lower = step.start === 'tail' ? run.tailBreak : run.headBreak;
          const firm = lower.kind === 'end plate' || lower.kind === 'joint ring';
          const { worst } = closingError(job, run, liner, 1, panels.length, run.to - run.from, undefined);
          if (!firm || lower.allowance.value < worst) continue;
          yield {
            origin: step.actionOrigin,
            message: `"${sayStep(step)}" goes upward from ${lower.name}; from the top down it would close at ${lower.name} as well.`,
          };
        }
      }
    }
  },
};
