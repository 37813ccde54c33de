// Is the joint gap wide enough for what a panel grows between fitting and service, against the steel it lies in?

import { growthAgainst } from '../../../domain/geometry/thermal.js';
import { troughSteel } from '../../../domain/model/trough-steel.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { isPlausible } from '../../evidence/plausible.js';
import type { Rule } from '../../rule.js';
import { warmingOf } from '../../evidence/temperatures.js';

export const jointGapCloses: Rule = {
  code: 'TL248',
  title: 'Joint gap that closes when warm',
  severity: 'warning',
  restsOn: ['block'],
  why: 'Panels that meet push against one another and lift at the joint, where the screw catches the edge.',
  todo: 'Leave a wider gap, use shorter panels, or fit on a warmer day.',
  given: 'liner',
  example: '  joint gap «4 mm|8 mm»',
  *check({ estate }) {
    const told = new Set<object>();
    for (const conveyor of estate.conveyors) {
      const { liner } = conveyor;
      const warming = warmingOf(conveyor);
      const panel = longest(liner.panelLengths.map((length) => length.value));
      if (liner.joint.policy !== 'gap' || !warming || told.has(liner) || !isPlausible('panel length', panel))
        continue;
      const steel = troughSteel(conveyor.trough.material);
      const growth = growthAgainst(panel, liner.expansion.value, steel.expansion, warming.rise);
      if (growth <= liner.joint.gap.value) continue;
      told.add(liner);
      yield {
        origin: liner.joint.gap.origin,
        message:
          `The joints of ${liner.name} have ${liner.joint.gap.text}, and a panel of ${lengthOn(conveyor, panel)} grows by ${lengthOn(conveyor, growth)} ` +
          `between fitting at ${warming.coldestFitting.text} and service at ${warming.warmestService.text} on ${conveyor.name}.`,
        related: [{ origin: conveyor.linerUse.origin, message: `used on ${conveyor.name}` }],
      };
    }
  },
};

function longest(lengths: readonly number[]): number {
  return lengths.reduce((most, length) => Math.max(most, length), 0);
}
