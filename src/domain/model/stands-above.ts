// What stands over the screw with material in it, and where what is wet runs out: how pack and sheet speak of them. One wording, so
// that whoever reads the isolation list, the step and the caution reads of one hopper.

import { formatMass } from '../units/format.js';
import { chainageWords, type LengthUnit } from '../units/length-words.js';
import type { Conveyor, Hopper, Span } from './conveyor.js';

type Filled = Pick<Conveyor, 'hoppers' | 'bulkDensity'>;

/** `hopper Feed over 0.40 m to 2.20 m (2.4 m3, about 1250 kg when full; open top)`, each. */
export function hoppersWords(conveyor: Filled, unit: LengthUnit): readonly string[] {
  return conveyor.hoppers.map((hopper) => {
    const more = heldWords(conveyor, hopper);
    return (
      `${named('hopper', hopper)} over ${chainageWords(hopper.from.value, unit)} to ` +
      `${chainageWords(hopper.to.value, unit)}${more === '' ? '' : ` (${more})`}`
    );
  });
}

/** How much it holds, how heavy that is, and what is noted of it; empty where nothing is said. */
export function heldWords({ bulkDensity }: Pick<Filled, 'bulkDensity'>, hopper: Hopper): string {
  const { volume, note } = hopper;
  const mass =
    volume && bulkDensity ? [`about ${formatMass(volume.value * bulkDensity.value)} when full`] : [];
  const held = [...(volume ? [volume.text] : []), ...mass].join(', ');
  return [held, note].filter(Boolean).join('; ');
}

/** `drain at 0.10 m (bung, two inch)`, each. */
export function drainsWords(drains: readonly Span[], unit: LengthUnit): readonly string[] {
  return drains.map((drain) => {
    const { from, to, note } = drain;
    const end = to.value > from.value ? ` to ${chainageWords(to.value, unit)}` : '';
    return `${named('drain', drain)} at ${chainageWords(from.value, unit)}${end}${note === undefined ? '' : ` (${note})`}`;
  });
}

function named(what: string, { name }: Span): string {
  return name === undefined ? what : `${what} ${name}`;
}
