// Told by the planner (domain/plan): no cut clear of hold-downs and access edges keeps the piece within the limit.

import { onPlan } from '../../telling/on-plan.js';
import type { Rule } from '../../rule.js';

export const liftOverTheLimit: Rule = {
  code: 'TL467',
  title: 'Piece of spiral over every limit',
  severity: 'error',
  restsOn: [],
  why: 'The piece hangs from a crane or a point that is not made for it.',
  todo: 'Raise the lift limit with a stronger crane, add a lifting point, or move what the cuts must keep clear of.',
  given: 'estate',
  example: `
job J1 {
  conveyor DG1
  change screw
  crews Alpha
  lift limit «5 kg|500 kg»
}`,
  check: onPlan('lift over limit'),
};
