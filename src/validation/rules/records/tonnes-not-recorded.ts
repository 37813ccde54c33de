// Does every record of a conveyor whose wear goes by tonnes state them?

import type { Rule } from '../../rule.js';
import { named } from '../../telling/record-names.js';

export const tonnesNotRecorded: Rule = {
  code: 'TL334',
  title: 'Record without the tonnes that wear goes by',
  severity: 'warning',
  restsOn: ['block'],
  why: 'The tonnes of that day are then guessed from the records before and after, and the rate with them.',
  todo: 'Add the running total after the meter reading: tonnes 31000 t.',
  given: 'specifications',
  example: `
conveyor DG1 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  wear by tonnes
  commissioned 2024-01-08 meter 0 h tonnes 0 t
  break Discharge at 11.4 m to 12 m discharge allowance 20 mm
  access A1 at 0 m to 12 m platform
  isolation Q1 "local isolator" electrical
  isolation Feed material
  point P1 at 4 m clock 7:30
}
inspection DG1 2025-03-10 meter «6200 h» ‹|tonnes 42000 t ›{
  P1 colour ivory
}
inspection DG1 2025-09-08 meter 9000 h tonnes 61000 t {
  P1 colour ivory
}`,
  *check({ estate }) {
    for (const [what, records] of [
      ['inspection', estate.inspections],
      ['reline', estate.relines],
    ] as const) {
      for (const record of records) {
        if (record.conveyor.wearBy !== 'tonnes' || record.meter.tonnes) continue;
        yield {
          origin: (record.meter.hours ?? record.date).origin,
          message: `Wear of ${record.conveyor.name} goes by tonnes, and the ${named(what, record)} states none.`,
        };
      }
    }
  },
};
