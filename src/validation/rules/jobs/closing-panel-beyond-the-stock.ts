// Is there stock that covers the longest gap a run may be left with, or only the gap as it is drawn?

import { areasOf, areasOfAction, groundOf, touches } from '../../../domain/order/ground.js';
import { closingBeyondStock, sheetToOrder } from '../../../domain/plan/cut-list.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { hasSizesToPlanWith } from '../../evidence/sizes-to-plan-with.js';
import type { Rule } from '../../rule.js';

export const closingPanelBeyondTheStock: Rule = {
  code: 'TL496',
  title: 'No stock for the longest closing gap',
  severity: 'warning',
  restsOn: ['block', 'machine'],
  why:
    'Panels that are each a little short leave a last gap longer than drawn. A sheet of just the drawn length then leaves ' +
    'bare steel, and a longer one is not on site on the day.',
  todo: 'Order one sheet as long as the gap may become, or state a stock length that covers it.',
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
  break Foot at 0 m to 0.1 m joint ring allowance 1 mm
  break Gate at 2.5 m to 3 m slide gate allowance 20 mm
  access Floor at 0 m to 6 m ground
  isolation Q1 electrical
  isolation Feed material
}
job «J1» {
  spiral held up by "chain hoist" rated 500 kg every 3 m
  conveyor DG2
  outage Spring27
  reline run 1
  crews Alpha
  stock ‹1200 mm|1210 mm›
  order {
    gate shut Gate
    isolate
    prove dead
    strip run 1
    clean run 1
    fit run 1 starting at head cut to fit
    gate open Gate
    remove isolation
    run empty
    run loaded
  }
}`,
  *check({ estate }) {
    for (const job of estate.jobs) {
      if (!hasSizesToPlanWith(job)) continue;
      // Where it is not cut to the gap, the order tells that the run cannot be closed.
      if (!job.order?.steps.some(({ cutToFit }) => cutToFit)) continue;
      const ground = groundOf(job, job.order.steps, estate);
      const sawn = ground.steps.flatMap((step, i) => (step.cutToFit ? areasOf(ground, i) : []));
      for (const { liner, piece, stock } of closingBeyondStock(job, ground, areasOfAction(ground, 'fit'))) {
        const panel = ground.runs.find(({ run }) => run.number === piece.run)?.panels[piece.panel - 1];
        if (!panel || !sawn.some((area) => touches(panel, area))) continue;
        yield {
          origin: job.nameOrigin,
          message:
            `The last gap of run ${piece.run} may be up to ${lengthOn(job.conveyor, piece.longest)} long, and the longest ` +
            `${liner.name} in stock is ${lengthOn(job.conveyor, stock)}: order a sheet of at least ${lengthOn(job.conveyor, sheetToOrder(piece))}.`,
        };
      }
    }
  },
};
