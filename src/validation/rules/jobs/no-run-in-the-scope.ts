// Told by the planner (domain/plan): the scope touches no run.

import { onPlan } from '../../telling/on-plan.js';
import type { Rule } from '../../rule.js';

export const noRunInTheScope: Rule = {
  code: 'TL461',
  title: 'Scope without a lined length',
  severity: 'error',
  restsOn: [],
  why: 'There is nothing to strip, cut or fit, and the job would be planned and paid for all the same.',
  todo: 'Name a run that the conveyor has, by its number from the tail or by the break at its tail end.',
  given: 'estate',
  example: `
job «J1» {
  conveyor DG1
  outage Spring27
  reline from ‹7.1|7.5› m to ‹7.4|12› m
  crews Alpha
}`,
  check: onPlan('no run'),
};
