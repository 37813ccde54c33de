// Told by the planner (domain/plan): a step that welds, and no crew of the job with that skill.

import { onPlan } from '../../telling/on-plan.js';
import type { Rule } from '../../rule.js';

export const noWelder: Rule = {
  code: 'TL466',
  title: 'Welding step without a welder',
  severity: 'warning',
  restsOn: ['block', 'machine'],
  why: 'The plate is ready, the trough is open, and nobody may weld.',
  todo: 'Add a crew with the skill welding to the job, or write the skill down where the crew has it.',
  given: 'estate',
  example: `
job «J1» {
  conveyor DG1
  outage Spring27
  change screw
  crews ‹Bravo|Alpha›
  lift limit 500 kg
}`,
  check: onPlan('no welder'),
};
