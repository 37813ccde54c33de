// Has somebody said that the measures demanded for hot work will be there?

import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';
import { sayStep } from '../../../domain/order/words.js';

export const hotWorkNotConfirmed: Rule = {
  code: 'TL472',
  title: 'Hot work whose measures nobody has confirmed',
  severity: 'warning',
  why: 'A quick fix or a plan can write what is needed; only the crew knows whether shields, water and somebody to watch are at hand.',
  todo: 'Ask who does the work. Take `to be confirmed` away once it is sure, or change the step.',
  given: 'job',
  bad: but(soundOrder, [
    '  strip run',
    '  patch run above Gate by Alpha attended by Bravo «hot work» shielded wet fire watch 60 min to be confirmed\n  fire watch run above Gate\n  strip run',
  ]),
  good: but(soundOrder, [
    '  strip run',
    '  patch run above Gate by Alpha attended by Bravo hot work shielded wet fire watch 60 min\n  fire watch run above Gate\n  strip run',
  ]),
  *check({ estate }) {
    for (const { order } of estate.jobs) {
      for (const step of order?.steps ?? []) {
        if (step.heat?.kind !== 'hot' || step.heat.confirmed) continue;
        yield {
          origin: step.heat.origin,
          message: `Nobody has confirmed that the liner is shielded, kept wet and watched for "${sayStep(step)}".`,
        };
      }
    }
  },
};
