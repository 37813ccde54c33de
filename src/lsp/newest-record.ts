// The newest inspection, reline or screw change, by the headers as they are written: the date and meter to go on from.

import type { Desk } from './desk.js';
import { split } from './expected.js';
import type { ConveyorName } from './declared.js';
import type { Text } from './texts.js';

const header =
  /^[ \t]*(inspection|reline|screw[ \t]+change)[ \t]+([\w.-]+)[ \t]+(\d{4}-\d{2}-\d{2})[ \t]+meter[ \t]+([^\n{]*?)[ \t]*(?:tonnes[^\n{]*)?(?:\{|$)/gm;

interface Header {
  readonly kind: string;
  readonly conveyor: ConveyorName;
  readonly date: string;
  readonly meter: string;
}

export interface NewestRecord {
  readonly kind: string;
  readonly date: string;
  readonly meter: string;
  readonly uri: string;
}

/** Undefined where there is no record. ISO dates sort as text. */
export function newestRecord(desk: Desk, of?: ConveyorName, kind?: 'inspection'): NewestRecord | undefined {
  const wanted = of && new Set(desk.names().conveyorOf(of));
  let newest: NewestRecord | undefined;
  for (const text of desk.texts()) {
    for (const found of headersIn(text)) {
      if (newest && found.date <= newest.date) continue;
      if (kind && found.kind !== kind) continue;
      if (of && found.conveyor.name !== of.name) continue;
      if (
        wanted &&
        !desk
          .names()
          .conveyorOf(found.conveyor)
          .some((one) => wanted.has(one))
      )
        continue;
      newest = { kind: found.kind, date: found.date, meter: found.meter, uri: text.uri };
    }
  }
  return newest;
}

const headers = new WeakMap<Text, readonly Header[]>();

function headersIn(text: Text): readonly Header[] {
  const known = headers.get(text);
  if (known) return known;
  const found = [...text.text.matchAll(header)].map(
    ([, kind = '', conveyor = '', date = '', meter = '']): Header => ({
      kind: kind.replace(/\s+/g, ' '),
      conveyor: split(conveyor),
      date,
      meter: meter.trim(),
    }),
  );
  headers.set(text, found);
  return found;
}
