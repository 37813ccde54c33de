// A spiral driven from its inlet end is pushed: it shortens, and lifts where nothing holds it down.

import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const pushedWithoutHoldDowns: Rule = {
  code: 'TL217',
  title: 'Pushed spiral without hold-downs',
  severity: 'warning',
  restsOn: ['block'],
  why:
    'A spiral driven at the tail is pushed through the material; without hold-downs it climbs, strikes the covers ' +
    'and wears the liner in one place.',
  todo: 'Write down the hold-downs that are fitted; if there are none, have the drive end and the design checked.',
  given: 'specifications',
  example: `
conveyor DG1 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  «drive at tail power 5.5 kW speed 18 rpm»
  commissioned 2024-01-08 meter 0 h
  break Discharge at 11.4 m to 12 m discharge allowance 20 mm
  ‹|hold-down every 1.5 m from 1.5 m to 10.5 m both sides
  ›access A1 at 0 m to 12 m platform
  isolation Q1 "local isolator" electrical
  isolation Feed material
}`,
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      if (
        conveyor.drive?.end !== 'tail' ||
        conveyor.screw.kind.kind !== 'shaftless' ||
        conveyor.holdDowns.length > 0
      )
        return;
      yield {
        origin: conveyor.drive.origin,
        message: `${conveyor.name} is driven at the tail, so its spiral is pushed, and it has no hold-downs.`,
      };
    },
  ),
};
