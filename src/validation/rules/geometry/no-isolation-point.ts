// Is there a point at which the conveyor is isolated? Every pack starts there (OSHA 1910.147(d), EN ISO 14118).

import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const noIsolationPoint: Rule = {
  code: 'TL231',
  title: 'Conveyor without an isolation point',
  severity: 'information',
  restsOn: ['block'],
  why: 'A work pack without a named isolation point leaves the crew to find out on the day what holds the screw still.',
  todo: 'Write each isolation: the local isolator, the material feed, and what holds stored energy.',
  given: 'specifications',
  example: `
conveyor «DG1» {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2024-01-08 meter 0 h
  break Discharge at 11.4 m to 12 m discharge allowance 20 mm
  access A1 at 0 m to 12 m platform‹|
  isolation Q1 "local isolator" electrical›
}`,
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      if (conveyor.isolations.length > 0) return;
      yield { origin: conveyor.nameOrigin, message: `${conveyor.name} names no isolation point.` };
    },
  ),
};
