// Meter readings that cannot be true together, as the history of each conveyor found them: set aside singly, or a whole
// series that restarts. Each is given with the reading it disagrees with.

import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Counter, CounterReading } from '../../domain/model/counter.js';
import type { Estate } from '../../domain/model/estate.js';
import { historyOf } from '../../domain/model/history.js';
import type { Origin } from '../../domain/model/origin.js';

export interface Conflict {
  readonly conveyor: Conveyor;
  readonly kind: 'runs back' | 'faster than the clock';
  readonly reading: CounterReading;
  readonly against: CounterReading;
}

export function* conflictsOf(
  estate: Estate,
  pick: 'hours' | 'tonnes',
  conveyors: readonly Conveyor[] = estate.conveyors,
): Iterable<Conflict> {
  for (const conveyor of conveyors) {
    const counter: Counter | undefined = historyOf(estate, conveyor)[pick];
    for (const { reading, against, kind } of counter?.setAside ?? [])
      yield { conveyor, reading, against, kind };
    for (const { from, to, kind } of counter?.bridges ?? [])
      yield { conveyor, reading: to, against: from, kind };
  }
}

export function beforeCommissioning({ commissioned }: Conveyor, { day }: CounterReading): boolean {
  return commissioned !== undefined && day < commissioned.date.day;
}

/** Where the number itself stands, where the record is known; else the whole record. */
export function placeOf(
  estate: Estate,
  conveyor: Conveyor,
  reading: CounterReading,
  pick: 'hours' | 'tonnes',
): Origin {
  for (const records of [estate.inspections, estate.relines, estate.screwChanges]) {
    for (const record of records)
      if (record === reading.record) return (record.meter[pick] ?? record.meter.hours ?? record).origin;
  }
  const commissioned = conveyor.commissioned;
  if (reading.source === 'commissioning' && commissioned)
    return (pick === 'tonnes' ? (commissioned.tonnes ?? commissioned.meter) : commissioned.meter).origin;
  const change = estate.meterChanges.find(
    ({ origin }) => origin.source === reading.origin.source && origin.start === reading.origin.start,
  );
  if (change) return reading.source === 'meter taken out' ? change.old.origin : change.new.origin;
  return reading.origin;
}
