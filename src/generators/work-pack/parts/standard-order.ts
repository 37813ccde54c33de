// The order a job is done in where its author writes none and no plan is at hand: isolate and prove dead, test the air, open
// up, take off braces and hold-downs, strip, clean, fit run by run from the upper end, and all of it back (common practice).

import type { Job, Step, StepAction } from '../../../domain/model/job.js';
import type { Stretch } from '../../../domain/model/stretch.js';

export function standardOrder(job: Job): readonly Step[] {
  const { conveyor } = job;
  const step = (action: StepAction, stretch?: Stretch): Step => ({ action, ...(stretch ? { stretch } : {}), crews: [], after: [], origin: job.origin, actionOrigin: job.origin });
  const each = (action: StepAction): Step[] => job.relines.map(({ stretch }) => step(action, stretch));
  return [
    step('isolate'), step('prove dead'), step('gas test'), step('covers off'),
    ...(conveyor.braces.length > 0 ? [step('braces off')] : []),
    ...(conveyor.holdDowns.length > 0 ? [step('hold-downs off')] : []),
    ...(job.screwChange ? [step('restrain screw'), step('unbolt drive'), step('remove screw')] : []),
    ...each('strip'), ...each('clean'), ...each('fit'),
    ...(job.screwChange ? [step('insert screw'), step('bolt drive')] : []),
    ...(conveyor.holdDowns.length > 0 ? [step('hold-downs on')] : []),
    ...(conveyor.braces.length > 0 ? [step('braces on')] : []),
    step('covers on'), step('remove isolation'), step('run empty'), step('run loaded'),
  ];
}
