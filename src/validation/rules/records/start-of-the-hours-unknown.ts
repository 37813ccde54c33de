// Can hours on the liner be counted at all? They start at commissioning, or at a recorded reline.

import { historyOf } from '../../../domain/model/history.js';
import type { Rule } from '../../rule.js';

export const startOfTheHoursUnknown: Rule = {
  code: 'TL325',
  title: 'Liner of unknown age',
  severity: 'information',
  restsOn: ['block', 'history'],
  why: 'Without the day and the meter reading when the liner went in, its readings give no rate and no remaining life.',
  todo: 'Add `commissioned` with date and meter to the conveyor, or write down the reline that brought the present liner.',
  given: 'specifications',
  example: `
conveyor «DG1» {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12‹|
  commissioned 2024-01-08 meter 0 h›
  break Discharge at 11.4 m to 12 m discharge allowance 20 mm
  access A1 at 0 m to 12 m platform
  isolation Q1 electrical
  isolation Feed material
  point P1 at 4 m clock 7:30
}
inspection DG1 2025-03-10 meter 6200 h {
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
}`,
  *check({ estate }) {
    for (const conveyor of estate.conveyors) {
      // Declared and contradicted by the meter: the meter has its own finding.
      if (conveyor.commissioned) continue;
      const history = historyOf(estate, conveyor);
      if (
        history.start.kind !== 'unknown' ||
        !history.inspections.some(({ inspection }) => inspection.endRow > inspection.firstRow)
      )
        continue;
      yield {
        origin: conveyor.nameOrigin,
        message: `${conveyor.name} has readings, and neither its commissioning nor a reline is recorded.`,
      };
    }
  },
};
