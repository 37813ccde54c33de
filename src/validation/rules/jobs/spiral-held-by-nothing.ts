// Told by the planner (domain/plan): a spiral without a shaft lies on its liner; where it stays in, nothing else carries it once
// a panel is out. Here of written orders; of a proposed one the pack says so, and its first step under the spiral asks.

import { onPlan } from '../../telling/on-plan.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

const told = onPlan('spiral held by nothing');

export const spiralHeldByNothing: Rule = {
  code: 'TL551',
  title: 'Spiral held up by nothing while its liner is out',
  severity: 'warning',
  restsOn: ['block', 'machine'],
  why: 'A spiral without a shaft lies on its liner: with a panel out it comes down on hands, and the new panel cannot pass under it.',
  todo: 'Say what holds it: `spiral held up by "…" rated 500 kg every 3 m` in the job; a competent person chooses the gear.',
  given: 'job',
  bad: but(soundOrder, ['\norder {', '\n- spiral\norder {'], ['  strip', '  «strip»']),
  good: soundOrder,
  check: (input) => {
    const jobs = input.estate.jobs.filter(({ order }) => order !== undefined);
    return told({ ...input, estate: { ...input.estate, jobs } });
  },
};
