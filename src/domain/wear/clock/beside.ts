// What do the pools say of a unit beside its conveyor? The offsets of its run, place, liner and sector from the straight fit, each with
// the unit's own records taken out again; what all units of a conveyor share is left to its clock.
// Index arithmetic runs within lengths made in design.ts, so `!` after an index is safe.

import type { ClockColumns } from '../change.js';
import type { Design } from '../likelihood/design.js';
import type { Mode } from '../likelihood/mode.js';
import { reportPools } from '../likelihood/pool-report.js';
import type { Units } from '../reduce.js';
import type { UnitPrior } from './blocks.js';

export function besideConveyor(design: Design, mode: Mode, units: Units, clock: ClockColumns): UnitPrior {
  const mean = Float64Array.from(units.offset);
  const extra = new Float64Array(units.count);
  const { score, information } = mode.pass;
  const reports = reportPools(design, mode, units);
  design.pools.forEach((pool, k) => {
    if (!differsWithin(pool.level, units.count, clock)) return;
    const { levels, spread } = reports[k]!;
    for (let unit = 0; unit < units.count; unit++) {
      const level = levels[pool.level[unit] ?? -1];
      if (!level) continue;
      const variance = Math.min(level.standardError ** 2, spread ** 2);
      const others = Math.min(
        variance / Math.max(1 - variance * Math.max(0, information[unit]!), 1e-3),
        spread ** 2,
      );
      mean[unit]! += level.offset - others * score[unit]!;
      extra[unit]! += others;
    }
  });
  return { mean, extra };
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
