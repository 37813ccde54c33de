// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';

export const craneInTwoPlaces: Rule = {
  code: 'TL493',
  title: 'Two lifts at once with one crane',
  severity: 'error',
  restsOn: [],
  why: 'One hook holds one load: the other piece of the spiral is cut free with nothing to hang from.',
  todo: 'Let one lift wait for the other, or give the job a second crane that reaches.',
  given: 'specifications',
  example: `
plant Hollow {
  outage Spring27 2027-04-12 to 2027-04-23
  crew Alpha 4 people skills fitting, welding
  crew Bravo 4 people skills fitting, welding
  crane C1 chart 4000 kg at 8 m, 900 kg at 14 m
}
conveyor HG1 {
  plant Hollow
  length 12 m
  incline 0 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2024-01-08 meter 0 h
  break Gate at 7 m to 7.5 m slide gate allowance 20 mm
  access Floor at 0 m to 12 m ground
  isolation Q1 electrical
}
job J1 {
  conveyor HG1
  outage Spring27
  change screw bolted joints cut cold
  crews Alpha, Bravo
  crane C1 at 6 m offset 5 m
  order {
    isolate
    prove dead
    covers off all
    restrain screw
    u: unbolt drive
    a: remove screw from 0 m to 6 m by Alpha after u
    b: «remove screw» from 6 m to 12 m by Bravo after ‹u|a›
    insert screw
    bolt drive
    release screw
    covers on all
    remove isolation
    run empty
    run loaded
  }
}`,
  check: onViolation('crane in two places'),
};
