// Can a panel be handled by one person? Guideline 25 kg close to the body; two lift two thirds of the sum, three half (HSE,
// L23). Developed width × thickness × density; on the widest trough the liner is used in.

import { firstLiners } from '../../../domain/model/first-liner.js';
import { handlingGuideline, peopleNeeded } from '../../../domain/geometry/handling.js';
import { panelMass } from '../../../domain/geometry/trough.js';
import type { LinerSpecification } from '../../../domain/model/specifications.js';
import type { Stated } from '../../../domain/model/stated.js';
import { formatMass } from '../../../domain/units/format.js';
import { linedSection } from '../../evidence/lined-section.js';
import { isPlausible } from '../../evidence/plausible.js';
import type { Rule } from '../../rule.js';

export const panelHeavyToHandle: Rule = {
  code: 'TL221',
  title: 'Panel too heavy for one person',
  severity: 'information',
  restsOn: [],
  tags: ['advice'],
  why: "Panels are worked round the screw at arm's length, on a slope and at a height, where far less than the guideline weight is safe.",
  todo: 'Plan the people or the lifting gear for it, or order shorter panels; a competent person assesses the lift on site.',
  given: 'liner',
  example: '  panel length «3000 mm|1200 mm» ± 1 mm',
  *check({ estate }) {
    for (const liner of estate.liners) {
      const longest = longestOf(liner);
      if (!longest || !isPlausible('panel length', longest.value)) continue;
      const [heaviest] = estate.conveyors
        .filter((conveyor) => firstLiners(conveyor).includes(liner))
        .flatMap((conveyor) => {
          const section = linedSection(conveyor, liner);
          return section ? [{ conveyor, mass: panelMass(section, longest.value, liner.density.value) }] : [];
        })
        .sort((a, b) => b.mass - a.mass);
      if (!heaviest || heaviest.mass <= handlingGuideline) continue;
      const people = peopleNeeded(heaviest.mass, handlingGuideline);
      yield {
        origin: longest.origin,
        message:
          `A panel of ${liner.name} ${longest.text} long weighs ${formatMass(heaviest.mass)} on ${heaviest.conveyor.name}: ` +
          (people === undefined
            ? 'more than three people may lift.'
            : `${people === 2 ? 'two' : 'three'} people at least.`),
        related: [
          { origin: heaviest.conveyor.linerUse.origin, message: `used on ${heaviest.conveyor.name}` },
        ],
      };
    }
  },
};

function longestOf({ panelLengths }: LinerSpecification): Stated<'length'> | undefined {
  return panelLengths.reduce<Stated<'length'> | undefined>(
    (longest, length) => (!longest || length.value > longest.value ? length : longest),
    undefined,
  );
}
