// Where to cut a spiral so that every piece is within what lifts it: the fewest pieces, then as even as they can be, with cuts
// clear of hold-downs and of the edges of access zones. Exact on a grid of 50 mm. Each piece hangs from a crane that reaches
// its middle, or from the lifting point nearest to it, at that limit or the job's, whichever is less (lifting-gear.ts).

import type { Job } from '../model/job.js';
import { gearFor, type LiftingGear } from '../order/lifting-gear.js';

export interface SpiralCut extends LiftingGear {
  /** Chainages, mm. */
  readonly from: number;
  readonly to: number;
}

const grid = 50;
/** Longest piece where no limit is stated, mm: what a lorry and a yard take without question (judgement). */
const longestUnlimited = 6000;

/** In order from the tail; covers the whole length. Where no cut satisfies the limits, the pieces that exceed them least. */
export function cutSpiral(job: Job, massPerMetre: number): readonly SpiralCut[] {
  const { conveyor } = job;
  const length = conveyor.length.value;
  const places = [0];
  for (let at = grid; at < length - grid / 2; at += grid) if (clear(job, at)) places.push(at);
  places.push(length);
  const known = new Map<number, LiftingGear>();
  const gear = (middle: number): LiftingGear => {
    const found = known.get(middle) ?? gearFor(job, middle);
    known.set(middle, found);
    return found;
  };
  // Cost of the pieces up to a place: overload first, then how many, then how uneven.
  const cost: (readonly [number, number, number])[] = [[0, 0, 0]];
  const from: number[] = [0];
  for (let j = 1; j < places.length; j++) {
    let best: readonly [number, number, number] = [Infinity, Infinity, Infinity];
    for (let i = j - 1; i >= 0; i--) {
      const a = places[i] ?? 0;
      const b = places[j] ?? 0;
      const mass = (massPerMetre * (b - a)) / 1000;
      const { limit } = gear((a + b) / 2);
      const over = limit === undefined ? Math.max(0, b - a - longestUnlimited) : Math.max(0, mass - limit);
      const before = cost[i] ?? [0, 0, 0];
      const total = [before[0] + over, before[1] + 1, before[2] + ((b - a) / 1000) ** 2] as const;
      if (less(total, best)) {
        best = total;
        from[j] = i;
      }
      // Longer pieces only get heavier: once well over any limit, none that is longer can be better.
      if (over > 0 && best[0] < over) break;
    }
    cost[j] = best;
  }
  const cuts: SpiralCut[] = [];
  for (let j = places.length - 1; j > 0; j = from[j] ?? 0) {
    const a = places[from[j] ?? 0] ?? 0;
    const b = places[j] ?? 0;
    cuts.unshift({ from: a, to: b, ...gear((a + b) / 2) });
  }
  return cuts;
}

function less(a: readonly [number, number, number], b: readonly [number, number, number]): boolean {
  if (Math.abs(a[0] - b[0]) > 1e-6) return a[0] < b[0];
  if (a[1] !== b[1]) return a[1] < b[1];
  return a[2] < b[2] - 1e-9;
}

/** A burner needs room: cuts keep the job's joint clearance from hold-downs and from where one access zone ends. */
function clear(job: Job, at: number): boolean {
  const keep = job.jointClearance.value;
  const { holdDowns, access, length } = job.conveyor;
  return (
    holdDowns.every((part) => at < part.from.value - keep || at > part.to.value + keep) &&
    access.every((zone) =>
      [zone.from.value, zone.to.value].every(
        (edge) => edge <= 0 || edge >= length.value || Math.abs(at - edge) >= keep,
      ),
    )
  );
}
