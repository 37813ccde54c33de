// Which lines can a block do without? A block stands without a line that says nothing to the rest of it; without a layer, a
// break or a step, all that builds on it would be wrong, and the one slip would be told a hundred times over. A record whose
// heading is read stands with what was read of it where the lost line cannot turn it into another record: what it states once is
// stated already, and what it may state again only adds to it. It is in doubt all the same, and everything that rests on it waits.

import { safeguardKinds } from '../../domain/model/conveyor.js';
import type { LeftLine } from '../recover.js';

/** By block, first words of lines that no other line rests on. `ID` stands for a name. */
const spared: Readonly<Record<string, ReadonlySet<string>>> = {
  liner: new Set([
    'sealant',
    'fixed by',
    'price',
    'expected life',
    'tightening torque',
    'bolt length',
    'drill',
  ]),
  screw: new Set(['price']),
  conveyor: new Set([
    'conveys',
    'gives off',
    'hatch',
    'capacity',
    'fill',
    'bulk density',
    'resistance factor',
    'rotation',
    'rest at',
    'hopper',
    'drain',
    ...safeguardKinds,
  ]),
  reline: new Set([
    'by',
    'view',
    'finding',
    'next look',
    'serviced',
    'offcut',
    'fitted',
    'fitting temperature',
  ]),
  'screw change': new Set(['by', 'finding', 'next look', 'serviced']),
  'panels moved': new Set(['by', 'finding', 'next look', 'serviced']),
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

/** Of a record, what makes it another one where it is lost: without its scope a reline would be of the whole conveyor. */
const decisive: Readonly<Record<string, ReadonlySet<string>>> = {
  reline: new Set(['liner', 'scope']),
  'screw change': new Set(['screw']),
  'panels moved': new Set(['panel']),
};

/** Of what is left of a block: as it stands; as a record of which more may have been said; or not at all. */
export type Footing = 'sound' | 'in doubt' | 'left out';

/** `stated`: first words of the facts that were read. A line that nobody can make out may be any of its lines. */
export function standingOf(block: string, lines: readonly LeftLine[], stated: ReadonlySet<string>): Footing {
  const [known, turning] = [spared[block], decisive[block]];
  // Every line of an order is a step, whatever it was to say.
  const open = lines.filter(
    ({ first, isForeign, block: within }) =>
      within === 'Order' ||
      !(isForeign || (first.length > 0 && first.every((word) => known?.has(word) === true))),
  );
  if (open.length === 0) return 'sound';
  if (turning === undefined) return 'left out';
  const mayBe = open.flatMap(({ first }) => (first.length > 0 ? first : [...turning]));
  return mayBe.every((word) => !turning.has(word) || stated.has(word)) ? 'in doubt' : 'left out';
}
