// What the site has to have ready besides people: how they are fetched out, where they meet, what holds the spiral up, tools.

import type { HeldUp, Job } from '../../../domain/model/job.js';
import { liesOnItsLiner, supportLoad } from '../../../domain/plan/held-up.js';
import { formatMass } from '../../../domain/units/format.js';
import type { LengthUnit } from '../../../domain/units/length-words.js';
import { chainageWords } from '../../../domain/units/length-words.js';
import type { Fact, ToolRow } from '../pack.js';

/** What is not written is said to be missing: nobody should look for it on the day. */
export function rescueFacts({ rescue, conveyor }: Job): readonly Fact[] {
  const plant = conveyor.plant.rescue;
  const missing = 'not written: arrange it before anybody goes in';
  return [
    { name: 'Rescue contact', value: (rescue?.contact ?? plant?.contact)?.words ?? missing },
    { name: 'Rescue means', value: (rescue?.means ?? plant?.means)?.words ?? missing },
    {
      name: 'Meeting point',
      value: (rescue?.meetingPoint ?? plant?.meetingPoint)?.words ?? 'not written: agree it on site',
    },
  ];
}

export function toolRows({ tools = [] }: Job): readonly ToolRow[] {
  return tools.map(({ what, count }) => ({ what, count: count?.count ?? 1 }));
}

/** How the spiral is kept up; undefined where it comes out, has a shaft, or no panel passes under it. */
export function heldUpWords(job: Job, unit: LengthUnit): string | undefined {
  if (!liesOnItsLiner(job)) return undefined;
  return job.heldUp === undefined
    ? 'Spiral stays in: how it is held up while panels pass under it is not written; agree it before the job.'
    : declaredWords(job, job.heldUp, unit);
}

function declaredWords(job: Job, { gear, rating, spacing }: HeldUp, unit: LengthUnit): string {
  const load = supportLoad(job);
  return (
    `Spiral held up by ${gear} every ${chainageWords(spacing.value, unit)}, ` +
    `rated ${rating.text} each${load === undefined ? '' : `; bears about ${formatMass(load)}`}.`
  );
}
