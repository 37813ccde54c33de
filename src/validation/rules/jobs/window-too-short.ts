// Told by the planner (domain/plan): working hours of the plan against those of the window.

import { onPlan } from '../../telling/on-plan.js';
import type { Rule } from '../../rule.js';

export const windowTooShort: Rule = {
  code: 'TL464',
  title: 'Window too short for the work',
  severity: 'error',
  restsOn: ['block', 'machine'],
  why: 'The outage ends with the trough open, and the conveyor is missing when the plant starts again.',
  todo: 'Take a longer outage, more crews, or a smaller scope; the work pack shows what would shorten the job most.',
  given: 'estate',
  example: `
job J1 {
  conveyor DG1
  «window 2027-04-12 to 2027-04-12|window 2027-04-12 to 2027-04-23»
  reline all
  crews Alpha
}`,
  check: onPlan('window too short'),
};
