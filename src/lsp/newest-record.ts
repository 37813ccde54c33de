// The newest inspection, reline or screw change, by the headers as they are written: the date and meter to go on from.

import type { Session } from './session.js';
import { split } from './expected.js';
import type { ConveyorName } from './document-symbols.js';
import type { EstateDocument } from './document.js';

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
export function newestRecord(
  session: Session,
  of?: ConveyorName,
  kind?: 'inspection',
): NewestRecord | undefined {
  const wanted = of && new Set(session.symbols().conveyorOf(of));
  let newest: NewestRecord | undefined;
  for (const document of session.documents()) {
    for (const found of headersIn(document)) {
      if (newest && found.date <= newest.date) continue;
      if (kind && found.kind !== kind) continue;
      if (of && found.conveyor.name !== of.name) continue;
      if (
        wanted &&
        !session
          .symbols()
          .conveyorOf(found.conveyor)
          .some((one) => wanted.has(one))
      )
        continue;
      newest = { kind: found.kind, date: found.date, meter: found.meter, uri: document.uri };
    }
  }
  return newest;
}

const headers = new WeakMap<EstateDocument, readonly Header[]>();

function headersIn(document: EstateDocument): readonly Header[] {
  const known = headers.get(document);
  if (known) return known;
  const found = [...document.text.matchAll(header)].map(
    ([, kind = '', conveyor = '', date = '', meter = '']): Header => ({
      kind: kind.replace(/\s+/g, ' '),
      conveyor: split(conveyor),
      date,
      meter: meter.trim(),
    }),
  );
  headers.set(document, found);
  return found;
}
