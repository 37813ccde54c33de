// Does a job in a declared confined space say who is called and what people are fetched out with?

import { list } from '../../../domain/units/wording.js';
import type { Rule } from '../../rule.js';

export const rescueNotArranged: Rule = {
  code: 'TL453',
  title: 'Confined space without rescue',
  severity: 'warning',
  restsOn: ['block', 'machine'],
  why: 'Most who die in confined spaces went in to help. Rescue that is thought of on the day comes too late, and calling outside services alone is no rescue.',
  todo: 'Write `rescue contact` and `rescue means` in the job or its plant; a competent person judges whether they will do.',
  given: 'job',
  around: {
    plant: `
rescue contact "control room, radio channel 1"
‹|rescue means "tripod and winch at the tail"›`,
  },
  example: `
conveyor «DG1»`,
  *check({ estate }) {
    for (const { name, conveyorUse, conveyor, rescue } of estate.jobs) {
      if (!conveyor.confinedSpace) continue;
      const { plant } = conveyor;
      const missing = [
        (rescue?.contact ?? plant.rescue?.contact) ? undefined : 'rescue contact',
        (rescue?.means ?? plant.rescue?.means) ? undefined : 'rescue means',
      ].filter((word) => word !== undefined);
      if (missing.length > 0)
        yield {
          origin: conveyorUse.origin,
          message: `${conveyor.name} is a confined space, and neither ${name} nor ${plant.name} says its ${list(missing)}.`,
        };
    }
  },
};
