// The newest inspection, reline or screw change, by the headers as they are written: the date and meter to go on from.

import type { Desk } from './desk.js';
import { split } from './expected.js';
import type { ConveyorName } from './names.js';

const header = /^[ \t]*(inspection|reline|screw[ \t]+change)[ \t]+([\w.-]+)[ \t]+(\d{4}-\d{2}-\d{2})[ \t]+meter[ \t]+([^\n{]*?)[ \t]*(?:tonnes[^\n{]*)?(?:\{|$)/gm;

export interface NewestRecord {
  readonly kind: string;
  readonly date: string;
  readonly meter: string;
  readonly uri: string;
}

/** Undefined where there is no record. ISO dates sort as text. */
export function newestRecord(desk: Desk, of?: ConveyorName, kind?: 'inspection'): NewestRecord | undefined {
  const wanted = of && desk.names().conveyorOf(of);
  let newest: NewestRecord | undefined;
  for (const text of desk.texts()) {
    for (const [, found = '', conveyor = '', date = '', meter = ''] of text.text.matchAll(header)) {
      if (newest && date <= newest.date) continue;
      if (kind && found !== kind) continue;
      if (wanted && !desk.names().conveyorOf(split(conveyor)).some((one) => wanted.includes(one))) continue;
      newest = { kind: found.replace(/\s+/g, ' '), date, meter: meter.trim(), uri: text.uri };
    }
  }
  return newest;
}
