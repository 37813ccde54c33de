// Is any record older than the conveyor?

import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { StatedDay } from '../../../domain/model/stated.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Found } from '../../finding.js';
import type { Rule } from '../../rule.js';

export const recordBeforeCommissioning: Rule = {
  code: 'TL303',
  title: 'Record from before commissioning',
  severity: 'error',
  restsOn: [],
  why: 'There was nothing to inspect or reline then: the record is of another machine or another year, and its readings are left out.',
  todo: 'Check the year of the record and of the commissioning.',
  given: 'estate',
  example: `
inspection DG1 «2023-03-10|2025-03-10» meter ‹120|6200› h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
}`,
  *check({ estate }) {
    for (const { conveyor, date } of estate.inspections) yield* judge('inspection', conveyor, date);
    for (const { conveyor, date } of estate.relines) yield* judge('reline', conveyor, date);
    for (const { conveyor, date } of estate.screwChanges) yield* judge('screw change', conveyor, date);
    for (const { conveyor, date } of estate.patches) yield* judge('patch', conveyor, date);
    for (const { conveyor, date } of estate.services) yield* judge('service', conveyor, date);
    for (const { conveyor, date } of estate.panelsMoved) yield* judge('move of panels', conveyor, date);
    for (const { conveyor, date } of estate.meterChanges) yield* judge('meter change', conveyor, date);
  },
};

function* judge(what: string, conveyor: Conveyor, date: StatedDay): Iterable<Found> {
  const commissioned = conveyor.commissioned;
  if (!commissioned || date.day >= commissioned.date.day) return;
  yield {
    origin: date.origin,
    message: `This ${what} of ${conveyor.name} is dated ${formatDay(date.day)}, and ${conveyor.name} was commissioned on ${formatDay(commissioned.date.day)}.`,
    related: [{ origin: commissioned.origin, message: `the commissioning of ${conveyor.name}` }],
  };
}
