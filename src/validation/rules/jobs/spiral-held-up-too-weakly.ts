// Does what holds the spiral up bear its share? Mass a metre × distance × 1.25 (domain/plan/held-up.ts).

import { supportLoad } from '../../../domain/plan/held-up.js';
import { formatMass } from '../../../domain/units/format.js';
import type { Rule } from '../../rule.js';

export const spiralHeldUpTooWeakly: Rule = {
  code: 'TL454',
  title: 'Spiral heavier than what holds it up',
  severity: 'error',
  restsOn: ['machine'],
  why: 'A support that gives way drops the spiral onto the hands that push a panel under it.',
  todo: 'Hold it up at more places, or with gear of a higher rating; a competent person chooses the gear.',
  given: 'job',
  example: `
reline run above Gate
spiral held up by "chain hoist" rated «100 kg|250 kg» every 3 m`,
  *check({ estate }) {
    for (const job of estate.jobs) {
      const load = supportLoad(job);
      if (!job.heldUp || load === undefined || load <= job.heldUp.rating.value) continue;
      const { rating, spacing } = job.heldUp;
      yield {
        origin: rating.origin,
        message: `Each support every ${spacing.text} bears about ${formatMass(load)} of the spiral and is rated ${rating.text}.`,
      };
    }
  },
};
