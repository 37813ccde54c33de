// Has somebody said that the measures demanded for hot work will be there? Told once a job: one question answers all its steps.

import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';
import type { Step } from '../../../domain/model/job.js';
import { sayStep } from '../../../domain/order/words.js';

export const hotWorkNotConfirmed: Rule = {
  code: 'TL472',
  title: 'Hot work whose measures nobody has confirmed',
  severity: 'warning',
  restsOn: ['block', 'machine'],
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
  cases: [
    {
      name: 'two steps are told once, at the first',
      text: but(soundOrder, [
        '  strip run',
        '  patch run above Gate by Alpha attended by Bravo «hot work» shielded wet fire watch 60 min to be confirmed\n' +
          '  patch run above Gate by Alpha attended by Bravo hot work shielded wet fire watch 60 min to be confirmed\n' +
          '  fire watch run above Gate\n  strip run',
      ]),
    },
  ],
  *check({ estate }) {
    for (const { order } of estate.jobs) {
      const open = (order?.steps ?? []).flatMap((step) =>
        step.heat?.kind === 'hot' && !step.heat.confirmed ? [{ step, origin: step.heat.origin }] : [],
      );
      const [first, ...others] = open;
      if (!first) continue;
      yield {
        origin: first.origin,
        message: `Nobody has confirmed that the liner is shielded, kept wet and watched for ${stepsWords(open)}.`,
        related: others.map(({ step, origin }) => ({ origin, message: `nor for "${sayStep(step)}"` })),
      };
    }
  },
};

/** Each step is a related place; the message names no more than can be read. */
function stepsWords(open: readonly { readonly step: Step }[]): string {
  const named = open.slice(0, mostNamed).map(({ step }) => `"${sayStep(step)}"`);
  const more = open.length - named.length;
  if (open.length === 1) return named[0] ?? '';
  return `${open.length} steps: ${named.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

const mostNamed = 4;
