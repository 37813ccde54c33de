// Where a trough has hatches and no covers, do the panels go in through them?

import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { groundOf, within } from '../../../domain/order/ground.js';
import { hasSizesToPlanWith } from '../../evidence/sizes-to-plan-with.js';
import type { Rule } from '../../rule.js';

export const panelThroughHatch: Rule = {
  code: 'TL481',
  title: 'Panel longer than every hatch it could go in by',
  severity: 'error',
  restsOn: ['block', 'machine'],
  why: 'A panel is stiff and the trough too shallow to feed it in end first: it stays outside, or the trough is cut open.',
  todo: 'Use panels that go through the hatches, or declare the covers that come off.',
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
  break Gate at 5 m to 5.5 m slide gate allowance 20 mm
  access Floor at 0 m to 6 m ground
  isolation Q1 electrical
  isolation Feed material
  hatch H1 at 2 m to ‹2.8|3.3› m width 500 mm
}
job J1 {
  conveyor DG2
  outage Spring27
  reline «run 1»
  crews Alpha
}`,
  *check({ estate }) {
    for (const job of estate.jobs) {
      const { hatches, covers, trough } = job.conveyor;
      if (hatches.length === 0 || covers.length > 0 || !hasSizesToPlanWith(job)) continue;
      const ground = groundOf(job, job.order?.steps ?? [], estate);
      const wide = hatches.filter(
        (hatch) => hatch.width === undefined || hatch.width.value >= 2 * (trough.insideRadius.value - 1),
      );
      const sized = wide.filter((hatch) => hatch.to.value > hatch.from.value);
      if (sized.length === 0 && wide.length > 0) continue; // their size is not stated
      const longest = Math.max(0, ...sized.map((hatch) => hatch.to.value - hatch.from.value));
      for (const { stretch } of job.relines) {
        const panels = ground.runs.flatMap((run) => within(run.panels, ground.scope));
        const panel = Math.max(0, ...panels.map(({ length }) => length));
        if (panel <= longest + 1) continue;
        yield {
          origin: stretch.origin,
          message:
            longest === 0
              ? `Panels as wide as the trough have to go in, and no hatch of ${job.conveyor.name} is that wide.`
              : `Panels of ${lengthOn(job.conveyor, panel)} have to go in, ` +
                `and the longest hatch of ${job.conveyor.name} that is wide enough is ${lengthOn(job.conveyor, longest)} long.`,
          related: hatches.map((hatch) => ({ origin: hatch.origin, message: 'a hatch' })),
        };
        break;
      }
    }
  },
};
