// Told by the planner (domain/plan): what lifts a piece of the spiral stands beside its centre, or does not reach it.

import { onPlan } from '../../telling/on-plan.js';
import type { Rule } from '../../rule.js';
import { soundConveyor } from '../../telling/sound-conveyor.js';

export const liftBesideItsCentre: Rule = {
  code: 'TL479',
  title: 'Lift beside its centre of gravity, or out of reach',
  severity: 'error',
  restsOn: ['block', 'machine'],
  why: 'A load that hangs beside its lifting point swings as it leaves the trough, and pulls rope and point sideways; beyond its chart a crane tips.',
  todo: 'Declare a crane that reaches the piece (`crane C1 at 9 m offset 5 m`), or a lifting point above it.',
  given: 'specifications',
  example: `
${soundConveyor('DG1', 'Tarnholt', 'lifting point L1 at ‹8|6› m limit 600 kg')}
job «J1» {
  conveyor DG1
  outage Spring27
  change screw
  crews Alpha
}`,
  check: onPlan('side pull'),
};
