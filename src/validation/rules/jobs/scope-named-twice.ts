// Does a job reline a stretch twice?

import { panelEnds } from '../../../domain/model/first-panels.js';
import { intervalOf } from '../../../domain/model/runs.js';
import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import { remove } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';

export const scopeNamedTwice: Rule = {
  code: 'TL448',
  title: 'Stretch named twice in the scope',
  severity: 'warning',
  restsOn: [],
  why: 'The panels there are bought and cut twice.',
  todo: 'Take one of the two out, or correct its stretch.',
  given: 'job',
  bad: '  reline run above Gate\n  «reline from 9 m to 12 m»',
  good: '  reline run above Gate',
  *check({ estate }) {
    for (const { conveyor, relines } of estate.jobs) {
      const scope = relines.map(({ stretch, origin }) => ({
        origin,
        interval: intervalOf(conveyor, stretch, panelEnds),
      }));
      for (const [i, { origin, interval }] of scope.entries()) {
        const before = scope
          .slice(0, i)
          .find(
            (one) =>
              one.interval &&
              interval &&
              Math.min(one.interval.to, interval.to) - Math.max(one.interval.from, interval.from) > 1,
          );
        if (!before?.interval || !interval) continue;
        yield {
          origin,
          message:
            `This covers ${chainageOn(conveyor, Math.max(before.interval.from, interval.from))} to ` +
            `${chainageOn(conveyor, Math.min(before.interval.to, interval.to))} of ${conveyor.name} a second time.`,
          related: [{ origin: before.origin, message: 'the first time' }],
          fixes: [remove(origin, 'Take this one out')],
        };
      }
    }
  },
};
