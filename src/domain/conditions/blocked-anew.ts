// A blockage is an event: where a look read what lies under it and told nothing of it, it is gone, and one that is told there later is
// another. The look alone does not end it: as long as nothing new is told, whoever reads on is asked what became of it.

import type { Estate } from '../model/estate.js';
import type { History } from '../model/history.js';
import type { ConditionLine, DatedRecord, Inspection, SeenPlace } from '../model/records.js';
import { samePlace } from './kinds.js';
import { readsBetween } from './read-between.js';

interface Told {
  readonly line: ConditionLine;
  readonly record: DatedRecord;
}

/** The first look that read where one of two blockages lies, after the last word of the older and before the younger was seen. */
export function lookBetween(
  estate: Estate,
  { inspections }: History,
  before: { readonly last: Told; readonly answeredAt: Pick<DatedRecord, 'date'> },
  { line, record }: Told,
): Inspection | undefined {
  return inspections.find(
    ({ inspection: look }) =>
      look.date.day > before.answeredAt.date.day &&
      look.date.day < record.date.day &&
      [before.last.line, line].some((place) => readsThere(estate, look, place)),
  )?.inspection;
}

/** Whether a look read the liner, the steel or the spiral at a place. */
function readsThere(estate: Estate, look: Inspection, { at, to }: SeenPlace): boolean {
  if (at === undefined) return false;
  const [from, end] = to ? [at.value, to.value] : [at.value - samePlace, at.value + samePlace];
  return (
    look.flights.some((each) => each.at.value >= from && each.at.value <= end) ||
    readsBetween(estate, look, from, end)
  );
}
