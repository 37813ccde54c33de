// Where a measure beside the readings of the liner was taken, with what is said of the place beyond its chainage: `plate from 11.2 m to
// 13 m thickness 3.7 mm` counts once, at its middle, and which stretch it was stands in its note, as it does for a colour.

import type { Mutable } from '../../domain/model/other-facts.js';
import type * as ast from '../generated/ast.js';
import type { MeasuredPlace, MeasureDrafts } from '../sheet.js';
import { notesOf, present, stated } from './block.js';
import type { Reader } from './reader.js';
import { lowerSeenAt, type MeasureNode } from './seen-at.js';

/** Undefined where the place cannot be read. `mirrored`: whoever took it looked against the flow. */
export function lowerAlong(reader: Reader, node: MeasureNode, mirrored: boolean): MeasuredPlace | undefined {
  const place = lowerSeenAt(reader, node, mirrored);
  const isRead = node.to === undefined || (place.at && place.to);
  if (!isRead || !(place.point ?? place.end ?? place.panel ?? place.at)) return undefined;
  const stretch = place.at && place.to && `from ${place.at.text} to ${place.to.text}`;
  const note = present([stretch, notesOf(node)]).join(': ') || undefined;
  return { place, ...stated({ note }) };
}

/** A depth and an outside diameter of one line are two readings. */
export function lowerFlight(
  reader: Reader,
  row: ast.FlightReading,
  mirrored: boolean,
  seen: Mutable<Pick<MeasureDrafts, 'flights' | 'flightDiameters'>>,
): void {
  const along = lowerAlong(reader, row, mirrored);
  const depth = reader.quantity(row, 'depth', 'length', 'depth of the flight');
  const diameter = reader.quantity(row, 'diameter', 'length', 'outside diameter of the flight');
  const origin = reader.origin(row);
  if (along && depth) seen.flights.push({ ...along, depth, origin });
  if (along && diameter) seen.flightDiameters.push({ ...along, diameter, origin });
}
