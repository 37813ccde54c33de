// A spiral driven from its inlet end is pushed: it shortens, and lifts where nothing holds it down.

import { each } from '../../each.js';
import type { Rule } from '../../rule.js';

export const pushedWithoutHoldDowns: Rule = {
  code: 'TL217',
  title: 'Pushed spiral without hold-downs',
  severity: 'warning',
  why: 'A spiral driven at the tail is pushed through the material; without hold-downs it climbs, strikes the covers and wears the liner in one place.',
  todo: 'Write down the hold-downs that are fitted; if there are none, have the drive end and the design checked.',
  given: 'whole',
  bad: `
plant Tarnholt { duty 60 h/week }
liner TwoLayer10 {
  layer grey 5 mm
  layer orange 5 mm
  panel length 1000 mm ± 1 mm
  condemn at 2.5 mm
}
screw Spiral315 {
  shaftless
  outside diameter 315 mm
  pitch 280 mm
}
conveyor BR1 {
  plant Tarnholt
  length 11.2 m
  incline 20 deg
  trough inside radius 175 mm side height 190 mm plate 3 mm
  screw Spiral315
  liner TwoLayer10
  «drive at tail power 3 kW speed 16 rpm»
  commissioned 2024-02-26 meter 0 h
  break Discharge at 10.6 m to 11.2 m discharge allowance 20 mm
  access Floor at 0 m to 11.2 m ground
  isolation Q1 electrical
}`,
  good: `
plant Tarnholt { duty 60 h/week }
liner TwoLayer10 {
  layer grey 5 mm
  layer orange 5 mm
  panel length 1000 mm ± 1 mm
  condemn at 2.5 mm
}
screw Spiral315 {
  shaftless
  outside diameter 315 mm
  pitch 280 mm
}
conveyor BR1 {
  plant Tarnholt
  length 11.2 m
  incline 20 deg
  trough inside radius 175 mm side height 190 mm plate 3 mm
  screw Spiral315
  liner TwoLayer10
  drive at tail power 3 kW speed 16 rpm
  commissioned 2024-02-26 meter 0 h
  break Discharge at 10.6 m to 11.2 m discharge allowance 20 mm
  hold-down every 1.5 m from 1 m to 10 m both sides
  access Floor at 0 m to 11.2 m ground
  isolation Q1 electrical
}`,
  check: each((estate) => estate.conveyors, function* (conveyor) {
    if (conveyor.drive?.end !== 'tail' || conveyor.screw.kind.kind !== 'shaftless' || conveyor.holdDowns.length > 0) return;
    yield {
      origin: conveyor.drive.origin,
      message: `${conveyor.name} is driven at the tail, so its spiral is pushed, and it has no hold-downs.`,
    };
  }),
};
