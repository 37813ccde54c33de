// Do the layers add up to the stated thickness? A tenth of a millimetre is left for rounding inches.

import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { each } from '../../telling/each.js';
import { replace } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';

export const layersAgainstThickness: Rule = {
  code: 'TL206',
  title: 'Layers that do not add up to the thickness',
  severity: 'error',
  restsOn: [],
  why: 'Every remaining life counts from the full thickness and every colour from the layers; they cannot both be right.',
  todo: 'Take the layers from the data sheet or an offcut; the thickness may be left out, it is their sum.',
  given: 'liner',
  example: '  thickness «14 mm|12 mm»',
  cases: [
    { name: 'off by the rounding', text: '  thickness 12.1 mm' },
    { name: 'off by more', text: '  thickness «12.2 mm»' },
  ],
  check: each(
    (estate) => estate.liners,
    function* (liner) {
      const sum = liner.layers.reduce((total, layer) => total + layer.thickness.value, 0);
      if (liner.thickness.assumed !== undefined || Math.abs(sum - liner.thickness.value) <= 0.1) return;
      yield {
        origin: liner.thickness.origin,
        message: `${liner.name} is ${liner.thickness.text} thick, and its layers add up to ${lengthOn({ liner }, sum)}.`,
        related: liner.layers.map((layer) => ({
          origin: layer.origin,
          message: `layer ${layer.name}, ${layer.thickness.text}`,
        })),
        fixes: [replace(liner.thickness.origin, lengthOn({ liner }, sum))],
      };
    },
  ),
};
