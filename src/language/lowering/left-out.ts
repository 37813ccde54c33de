// Which lines can a block do without? A block stands without a line that says nothing to the rest of it; without a layer, a
// break or a step, all that builds on it would be wrong, and the one slip would be told a hundred times over.

import type { LeftLine } from '../recover.js';

/** By block, first words of lines that no other line rests on. `ID` stands for a name. */
const spared: Readonly<Record<string, ReadonlySet<string>>> = {
  liner: new Set(['sealant', 'price', 'expected life', 'tightening torque', 'bolt length', 'drill']),
  screw: new Set(['price']),
  conveyor: new Set([
    'conveys',
    'hatch',
    'capacity',
    'fill',
    'bulk density',
    'resistance factor',
    'rotation',
    'rest at',
  ]),
  reline: new Set(['by', 'view', 'finding', 'offcut', 'fitted', 'fitting temperature']),
  'screw change': new Set(['by', 'finding']),
  job: new Set([
    'tool',
    'spare',
    'rescue contact',
    'rescue means',
    'meeting point',
    'sling angle',
    'saw kerf',
    'stock',
    'offcut',
  ]),
};

/** True where what is left of the block can be used as it stands. A line that nobody can make out may be any of its lines. */
export function standsWithout(block: string, lines: readonly LeftLine[]): boolean {
  const known = spared[block];
  // Every line of an order is a step, whatever it was to say.
  return lines.every(
    ({ first, isForeign, block: within }) =>
      within !== 'Order' &&
      (isForeign || (first.length > 0 && first.every((word) => known?.has(word) === true))),
  );
}
