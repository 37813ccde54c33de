// How many hold-downs are these? A place on both sides of the trough has two blocks: who bolts counts blocks, who measures gaps
// and reckons time counts places. Both come from here, so that no two sheets count differently.

import { counted } from '../units/wording.js';
import type { HoldDown } from './conveyor.js';

export interface HoldDownCount {
  readonly places: number;
  readonly blocks: number;
}

/** One whose side is not declared is one block. */
export function countHoldDowns(holdDowns: readonly Partial<Pick<HoldDown, 'side'>>[]): HoldDownCount {
  const blocks = holdDowns.reduce((sum, { side }) => sum + blocksAt(side), 0);
  return { places: holdDowns.length, blocks };
}

/** `10 blocks at 5 places`. */
export function holdDownWords({ places, blocks }: HoldDownCount): string {
  return `${counted(blocks, 'block')} at ${counted(places, 'place')}`;
}

function blocksAt(side: HoldDown['side'] | undefined): number {
  return side === 'both sides' ? 2 : 1;
}
