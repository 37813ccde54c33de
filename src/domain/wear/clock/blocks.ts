// What does one conveyor bring to its wear clock? Its looks on the conveyor's own meter, the stretches between them (older looks
// are drawn together: only the last ones can tell a change), and the thicknesses and colours of the units that lay there, each with
// its liner's age. Sets that ended long before take no part: what they say of a place comes through the straight fit.
// Index arithmetic runs within lengths made here and in reduce.ts, so `!` after an index is safe.

import type { ClockColumns } from '../change.js';
import { median } from '../median.js';
import type { Units } from '../reduce.js';
import { clockPriors } from './priors.js';

/** What the straight fit says of a unit beside its conveyor's level: mean of its ln rate, and the share of τ² that is left open. */
export interface UnitPrior {
  readonly mean: Float64Array;
  readonly share: Float64Array;
}

export interface Block {
  readonly conveyor: number;
  readonly product: string | undefined;
  /** Rows of `Units`, those with records first. */
  readonly units: Int32Array;
  /** How many of them have records. */
  readonly known: number;
  /** Conveyor's meter at the ends of the stretches: `stretches + 1` of them, rising. */
  readonly meter: Float64Array;
  readonly stretches: number;
  /** Middle interval between looks: what "usual" means. */
  readonly step: number;
  /** Day and meter of each look, drawn together where less than a fiftieth of an interval lies between. */
  readonly lookDay: Float64Array;
  readonly lookMeter: Float64Array;
  /** Of each thickness, which gauge's look reads off with it, from 0; −1 for older looks. */
  readonly bias: Int32Array;
  /** Look and declared error (mm) of each such gauge's look. */
  readonly biasLook: Int32Array;
  readonly biases: number;
  /** How many of them, the last, belong to the last look. */
  readonly lastBiases: number;
  /** One standard deviation of each bias, mm. */
  readonly biasSpread: Float64Array;
  /** Chance of a change at each candidate, by itself; and of one shared. */
  readonly ownChange: number;
  readonly sharedChange: number;
  /** Stretch at whose beginning a change may have come, and the look there; oldest first. */
  readonly candidates: readonly { readonly stretch: number; readonly look: number }[];
  /** Thicknesses of unit i: `start[i]` up to `start[i + 1]`. */
  readonly start: Int32Array;
  readonly row: Int32Array;
  readonly age: Float64Array;
  readonly wear: Float64Array;
  readonly error: Float64Array;
  readonly look: Int32Array;
  /** Colour edges of unit i likewise: the depth had been reached (+1) at this age, or had not (−1). */
  readonly edgeStart: Int32Array;
  readonly edgeAge: Float64Array;
  readonly edgeDepth: Float64Array;
  readonly edgeTolerance: Float64Array;
  readonly edgeSide: Float64Array;
  /** Conveyor's meter when each unit was fitted. */
  readonly fitted: Float64Array;
  readonly prior: UnitPrior;
  /** About what each unit's rate is, mm per unit of exposure. */
  readonly crude: Float64Array;
  /** Covariates of place, `width` a unit, and the prior spread of each one's coefficient. */
  readonly place: Float64Array;
  readonly width: number;
  readonly placeSpread: Float64Array;
  readonly placeName: readonly ('side' | 'along')[];
  /** ln of how hard each stretch worked by a proxy, and the variance of that. */
  readonly work: Float64Array;
  readonly workVariance: Float64Array;
}

export interface BlockSetting {
  /** One standard deviation of a thickness whose gauge declares none, mm. */
  readonly usualError: number;
  readonly prior: UnitPrior;
  /** Declared, none, or to be found: variation of the wear over `per` as a share of it. */
  readonly duty: 'estimate' | 'none' | { readonly ratio: number; readonly per: number };
}

export type NoBlock = 'fewer than two looks' | 'too few thicknesses' | 'no meter' | 'too many points';

const finest = 8; // looks that keep a stretch of their own
const coarse = 3; // stretches that stand for all older ones
/** Beyond this many points on one conveyor a change shows in plain sums, and a block would cost more than it tells. */
export const mostPoints = 1500;

export function blockOf(
  units: Units,
  clock: ClockColumns,
  conveyor: number,
  members: readonly number[],
  { usualError, prior, duty }: BlockSetting,
): Block | NoBlock {
  const looks = looksOf(units, clock, members);
  if (looks.day.length < 2) return 'fewer than two looks';
  const kept = Math.max(0, looks.day.length - finest);
  // Sets that ended before the looks kept: out, unless nothing else is there.
  const since = looks.meter[kept]!;
  const inPlay = members.filter((unit) => lastMeter(units, clock, unit) >= since - 1e-9);
  const unknown = members.filter((unit) => lastMeter(units, clock, unit) === -Infinity);
  const thick = inPlay.reduce((sum, unit) => sum + units.thicknesses[unit]!, 0);
  if (thick < 4 || inPlay.length < 2) return 'too few thicknesses';
  if (inPlay.length > mostPoints) return 'too many points';
  const first = Math.min(...inPlay.map((unit) => clock.start[unit]!));
  const meter = boundaries(looks.meter, kept, first);
  if (!(meter.length > 2) || !meter.every(Number.isFinite)) return 'no meter';
  const frame = { looks, meter, kept };
  const all = [...inPlay, ...unknown];
  const less = evenHours(duty);
  return {
    ...assemble(units, clock, conveyor, all, inPlay.length, frame, usualError, prior),
    ownChange: less * clockPriors.ownChange,
    sharedChange: less * clockPriors.sharedChange,
  };
}

/** What chances of a change and of a curved clock are multiplied by. */
export function evenHours(duty: BlockSetting['duty']): number {
  return duty === 'estimate' ? 1 : clockPriors.evenHours;
}

interface Looks {
  readonly day: Float64Array;
  readonly meter: Float64Array;
  readonly step: number;
}

/** Days of the thicknesses, each with the conveyor's meter; days with next to no wear between them count as one look. */
function looksOf(units: Units, clock: ClockColumns, members: readonly number[]): Looks {
  const byDay = new Map<number, number[]>();
  for (const unit of members)
    for (let at = units.start[unit]!; at < units.start[unit + 1]!; at++) {
      const day = units.day[at]!;
      const meter = clock.start[unit]! + units.exposure[at]!;
      if (!Number.isFinite(day) || !Number.isFinite(meter) || !(units.exposure[at]! > 0)) continue;
      const rows = byDay.get(day);
      if (rows) rows.push(meter);
      else byDay.set(day, [meter]);
    }
  const days = [...byDay.keys()].sort((a, b) => a - b);
  const raw: { day: number; meter: number }[] = [];
  for (const day of days) {
    const meter = median(byDay.get(day) ?? []);
    const before = raw[raw.length - 1];
    // A meter that does not grow is no new stretch of wear.
    raw.push({ day, meter: before ? Math.max(before.meter, meter) : meter });
  }
  const gaps = raw.flatMap((look, k) => (k > 0 ? [look.meter - raw[k - 1]!.meter] : [])).filter((g) => g > 0);
  const least = 0.02 * (gaps.length > 0 ? median(gaps) : 0);
  const looks = raw.filter((look, k) => k === 0 || look.meter - raw[k - 1]!.meter > least);
  return {
    day: Float64Array.from(looks, ({ day }) => day),
    meter: Float64Array.from(looks, ({ meter }) => meter),
    step: gaps.length > 0 ? median(gaps) : 0,
  };
}

function lastMeter(units: Units, clock: ClockColumns, unit: number): number {
  return units.lastSeen[unit]! > 0 ? clock.start[unit]! + units.lastSeen[unit]! : -Infinity;
}

function boundaries(meters: Float64Array, kept: number, first: number): Float64Array {
  const older = Array.from(meters.subarray(0, kept));
  const chosen = older.filter((_, k) => {
    const part = Math.floor(((k + 1) * coarse) / older.length);
    return part !== Math.floor((k * coarse) / older.length);
  });
  const all = [first, ...chosen, ...meters.subarray(kept)].filter((m) => m >= first);
  const rising: number[] = [];
  for (const m of all) if (rising.length === 0 || m > rising[rising.length - 1]! + 1e-9) rising.push(m);
  return Float64Array.from(rising);
}

interface Frame {
  readonly looks: Looks;
  readonly meter: Float64Array;
  readonly kept: number;
}

function assemble(
  units: Units,
  clock: ClockColumns,
  conveyor: number,
  list: readonly number[],
  known: number,
  { looks, meter, kept }: Frame,
  usualError: number,
  prior: UnitPrior,
): Omit<Block, 'ownChange' | 'sharedChange'> {
  const stretches = meter.length - 1;
  const count = looks.day.length;
  const rows = thicknessRows(units, clock, list, looks, usualError);
  const bias = biasesOf(rows, count, kept);
  const candidates: { stretch: number; look: number }[] = [];
  const oldest = Math.max(kept, count - 1 - clockPriors.looksBack);
  for (let look = oldest; look < count - 1; look++) {
    const stretch = meter.indexOf(looks.meter[look]!);
    if (stretch >= 1) candidates.push({ stretch, look });
  }
  return {
    conveyor,
    product: clock.product[conveyor],
    units: Int32Array.from(list),
    known,
    meter,
    stretches,
    step: looks.step,
    lookDay: looks.day,
    lookMeter: looks.meter,
    ...bias,
    candidates,
    ...rows,
    ...edgeRows(units, list),
    fitted: Float64Array.from(list, (unit) => clock.start[unit]!),
    prior: {
      mean: Float64Array.from(list, (unit) => prior.mean[unit]!),
      share: Float64Array.from(list, (unit) => prior.share[unit]!),
    },
    crude: crudeRates(units, list),
    ...placesOf(clock, list),
    ...workOf(clock, conveyor, looks, meter),
  };
}

/** A gauge reads a whole look off: thicknesses of one look whose declared errors are alike share it. Ordered by look. */
function biasesOf(
  rows: Rows,
  looks: number,
  kept: number,
): Pick<Block, 'bias' | 'biasLook' | 'biases' | 'lastBiases' | 'biasSpread'> {
  const gauge = (r: number): number => Math.round(2 * Math.log2(rows.error[r]!));
  const key = (r: number): string => `${rows.look[r]!} ${gauge(r)}`;
  const order = Array.from(rows.look.keys())
    .filter((r) => rows.look[r]! >= kept)
    .sort((a, b) => rows.look[a]! - rows.look[b]! || gauge(a) - gauge(b));
  const number = new Map<string, number>();
  for (const r of order) if (!number.has(key(r))) number.set(key(r), number.size);
  const biases = number.size;
  const biasLook = new Int32Array(biases);
  const spread = new Float64Array(biases);
  const bias = Int32Array.from(rows.look, (_, r) => number.get(key(r)) ?? -1);
  bias.forEach((b, r) => {
    if (b < 0) return;
    biasLook[b] = rows.look[r]!;
    spread[b] = clockPriors.lookBias * rows.error[r]!;
  });
  const lastBiases = biasLook.reduce((sum, look) => sum + (look === looks - 1 ? 1 : 0), 0);
  return { bias, biasLook, biases, lastBiases, biasSpread: spread };
}

type Rows = Pick<Block, 'start' | 'row' | 'age' | 'wear' | 'error' | 'look'>;

function thicknessRows(
  units: Units,
  clock: ClockColumns,
  list: readonly number[],
  looks: Looks,
  usualError: number,
): Rows {
  const start = new Int32Array(list.length + 1);
  list.forEach((unit, i) => (start[i + 1] = start[i]! + units.start[unit + 1]! - units.start[unit]!));
  const total = start[list.length]!;
  const row = new Int32Array(total);
  const age = new Float64Array(total);
  const wear = new Float64Array(total);
  const error = new Float64Array(total);
  const look = new Int32Array(total);
  list.forEach((unit, i) => {
    for (let k = 0; k < start[i + 1]! - start[i]!; k++) {
      const at = units.start[unit]! + k;
      const to = start[i]! + k;
      row[to] = at;
      age[to] = units.exposure[at]!;
      wear[to] = units.wear[at]!;
      error[to] = units.error[at]! > 0 ? units.error[at]! : usualError;
      look[to] = nearestLook(looks, units.day[at]!, clock.start[unit]! + age[to]!);
    }
  });
  return { start, row, age, wear, error, look };
}

function nearestLook({ day, meter }: Looks, on: number, at: number): number {
  let best = 0;
  for (let k = 1; k < day.length; k++) {
    const nearer = Number.isFinite(on)
      ? Math.abs(day[k]! - on) < Math.abs(day[best]! - on)
      : Math.abs(meter[k]! - at) < Math.abs(meter[best]! - at);
    if (nearer) best = k;
  }
  return best;
}

type EdgeRows = Pick<Block, 'edgeStart' | 'edgeAge' | 'edgeDepth' | 'edgeTolerance' | 'edgeSide'>;

function edgeRows(units: Units, list: readonly number[]): EdgeRows {
  const edgeStart = new Int32Array(list.length + 1);
  const age: number[] = [];
  const depth: number[] = [];
  const tolerance: number[] = [];
  const side: number[] = [];
  list.forEach((unit, i) => {
    for (let e = units.edgeStart[unit]!; e < units.edgeStart[unit + 1]!; e++) {
      for (const [at, sign] of [
        [units.edgeReached[e]!, 1],
        [units.edgeNotYet[e]!, -1],
      ] as const) {
        if (!(at > 0) || !Number.isFinite(at)) continue;
        age.push(at);
        depth.push(units.edgeDepth[e]!);
        tolerance.push(units.edgeTolerance[e]!);
        side.push(sign);
      }
    }
    edgeStart[i + 1] = age.length;
  });
  return {
    edgeStart,
    edgeAge: Float64Array.from(age),
    edgeDepth: Float64Array.from(depth),
    edgeTolerance: Float64Array.from(tolerance),
    edgeSide: Float64Array.from(side),
  };
}

/** Each unit's own line through the origin, kept within a factor of three of the middle one. */
function crudeRates(units: Units, list: readonly number[]): Float64Array {
  const own = list.map((unit) => {
    let xy = 0;
    let xx = 0;
    for (let at = units.start[unit]!; at < units.start[unit + 1]!; at++) {
      xy += units.exposure[at]! * units.wear[at]!;
      xx += units.exposure[at]! ** 2;
    }
    return xx > 0 && xy > 0 ? xy / xx : NaN;
  });
  const sound = own.filter((r) => r > 0);
  const middle = sound.length > 0 ? median(sound) : 1e-3;
  return Float64Array.from(own, (r) => (r > middle / 3 && r < 3 * middle ? r : middle));
}

type Places = Pick<Block, 'place' | 'width' | 'placeSpread' | 'placeName'>;

/** Side of the trough as −½ to ½, chainage about its middle; only what differs between the units. */
function placesOf(clock: ClockColumns, list: readonly number[]): Places {
  const columns: Float64Array[] = [];
  const spread: number[] = [];
  const name: ('side' | 'along')[] = [];
  const add = (which: 'side' | 'along', value: (unit: number) => number, priorSpread: number): void => {
    const known = list.map(value).filter(Number.isFinite);
    if (known.length < 2 || Math.max(...known) - Math.min(...known) < 1e-6) return;
    columns.push(Float64Array.from(list, (unit) => (Number.isFinite(value(unit)) ? value(unit) : 0)));
    spread.push(priorSpread);
    name.push(which);
  };
  add('side', (unit) => 0.5 * (clock.side?.[unit] ?? NaN), clockPriors.side);
  add('along', (unit) => (clock.along?.[unit] ?? NaN) - 0.5, clockPriors.along);
  const width = columns.length;
  const place = new Float64Array(list.length * width);
  columns.forEach((column, c) => column.forEach((value, i) => (place[i * width + c] = value)));
  return { place, width, placeSpread: Float64Array.from(spread), placeName: name };
}

/** How hard each stretch worked: the mean of the proxies' stretches by the share of days that they cover. */
function workOf(
  clock: ClockColumns,
  conveyor: number,
  looks: Looks,
  meter: Float64Array,
): Pick<Block, 'work' | 'workVariance'> {
  const stretches = meter.length - 1;
  const work = new Float64Array(stretches);
  const workVariance = new Float64Array(stretches);
  const covered = new Uint8Array(stretches);
  const dayAt = (m: number): number => {
    const k = looks.meter.findIndex((known) => known >= m - 1e-9);
    return k < 0 ? NaN : looks.day[k]!;
  };
  for (let j = 0; j < stretches; j++) {
    const [from, to] = [j === 0 ? -Infinity : dayAt(meter[j]!), dayAt(meter[j + 1]!)];
    let days = 0;
    for (const stretch of clock.work?.[conveyor] ?? []) {
      const common = Math.min(to, stretch.toDay) - Math.max(from, stretch.fromDay);
      if (!(common > 0)) continue;
      days += common;
      work[j]! += common * stretch.logFactor;
      workVariance[j]! += common * stretch.spread ** 2;
    }
    if (days === 0) continue;
    covered[j] = 1;
    work[j]! /= days;
    workVariance[j]! /= days;
  }
  believe(work, workVariance, covered);
  return { work, workVariance };
}

/**
 * A proxy is believed as far as it varies beyond its own error (James & Stein's shrinking): where it hardly varies duty was even, and
 * it neither moves a stretch nor loosens it.
 */
function believe(work: Float64Array, variance: Float64Array, covered: Uint8Array): void {
  let count = 0;
  let sum = 0;
  let square = 0;
  let own = 0;
  work.forEach((w, j) => {
    if (covered[j] === 0) return;
    count++;
    sum += w;
    square += w * w;
    own += variance[j]!;
  });
  const between = count > 1 ? Math.max(0, (square - (sum * sum) / count) / (count - 1) - own / count) : 0;
  work.forEach((w, j) => {
    const noise = variance[j]!;
    const share = noise + between > 0 ? between / (between + noise) : 0;
    work[j] = covered[j] === 0 ? 0 : w * share;
    variance[j] = noise * share;
  });
}
