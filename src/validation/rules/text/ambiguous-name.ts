// A conveyor's name that two plants use.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../on-problem.js';
import { replace } from '../../fixes.js';
import { list } from '../../wording.js';

export const ambiguousName: Rule = {
  code: 'TL115',
  title: 'Name that could be two things',
  severity: 'error',
  why: 'The record could be booked to the wrong machine.',
  todo: 'Write the plant before the name: plant.conveyor.',
  given: 'whole',
  bad: `
plant North { duty 60 h/week }
plant South { duty 60 h/week }
liner L12 {
  layer white 6 mm
  layer red 6 mm
  panel length 1200 mm
  condemn at 3 mm
}
screw S315 {
  shaftless
  outside diameter 315 mm
  pitch 280 mm
}
conveyor C1 {
  plant North
  length 11.2 m
  incline 20 deg
  trough inside radius 177 mm side height 200 mm plate 3 mm
  screw S315
  liner L12
  commissioned 2024-02-26 meter 0 h
  break Discharge at 10.6 m to 11.2 m discharge allowance 20 mm
  access Floor at 0 m to 11.2 m ground
  isolation Q1 electrical
}
conveyor C1 {
  plant South
  length 11.2 m
  incline 20 deg
  trough inside radius 177 mm side height 200 mm plate 3 mm
  screw S315
  liner L12
  commissioned 2024-02-26 meter 0 h
  break Discharge at 10.6 m to 11.2 m discharge allowance 20 mm
  access Floor at 0 m to 11.2 m ground
  isolation Q1 electrical
}
duty «C1» from 2024-06-03 80 h/week`,
  good: `
plant North { duty 60 h/week }
plant South { duty 60 h/week }
liner L12 {
  layer white 6 mm
  layer red 6 mm
  panel length 1200 mm
  condemn at 3 mm
}
screw S315 {
  shaftless
  outside diameter 315 mm
  pitch 280 mm
}
conveyor C1 {
  plant North
  length 11.2 m
  incline 20 deg
  trough inside radius 177 mm side height 200 mm plate 3 mm
  screw S315
  liner L12
  commissioned 2024-02-26 meter 0 h
  break Discharge at 10.6 m to 11.2 m discharge allowance 20 mm
  access Floor at 0 m to 11.2 m ground
  isolation Q1 electrical
}
conveyor C1 {
  plant South
  length 11.2 m
  incline 20 deg
  trough inside radius 177 mm side height 200 mm plate 3 mm
  screw S315
  liner L12
  commissioned 2024-02-26 meter 0 h
  break Discharge at 10.6 m to 11.2 m discharge allowance 20 mm
  access Floor at 0 m to 11.2 m ground
  isolation Q1 electrical
}
duty North.C1 from 2024-06-03 80 h/week`,
  check: onProblem('ambiguous name', (problem) => ({
    message: `The name ${problem.name} is a ${problem.what} of more than one plant.`,
    todo: `Write ${list(problem.candidates, 'or')}.`,
    fixes: problem.candidates.map((name) => replace(problem.origin, name)),
  })),
};
