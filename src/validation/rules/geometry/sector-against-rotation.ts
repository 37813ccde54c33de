// Is the worn sector declared on the side that the spiral turns away from? At the bottom it moves material, and itself wears the
// liner, towards the side that it turns to: seen in the direction of flow to the right where it turns counter-clockwise, to the left
// where it turns clockwise. A sector that reaches the bottom may lie on both sides.

import { mirrorClock, formatClock } from '../../../domain/units/clock.js';
import { each } from '../../telling/each.js';
import { replace } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';

export const sectorAgainstRotation: Rule = {
  code: 'TL549',
  title: 'Worn sector on the side that the screw turns away from',
  severity: 'warning',
  restsOn: ['machine'],
  why:
    'Clock positions count as seen in the direction of flow: read from the other end, 7:30 becomes 4:30. Points, sheets and maps then ' +
    'watch the side that does not wear.',
  todo:
    'Stand so that the material moves away from you: where the bottom of the screw moves to the right, the liner wears between 3:00 and ' +
    '6:00. Correct the sector, or the rotation; where it really wears on the other side, a competent person should know why.',
  given: 'conveyor',
  example: `
  rotation counter-clockwise
  worn sector «6:30 to 8:30|3:30 to 5:30»
  point P1 at 4 m clock 6:00
  point P2 at 9 m clock 6:00`,
  cases: [
    {
      name: 'where nothing says how it turns',
      text: `
  worn sector 6:30 to 8:30`,
    },
    {
      name: 'a sector that reaches the bottom from the other side',
      text: `
  rotation counter-clockwise
  worn sector 5:30 to 8:30`,
    },
  ],
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      const { wornSector: sector, rotation, name } = conveyor;
      if (!sector || !rotation) return;
      const { sense } = rotation;
      const [from, to] = [sector.from.hours, sector.to.hours];
      const away = sense === 'clockwise' ? to <= bottom : from >= bottom;
      if (from >= to || !away) return;
      const [first, last] = [formatClock(mirrorClock(to)), formatClock(mirrorClock(from))];
      const origin = { ...sector.from.origin, end: sector.to.origin.end };
      yield {
        origin,
        message:
          `${name} is said to wear from ${sector.from.text} to ${sector.to.text}, and its screw turns ${sense}: seen in the direction of ` +
          `flow its bottom moves to the other side, ${first} to ${last}.`,
        related: [{ origin: rotation.origin, message: `the rotation of ${name}` }],
        fixes: [replace(origin, `${first} to ${last}`)],
      };
    },
  ),
};

/** Hours on the clock. */
const bottom = 6;
