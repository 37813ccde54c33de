// How many readings? A reading is a row of an inspection. It saw something (a thickness, a colour, the steel) or it saw nothing;
// what a forecast rests on are those that saw something of the liners that lie there now. Every page counts by these words.

import { counted } from '../../domain/units/wording.js';
import type { PointLife } from './parts/points.js';

export interface ReadingCounts {
  readonly thicknesses: number;
  readonly colours: number;
  readonly troughShowing: number;
  /** The three together: what saw something. */
  readonly seen: number;
  readonly notSeen: number;
}

/** Of the liners that lie at these points now. */
export function readingCounts(points: readonly Pick<PointLife, 'readings'>[]): ReadingCounts {
  const of = (kind: string): number =>
    points.reduce((sum, { readings }) => sum + readings.filter(({ seen }) => seen.kind === kind).length, 0);
  const [thicknesses, colours, troughShowing] = [of('thickness'), of('colour'), of('trough')];
  const seen = thicknesses + colours + troughShowing;
  return { thicknesses, colours, troughShowing, seen, notSeen: of('not seen') };
}

/** `61 thicknesses and 10 colours`, with what showed steel where anything did. */
export function seenCountText({
  thicknesses,
  colours,
  troughShowing,
}: Omit<ReadingCounts, 'seen' | 'notSeen'>): string {
  const first = counted(thicknesses, 'thickness', 'thicknesses');
  const second = counted(colours, 'colour');
  return troughShowing === 0
    ? `${first} and ${second}`
    : `${first}, ${second} and ${troughShowing} with steel showing`;
}
