// What was borrowed from where: the offset of every pool's levels, how sure it is, and how many units with records stand behind it.
// Index arithmetic runs within lengths made in design.ts, so `!` after an index is safe.

import type { Units } from '../reduce.js';
import type { Design } from './design.js';
import type { Mode } from './mode.js';

export interface PoolReport {
  readonly name: string;
  readonly spread: number;
  readonly levels: readonly {
    readonly label: string;
    readonly offset: number;
    readonly standardError: number;
    readonly units: number;
  }[];
}

export function reportPools(design: Design, mode: Mode, units: Units): readonly PoolReport[] {
  if (design.pools.length === 0) return [];
  const { system, effectsOnly, parameters } = mode.pass;
  const counts = design.levels.map((n) => new Int32Array(n));
  for (let unit = 0; unit < units.count; unit++) {
    if (units.thicknesses[unit] === 0 && units.indicators[unit] === 0) continue;
    design.pools.forEach((pool, k) => {
      const level = pool.level[unit] ?? -1;
      if (level >= 0) counts[k]![level]!++;
    });
  }
  return design.pools.map((pool, k) => {
    const first = design.firstColumn[k]!;
    const levels = Array.from({ length: design.levels[k]! }, (_, j) => {
      const offset = first >= 0 ? parameters.effects.dense[first + j]! : parameters.effects.apart[j]!;
      let variance = Infinity;
      if (effectsOnly && first >= 0)
        variance = effectsOnly.inverse[(first + j) * effectsOnly.size + first + j]!;
      else if (effectsOnly) {
        const d = system.apartDiagonal[j]!;
        variance = 1 / d;
        for (let a = 0; a < effectsOnly.size; a++)
          for (let b = 0; b < effectsOnly.size; b++)
            variance +=
              (system.apartRow[j * system.size + a]! *
                system.apartRow[j * system.size + b]! *
                effectsOnly.inverse[a * effectsOnly.size + b]!) /
              (d * d);
      }
      return {
        label: pool.labels?.[j] ?? String(j + 1),
        offset,
        standardError: Math.sqrt(variance),
        units: counts[k]![j]!,
      };
    });
    return { name: pool.name, spread: parameters.poolSpread[k]!, levels };
  });
}
