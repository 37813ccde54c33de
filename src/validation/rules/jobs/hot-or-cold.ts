// Does a step say cold where its job says that the spiral is cut or joined hot, or the other way round?

import type { ScrewChangeScope, Step } from '../../../domain/model/job.js';
import { sayStep } from '../../../domain/order/words.js';
import type { Rule } from '../../rule.js';
import { but, soundScrewChange } from '../../telling/sound-order.js';

export const hotOrCold: Rule = {
  code: 'TL557',
  title: 'Step that is cold where its job is hot, or hot where it is cold',
  severity: 'warning',
  restsOn: [],
  why: 'Whoever reads the one brings a torch, and whoever reads the other brings no shields, no water and nobody to watch.',
  todo: 'Say the same in both: `cut hot` or `cut cold`, `welded joints` or `bolted joints`, and `hot work` or `cold work` on the step.',
  given: 'job',
  bad: but(
    soundScrewChange,
    ['joints cut cold', 'joints cut hot'],
    ['  remove screw by Alpha attended by Bravo', '  «remove screw» by Alpha attended by Bravo cold work'],
  ),
  good: but(soundScrewChange, [
    '  remove screw by Alpha attended by Bravo',
    '  remove screw by Alpha attended by Bravo cold work',
  ]),
  *check({ estate }) {
    for (const { name, order, screwChange } of estate.jobs) {
      for (const step of screwChange ? (order?.steps ?? []) : []) {
        const [asked, words] = asksFor(step, screwChange);
        if (!asked || !step.heat || step.heat.kind === asked) continue;
        yield {
          origin: step.actionOrigin,
          message: `"${sayStep(step)}" says ${step.heat.kind} work, and job ${name} says \`${words}\`.`,
        };
      }
    }
  },
};

/** What the job says of such a step, and in which words. */
function asksFor(
  { action }: Step,
  change: ScrewChangeScope | undefined,
): readonly ['hot' | 'cold', string] | readonly [undefined, ''] {
  if (action === 'remove screw' && change?.cut) return [change.cut, `cut ${change.cut}`];
  if (action === 'join screw' && change?.joints)
    return [change.joints === 'welded' ? 'hot' : 'cold', `${change.joints} joints`];
  return [undefined, ''];
}
