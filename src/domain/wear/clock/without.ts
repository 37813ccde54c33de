// How would a point stand without its newest thickness? Its conveyor's clocks are as they are, since one reading of many moves them
// little; of its own records that one is left out. That costs one point's filter a clock, where a fit anew would cost the whole plant.
// Index arithmetic runs within lengths made in blocks.ts, so `!` after an index is safe.

import type { Block } from './blocks.js';
import type { ClockDraw } from './draws.js';
import type { Outlook } from './outlook.js';
import { outlookOf } from './outlook.js';
import type { Sums } from './sums.js';
import { sumsOf } from './sums.js';

/** @param weight of each thickness of the block. Undefined where the point has no thickness. */
export function outlookWithoutNewest(
  block: Block,
  unit: number,
  draws: readonly ClockDraw[],
  weight: Float64Array | undefined,
): Outlook | undefined {
  const [from, to] = [block.start[unit]!, block.start[unit + 1]!];
  if (to === from) return undefined;
  const alone = blockOfOne(block, unit, from, to - 1);
  const kept = weight?.slice(from, to - 1) ?? new Float64Array(to - 1 - from).fill(1);
  const made = new Map<Sums, Sums>();
  const own = draws.map((draw): ClockDraw => {
    let sums = made.get(draw.sums);
    if (!sums) made.set(draw.sums, (sums = sumsOf(alone, draw.sums.theta, draw.sums.reference, kept)));
    return { ...draw, sums, u: draw.u.slice(unit, unit + 1) };
  });
  return outlookOf(alone, 0, own);
}

function blockOfOne(block: Block, unit: number, from: number, to: number): Block {
  const { edgeStart, width, prior } = block;
  const [edge, lastEdge] = [edgeStart[unit]!, edgeStart[unit + 1]!];
  return {
    ...block,
    units: block.units.slice(unit, unit + 1),
    known: 1,
    start: Int32Array.of(0, to - from),
    row: block.row.slice(from, to),
    age: block.age.slice(from, to),
    wear: block.wear.slice(from, to),
    error: block.error.slice(from, to),
    look: block.look.slice(from, to),
    bias: block.bias.slice(from, to),
    edgeStart: Int32Array.of(0, lastEdge - edge),
    edgeAge: block.edgeAge.slice(edge, lastEdge),
    edgeDepth: block.edgeDepth.slice(edge, lastEdge),
    edgeTolerance: block.edgeTolerance.slice(edge, lastEdge),
    edgeSide: block.edgeSide.slice(edge, lastEdge),
    fitted: block.fitted.slice(unit, unit + 1),
    prior: { mean: prior.mean.slice(unit, unit + 1), share: prior.share.slice(unit, unit + 1) },
    crude: block.crude.slice(unit, unit + 1),
    place: block.place.slice(unit * width, (unit + 1) * width),
  };
}
