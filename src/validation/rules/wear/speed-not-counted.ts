// Does a recorded speed of the screw say something of the wear? An hour at another speed counts by its turns (domain/model/turns.ts),
// against the speed of the drive; where the drive states none, or wear goes by tonnes, the author's figure would be read in silence.

import type { Rule } from '../../rule.js';

export const speedNotCounted: Rule = {
  code: 'TL512',
  title: 'Recorded speed that counts for nothing',
  severity: 'warning',
  restsOn: ['history', 'machine'],
  why:
    'A spiral at twice the speed slides twice as far in an hour; ' +
    'a change of speed that does not count makes the liner wear through at a date nobody foretold.',
  todo: 'Add the speed of the drive: `drive at head power 5.5 kW speed 18 rpm`; leave the speed out where wear goes by tonnes.',
  given: 'specifications',
  example: `
conveyor DG1 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  drive at head power 5.5 kW‹| speed 18 rpm›
  commissioned 2024-01-08 meter 0 h
  break Discharge at 11.4 m to 12 m discharge allowance 20 mm
  access A1 at 0 m to 12 m platform
  isolation Q1 "local isolator" electrical
  isolation Feed material
  point P1 at 4 m clock 7:30
}
duty DG1 from 2025-03-01 20 h/d speed «22 rpm»
`,
  *check({ estate }) {
    for (const { conveyor, speed } of estate.dutyChanges) {
      if (!speed) continue;
      const why =
        conveyor.wearBy === 'tonnes'
          ? 'its wear goes by tonnes'
          : conveyor.drive?.speed === undefined
            ? 'its drive states no speed to count against'
            : speed.value > 0
              ? undefined
              : 'a screw at rest has no running hours';
      if (why === undefined) continue;
      yield {
        origin: speed.origin,
        message: `The speed of ${conveyor.name} from this day on, ${speed.text}, changes no forecast: ${why}.`,
      };
    }
  },
};
