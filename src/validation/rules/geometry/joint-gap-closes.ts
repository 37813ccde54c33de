// Is the joint gap wide enough for what a panel grows between fitting and service, against the steel it lies in?

import { carbonSteelExpansion, growthAgainst } from '../../../domain/geometry/thermal.js';
import { formatLength } from '../../../domain/units/format.js';
import { isPlausible } from '../../plausible.js';
import type { Rule } from '../../rule.js';
import { warmingOf } from '../../temperatures.js';

export const jointGapCloses: Rule = {
  code: 'TL248',
  title: 'Joint gap that closes when warm',
  severity: 'warning',
  why: 'Panels that meet push against one another and lift at the joint, where the screw catches the edge.',
  todo: 'Leave a wider gap, use shorter panels, or fit on a warmer day.',
  given: 'whole',
  bad: `
plant Tarnholt {
  fitting temperature 5 degC to 25 degC
  service temperature 5 degC to 35 degC
  duty 60 h/week
}
liner TwoLayer10 {
  layer grey 5 mm
  layer orange 5 mm
  panel length 3000 mm ± 1 mm
  condemn at 2.5 mm
  joint gap «4 mm»
}
screw Spiral315 {
  shaftless
  outside diameter 315 mm
  pitch 280 mm
}
conveyor BR1 {
  plant Tarnholt
  length 11.2 m
  incline 20 deg
  trough inside radius 175 mm side height 190 mm plate 3 mm
  screw Spiral315
  liner TwoLayer10
  commissioned 2024-02-26 meter 0 h
  break Discharge at 10.6 m to 11.2 m discharge allowance 20 mm
  access Floor at 0 m to 11.2 m ground
  isolation Q1 electrical
}`,
  good: `
plant Tarnholt {
  fitting temperature 5 degC to 25 degC
  service temperature 5 degC to 35 degC
  duty 60 h/week
}
liner TwoLayer10 {
  layer grey 5 mm
  layer orange 5 mm
  panel length 1000 mm ± 1 mm
  condemn at 2.5 mm
  joint gap 6 mm
}
screw Spiral315 {
  shaftless
  outside diameter 315 mm
  pitch 280 mm
}
conveyor BR1 {
  plant Tarnholt
  length 11.2 m
  incline 20 deg
  trough inside radius 175 mm side height 190 mm plate 3 mm
  screw Spiral315
  liner TwoLayer10
  commissioned 2024-02-26 meter 0 h
  break Discharge at 10.6 m to 11.2 m discharge allowance 20 mm
  access Floor at 0 m to 11.2 m ground
  isolation Q1 electrical
}`,
  *check({ estate }) {
    const told = new Set<object>();
    for (const conveyor of estate.conveyors) {
      const { liner } = conveyor;
      const warming = warmingOf(conveyor);
      const panel = longest(liner.panelLengths.map((length) => length.value));
      if (liner.joint.policy !== 'gap' || !warming || told.has(liner) || !isPlausible('panel length', panel)) continue;
      const growth = growthAgainst(panel, liner.expansion.value, carbonSteelExpansion, warming.rise);
      if (growth <= liner.joint.gap.value) continue;
      told.add(liner);
      yield {
        origin: liner.joint.gap.origin,
        message: `The joints of ${liner.name} have ${liner.joint.gap.text}, and a panel of ${formatLength(panel)} grows by ${formatLength(growth)} `
          + `between fitting at ${warming.coldestFitting.text} and service at ${warming.warmestService.text} on ${conveyor.name}.`,
        related: [{ origin: conveyor.linerUse.origin, message: `used on ${conveyor.name}` }],
      };
    }
  },
};

function longest(lengths: readonly number[]): number {
  return lengths.reduce((most, length) => Math.max(most, length), 0);
}
