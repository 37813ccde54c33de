// Does a job say what keeps the spiral up while its liner is taken out and put in under it? A spiral without a shaft lies on
// its liner; where it stays in, nothing else carries it once a panel is out.

import { lyingScrew } from '../../../domain/model/lying-screw.js';
import type { Rule } from '../../rule.js';
import { sayStep } from '../../../domain/order/words.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const spiralHeldByNothing: Rule = {
  code: 'TL551',
  title: 'Spiral held up by nothing while its liner is out',
  severity: 'warning',
  why: 'A spiral without a shaft lies on its liner: with a panel out it comes down on hands, and the new panel cannot pass under it.',
  todo: 'Say what holds it: `spiral held up by "…" rated 500 kg every 3 m` in the job; a competent person chooses the gear.',
  given: 'job',
  bad: but(soundOrder, ['\norder {', '\n- spiral\norder {'], ['  strip', '  «strip»']),
  good: soundOrder,
  *check({ estate }) {
    for (const job of estate.jobs) {
      const { name, heldUp, order, screwChange } = job;
      if (heldUp || screwChange || lyingScrew(job).kind.kind !== 'shaftless') continue;
      const under = order?.steps.find(({ action }) => action === 'strip' || action === 'fit');
      if (!under) continue;
      yield {
        origin: under.actionOrigin,
        message: `"${sayStep(under)}" works under a spiral that stays in, and ${name} does not say what holds it up.`,
      };
    }
  },
};
