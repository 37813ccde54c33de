// Is the room between screw and liner what the conveyor declares? Liner radius less screw radius, when all is new.

import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { each } from '../../telling/each.js';
import { clearanceOf } from '../../evidence/lined-section.js';
import type { Rule } from '../../rule.js';

export const clearanceOutsideItsBand: Rule = {
  code: 'TL202',
  title: 'Clearance outside the declared band',
  severity: 'warning',
  restsOn: ['block'],
  why: 'Too tight, and the spiral jams on the first stone; too wide, and it wears a narrow groove and leaves material behind.',
  todo: 'Check trough radius, liner thickness and screw diameter against the drawing, or correct the band.',
  given: 'conveyor',
  example: '  clearance «2 mm» to ‹10|20› mm',
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      const clearance = clearanceOf(conveyor, conveyor.liner, conveyor.screw);
      const band = conveyor.clearance;
      if (!band || clearance === undefined || clearance <= 0) return; // a screw that does not fit has its own finding
      if (clearance >= band.from.value - 0.05 && clearance <= band.to.value + 0.05) return;
      yield {
        origin: band.from.origin,
        message:
          `${conveyor.screw.name} has ${lengthOn(conveyor, clearance)} of clearance in the lined trough of ` +
          `${conveyor.name}, and the band is ${band.from.text} to ${band.to.text}.`,
        related: [
          {
            origin: conveyor.trough.origin,
            message: `trough, inside radius ${conveyor.trough.insideRadius.text}`,
          },
          {
            origin: conveyor.screwUse.origin,
            message: `screw, ${conveyor.screw.outsideDiameter.text} across`,
          },
          { origin: conveyor.linerUse.origin, message: `liner, ${conveyor.liner.thickness.text} thick` },
        ],
      };
    },
  ),
};
