// How good were the forecasts? What came out is held against what was foretold from the records known before it, in two ways that
// can tell. (1) The wear of a conveyor up to its last look, foretold from all looks before it and from the first half of them: signed
// misses pooled over points, for the gauge error of one reading hides a doubling, and that of twenty does not. (2) Sets that reached
// their limit: where their life fell in what was foretold before half of it had passed. How often the intervals of next readings
// held says next to nothing (gauge error rules there), so it is not counted.
// One fit serves every question whose records it has: cuts are chosen so that few days serve all. Index arithmetic runs within
// lengths given, so `!` after an index is safe.

import { ReadingKind } from '../units/reading-kind.js';
import { atMost } from './binomial.js';
import type { ReadingColumns, UnitColumns } from './columns.js';
import type { Pool, WearFit, WearOptions } from './fit.js';
import { fitWear } from './fit.js';
import { forecastUnit } from './forecast.js';
import { normalQuantile } from './numeric/normal.js';
import {
  inFourOfFive,
  lookShare,
  pooledMiss,
  pooledTogether,
  toldBeyond,
  type Miss,
  type PooledMiss,
} from './pooled-miss.js';
import { defaultGaugeError, reduceReadings } from './reduce.js';
import { wearAt } from './wear-at.js';

export interface TrackInput {
  /** `day` must be there. */
  readonly readings: ReadingColumns;
  readonly columns: UnitColumns;
  readonly pools: readonly Pool[];
  readonly options: WearOptions;
  /** Conveyor of each unit, from 0; −1 where it is judged with none. */
  readonly conveyor: ArrayLike<number>;
  /** mm of wear at which each unit's set is to be changed. */
  readonly limit: ArrayLike<number>;
  /** The fit of today, where there is one: fits of the past begin their searches at it. */
  readonly present?: WearFit | undefined;
  /** Most fits of the past; the newest questions are asked first. */
  readonly mostFits: number;
}

export const horizons = ['all looks before', 'the first half of the looks'] as const;
export type Horizon = (typeof horizons)[number];

/** One conveyor's last look against what was foretold of it. */
export interface JudgedLook {
  readonly conveyor: number;
  readonly horizon: Horizon;
  /** Last day whose records the forecast had, and the day of the look. */
  readonly cut: number;
  readonly day: number;
  readonly pooled: PooledMiss;
  /** Beyond chance, the number of conveyors judged taken into account. */
  readonly told: boolean;
}

export interface FinishedSets {
  /** Sets that reached their limit and were foretold before half of their life. */
  readonly of: number;
  /** Of them, ended before the 10 % quantile, and after the 90 % one. */
  readonly early: number;
  readonly late: number;
  /** Chance of so many early ends or more if the forecasts were right. */
  readonly chance: number;
  readonly told: boolean;
}

export interface TrackRecord {
  readonly looks: readonly JudgedLook[];
  /** All conveyors together, by horizon; undefined where fewer than two were judged. */
  readonly together: Readonly<Record<Horizon, (PooledMiss & { readonly told: boolean }) | undefined>>;
  readonly finished: FinishedSets;
  /** Days of the past that were forecast from, and those at which nothing could be fitted. */
  readonly cuts: readonly number[];
  readonly silentCuts: readonly number[];
}

export function trackRecord(input: TrackInput): TrackRecord {
  const questions = [...lookQuestions(input), ...lifeQuestions(input)];
  const looks: Omit<JudgedLook, 'told'>[] = [];
  const places: number[] = [];
  const cuts: number[] = [];
  const silentCuts: number[] = [];
  for (const { cut, asked } of fewestCuts(questions).slice(0, input.mostFits)) {
    cuts.push(cut);
    const units = reduceReadings(input.readings, input.columns, { ...gaugeOf(input), upTo: cut });
    const fit = fitWear(units, input.pools, input.options, input.present);
    if (fit.kind !== 'fitted') {
      silentCuts.push(cut);
      continue;
    }
    for (const question of asked) {
      if (question.kind === 'life') {
        const forecast = forecastUnit(fit, question.unit, input.limit[question.unit]!);
        if (forecast.kind === 'life') places.push(forecast.reachedBy(question.life));
        continue;
      }
      const misses = question.rows.flatMap((row) => missOf(input, fit, row) ?? []);
      const pooled = pooledMiss(misses);
      const { conveyor, horizon, day } = question;
      if (pooled) looks.push({ conveyor, horizon, cut, day, pooled });
    }
  }
  looks.sort((a, b) => a.conveyor - b.conveyor || horizons.indexOf(a.horizon) - horizons.indexOf(b.horizon));
  return {
    looks: toldApart(looks),
    together: {
      'all looks before': together(looks, 'all looks before'),
      'the first half of the looks': together(looks, 'the first half of the looks'),
    },
    finished: finishedOf(places),
    cuts: cuts.sort((a, b) => a - b),
    silentCuts: silentCuts.sort((a, b) => a - b),
  };
}

interface Cuttable {
  /** A fit of the records up to any day from `from` to `to` serves. */
  readonly from: number;
  readonly to: number;
}
type Question = Cuttable &
  (
    | {
        readonly kind: 'look';
        readonly conveyor: number;
        readonly horizon: Horizon;
        readonly day: number;
        readonly rows: readonly number[];
      }
    | { readonly kind: 'life'; readonly unit: number; readonly life: number }
  );

/** Two a conveyor: its last look from all looks before it, and from the first half of them. */
function* lookQuestions({ readings, conveyor }: TrackInput): Iterable<Question> {
  const days = readings.day;
  if (!days) return;
  const looks = new Map<number, Map<number, number[]>>();
  for (let row = 0; row < readings.unit.length; row++) {
    const of = conveyor[readings.unit[row]!] ?? -1;
    if (of < 0 || readings.kind[row] !== ReadingKind.thickness || !(readings.exposure[row]! > 0)) continue;
    let byDay = looks.get(of);
    if (!byDay) looks.set(of, (byDay = new Map()));
    const rows = byDay.get(days[row]!);
    if (rows) rows.push(row);
    else byDay.set(days[row]!, [row]);
  }
  for (const [of, byDay] of looks) {
    const ordered = [...byDay.keys()].sort((a, b) => a - b);
    const [day, before] = [ordered.at(-1), ordered.at(-2)];
    if (day === undefined || before === undefined) continue;
    const common = { kind: 'look', conveyor: of, day, rows: byDay.get(day) ?? [] } as const;
    yield { ...common, horizon: 'all looks before', from: before, to: day - 1 };
    const half = Math.floor(ordered.length / 2);
    const [from, next] = [ordered[half - 1], ordered[half]];
    if (half < ordered.length - 1 && from !== undefined && next !== undefined)
      yield { ...common, horizon: 'the first half of the looks', from, to: next - 1 };
  }
}

/** One for each set that was seen to reach its limit, from the last look before half of that life. */
function* lifeQuestions({ readings, columns, limit }: TrackInput): Iterable<Question> {
  const days = readings.day;
  if (!days) return;
  const rows: number[][] = Array.from({ length: columns.count }, () => []);
  for (let row = 0; row < readings.unit.length; row++)
    if (readings.kind[row] === ReadingKind.thickness || readings.kind[row] === ReadingKind.trough)
      rows[readings.unit[row]!]?.push(row);
  const wearOf = (row: number): number =>
    columns.fitted[readings.unit[row]!]! -
    (readings.kind[row] === ReadingKind.thickness ? readings.value[row]! : 0);
  for (let unit = 0; unit < columns.count; unit++) {
    const own = rows[unit]!.sort((a, b) => readings.exposure[a]! - readings.exposure[b]!);
    const at = own.findIndex((row) => wearOf(row) >= limit[unit]!);
    const [short, reached] = [own[at - 1], own[at]];
    if (short === undefined || reached === undefined) continue;
    const share = (limit[unit]! - wearOf(short)) / (wearOf(reached) - wearOf(short));
    const life =
      readings.exposure[short]! + share * (readings.exposure[reached]! - readings.exposure[short]!);
    const after = own.findIndex((row) => readings.exposure[row]! > life / 2);
    const [known, next] = [own[after - 1], own[after]];
    if (known === undefined || next === undefined || !(days[next]! > days[known]!)) continue;
    yield { kind: 'life', unit, life, from: days[known]!, to: days[next]! - 1 };
  }
}

/** The fewest days that serve all, newest first: the latest question is cut as early as it may be, and whoever that serves too. */
function fewestCuts(
  questions: readonly Question[],
): readonly { readonly cut: number; readonly asked: readonly Question[] }[] {
  const open = [...questions].sort((a, b) => b.from - a.from || b.to - a.to);
  const cuts: { cut: number; asked: Question[] }[] = [];
  for (const question of open) {
    const last = cuts.at(-1);
    if (last && last.cut <= question.to) last.asked.push(question);
    else cuts.push({ cut: question.from, asked: [question] });
  }
  return cuts;
}

function gaugeOf({ options }: TrackInput): { readonly gaugeError?: number } {
  return options.gaugeError === undefined ? {} : { gaugeError: options.gaugeError };
}

/** What one thickness missed of the wear foretold since the unit's last reading at the cut. */
function missOf(input: TrackInput, fit: WearFit, row: number): Miss | undefined {
  const { readings, columns, options } = input;
  const unit = readings.unit[row]!;
  const exposure = readings.exposure[row]!;
  const wear = columns.fitted[unit]! - readings.value[row]!;
  if (!Number.isFinite(wear) || !(readings.value[row]! > 0)) return undefined;
  const stated = readings.error?.[row] ?? NaN;
  const gauge = stated > 0 ? stated : (options.gaugeError ?? defaultGaugeError);
  const last = fit.units.lastSeen[unit]!;
  const { mean, spread } = wearAt(fit, unit, exposure);
  const before = last > 0 && last < exposure ? wearAt(fit, unit, last).mean : 0;
  return {
    foretold: mean - before,
    miss: wear - mean,
    variance: gauge ** 2 + spread ** 2,
    shared: lookShare * gauge * Math.hypot(1, exposure / rootSquares(fit, unit)),
  };
}

/** Looks that read off before the cut tilt the rate: by least squares through the origin as x over the root of Σx² of them. */
function rootSquares({ units }: WearFit, unit: number): number {
  let sum = 0;
  for (let at = units.start[unit]!; at < units.start[unit + 1]!; at++) sum += units.exposure[at]! ** 2;
  return sum > 0 ? Math.sqrt(sum) : Infinity;
}

/** With many conveyors one would stand out by chance: the bound rises so that all of one horizon together keep the same chance. */
function toldApart(looks: readonly Omit<JudgedLook, 'told'>[]): JudgedLook[] {
  const conveyors = new Set(looks.map((l) => l.conveyor)).size;
  const bound = -normalQuantile(0.0139 / Math.max(1, conveyors)); // 0.0139 lies beyond 2.2
  return looks.map((look) => {
    const { pooled } = look;
    const hidden = (pooled.hidden / (toldBeyond + inFourOfFive)) * (bound + inFourOfFive);
    return { ...look, pooled: { ...pooled, hidden }, told: pooled.z > bound };
  });
}

function together(
  looks: readonly Omit<JudgedLook, 'told'>[],
  horizon: Horizon,
): (PooledMiss & { readonly told: boolean }) | undefined {
  const pooled = pooledTogether(looks.filter((l) => l.horizon === horizon).map((l) => l.pooled));
  return pooled && { ...pooled, told: pooled.z > toldBeyond };
}

function finishedOf(places: readonly number[]): FinishedSets {
  const early = places.filter((p) => p < 0.1).length;
  const chance = 1 - atMost(early - 1, places.length, 0.1);
  return {
    of: places.length,
    early,
    late: places.filter((p) => p > 0.9).length,
    chance,
    told: chance < 0.02,
  };
}
