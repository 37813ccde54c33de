// Does the record of a reline say which liner went in where several came out, and not each where it came with the machine?

import { historyOf } from '../../../domain/model/history.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { list } from '../../telling/wording.js';
import type { Rule } from '../../rule.js';

/** A shorter piece is a matter of how a joint was measured, mm. */
const joint = 50;

export const relineNamesNoLiner: Rule = {
  code: 'TL266',
  title: 'Record of a reline that does not say which of several liners went in',
  severity: 'warning',
  restsOn: ['block'],
  why: 'Colours and thicknesses read from then on are held against one of them, and wear, condemn limit and orders go by it.',
  todo: 'Write the liner that was fitted, as in `liner TwoLayer12`; where several were, one record for each stretch.',
  given: 'specifications',
  example: `
liner Other12 {
  layer green 6 mm
  layer black 6 mm
  panel length 1200 mm
  condemn at 3 mm
  joint butted
}
conveyor DG1 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2024-01-08 meter 0 h
  break Gate at 7 m to 7.5 m slide gate allowance 20 mm
  break Discharge at 11.4 m to 12 m discharge allowance 20 mm
  access A1 at 0 m to 12 m platform
  isolation Q1 "local isolator" electrical
  isolation Feed material
}
reline DG1 2024-12-02 meter 4600 h {
  liner Other12
  scope run 2
}
reline «DG1» 2025-01-06 meter 5000 h {
  ‹by "fitters"|liner TwoLayer12›
}`,
  *check({ estate }) {
    for (const reline of estate.relines) {
      const { conveyor, conveyorUse, date, liner, again } = reline;
      if (!reline.unsure) continue;
      const out = historyOf(estate, conveyor).linerSets.filter(
        ({ removed, from, to }) => removed?.reline === reline && to - from > joint,
      );
      const names = [...new Set(out.map((set) => set.liner.name))];
      if (names.length < 2) continue;
      yield {
        origin: conveyorUse.origin,
        message:
          `On ${formatDay(date.day)} ${list(names, 'and')} came out of ${conveyor.name}, ` +
          `and the record names no liner; ${again ? 'each' : liner.name} is taken to have gone in${again ? ' where it lay' : ''}.`,
      };
    }
  },
};
