// Told by the planner (domain/plan) for jobs without a written order: neither end of the run takes up the worst case.

import { onPlan } from '../../telling/on-plan.js';
import type { Rule } from '../../rule.js';

export const runThatCannotBeClosed: Rule = {
  code: 'TL462',
  title: 'Reline that cannot be closed at either end',
  severity: 'error',
  why: 'The closing panel is cut to a hole that is never exactly one panel long; without a break that takes the error up it will not go in.',
  todo: 'State the allowance of the break where the closing panel is to end, or declare a joint ring within the run.',
  given: 'estate',
  example: `
job «J1» {
  conveyor DG1
  outage Spring27
  reline run above Gate
  crews Alpha
  measuring tolerance ‹25|2› mm
}`,
  check: onPlan('cannot be closed'),
};
