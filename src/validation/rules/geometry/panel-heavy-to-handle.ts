// Can a panel be handled by one person? Guideline 25 kg close to the body; two lift two thirds of the sum, three half (HSE,
// L23). Developed width × thickness × density; told at the liner's use, because the trough decides the width.

import { handlingGuideline, peopleNeeded } from '../../../domain/geometry/handling.js';
import { panelMass } from '../../../domain/geometry/trough.js';
import { formatLength, formatMass } from '../../../domain/units/format.js';
import { each } from '../../each.js';
import { linedSection } from '../../lined-section.js';
import { isPlausible } from '../../plausible.js';
import type { Rule } from '../../rule.js';

export const panelHeavyToHandle: Rule = {
  code: 'TL221',
  title: 'Panel too heavy for one person',
  severity: 'information',
  why: 'Panels are worked round the screw at arm\'s length, on a slope and at a height, where far less than the guideline weight is safe.',
  todo: 'Plan the people or the lifting gear for it, or order shorter panels; a competent person assesses the lift on site.',
  given: 'conveyor',
  bad: '  liner «Long12»\n}\nliner Long12 {\n  layer white 6 mm\n  layer red 6 mm\n  panel length 3000 mm ± 1 mm\n  condemn at 3 mm',
  good: '  liner Short12\n}\nliner Short12 {\n  layer white 6 mm\n  layer red 6 mm\n  panel length 1000 mm ± 1 mm\n  condemn at 3 mm',
  check: each((estate) => estate.conveyors, function* (conveyor) {
    const { liner } = conveyor;
    const section = linedSection(conveyor, liner);
    const longest = liner.panelLengths.reduce((most, length) => Math.max(most, length.value), 0);
    if (!section || !isPlausible('panel length', longest)) return;
    const mass = panelMass(section, longest, liner.density.value);
    if (mass <= handlingGuideline) return;
    const people = peopleNeeded(mass, handlingGuideline);
    yield {
      origin: conveyor.linerUse.origin,
      message: `A panel of ${liner.name} ${formatLength(longest)} long weighs ${formatMass(mass)} on ${conveyor.name}: `
        + (people === undefined ? 'more than three people may lift.' : `${people === 2 ? 'two' : 'three'} people at least.`),
    };
  }),
};
