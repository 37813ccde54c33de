// Findings that only follow from a line that cannot be read: a reading "on no liner" because its reline has a slip, a sum that
// lacks one section. The line itself is told; these are not, until it is mended.

import type { Conveyor } from '../domain/model/conveyor.js';
import type { Estate } from '../domain/model/estate.js';
import type { Origin } from '../domain/model/origin.js';
import type { Finding } from '../validation/finding.js';

/** Reckoned from all records of a conveyor: liner sets, running hours, rates, what was read when. */
const ofHistory = new Set([
  'TL301',
  'TL302',
  'TL306',
  'TL308',
  'TL309',
  'TL313',
  'TL325',
  'TL350',
  'TL351',
  'TL501',
  'TL502',
  'TL505',
  'TL510',
  'TL521',
  'TL523',
  'TL544',
]);

/** Of a block that lacks something which may stand in a line of its own that cannot be read. */
const ofAbsence = new Set(['TL211', 'TL230', 'TL317', 'TL325']);

export function withoutConsequences(
  findings: readonly Finding[],
  estate: Estate,
  { doubted, unsound }: { readonly doubted: ReadonlySet<Conveyor>; readonly unsound: readonly Origin[] },
): readonly Finding[] {
  if (doubted.size === 0 && unsound.length === 0) return findings;
  const doubtful = placesOf(estate, doubted);
  return findings.filter(
    ({ code, origin }) =>
      !(ofHistory.has(code) && isWithin(origin, doubtful)) &&
      !(ofAbsence.has(code) && isWithin(origin, unsound)),
  );
}

/** Where anything is said of these conveyors: their own blocks, their records, their jobs. */
function placesOf(estate: Estate, conveyors: ReadonlySet<Conveyor>): readonly Origin[] {
  if (conveyors.size === 0) return [];
  const { inspections, relines, screwChanges, meterChanges, dutyChanges, patches, jobs } = estate;
  const records = [inspections, relines, screwChanges, meterChanges, dutyChanges, patches, jobs].flat();
  return [
    ...[...conveyors].map(({ origin }) => origin),
    ...records.flatMap(({ conveyor, origin }) => (conveyors.has(conveyor) ? [origin] : [])),
  ];
}

function isWithin(origin: Origin, places: readonly Origin[]): boolean {
  return places.some(
    (place) => place.source === origin.source && place.start <= origin.start && origin.end <= place.end,
  );
}
