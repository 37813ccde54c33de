// A plan as the text of an `order { … }` block, ready to paste into the job: checked like any other order from then on.

import { stepText } from '../order/words.js';
import type { JobPlan } from './job-plan.js';

/** Repeated tests follow from `every` and are left out. Lines without the indentation of the job's block; the first is `order {`, the last `}`. */
export function writeOrder(plan: JobPlan): readonly string[] {
  return [
    'order {',
    ...plan.steps.flatMap(({ step, repeat }) => (repeat ? [] : [`  ${stepText(step)}`])),
    '}',
  ];
}
