// Told by the planner (domain/plan), which knows how long the steps take.

import { onPlan } from '../../telling/on-plan.js';
import type { Rule } from '../../rule.js';

export const gasTestNotRepeated: Rule = {
  code: 'TL475',
  title: 'Gas test older than the plant allows',
  severity: 'error',
  restsOn: [],
  why: 'Material that is disturbed gives off gas; air that was good in the morning is not good because it was.',
  todo: 'Repeat the test while people are inside: `gas test … every 2 h`, or tests as steps of their own.',
  given: 'estate',
  example: `
plant Hollow {
  gas test interval 2 h
  rescue contact "control room"
  rescue means "tripod and winch"
  outage Spring27 2027-04-12 to 2027-04-23
  crew Alpha 3 people skills fitting
}
conveyor HG1 {
  plant Hollow
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  confined space
  commissioned 2024-01-08 meter 0 h
  break Gate at 7 m to 7.5 m slide gate allowance 20 mm
  access Floor at 0 m to 12 m ground
  isolation Q1 electrical
  isolation Feed material
}
job J1 {
  spiral held up by "chain hoist" rated 500 kg every 3 m
  conveyor HG1
  outage Spring27
  reline run 1
  crews Alpha
  order {
    gate shut Gate
    isolate
    prove dead
    «gas test» run 1‹| every 2 h›
    strip run 1 with 2 people
    clean run 1 with 2 people
    fit run 1 starting at tail with 2 people
    gate open Gate
    remove isolation
    run empty
    run loaded
  }
}`,
  check: onPlan('gas test not repeated'),
};
