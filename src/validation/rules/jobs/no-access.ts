// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';

export const noAccess: Rule = {
  code: 'TL419',
  title: 'Work where nobody can get',
  severity: 'error',
  why: 'Without access the crew stands below the work with its tools.',
  todo: 'Declare the access to the stretch on the conveyor.',
  given: 'specifications',
  bad: `
conveyor DG1 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2024-01-08 meter 0 h
  break Gate at 7 m to 7.5 m slide gate allowance 20 mm
  access Floor at 0 m to 7 m ground
  isolation Q1 electrical
}
job J1 {
  conveyor DG1
  outage Spring27
  reline run above Gate
  crews Alpha
  order {
    isolate
    prove dead
    «strip» run above Gate
    clean run above Gate
    fit run above Gate starting at head
    remove isolation
    run empty
    run loaded
  }
}`,
  good: `
conveyor DG1 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2024-01-08 meter 0 h
  break Gate at 7 m to 7.5 m slide gate allowance 20 mm
  access Floor at 0 m to 12 m ground
  isolation Q1 electrical
}
job J1 {
  conveyor DG1
  outage Spring27
  reline run above Gate
  crews Alpha
  order {
    isolate
    prove dead
    strip run above Gate
    clean run above Gate
    fit run above Gate starting at head
    remove isolation
    run empty
    run loaded
  }
}`,
  check: onViolation('no access'),
};
