// Told by the planner (domain/plan).

import { onPlan } from '../../telling/on-plan.js';
import type { Rule } from '../../rule.js';

export const noLiftLimit: Rule = {
  code: 'TL468',
  title: 'Screw change without a lift limit',
  severity: 'information',
  restsOn: ['block', 'machine'],
  why: 'Where the spiral is cut depends on what may hang from the crane; without a limit pieces of six metres are planned.',
  todo: 'Add `lift limit` to the job, from the crane chart or the weakest lifting point.',
  given: 'estate',
  example: `
job «J1» {
  conveyor DG1
  outage Spring27
  change screw
  crews Alpha‹|
  lift limit 500 kg›
}`,
  check: onPlan('no lift limit'),
};
