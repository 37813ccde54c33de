// When does the first of several units reach its limit: a panel, a run, a conveyor? Units that share pools err together when the
// pool errs, so they are not taken as independent: for every value of the spread between units (and of the duty noise) in the fit
// the group's chance is worked out by itself, and within it the part of each ln rate's uncertainty that comes from the pool means is
// carried by one common normal factor, which leaves every unit's own distribution as it is (a one-factor Gaussian copula). Assumed:
// duty wanders at each unit by itself. Where it wanders for all at once the first comes a little later: this is the safe side.
// Index arithmetic runs within lengths made here, so `!` after an index is safe.

import type { Rising } from './clock/tabled.js';
import { readOff, tabled } from './clock/tabled.js';
import type { WearFit } from './fit.js';
import type { Forecast, LifeForecast } from './forecast.js';
import { depthSpread, forecastUnit, quantilesOf } from './forecast.js';
import { effectCovariance } from './likelihood/design.js';
import type { ParameterNode } from './likelihood/parameter-nodes.js';
import { heaviest } from './likelihood/parameter-nodes.js';
import type { RateTable } from './likelihood/rate-table.js';
import { groupsBySpread, tablesBySpread } from './likelihood/rate-posterior.js';
import { chanceReached } from './likelihood/rate-table.js';
import { area, normalQuantile } from './numeric/normal.js';
import { gaussNormal } from './numeric/quadrature.js';
import type { Quantiles } from './quantiles.js';

export interface GroupMember {
  readonly unit: number;
  /** mm of wear: the unit's own limit. */
  readonly depth: number;
  /** Exposure of the unit's liner today, since fitting. */
  readonly now: number;
  /** Panels, each by itself, that the unit stands for: a run's panels that nobody has seen. 1 where left out. */
  readonly panels?: number;
}

/** Exposures count from now, not from fitting: the members may have been fitted at different times. */
export type FirstForecast =
  | {
      readonly kind: 'life';
      /** From now; 0 where the chance that it has happened already exceeds the level. */
      readonly quantiles: Quantiles;
      /** Chance that the first has reached its limit within an exposure from now; below 0 it had so much ago. */
      readonly reachedBy: (exposure: number) => number;
      /** The same of those with records of their own, and of those that nobody has seen; undefined where there are none. */
      readonly seenReachedBy: ((exposure: number) => number) | undefined;
      readonly unseenReachedBy: ((exposure: number) => number) | undefined;
      /** Chance that one has reached its limit already. */
      readonly already: number;
      /** Chance of each member to be the first, in the order given; 0 for those left out. */
      readonly first: readonly number[];
      /** Members about which nothing can be said; the forecast is of the others. */
      readonly leftOut: readonly GroupMember[];
      readonly readings: number;
      readonly indicators: number;
      readonly pool: number;
      /** Members by what their forecasts rest on. */
      readonly notInspected: number;
    }
  /** These members have been seen at their limit. */
  | { readonly kind: 'reached'; readonly members: readonly GroupMember[] }
  | { readonly kind: 'cannot say'; readonly leftOut: readonly GroupMember[] };

export function forecastFirst(fit: WearFit, members: readonly GroupMember[]): FirstForecast {
  const found = aliveOf(fit, members);
  if (found.kind !== 'alive') return found;
  const { alive, leftOut } = found;
  const reachedBy = firstChance(fit, alive);
  const lives = alive.map(({ member, forecast }) =>
    Math.max(forecast.quantiles.q50 - member.now, 1e-3 * forecast.quantiles.q50),
  );
  const already = reachedBy(0);
  const quantiles = quantilesOf(reachedBy, { centre: Math.log(Math.min(...lives)), spread: 0.3 }, 0);
  const cut = (level: number, value: number): number => (already >= level ? 0 : value);
  const first = new Array<number>(members.length).fill(0);
  shareOfFirst(alive, quantiles).forEach((share, k) => (first[alive[k]!.at] = share));
  return {
    kind: 'life',
    quantiles: {
      q05: cut(0.05, quantiles.q05),
      q10: cut(0.1, quantiles.q10),
      q50: cut(0.5, quantiles.q50),
      q90: cut(0.9, quantiles.q90),
      q95: cut(0.95, quantiles.q95),
    },
    reachedBy,
    ...seenApart(fit, alive, reachedBy),
    already,
    first,
    leftOut,
    readings: alive.reduce((sum, { forecast }) => sum + forecast.readings, 0),
    indicators: alive.reduce((sum, { forecast }) => sum + forecast.indicators, 0),
    pool: fit.informative,
    notInspected: alive.filter(({ forecast }) => forecast.basis === 'not inspected').length,
  };
}

/** The chance alone, without quantiles and shares, for whoever asks about many groups. */
export type FirstChance =
  | {
      readonly kind: 'life';
      /** Within an exposure from now. */
      readonly reachedBy: (exposure: number) => number;
      /** Exposure from now at which the first of the members reaches its own median: where to begin looking. */
      readonly about: number;
    }
  | Exclude<FirstForecast, { readonly kind: 'life' }>;

export function chanceOfFirst(fit: WearFit, members: readonly GroupMember[]): FirstChance {
  const found = aliveOf(fit, members);
  if (found.kind !== 'alive') return found;
  const lives = found.alive.map(({ member, forecast }) =>
    Math.max(forecast.quantiles.q50 - member.now, 1e-3 * forecast.quantiles.q50),
  );
  return { kind: 'life', reachedBy: firstChance(fit, found.alive), about: Math.min(...lives) };
}

/** Members whose life can be forecast; those seen at their limit, or none, end the question. */
function aliveOf(
  fit: WearFit,
  members: readonly GroupMember[],
):
  | { readonly kind: 'alive'; readonly alive: readonly AliveAt[]; readonly leftOut: readonly GroupMember[] }
  | Exclude<FirstForecast, { readonly kind: 'life' }> {
  // Panels that nobody has seen share a unit; each is forecast once.
  const once = new Map<string, Forecast>();
  const forecasts: Forecast[] = members.map(({ unit, depth }) => {
    const key = `${unit} ${depth}`;
    const made = once.get(key) ?? forecastUnit(fit, unit, depth);
    once.set(key, made);
    return made;
  });
  const reached = members.filter((_, k) => forecasts[k]!.kind === 'reached');
  if (reached.length > 0) return { kind: 'reached', members: reached };
  const leftOut = members.filter((_, k) => forecasts[k]!.kind === 'cannot say');
  const alive: AliveAt[] = [];
  members.forEach((member, at) => {
    const forecast = forecasts[at]!;
    if (forecast.kind === 'life') alive.push({ member, forecast, at });
  });
  return alive.length === 0 ? { kind: 'cannot say', leftOut } : { kind: 'alive', alive, leftOut };
}

interface AliveAt extends Alive {
  /** Position among the members given. */
  readonly at: number;
}

interface Alive {
  readonly member: GroupMember;
  readonly forecast: LifeForecast;
}

/** Seen members and unseen ones by themselves; where all are of one kind it is the same chance. */
function seenApart(
  fit: WearFit,
  alive: readonly Alive[],
  all: (exposure: number) => number,
): Pick<Extract<FirstForecast, { kind: 'life' }>, 'seenReachedBy' | 'unseenReachedBy'> {
  const unseen = alive.filter(({ forecast }) => forecast.basis === 'not inspected');
  const seen = alive.filter(({ forecast }) => forecast.basis !== 'not inspected');
  const chance = (part: readonly Alive[]): ((exposure: number) => number) | undefined =>
    part.length === 0 ? undefined : part.length === alive.length ? all : firstChance(fit, part);
  return { seenReachedBy: chance(seen), unseenReachedBy: chance(unseen) };
}

const factor = gaussNormal(15);

/** Chance that the first has reached its limit within an exposure from now. */
function firstChance(fit: WearFit, alive: readonly Alive[]): (exposure: number) => number {
  const only = alive[0]!; // never called without
  if (alive.length === 1 && (only.member.panels ?? 1) === 1)
    return (exposure) => only.forecast.reachedBy(only.member.now + exposure);
  const parts = [...byClock(fit, alive).values()].map((part) =>
    part.block === undefined ? straightSurvival(fit, part.alive) : clockSurvival(fit, part.block, part.alive),
  );
  const survival = (exposure: number): number => parts.reduce((product, part) => product * part(exposure), 1);
  return risingTable((exposure) => 1 - survival(exposure), alive);
}

interface OneClock {
  readonly block: number | undefined;
  readonly alive: readonly Alive[];
}

/** Members that share a wear clock; those without one together. */
function byClock(fit: WearFit, alive: readonly Alive[]): ReadonlyMap<number | undefined, OneClock> {
  const parts = new Map<number | undefined, OneClock>();
  for (const one of alive) {
    const block = fit.clocks?.placeOf(one.member.unit)?.block;
    parts.set(block, { block, alive: [...(parts.get(block)?.alive ?? []), one] });
  }
  return parts;
}

/** Worked out once over the exposures that matter, and read off between: pages ask again and again. */
function risingTable(
  chance: (exposure: number) => number,
  alive: readonly Alive[],
): (exposure: number) => number {
  const lives = alive.map(({ member, forecast }) =>
    Math.max(forecast.quantiles.q50 - member.now, 1e-3 * forecast.quantiles.q50),
  );
  const soon = Math.log(Math.min(...lives));
  const already = chance(0);
  let table: Rising | undefined;
  return (exposure) => {
    if (exposure < 0) return chance(exposure);
    if (!(exposure > 0)) return already;
    table ??= tabled(
      (x, out) => {
        out[0] = (chance(x) - already) / Math.max(1 - already, 1e-12);
      },
      1,
      soon - 1.5,
      soon + 0.7,
    );
    return already + (1 - already) * readOff(table, 0, exposure);
  };
}

/** Given its conveyor's clock every point wears by itself: the chance that none has reached its limit, over the list of clocks. */
function clockSurvival(fit: WearFit, block: number, alive: readonly Alive[]): (exposure: number) => number {
  const draws = fit.clocks?.draws(block) ?? [];
  const outlooks = alive.map(({ member }) => fit.clocks!.outlook(member.unit)!); // members of this clock have one
  const spreads = alive.map(({ member }) => depthSpread(fit, member.unit, member.depth));
  const survival = (at: (one: Alive) => number): number => {
    const hazards = new Float64Array(draws.length);
    alive.forEach((one, k) =>
      outlooks[k]!.addHazards(one.member.depth, spreads[k]!, at(one), one.member.panels ?? 1, hazards),
    );
    return draws.reduce((sum, { weight }, d) => sum + weight * Math.exp(-hazards[d]!), 0);
  };
  const before = survival(({ forecast }) => forecast.shortAt);
  return (exposure) =>
    before > 1e-12
      ? Math.min(
          1,
          survival(({ member, forecast }) => Math.max(member.now + exposure, forecast.shortAt)) / before,
        )
      : 0;
}

/** Straight wear: a one-factor copula within each value of the spread between units. */
function straightSurvival(fit: WearFit, alive: readonly Alive[]): (exposure: number) => number {
  const groups = groupsBySpread(fit.nodes);
  const spreads = alive.map(({ member }) => depthSpread(fit, member.unit, member.depth));
  const tables = alive.map(({ member }) => tablesBySpread(groups, member.unit));
  const panels = alive.map(({ member }) => member.panels ?? 1);
  const loading = groups.map((group, g) =>
    loadings(
      fit,
      group,
      alive.map(({ member }) => member.unit),
      tables.map((t) => t[g]!),
    ),
  );
  // Members that are alike in all that counts (panels that nobody has seen) are asked once.
  const alike = alive.map(({ member }) =>
    alive.findIndex(
      ({ member: other }) =>
        other.unit === member.unit && other.depth === member.depth && other.now === member.now,
    ),
  );
  const survival = (at: (k: number) => number): number => {
    let sum = 0;
    groups.forEach((_, g) => {
      const chances: number[] = [];
      alive.forEach(({ member }, k) =>
        chances.push(
          alike[k]! < k
            ? chances[alike[k]!]!
            : chanceReached(tables[k]![g]!, member.depth, at(k), spreads[k]!),
        ),
      );
      sum += tables[0]![g]!.share * allShort(chances, loading[g]!, panels);
    });
    return sum;
  };
  // Known: each was seen short of its limit at some exposure.
  const before = survival((k) => alive[k]!.forecast.shortAt);
  return (exposure) =>
    before > 1e-12
      ? Math.min(
          1,
          survival((k) => Math.max(alive[k]!.member.now + exposure, alive[k]!.forecast.shortAt)) / before,
        )
      : 0;
}

/** Chance that none has reached its limit, given each one's own chance and what it shares. */
function allShort(chances: readonly number[], loading: readonly number[], panels: readonly number[]): number {
  const z = chances.map((p) => (p <= 0 ? -Infinity : p >= 1 ? Infinity : normalQuantile(p)));
  let sum = 0;
  for (let i = 0; i < factor.node.length; i++) {
    let survive = 1;
    for (let k = 0; k < z.length && survive > 0; k++) {
      const a = loading[k]!;
      const one = area(-(z[k]! - a * factor.node[i]!) / Math.sqrt(1 - a * a));
      survive *= panels[k] === 1 ? one : one ** panels[k]!;
    }
    sum += factor.weight[i]! * survive;
  }
  return sum;
}

/** Share of each unit's ln-rate deviation that the common factor carries: 0 own, towards 1 shared. */
function loadings(
  fit: WearFit,
  group: readonly ParameterNode[],
  units: readonly number[],
  tables: readonly RateTable[],
): readonly number[] {
  const node = heaviest(group);
  const { design } = fit;
  // How far a unit's ln rate follows its pool mean: what its own records leave of the spread between units.
  const follow = units.map((unit, k) => Math.min(1, tables[k]!.spread ** 2 / node.priorVariance[unit]!));
  const withMean = meanCovariances(design, node, units);
  const variance = withMean.reduce((sum, c) => sum + c, 0) / units.length;
  if (!(variance > 0)) return units.map(() => 0);
  return units.map((_, k) => {
    const total = tables[k]!.spread;
    const a = total > 0 ? (follow[k]! * withMean[k]!) / Math.sqrt(variance) / total : 0;
    return Math.max(0, Math.min(0.99, a));
  });
}

/** Covariance of each unit's pool mean with the mean of all of them; units of the same pools are worked out once. */
function meanCovariances(
  design: WearFit['design'],
  node: ParameterNode,
  units: readonly number[],
): readonly number[] {
  const counts = new Map<number, number>();
  for (const unit of units) counts.set(design.cell[unit]!, (counts.get(design.cell[unit]!) ?? 0) + 1);
  const byCell = new Map<number, number>();
  for (const cell of counts.keys()) {
    let sum = 0;
    for (const [other, count] of counts)
      sum +=
        count *
        effectCovariance(design, node.system, node.solved, design.cellUnit[cell]!, design.cellUnit[other]!);
    byCell.set(cell, sum / units.length);
  }
  return units.map((unit) => byCell.get(design.cell[unit]!) ?? 0);
}

const steps = 60;

/** Hazard shares along the distribution of the first. */
function shareOfFirst(alive: readonly Alive[], quantiles: Quantiles): readonly number[] {
  const share = new Float64Array(alive.length);
  let survive = 1;
  let before = alive.map(({ member, forecast }) =>
    Math.log1p(-Math.min(forecast.reachedBy(member.now), 1 - 1e-12)),
  );
  const start = before.reduce((sum, log) => sum + log, 0);
  if (start < 0) before.forEach((log, k) => (share[k]! += (1 - Math.exp(start)) * (log / start)));
  survive = Math.exp(start);
  const low = Math.max(quantiles.q05 * 0.3, quantiles.q50 * 1e-3);
  const high = quantiles.q95 * 3;
  for (let i = 0; i <= steps; i++) {
    const exposure = low * (high / low) ** (i / steps);
    const now = alive.map(({ member, forecast }) =>
      Math.log1p(-Math.min(forecast.reachedBy(member.now + exposure), 1 - 1e-12)),
    );
    const drop = now.map((log, k) => Math.max(0, before[k]! - log));
    const total = drop.reduce((sum, d) => sum + d, 0);
    if (total > 0) {
      const lost = survive * (1 - Math.exp(-total));
      drop.forEach((d, k) => (share[k]! += (lost * d) / total));
      survive *= Math.exp(-total);
    }
    before = now;
  }
  const sum = share.reduce((s, v) => s + v, 0);
  return Array.from(share, (v) => (sum > 0 ? v / sum : 0));
}
