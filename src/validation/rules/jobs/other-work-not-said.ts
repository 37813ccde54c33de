// Does work that no step of the language names say what it is, and how long it takes?

import { sayStep } from '../../../domain/order/words.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

const before = '  clean run above Gate by Alpha attended by Bravo';

export const otherWorkNotSaid: Rule = {
  code: 'TL560',
  title: 'Other work without its words or its time',
  severity: 'warning',
  restsOn: [],
  why: 'The crew reads a step that says nothing, and the plan counts an hour for what may take a shift.',
  todo: 'Say what is done in quotes, and how long it takes: `other work run 2 takes 2 h "lift the spiral clear"`.',
  given: 'job',
  bad: but(soundOrder, [
    before,
    `${before}\n  «other work» run above Gate by Alpha attended by Bravo takes 2 h\n` +
      '  other work by Bravo takes 20 min "press started by hand"',
  ]),
  good: but(soundOrder, [
    before,
    `${before}\n  other work run above Gate by Alpha attended by Bravo takes 2 h "spiral lifted clear"`,
  ]),
  *check({ estate }) {
    for (const { order } of estate.jobs)
      for (const step of order?.steps ?? []) {
        if (step.action !== 'other work') continue;
        const lacks = [
          ...(step.note === undefined ? ['what is done'] : []),
          ...(step.takes === undefined ? ['how long it takes'] : []),
        ];
        if (lacks.length > 0)
          yield {
            origin: step.actionOrigin,
            message: `"${sayStep(step)}" does not say ${lacks.join(' and ')}.`,
          };
      }
  },
};
