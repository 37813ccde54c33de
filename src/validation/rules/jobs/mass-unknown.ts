// Told by the planner (domain/plan): the flight of the screw is not described.

import { onPlan } from '../../telling/on-plan.js';
import type { Rule } from '../../rule.js';

export const massUnknown: Rule = {
  code: 'TL469',
  title: 'Lift of unknown mass',
  severity: 'warning',
  restsOn: ['block', 'machine'],
  why: 'Nobody can choose slings for a piece whose mass is not known.',
  todo: 'Describe the flight of the screw: its width and thickness.',
  given: 'estate',
  example: `
screw Plain400 {
  shaftless
  outside diameter 400 mm
  pitch 350‹| mm
  flight 80 mm by 25› mm
}
job «J1» {
  conveyor DG1
  outage Spring27
  change screw to Plain400
  crews Alpha
  lift limit 500 kg
}`,
  check: onPlan('mass unknown'),
};
