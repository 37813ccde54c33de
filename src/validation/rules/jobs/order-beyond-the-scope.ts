// Does an order strip or fit panels that the job does not ask for? What of the scope no step does is told by the order checker (TL424).

import type { Job } from '../../../domain/model/job.js';
import type { Estate } from '../../../domain/model/estate.js';
import { beyondScope } from '../../../domain/order/beyond-scope.js';
import { groundOf } from '../../../domain/order/ground.js';
import { ranges, sayStep, stretchText } from '../../../domain/order/words.js';
import { hasSizesToPlanWith } from '../../evidence/sizes-to-plan-with.js';
import type { Found } from '../../finding.js';
import type { Rule } from '../../rule.js';
import { onceAJob } from '../../telling/once-a-job.js';
import { scopeAsTheOrder, stepsAsTheScope } from '../../telling/scope-and-order.js';
import { but, soundOrder } from '../../telling/sound-order.js';

const scopeOf = (lines: string): string => `${lines}\n${soundOrder}`;

export const orderBeyondTheScope: Rule = {
  code: 'TL536',
  title: 'Order that renews more than the job asks for',
  severity: 'warning',
  restsOn: ['block', 'history'],
  why:
    'The pack buys, cuts and books hours for what the order fits; options, report and permits go by what the job asks for. ' +
    'Whoever signs off the scope signs for panels that nobody asked to be touched.',
  todo: 'Take the panels into the scope, or strip and fit only what the job asks for.',
  given: 'job',
  bad: scopeOf('reline panels 2 to 4 of run above Gate').replace('  strip run', '  «strip» run'),
  good: scopeOf('reline panels 1 to 4 of run above Gate'),
  cases: [
    {
      name: 'less than the scope, which is another matter',
      text: scopeOf('reline panels 1 to 4 of run above Gate').replaceAll(
        'clean run above Gate',
        'clean panels 1 to 4 of run above Gate',
      ),
    },
    {
      name: 'in a run that the job does not name',
      text: but(
        soundOrder,
        [
          '  strip run above Gate',
          '  strip run above Inlet by Alpha attended by Bravo\n  strip run above Gate',
        ],
        ['  strip run above Inlet', '  «strip» run above Inlet'],
      ),
    },
    {
      name: 'a patch of the trough, which is not of the liner',
      text: but(soundOrder, [
        '  fit run',
        '  patch from 9 m to 9.4 m by Alpha attended by Bravo cold work\n  fit run',
      ]),
    },
  ],
  *check({ estate }) {
    for (const job of estate.jobs) if (job.order && hasSizesToPlanWith(job)) yield* found(job, estate);
  },
};

const found = onceAJob((job: Job, estate: Estate): readonly Found[] => {
  const ground = groundOf(job, job.order?.steps ?? [], estate);
  return beyondScope(ground).flatMap((beyond): Found | readonly never[] => {
    const step = ground.steps[beyond.step];
    if (!step) return [];
    const { run, panels, asked, scope } = beyond;
    const many = panels.length > 1;
    const more = `${many ? 'panels' : 'panel'} ${ranges(panels)} of ${run.run.label}`;
    const asks =
      asked.length === 0
        ? `asks for nothing in run ${run.run.number}`
        : `asks for ${scope.map(({ stretch }) => stretchText(stretch)).join(' and ')}`;
    return {
      origin: step.actionOrigin,
      message: `"${sayStep(step)}" of ${job.name} works on ${more}, and the job ${asks}.`,
      related: scope.map(({ stretch, origin }) => ({ origin, message: `reline ${stretchText(stretch)}` })),
      fixes: [scopeAsTheOrder(job, beyond), ...stepsAsTheScope(job, estate, beyond.run.run)],
    };
  });
});
