// In which lengths is a machine spoken of? In those of its liner's layers as they are written: findings, hovers, pages and tables
// ask here, so that a machine in inches is never told about in metres alone.

import { chainageWords, lengthWords, unitOf, type LengthUnit } from '../units/length-words.js';

/** A conveyor, or a liner by itself as `{ liner }`. */
export interface Machine {
  readonly liner: { readonly layers: readonly { readonly thickness: { readonly text: string } }[] };
}

export function unitOfMachine({ liner }: Machine): LengthUnit {
  return unitOf(liner.layers.map(({ thickness }) => thickness.text));
}

/** mm, as `8.4 mm` or `0.33 in (8.4 mm)`. */
export function lengthOn(machine: Machine, mm: number): string {
  return lengthWords(mm, unitOfMachine(machine));
}

/** A chainage, mm, as `6.20 m` or `20.34 ft (6.20 m)`. */
export function chainageOn(machine: Machine, mm: number): string {
  return chainageWords(mm, unitOfMachine(machine));
}
