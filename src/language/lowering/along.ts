// What was measured all along a stretch, `plate from 11.2 m to 13 m thickness 3.7 mm`, counts once, at its middle; which stretch it
// was stands in its note, as it does for a colour.

import { chainageText } from '../../domain/units/length-words.js';
import type { Stated } from '../../domain/model/stated.js';
import type * as ast from '../generated/ast.js';
import { notesOf, present } from './block.js';
import { chainage } from './limits.js';
import type { Reader } from './reader.js';

export interface Along {
  readonly at: Stated<'length'>;
  readonly note?: string;
}

/** Undefined where the place cannot be read. */
export function lowerAlong(reader: Reader, node: ast.PlateReading | ast.FlightReading): Along | undefined {
  const at = reader.quantity(node, 'at', 'length', 'chainage', chainage);
  const noted = notesOf(node);
  if (node.to === undefined) return at && { at, ...(noted === undefined ? {} : { note: noted }) };
  const to = reader.quantity(node, 'to', 'length', 'chainage', chainage);
  if (!at || !to) return undefined;
  const value = (at.value + to.value) / 2;
  const text = chainageText(value, /(ft|in)$/.test(to.text) ? 'in' : 'mm');
  return {
    at: { ...at, value, text },
    note: present([`from ${at.text} to ${to.text}`, noted]).join(': '),
  };
}
