// Is there a point at which the conveyor is isolated? Every pack starts there (OSHA 1910.147(d), EN ISO 14118).

import { each } from '../../each.js';
import type { Rule } from '../../rule.js';

export const noIsolationPoint: Rule = {
  code: 'TL231',
  title: 'Conveyor without an isolation point',
  severity: 'information',
  why: 'A work pack without a named isolation point leaves the crew to find out on the day what holds the screw still.',
  todo: 'Write each isolation: the local isolator, the material feed, and what holds stored energy.',
  given: 'whole',
  bad: `
plant Tarnholt { duty 60 h/week }
liner TwoLayer10 {
  layer grey 5 mm
  layer orange 5 mm
  panel length 1000 mm ± 1 mm
  condemn at 2.5 mm
}
screw Spiral315 {
  shaftless
  outside diameter 315 mm
  pitch 280 mm
}
conveyor «BR1» {
  plant Tarnholt
  length 11.2 m
  incline 20 deg
  trough inside radius 175 mm side height 190 mm plate 3 mm
  screw Spiral315
  liner TwoLayer10
  commissioned 2024-02-26 meter 0 h
  break Discharge at 10.6 m to 11.2 m discharge allowance 20 mm
  access Floor at 0 m to 11.2 m ground
}`,
  good: `
plant Tarnholt { duty 60 h/week }
liner TwoLayer10 {
  layer grey 5 mm
  layer orange 5 mm
  panel length 1000 mm ± 1 mm
  condemn at 2.5 mm
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
  isolation Q1 "local isolator" electrical
}`,
  check: each((estate) => estate.conveyors, function* (conveyor) {
    if (conveyor.isolations.length > 0) return;
    yield { origin: conveyor.nameOrigin, message: `${conveyor.name} names no isolation point.` };
  }),
};
