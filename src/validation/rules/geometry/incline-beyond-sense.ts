// Can a screw carry anything up so steep a slope?

import { formatNumber } from '../../../domain/units/format.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

/** Degrees more that an inner flight or a shaft carries (judgement): it keeps the core from falling back. */
const withCore = 10;

const threshold: RuleThreshold = {
  usual: '35 deg',
  dimension: 'angle',
  what: 'Steepest incline of a spiral with an open core; with an inner flight or a shaft ten degrees more.',
  basis:
    'judgement: guides give half of the level capacity at 25 degrees and losses of 10 to 70 % at 30; ' +
    'beyond 35 material without a core falls back between the turns',
};

export const inclineBeyondSense: Rule = {
  code: 'TL258',
  title: 'Incline beyond what the screw carries',
  severity: 'warning',
  restsOn: [],
  why:
    'Material falls back between the turns faster than it is lifted: the trough fills, the drive trips, and what ' +
    'does arrive has worn the liner many times over.',
  todo: 'Check the incline against the drawing; a steep conveyor needs an inner flight, a short pitch, or a shafted screw in a tube.',
  threshold,
  given: 'conveyor',
  example: '  incline «40 deg|24 deg»',
  cases: [
    { name: 'the steepest without a core', text: '  incline 35 deg' },
    { name: 'just steeper', text: '  incline «35.5 deg»' },
    { name: 'downward', text: '  incline -10 deg' },
  ],
  check: each(
    (estate) => estate.conveyors,
    function* ({ name, plant, incline, screw }) {
      const open = screw.kind.kind === 'shaftless' && screw.innerFlight === undefined;
      const most = settled(plant, 'TL258', threshold) + (open ? 0 : withCore);
      if (incline.value <= most) return;
      yield {
        origin: incline.origin,
        message:
          `${name} rises at ${incline.text}, and ${open ? 'a spiral with an open core' : 'a screw in a trough'} carries ` +
          `up to about ${formatNumber(most, 1)} deg.`,
        related: [{ origin: screw.nameOrigin, message: `the screw, ${screw.name}` }],
      };
    },
  ),
};
