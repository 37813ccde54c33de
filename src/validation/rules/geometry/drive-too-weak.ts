// Is the drive strong enough for the declared capacity? P = Q(λL + H)/367 + DL/20 (ISO 7119). A spiral without a centre tube drags on
// its liner; where its mass and speed are known that drag is taken in place of the last term if it is the larger.

import { conveyorsAsDriven } from '../../../domain/model/present-drive.js';
import { conveyingPower, rise } from '../../../domain/geometry/drive.js';
import { emptyDrag } from '../../../domain/model/empty-drag.js';
import { formatValue } from '../../../domain/units/format.js';
import { each } from '../../telling/each.js';
import { isPlausible } from '../../evidence/plausible.js';
import type { Rule } from '../../rule.js';

export const driveTooWeak: Rule = {
  code: 'TL222',
  title: 'Drive too weak for the capacity',
  severity: 'warning',
  restsOn: [],
  why: 'An overloaded drive trips with a full trough, and a full trough has to be dug out by hand before anything else can be done.',
  todo: 'Check capacity (tonnes an hour, not a day), drive power and resistance factor.',
  given: 'conveyor',
  example: `
  resistance factor 3
  capacity ‹60|30› t/h
  drive at head power «2.2 kW|7.5 kW»`,
  check: each(conveyorsAsDriven, function* (conveyor) {
    const { capacity, resistanceFactor: factor, drive, length, incline, screw } = conveyor;
    const power = drive?.power;
    if (!capacity || !factor || !power) return;
    if (
      !isPlausible('conveyor length', length.value) ||
      !isPlausible('outside diameter', screw.outsideDiameter.value)
    )
      return;
    const needed = conveyingPower({
      massFlow: capacity.value,
      length: length.value,
      rise: rise(length.value, incline.value),
      resistanceFactor: factor.value,
      diameter: screw.outsideDiameter.value,
    });
    const drag = emptyDrag(conveyor);
    const least = needed.material + needed.lift + Math.max(needed.empty, drag ?? 0);
    if (least <= power.value) return;
    const empty =
      drag === undefined
        ? ''
        : `; the empty spiral alone ${formatValue(needed.empty, 'power', { digits: 1 })} by its last term, ` +
          `${formatValue(drag, 'power', { digits: 1 })} by the drag on the liner`;
    yield {
      origin: power.origin,
      message:
        `${conveyor.name} needs about ${formatValue(least, 'power', { digits: 1 })} for ${capacity.text} ` +
        `over ${length.text} at ${incline.text} (ISO 7119${empty}), and its drive has ${power.text}.`,
      related: [
        { origin: capacity.origin, message: 'the capacity' },
        { origin: factor.origin, message: 'the resistance factor' },
      ],
    };
  }),
};
