// A correction names its place as the look has it: where that was measured from the head, its chainages count from there, and clock
// positions and sides are as the inspector saw them. What goes by a name, a panel or an end lies where it lies.

import { chainageText } from '../units/length-words.js';
import { clockAsSeen, formatClock } from '../units/clock.js';
import type { Amendment, Inspection } from './records.js';
import type { Stated, StatedClock } from './stated.js';
import { unitOfMachine } from './unit-of-machine.js';

export type LookFrame = Pick<Inspection, 'conveyor' | 'measuredFrom' | 'view'>;

/** mm from the tail of what the look has at so many. */
export function chainageInLook(at: number, { conveyor, measuredFrom }: LookFrame): number {
  return measuredFrom === 'head' ? conveyor.length.value - at : at;
}

/** Hours in the direction of flow of what the inspector saw. */
export function hoursInLook({ hours }: StatedClock, { view }: LookFrame): number {
  return clockAsSeen(hours, view.direction);
}

/** Where it lies, as pages name it; the same where the look counts and sees as they do. */
export function placeOfAmended(of: Amendment['of'], look: LookFrame): Amendment['of'] {
  if (look.measuredFrom !== 'head' && look.view.direction === 'downstream') return of;
  if (of.kind === 'condition') return { ...of, line: of.gone[0] ?? of.line };
  if (!('at' in of)) return of;
  const clock = of.clock && turnedClock(of.clock, look);
  return { ...of, at: of.byName === true ? of.at : turnedPlace(of.at, look), ...(clock && { clock }) };
}

function turnedPlace(at: Stated<'length'>, look: LookFrame): Stated<'length'> {
  const value = chainageInLook(at.value, look);
  return value === at.value ? at : { ...at, value, text: chainageText(value, unitOfMachine(look.conveyor)) };
}

function turnedClock(clock: StatedClock, look: LookFrame): StatedClock {
  const hours = hoursInLook(clock, look);
  return hours === clock.hours ? clock : { ...clock, hours, text: formatClock(hours) };
}
