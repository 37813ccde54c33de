// Where an end of a conveyor lies.

import { chainageText, type LengthUnit } from '../../domain/units/length-words.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import type { NameUse, Stated } from '../../domain/model/stated.js';

/** `tail`, `head`, or `drive`, which is at one of them; no place where the conveyor says no drive. */
export function endPlace(
  { name, origin }: NameUse,
  { drive, length }: Pick<Conveyor, 'length' | 'drive'>,
  unit: LengthUnit,
): { readonly at?: Stated<'length'> } {
  const end = name === 'drive' ? drive?.end : name;
  if (end === undefined) return {};
  const value = end === 'tail' ? 0 : length.value;
  return { at: { dimension: 'length', value, text: chainageText(value, unit), origin } };
}
