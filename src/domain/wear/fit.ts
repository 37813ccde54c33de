// How fast does each unit wear, and how sure is that? Wear of a unit is eᵘ·exposure with reading error σ; u is normal about the
// mean of its pools with spread τ (lognormal rates); colours bound u, former lives state it. Parameters are never plugged in: see
// likelihood/parameter-nodes.ts. Wear is taken as a straight line in exposure. A worn crescent widens as it deepens, so a depth
// late in life comes later than the line says, if anything: the line errs on the safe side.
// Index arithmetic runs within lengths made here and in reduce.ts, so `!` after an index is safe.

import type { WearChange } from './change.js';
import { besideConveyor } from './clock/beside.js';
import type { Clocks } from './clock/clocks.js';
import { clocksOf } from './clock/clocks.js';
import { clockPriors } from './clock/priors.js';
import { changeTold } from './clock/told.js';
import type { Remark } from './columns.js';
import type { Design, Pool } from './likelihood/design.js';
import { designOf, solveSystem } from './likelihood/design.js';
import type { DutyAsked, DutyNoiseFit } from './likelihood/duty-noise.js';
import { bulk, hasPairs, modeWithDuty, usualInterval } from './likelihood/duty-noise.js';
import type { LeaveOneOut } from './likelihood/leave-one-out.js';
import type { Convergence } from './likelihood/mode.js';
import { coloursAgainstThicknesses, crowdWeights, leaveOut, outlierRemarks } from './likelihood/outliers.js';
import type { ParameterNode } from './likelihood/parameter-nodes.js';
import { gridNodes, modeNodes, nodeFrom, plugInNode } from './likelihood/parameter-nodes.js';
import type { PoolReport } from './likelihood/pool-report.js';
import { reportPools } from './likelihood/pool-report.js';
import { crudeLogRates, startValues } from './likelihood/start.js';
import { median } from './median.js';
import type { ReadingSums } from './likelihood/summary.js';
import { summarise } from './likelihood/summary.js';
import type { Units } from './reduce.js';
import { defaultGaugeError } from './reduce.js';
import type { NormalPrior, Parameters, Priors } from './likelihood/parameters.js';

export type { Pool } from './likelihood/design.js';
export type { PoolReport } from './likelihood/pool-report.js';

export interface WearOptions {
  /** What is expected before any record: a depth (mm) reached at an exposure, give or take `spread` (of the ln life; 0.7, a factor of two). */
  readonly expectedLife?: { readonly depth: number; readonly exposure: number; readonly spread?: number };
  /** One standard deviation of a thickness reading, mm, where the weak prior is centred. `defaultGaugeError` where left out. */
  readonly gaugeError?: number;
  /**
   * Hours are not all alike. `estimate` (the default) finds how much; `none` takes them as alike; or a declared variation: `ratio`,
   * one standard deviation of the wear over a stretch of exposure `per`, as a share of that wear.
   */
  readonly dutyNoise?: 'estimate' | 'none' | { readonly ratio: number; readonly per: number };
  /** `down-weight` (the default) readings that stray, or `keep` all at full weight. */
  readonly outliers?: 'down-weight' | 'keep';
  /** Scatter of thicknesses about smooth wear: `found` from the records (the default), or taken `as declared` by their gauges. */
  readonly scatter?: 'found' | 'as declared';
  /** `weak` (the default): `weakPriors`. `none`: maximum likelihood, for comparison with other programs. */
  readonly priors?: 'weak' | 'none';
  /** How ignorance of the parameters enters: by the number of units (the default), or as told. `plug-in` is for comparison only. */
  readonly uncertainty?: 'auto' | 'integrate' | 'correct' | 'plug-in';
}

/** Declared, weak, on natural logarithms: a factor of about 1.65 either way, 2 for the duty noise. Our judgement. */
export const weakPriors = {
  spread: { mean: Math.log(0.3), spread: 0.5 },
  /** About the gauge error. */
  error: { spread: 0.5 },
  poolSpread: { mean: Math.log(0.15), spread: 0.5 },
  /** Of the variation over one usual interval between readings. */
  dutyNoise: { mean: Math.log(0.25), spread: 0.7 },
  expectedLifeSpread: 0.7,
  /** Of the general ln rate about the records' own middle, where no life is expected: a factor of twelve either way at 90 %. */
  nothingExpectedSpread: 1.5,
} as const;

/** From this many units with records the mode is corrected; below, the parameters are integrated. */
export const manyUnits = 50;

export interface WearFit {
  readonly kind: 'fitted';
  readonly units: Units;
  readonly design: Design;
  /** The straight model's mode. */
  readonly parameters: Parameters;
  /** Parameter values of the straight model, made when first asked for. */
  readonly nodes: readonly ParameterNode[];
  /** Wear clocks of the conveyors that ask for one; a unit without follows the straight model. */
  readonly clocks: Clocks | undefined;
  readonly method: 'integrated' | 'corrected' | 'plug-in';
  /** Rate of the middle unit of the pool, mm per unit of exposure, with the spread τ between units and the standard error of its ln. */
  readonly rate: { readonly median: number; readonly logError: number; readonly spread: number };
  /** One standard deviation of a thickness by the usual gauge, mm; another gauge's is as much larger as it declares. */
  readonly readingError: number;
  /** ψ, √exposure: wear over a stretch x varies by ψ/√x of itself. `ratio` is that over `per`, a usual interval between readings. */
  readonly dutyNoise: {
    readonly psi: number;
    readonly ratio: number;
    readonly per: number;
    readonly from: 'estimated' | 'declared' | 'none';
  };
  readonly logLikelihood: number;
  readonly convergence: Convergence;
  /** What was borrowed from where: the factor of each level on the rate is e^offset, `standardError` on the ln scale. */
  readonly pools: readonly PoolReport[];
  /** Units with at least one record that counts. */
  readonly informative: number;
  /** The records' remarks and those of the fit: outliers, colours against thicknesses. */
  readonly remarks: readonly Remark[];
  /** Weight of each thickness row. */
  readonly weight: Float64Array;
  /** What the wear clocks say; undefined where the units carry none (`UnitColumns.clock`). */
  readonly change?: WearChange | undefined;
  /** The same fit with every reading at full weight, made when first asked for; undefined where nothing strays. */
  readonly fullWeight: WearFit | undefined;
  /** Where readings scatter more than twice what was declared: the same fit with their gauges taken at their word. */
  readonly asDeclared: WearFit | undefined;
}

/** Where this chance of a scatter beyond twice the declared one is passed, both forecasts are made. */
export const scatterSure = 0.9;

/** One standard deviation of the ln of the error where it is not to be found but taken as declared. */
const atItsWord = 0.01;

export type WearResult =
  | WearFit
  | {
      readonly kind: 'cannot say';
      readonly why: 'no records and nothing expected' | 'no units' | 'only bounds and nothing expected';
      readonly remarks: readonly Remark[];
      readonly units: Units;
    };

/**
 * @param like a fit of nearly the same records: searches begin where that one ended. They end where they would have ended anyway,
 * within their tolerance.
 */
export function fitWear(
  given: Units,
  pools: readonly Pool[] = [],
  asked: WearOptions = {},
  like?: WearFit,
): WearResult {
  const options = withUsualError(given, asked);
  const units = withOwnNoise(given, options.gaugeError ?? defaultGaugeError);
  const informative = countInformative(units);
  const bounded = countBoundedBelow(units);
  if (units.count === 0) return { kind: 'cannot say', why: 'no units', remarks: units.remarks, units };
  if (!options.expectedLife) {
    if (informative === 0)
      return { kind: 'cannot say', why: 'no records and nothing expected', remarks: units.remarks, units };
    if (bounded === 0)
      return { kind: 'cannot say', why: 'only bounds and nothing expected', remarks: units.remarks, units };
  }
  const design = designOf(units.count, pools);
  const sums = summarise(units, 0);
  const priors = priorsOf(units, sums, options);
  const per = usualInterval(units);
  const duty = dutyAsked(units, options, per);
  const gaugeError = options.gaugeError ?? defaultGaugeError;
  let weight: Float64Array = new Float64Array(units.exposure.length).fill(1);
  const modeFor = (before: DutyNoiseFit | undefined): DutyNoiseFit => {
    const straight = before ? summarise(units, 0, undefined, weight) : sums;
    const start =
      before?.mode.pass.parameters ??
      begunAt(like, design) ??
      startValues(units, straight, design, priors, gaugeError);
    return modeWithDuty(units, design, priors, duty, per, weight, straight, start, before);
  };
  const plain = modeFor(undefined);
  let best = plain;
  let last: LeaveOneOut | undefined;
  if (options.outliers !== 'keep' && options.priors !== 'none') {
    for (let round = 0; round < 3; round++) {
      last = leaveOut(units, design, best, weight);
      const next = crowdWeights(units, last);
      let change = 0;
      for (let at = 0; at < next.length; at++) change += Math.abs(next[at]! - weight[at]!);
      if (change < 0.05) break;
      weight = next;
      best = modeFor(best);
      // With so few strays among so many, what they no longer pull at moves no other reading's weight.
      if (units.count > bulk && change < 2e-3 * next.length) break;
    }
  }
  const setting: FitSetting = { units, design, priors, options, per, informative };
  const strays =
    options.priors === 'none'
      ? []
      : outlierRemarks(units, last ?? leaveOut(units, design, best, weight), weight);
  const clocks = clocksFor(setting, best, options.outliers ?? 'down-weight');
  const told = clocks ? withClockStrays(units, clocks, weight, strays) : { weight, strays };
  const nothingStrays = best === plain && told.strays.length === 0;
  let full: WearFit | undefined;
  const fullWeight = (): WearFit =>
    (full ??= finish(setting, plain, new Float64Array(units.exposure.length).fill(1), {
      strays: [],
      clocks: clocksFor(setting, plain, 'keep'),
    }));
  let declared: WearResult | undefined;
  const asDeclared = (): WearFit | undefined => {
    declared ??= fitWear(given, pools, { ...asked, scatter: 'as declared' });
    return declared.kind === 'fitted' ? declared : undefined;
  };
  return finish(setting, best, told.weight, {
    strays: told.strays,
    clocks,
    fullWeight: nothingStrays ? undefined : fullWeight,
    asDeclared: options.scatter === 'as declared' ? undefined : asDeclared,
  });
}

/** On a conveyor with a clock it is the clock that says what strays: the straight line takes a change of rate for strays. */
function withClockStrays(
  units: Units,
  clocks: Clocks,
  straight: Float64Array,
  remarks: readonly Remark[],
): { readonly weight: Float64Array; readonly strays: readonly Remark[] } {
  const weight = straight.slice();
  const strays: Remark[] = remarks.filter((r) => clocks.placeOf(r.unit) === undefined);
  clocks.blocks.forEach((block, b) => {
    const found = clocks.strays?.[b];
    block.row.forEach((row, r) => {
      weight[row] = found?.weight[r] ?? 1;
      if (!found || found.weight[r]! >= 1) return;
      const i = unitOfRow(block.start, r);
      const unit = block.units[i]!;
      strays.push({
        kind: 'outlier',
        reading: units.reading[row]!,
        unit,
        weight: found.weight[r]!,
        expected: (units.columns.fitted[unit] ?? 0) - found.expected[r]!,
        deviation: found.deviation[r]!,
      });
    });
  });
  return { weight, strays };
}

function unitOfRow(start: Int32Array, row: number): number {
  let i = 0;
  while (start[i + 1]! <= row) i++;
  return i;
}

/** What all fits of one set of records share, whatever the weights. */
interface FitSetting {
  readonly units: Units;
  readonly design: Design;
  readonly priors: Priors;
  readonly options: WearOptions;
  readonly per: number;
  readonly informative: number;
}

/** Where another fit's search ended, if it had the same offsets to find. */
function begunAt(like: WearFit | undefined, design: Design): Parameters | undefined {
  const same =
    like?.design.dense === design.dense &&
    like.design.apartLevels === design.apartLevels &&
    like.design.pools.length === design.pools.length;
  return same ? like.parameters : undefined;
}

/** The wear clocks, where the units say which conveyor they lie on. */
function clocksFor(
  setting: FitSetting,
  found: DutyNoiseFit,
  strays: 'down-weight' | 'keep',
): Clocks | undefined {
  const { units, priors, options, design } = setting;
  const { clock } = units.columns;
  if (!clock || options.priors === 'none' || options.uncertainty !== undefined || !priors.level)
    return undefined;
  const { mean, spread } = priors.level;
  // An expected rate is held to where a life ends, not to where a record happens to be: with a curved clock the two differ.
  const depth = 0.75 * median(Array.from(units.columns.fitted));
  const exposure = options.expectedLife
    ? depth / Math.exp(mean)
    : median(Array.from(units.lastSeen).filter((x) => x > 0));
  return clocksOf(units, clock, {
    expected: { depth: Math.exp(mean) * exposure, exposure, spread },
    usualError: options.gaugeError ?? defaultGaugeError,
    duty: options.dutyNoise ?? 'estimate',
    scatter: options.scatter === 'as declared' ? { mean: 0, spread: atItsWord } : clockPriors.logScatter,
    prior: besideConveyor(design, found.mode, units, clock),
    strays,
  });
}

/** Where no usual error is given but gauges declare their own: the middle of those. */
function withUsualError({ error }: Units, options: WearOptions): WearOptions {
  if (options.gaugeError !== undefined) return options;
  const declared = error.filter((e) => e > 0);
  return declared.length === 0 ? options : { ...options, gaugeError: median(Array.from(declared)) };
}

/** Each thickness with the error of its own gauge: what is estimated is one factor on all of them. */
function withOwnNoise(units: Units, usual: number): Units {
  const own = units.error.map((e) => (e > 0 ? (e / usual) ** 2 : 1));
  return own.every((v) => Math.abs(v - 1) < 1e-12) ? units : { ...units, noise: own };
}

function dutyAsked(units: Units, { dutyNoise = 'estimate', priors }: WearOptions, per: number): DutyAsked {
  if (dutyNoise === 'none' || per === 0) return { kind: 'none' };
  if (dutyNoise === 'estimate')
    return priors === 'none'
      ? { kind: 'none' }
      : { kind: hasPairs(units) ? 'estimate' : 'prior', prior: weakPriors.dutyNoise };
  return dutyNoise.ratio > 0
    ? { kind: 'declared', psi: dutyNoise.ratio * Math.sqrt(dutyNoise.per) }
    : { kind: 'none' };
}

function countInformative(units: Units): number {
  let n = 0;
  for (let unit = 0; unit < units.count; unit++)
    if (units.thicknesses[unit]! > 0 || units.indicators[unit]! > 0) n++;
  return n;
}

/** Units with a record that says the rate is not nothing: without one, "not yet" everywhere allows any rate down to none. */
function countBoundedBelow(units: Units): number {
  let n = 0;
  for (let unit = 0; unit < units.count; unit++) {
    let known = units.life[unit]! === units.life[unit]!;
    for (let at = units.start[unit]!; at < units.start[unit + 1]! && !known; at++)
      known = units.exposure[at]! > 0 && units.wear[at]! > 0;
    for (let e = units.edgeStart[unit]!; e < units.edgeStart[unit + 1]! && !known; e++)
      known = units.edgeReached[e]! < Infinity;
    if (known) n++;
  }
  return n;
}

function priorsOf(units: Units, sums: ReadingSums, options: WearOptions): Priors {
  const { expectedLife } = options;
  const weak = options.priors !== 'none';
  let level: NormalPrior | undefined;
  if (expectedLife)
    level = {
      mean: Math.log(expectedLife.depth / expectedLife.exposure),
      spread: expectedLife.spread ?? weakPriors.expectedLifeSpread,
    };
  else if (weak) {
    // Nothing expected: the records' own middle, so loosely that it only keeps a rate of nothing at bay.
    const crude = Array.from(crudeLogRates(units, sums), (u, unit) => u - units.offset[unit]!).filter(
      (u) => u === u,
    );
    level = { mean: median(crude), spread: weakPriors.nothingExpectedSpread };
  }
  return {
    level,
    logSpread: weak ? weakPriors.spread : undefined,
    logError: weak
      ? {
          mean: Math.log(options.gaugeError ?? defaultGaugeError),
          spread: options.scatter === 'as declared' ? atItsWord : weakPriors.error.spread,
        }
      : undefined,
    logPoolSpread: weakPriors.poolSpread,
  };
}

interface Beside {
  readonly strays: readonly Remark[];
  readonly clocks: Clocks | undefined;
  readonly fullWeight?: (() => WearFit) | undefined;
  readonly asDeclared?: (() => WearFit | undefined) | undefined;
}

function finish(
  { units, design, priors, options, per, informative }: FitSetting,
  found: DutyNoiseFit,
  weight: Float64Array,
  beside: Beside,
): WearFit {
  const { terms, mode } = found;
  const uncertainty = options.uncertainty ?? 'auto';
  const method =
    uncertainty === 'plug-in'
      ? 'plug-in'
      : uncertainty === 'integrate' || (uncertainty === 'auto' && informative < manyUnits)
        ? 'integrated'
        : 'corrected';
  const error = Math.exp(mode.pass.parameters.logError);
  const psi = Math.sqrt(found.ratio) * error;
  const single = nodeFrom(terms, design, mode.pass, 1, psi);
  const makeNodes = (): readonly ParameterNode[] => {
    let made: readonly ParameterNode[] = [];
    if (method === 'integrated') made = gridNodes(found.candidates(), design, priors, mode.pass.parameters);
    else if (method === 'corrected') made = modeNodes(found.candidates(), design, priors, mode);
    else if (single) made = [plugInNode(single)];
    return made.length === 0 && single ? [single] : made;
  };
  let nodes: readonly ParameterNode[] | undefined;
  let change: WearChange | undefined;
  const told = (): WearChange | undefined => (change ??= beside.clocks && changeTold(beside.clocks));
  const parameters = mode.pass.parameters;
  // With τ and σ estimated too; where their part cannot be solved, given them.
  const { system, effectsOnly } = mode.pass;
  const solved = solveSystem(system, system.size) ?? effectsOnly;
  return {
    kind: 'fitted',
    units,
    design,
    parameters,
    get nodes() {
      return (nodes ??= makeNodes());
    },
    clocks: beside.clocks,
    get change() {
      return told();
    },
    method,
    rate: {
      median: Math.exp(parameters.effects.dense[0]!),
      logError: solved ? Math.sqrt(solved.inverse[0]!) : Infinity,
      spread: Math.exp(parameters.logSpread),
    },
    readingError: error,
    dutyNoise: { psi, ratio: per > 0 ? psi / Math.sqrt(per) : 0, per, from: found.from },
    logLikelihood: mode.pass.logLikelihood,
    convergence: {
      converged: mode.converged && single !== undefined,
      iterations: mode.iterations,
      decrement: mode.decrement,
    },
    pools: reportPools(design, mode, units),
    informative,
    remarks: [
      ...units.remarks,
      ...coloursAgainstThicknesses(terms, mode, options.gaugeError ?? defaultGaugeError),
      ...beside.strays,
    ],
    weight,
    get fullWeight() {
      return beside.fullWeight?.();
    },
    get asDeclared() {
      const scatter = told()?.scatter;
      return scatter && scatter.above2 > scatterSure ? beside.asDeclared?.() : undefined;
    },
  };
}
