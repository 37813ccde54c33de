// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';

export const noAccessUnit: Rule = {
  code: 'TL420',
  title: 'Mobile access without a unit',
  severity: 'error',
  why: 'The stretch is reached by a mobile platform, and the job has none: it has to be hired, and that takes days.',
  todo: 'Name an access unit of the plant on the job.',
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
  access Yard at 7 m to 12 m mobile platform height 6 m
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
  access Floor at 0 m to 7 m ground
  access Yard at 7 m to 12 m mobile platform height 6 m
  isolation Q1 electrical
}
job J1 {
  conveyor DG1
  outage Spring27
  reline run above Gate
  crews Alpha
  access units MP1
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
  check: onViolation('no access unit'),
};
