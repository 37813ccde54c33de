// Is anything but the motor isolated where material stands above and can come down by itself?

import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '5 deg',
  dimension: 'angle',
  what: 'Incline up to which nothing slides by itself.',
  basis: 'judgement',
};

export const materialNotHeldBack: Rule = {
  code: 'TL259',
  title: 'Only the motor is isolated, and material can come down',
  severity: 'warning',
  restsOn: ['block'],
  why:
    'A locked isolator holds the motor, not the head of material above a gate or an inlet: it comes down the slope ' +
    'onto whoever works in the trough, and turns the spiral as it comes.',
  todo:
    'Declare how feed and gates are held: an isolation point of kind material, mechanical or gravity; the site’s ' +
    'own isolation procedure says which.',
  threshold,
  given: 'conveyor',
  example: `
  «isolation Q1 "local isolator" electrical at 11.5 m»‹|
  isolation Feed "feed held off" material at 0.2 m›`,
  cases: [
    { name: 'nearly level', text: '  isolation Q1 "local isolator" electrical at 11.5 m\n  incline 5 deg' },
    {
      name: 'a pinned gate',
      text: '  isolation Q1 "local isolator" electrical at 11.5 m\n  isolation Pin "gate pinned" mechanical at 7.2 m',
    },
  ],
  check: each(
    (estate) => estate.conveyors,
    function* ({ name, plant, incline, breaks, isolations }) {
      const [first] = isolations;
      const above = breaks.find(({ kind }) => kind === 'slide gate' || kind === 'inlet');
      if (!first || !above || Math.abs(incline.value) <= settled(plant, 'TL259', threshold)) return;
      if (isolations.some(({ kind }) => kind !== 'electrical')) return;
      yield {
        origin: first.origin,
        message:
          `${name} rises at ${incline.text} with ${above.kind === 'inlet' ? 'an inlet' : 'a gate'} (${above.name}), and ` +
          `its isolation points are electrical only.`,
        related: [{ origin: above.origin, message: `${above.name}, where material stands` }],
      };
    },
  ),
};
