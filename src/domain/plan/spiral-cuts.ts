// Where to cut a spiral so that every piece is within what lifts it: the fewest pieces, then as even as they can be, with cuts
// clear of hold-downs and of the edges of access zones. Exact on a grid of 50 mm. Each piece hangs from a crane that reaches
// its middle, or from the lifting point nearest to it, at that limit or the job's, whichever is less (lifting-gear.ts). Of cuts
// within the limits those are taken whose pieces hang nearest to what lifts them. Cuts that the author wrote stay as written.

import type { Job, Step } from '../model/job.js';
import { gearFor, mostSidePull, type LiftingGear } from '../order/lifting-gear.js';

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
  // Cost of the pieces up to a place: overload first, then pull sideways, then how many, then how uneven.
  const cost: Cost[] = [];
  const from: number[] = [];
  for (let j = 1; j < places.length; j++) {
    let best: Cost = [Infinity, Infinity, Infinity, Infinity];
    for (let i = j - 1; i >= 0; i--) {
      const a = places[i] ?? 0;
      const b = places[j] ?? 0;
      const mass = (massPerMetre * (b - a)) / 1000;
      const { limit, sidePull, outOfReach } = gear((a + b) / 2);
      const over = limit === undefined ? Math.max(0, b - a - longestUnlimited) : Math.max(0, mass - limit);
      const pull = outOfReach ? conveyor.length.value : Math.max(0, sidePull - mostSidePull);
      const before = cost[i] ?? [0, 0, 0, 0];
      const total = [
        before[0] + over,
        before[1] + pull,
        before[2] + 1,
        before[3] + ((b - a) / 1000) ** 2,
      ] as const;
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

type Cost = readonly [overload: number, pull: number, count: number, uneven: number];

function less(a: Cost, b: Cost): boolean {
  if (Math.abs(a[0] - b[0]) > 1e-6) return a[0] < b[0];
  if (Math.abs(a[1] - b[1]) > 1e-6) return a[1] < b[1];
  if (a[2] !== b[2]) return a[2] < b[2];
  return a[3] < b[3] - 1e-9;
}

/** Pieces as the order has them: one for each step where several take the spiral out by chainage and leave none of it. */
export function writtenCuts(job: Job): readonly SpiralCut[] | undefined {
  const pieces = liftedInOne(job, 'remove screw')
    .map(({ from, to }) => ({ from, to }))
    .sort((a, b) => a.from - b.from);
  const length = job.conveyor.length.value;
  const tiles = pieces.every(({ from }, k) => Math.abs(from - (pieces[k - 1]?.to ?? 0)) < 1);
  if (pieces.length < 2 || !tiles || Math.abs((pieces.at(-1)?.to ?? 0) - length) > 1) return undefined;
  return pieces.map(({ from, to }) => ({ from, to, ...gearFor(job, (from + to) / 2) }));
}

/** Steps that each lift a piece of their own: there are several, and each says from where to where. */
export function liftedInOne(
  job: Job,
  action: 'remove screw' | 'insert screw',
): readonly { readonly step: Step; readonly from: number; readonly to: number }[] {
  const steps = (job.order?.steps ?? []).filter((step) => step.action === action);
  if (steps.length < 2) return [];
  return steps.flatMap((step) =>
    step.stretch?.kind === 'chainage'
      ? [{ step, from: step.stretch.from.value, to: step.stretch.to.value }]
      : [],
  );
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
