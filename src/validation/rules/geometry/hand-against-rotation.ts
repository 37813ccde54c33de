// Do hand and rotation convey from tail to head? Seen in the direction of flow, a right-hand screw that conveys away from
// the viewer turns counter-clockwise and a left-hand one clockwise (the geometry of any screw thread).

import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Origin } from '../../../domain/model/origin.js';
import type { ScrewSpecification } from '../../../domain/model/specifications.js';
import { replace } from '../../telling/fixes.js';
import type { Found } from '../../finding.js';
import type { Rule } from '../../rule.js';

export const handAgainstRotation: Rule = {
  code: 'TL209',
  title: 'Hand and rotation that convey the wrong way',
  severity: 'error',
  restsOn: [],
  why: 'As written the screw would carry the material back to the tail; the side where the liner wears would be looked for on the wrong side of the trough.',
  todo: 'Look in the direction of flow and write down which way the screw turns, and check the hand on its drawing.',
  given: 'conveyor',
  example: '  «rotation clockwise|rotation counter-clockwise»',
  *check({ estate }) {
    for (const conveyor of estate.conveyors) yield* judge(conveyor, conveyor.screw, undefined);
    for (const change of estate.screwChanges)
      if (change.screw.name !== change.conveyor.screw.name)
        yield* judge(change.conveyor, change.screw, change.origin);
    for (const job of estate.jobs)
      if (job.screwChange && job.screwChange.screw.name !== job.conveyor.screw.name)
        yield* judge(job.conveyor, job.screwChange.screw, job.screwChange.origin);
  },
};

function* judge(conveyor: Conveyor, screw: ScrewSpecification, change: Origin | undefined): Iterable<Found> {
  const { rotation } = conveyor;
  if (!rotation || screw.hand === undefined) return;
  const needed = screw.hand === 'right' ? 'counter-clockwise' : 'clockwise';
  if (rotation.sense === needed) return;
  yield {
    origin: change ?? rotation.origin,
    message:
      `${conveyor.name} turns ${rotation.sense}, ` +
      `and the ${screw.hand}-hand screw ${screw.name} conveys towards the head only when it turns ` +
      `${needed}, seen in the direction of flow.`,
    ...(change
      ? { related: [{ origin: rotation.origin, message: `the rotation of ${conveyor.name}` }] }
      : { fixes: [replace(rotation.origin, `rotation ${needed}`)] }),
  };
}
