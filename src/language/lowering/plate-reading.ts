// `plate at 9.1 m thickness 3.4 mm` → steel left, read in a look or while a reline had the liner off.

import type * as ast from '../generated/ast.js';
import type { PlateReading } from '../../domain/model/records.js';
import type { MeasureDraft } from '../sheet.js';
import { stated } from './block.js';
import { lowerAlong } from './along.js';
import type { Reader } from './reader.js';

/** `mirrored`: whoever read it looked against the flow. */
export function lowerPlateReading(
  reader: Reader,
  row: ast.PlateReading,
  mirrored: boolean,
): MeasureDraft<PlateReading> | undefined {
  const along = lowerAlong(reader, row, mirrored);
  const thickness = reader.quantity(row, 'thickness', 'length', 'thickness of the plate');
  const error = reader.quantity(row, 'error', 'length', 'error of the thickness');
  const photo = reader.photo(row);
  if (!along || !thickness) return undefined;
  return { ...along, thickness, origin: reader.origin(row), ...stated({ error, photo }) };
}
