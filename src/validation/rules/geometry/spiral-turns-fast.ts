// Does a spiral without a centre tube turn within the usual 5 to 30 rpm (maker's practice, from memory)? Wear goes with
// sliding distance, so with the speed.

import { conveyorsAsDriven } from '../../../domain/model/present-drive.js';
import { formatNumber } from '../../../domain/units/format.js';
import { each } from '../../telling/each.js';
import { isPlausible } from '../../evidence/plausible.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '30 rpm',
  dimension: 'rotation',
  what: 'Fastest that spirals without a centre tube usually turn.',
  basis: 'makers’ practice, from memory',
};

export const spiralTurnsFast: Rule = {
  code: 'TL224',
  title: 'Spiral that turns faster than usual',
  severity: 'information',
  restsOn: [],
  tags: ['advice'],
  why: 'A spiral slides on its liner all the time: at twice the speed the liner lasts half the hours, and the spiral starts to whip.',
  todo: 'Read the speed off the gearbox plate, not the motor plate.',
  threshold,
  given: 'conveyor',
  example: '  drive at head power 5.5 kW speed «48 rpm|18 rpm»',
  cases: [
    { name: 'at the end of the usual', text: '  drive at head power 5.5 kW speed 30 rpm' },
    { name: 'just beyond', text: '  drive at head power 5.5 kW speed «31 rpm»' },
  ],
  check: each(conveyorsAsDriven, function* ({ name, plant, screw, drive }) {
    const speed = drive?.speed;
    const most = settled(plant, 'TL224', threshold);
    if (
      !speed ||
      screw.kind.kind !== 'shaftless' ||
      speed.value <= most ||
      !isPlausible('speed', speed.value)
    )
      return;
    yield {
      origin: speed.origin,
      message: `${name} turns its spiral at ${speed.text}; 5 to ${formatNumber(most, 0)} rpm is usual without a centre tube.`,
    };
  }),
};
