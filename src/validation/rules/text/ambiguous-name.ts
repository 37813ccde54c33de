// A conveyor's name that two plants use.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';
import { replace } from '../../telling/fixes.js';
import { list } from '../../telling/wording.js';

export const ambiguousName: Rule = {
  code: 'TL115',
  title: 'Name that could be two things',
  severity: 'error',
  restsOn: [],
  why: 'The record could be booked to the wrong machine.',
  todo: 'Write the plant before the name: plant.conveyor.',
  given: 'specifications',
  example: `
plant Eastfield { duty 110 h/week }
conveyor DG1 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2024-01-08 meter 0 h
  break Discharge at 11.4 m to 12 m discharge allowance 20 mm
  access A1 at 0 m to 12 m platform
  isolation Q1 "local isolator" electrical
  isolation Feed material
}
conveyor DG1 {
  plant Eastfield
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2024-01-08 meter 0 h
  break Discharge at 11.4 m to 12 m discharge allowance 20 mm
  access A1 at 0 m to 12 m platform
  isolation Q1 "local isolator" electrical
  isolation Feed material
}
duty «DG1|Eastfield.DG1» from 2024-06-03 120 h/week`,
  check: onProblem('ambiguous name', (problem) => ({
    message: `The name ${problem.name} is a ${problem.what} of more than one plant.`,
    todo: `Write ${list(problem.candidates, 'or')}.`,
    fixes: problem.candidates.map((name) => replace(problem.origin, name)),
  })),
};
