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
    const { inspections, relines, screwChanges, patches, panelsMoved, meterChanges } = estate;
    // Work comes before: a machine that was rebuilt is commissioned after it.
    const early = new Map<Conveyor, Early[]>();
    const collect = (what: string, records: readonly Dated[]): void => {
      for (const { conveyor, date } of records) {
        const { commissioned } = conveyor;
        if (!commissioned || date.day >= commissioned.date.day) continue;
        early.set(conveyor, [...(early.get(conveyor) ?? []), { what, date }]);
      }
    };
    collect('inspection', inspections);
    collect('reline', relines);
    collect('screw change', screwChanges);
    collect('patch', patches);
    collect('move of panels', panelsMoved);
    collect('meter change', meterChanges);
    for (const [{ name, commissioned }, records] of early)
      if (commissioned) yield* told(name, commissioned.date, records);
  },
};

interface Dated {
  readonly conveyor: Conveyor;
  readonly date: StatedDay;
}

interface Early {
  readonly what: string;
  readonly date: StatedDay;
}

/** So many records are not all of another machine: the one day that they contradict is likelier wrong, and told once. */
const tooMany = 3;

function* told(name: string, commissioned: StatedDay, records: readonly Early[]): Iterable<Found> {
  const since = formatDay(commissioned.day);
  const first = records.reduce((a, b) => (b.date.day < a.date.day ? b : a));
  if (records.length >= tooMany)
    yield {
      origin: commissioned.origin,
      message:
        `${name} is said to be commissioned on ${since}, and ${records.length} of its records are older: ` +
        `the first is of ${formatDay(first.date.day)}.`,
      related: records.map(({ what, date }) => ({ origin: date.origin, message: `this ${what}` })),
    };
  else
    for (const { what, date } of records)
      yield {
        origin: date.origin,
        message: `This ${what} of ${name} is dated ${formatDay(date.day)}, and ${name} was commissioned on ${since}.`,
        related: [{ origin: commissioned.origin, message: `the commissioning of ${name}` }],
      };
}
