// From a spot in a text, or a declared name, to the model: the inspection, the reading's row, the thing of that name.

import { datedRecords } from '../domain/model/dated-records.js';
import type { SeenLine } from '../domain/conditions/follow-up.js';
import type { Origin } from '../domain/model/origin.js';
import type { Inspection, Place } from '../domain/model/records.js';
import type { Conveyor } from '../domain/model/conveyor.js';
import type { Session } from './session.js';
import type { Declaration } from './document-symbols.js';
import type { EstateDocument } from './document.js';

export function inspectionAt(
  session: Session,
  document: EstateDocument,
  offset: number,
): Inspection | undefined {
  return session.estate().inspections.find(({ origin }) => isAt(session, document, origin, offset));
}

function isAt(session: Session, document: EstateDocument, origin: Origin, offset: number): boolean {
  return origin.start <= offset && offset <= origin.end && session.uriOf(origin) === document.uri;
}

/** Index into the estate's reading columns. */
export function rowAt(session: Session, document: EstateDocument, offset: number): number | undefined {
  const inspection = inspectionAt(session, document, offset);
  if (!inspection) return undefined;
  const { start, end } = session.estate().readings;
  for (let row = inspection.firstRow; row < inspection.endRow; row += 1) {
    if ((start[row] ?? Infinity) <= offset && offset <= (end[row] ?? -1)) return row;
  }
  return undefined;
}

/** The condition line at a spot, with the look or the work that tells of it. */
export function conditionAt(
  session: Session,
  document: EstateDocument,
  offset: number,
): SeenLine | undefined {
  const record = datedRecords(session.estate()).find(({ origin }) => isAt(session, document, origin, offset));
  const line = record?.conditions.find(({ origin }) => origin.start <= offset && offset <= origin.end);
  return record && line && { record, line };
}

/** The model's own thing behind a declared name; undefined while the text is too broken for one. */
export function modelOf<T extends { readonly nameOrigin: Origin }>(
  session: Session,
  things: readonly T[],
  { start, document }: Pick<Declaration, 'start' | 'document'>,
): T | undefined {
  return things.find(
    ({ nameOrigin }) => nameOrigin.start === start && session.uriOf(nameOrigin) === document.uri,
  );
}

export function conveyorOf(session: Session, declaration: Declaration | undefined): Conveyor | undefined {
  return declaration && modelOf(session, session.estate().conveyors, declaration);
}

export function placeOf(session: Session, conveyor: Conveyor, name: string): Place | undefined {
  return session
    .estate()
    .places.find((place) => place.conveyor === conveyor && place.declared && place.name === name);
}
