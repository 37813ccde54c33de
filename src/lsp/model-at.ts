// From a spot in a text, or a declared name, to the model: the inspection, the reading's row, the thing of that name.

import type { Origin } from '../domain/model/origin.js';
import type { Inspection, Place } from '../domain/model/records.js';
import type { Conveyor } from '../domain/model/conveyor.js';
import type { Desk } from './desk.js';
import type { Declaration } from './declared.js';
import type { Text } from './texts.js';

export function inspectionAt(desk: Desk, text: Text, offset: number): Inspection | undefined {
  return desk
    .estate()
    .inspections.find(
      ({ origin }) => origin.start <= offset && offset <= origin.end && desk.uriOf(origin) === text.uri,
    );
}

/** Index into the estate's reading columns. */
export function rowAt(desk: Desk, text: Text, offset: number): number | undefined {
  const inspection = inspectionAt(desk, text, offset);
  if (!inspection) return undefined;
  const { start, end } = desk.estate().readings;
  for (let row = inspection.firstRow; row < inspection.endRow; row += 1) {
    if ((start[row] ?? Infinity) <= offset && offset <= (end[row] ?? -1)) return row;
  }
  return undefined;
}

/** The model's own thing behind a declared name; undefined while the text is too broken for one. */
export function modelOf<T extends { readonly nameOrigin: Origin }>(
  desk: Desk,
  things: readonly T[],
  { start, text }: Pick<Declaration, 'start' | 'text'>,
): T | undefined {
  return things.find(({ nameOrigin }) => nameOrigin.start === start && desk.uriOf(nameOrigin) === text.uri);
}

export function conveyorOf(desk: Desk, declaration: Declaration | undefined): Conveyor | undefined {
  return declaration && modelOf(desk, desk.estate().conveyors, declaration);
}

export function placeOf(desk: Desk, conveyor: Conveyor, name: string): Place | undefined {
  return desk
    .estate()
    .places.find((place) => place.conveyor === conveyor && place.declared && place.name === name);
}
