// The newest inspection, reline or screw change as it is written: the date and meter to go on from.

import { meterWords } from '../domain/model/meter-read.js';
import { formatDay } from '../domain/units/calendar.js';
import { newestRecord as newestIn } from '../domain/model/newest.js';
import type { ConveyorName } from './document-symbols.js';
import { conveyorOf } from './model-at.js';
import type { Session } from './session.js';

export interface NewestRecord {
  readonly date: string;
  /** As it was written, or that nobody read it. */
  readonly meter: string;
  readonly uri: string;
}

/** Undefined where there is no record. `kind`: of inspections only. */
export function newestRecord(
  session: Session,
  of?: ConveyorName,
  kind?: 'inspection',
): NewestRecord | undefined {
  const estate = session.estate();
  const conveyors =
    of &&
    session
      .symbols()
      .conveyorOf(of)
      .flatMap((declaration) => conveyorOf(session, declaration) ?? []);
  const newest = newestIn(kind ? { ...estate, relines: [], screwChanges: [] } : estate, conveyors);
  return (
    newest && {
      date: formatDay(newest.date.day),
      meter: meterWords(newest.meter),
      uri: session.uriOf(newest.origin),
    }
  );
}
