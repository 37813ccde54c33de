// What do the pools say of a unit beside its conveyor? The offsets of its run, place, liner and sector as the straight fit sees them
// through all OTHER units of the same level, each of which is a normal message on the offset (its score and information at the mode).
// What is left open of a unit's own rate is measured against the unit of which least is known; what all units of a conveyor share is
// left to its clock. Index arithmetic runs within lengths made in design.ts, so `!` after an index is safe.

import type { ClockColumns } from '../change.js';
import type { Design } from '../likelihood/design.js';
import type { Mode } from '../likelihood/mode.js';
import { reportPools } from '../likelihood/pool-report.js';
import type { Units } from '../reduce.js';
import type { UnitPrior } from './blocks.js';

export function besideConveyor(design: Design, mode: Mode, units: Units, clock: ClockColumns): UnitPrior {
  const { count } = units;
  const mean = Float64Array.from(units.offset);
  const open = new Float64Array(count).fill(Math.exp(mode.pass.parameters.logSpread) ** 2);
  const { score, information } = mode.pass;
  const reports = reportPools(design, mode, units);
  design.pools.forEach((pool, k) => {
    if (!differsWithin(pool.level, count, clock)) return;
    const { levels, spread } = reports[k]!;
    const precision = new Float64Array(levels.length).fill(1 / spread ** 2);
    const pull = new Float64Array(levels.length);
    const weight = (unit: number): number => Math.max(0, information[unit]!);
    const told = (unit: number, offset: number): number => weight(unit) * offset + score[unit]!;
    for (let unit = 0; unit < count; unit++) {
      const at = pool.level[unit] ?? -1;
      if (at < 0) continue;
      precision[at]! += weight(unit);
      pull[at]! += told(unit, levels[at]!.offset);
    }
    for (let unit = 0; unit < count; unit++) {
      const at = pool.level[unit] ?? -1;
      if (at < 0) continue;
      const others = Math.max(precision[at]! - weight(unit), 1 / spread ** 2);
      mean[unit]! += (pull[at]! - told(unit, levels[at]!.offset)) / others;
      open[unit]! += 1 / others;
    }
  });
  let most = 0;
  for (let unit = 0; unit < count; unit++)
    if (units.thicknesses[unit]! > 0) most = Math.max(most, open[unit]!);
  const share = open.map((v) => (most > 0 ? Math.min(2, v / most) : 1));
  return { mean, share };
}

/** Whether two units of one conveyor are on different levels: otherwise the pool says nothing beside the conveyor. */
function differsWithin(level: ArrayLike<number>, count: number, clock: ClockColumns): boolean {
  const first = new Map<number, number>();
  for (let unit = 0; unit < count; unit++) {
    const conveyor = clock.conveyor[unit] ?? -1;
    const known = first.get(conveyor);
    if (known === undefined) first.set(conveyor, level[unit] ?? -1);
    else if (known !== (level[unit] ?? -1)) return true;
  }
  return false;
}
