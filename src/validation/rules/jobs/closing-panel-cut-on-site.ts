// Told by the planner (domain/plan) for jobs without a written order: no break of the run takes up the worst case, so the
// order that is proposed says `cut to fit`, which is how a written one would be mended (TL404).

import { onPlan } from '../../telling/on-plan.js';
import type { Rule } from '../../rule.js';

export const closingPanelCutOnSite: Rule = {
  code: 'TL462',
  title: 'Reline that closes only with a panel cut on site',
  severity: 'warning',
  restsOn: ['block', 'machine'],
  why:
    'The closing panel is cut to a hole that is never exactly one panel long; ' +
    'where no break takes the error up it is measured and sawn at the trough, at the end of a shift.',
  todo:
    'Measure the gap on site and cut the closing panel to fit; ' +
    'or state the allowance of the break where it is to end, or declare a joint ring within the run.',
  given: 'estate',
  example: `
job «J1» {
  conveyor DG1
  outage Spring27
  reline run above Gate
  crews Alpha
  measuring tolerance ‹25|2› mm
}`,
  check: onPlan('cut to fit'),
};
