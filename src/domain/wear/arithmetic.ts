// What can an inspector work out by hand from the thicknesses of one place? Long-term and short-term wear rate, the larger
// of the two, the life that is left at that rate, and the next inspection at half of it at the latest.
// The form is that of API 570 (7.2, remaining life) and API 510 (7.2) for thinning walls; here the wall is a liner.
// Exposure is any running total since the liner was fitted: hours, or tonnes where wear follows tonnes.

/** Exposure since fitting (h or t, ≥ 0) and thickness (mm, ≥ 0). */
export interface ThicknessReading {
  readonly exposure: number;
  readonly thickness: number;
}

export interface HandInput {
  /** Thickness when fitted, mm. */
  readonly fitted: number;
  /** Least thickness allowed, mm: the condemn limit. */
  readonly least: number;
  /** In any order; those at zero exposure or less say nothing about a rate and are left out. */
  readonly readings: readonly ThicknessReading[];
}

/**
 * What the arithmetic concludes. Rates in mm per unit of exposure, lives in units of exposure from the last reading.
 * `no reading`: nothing to conclude. `no wear measured`: the last reading is not thinner than the fitted liner, so there is a
 * rate of zero or less and no finite life follows from it. `at the limit`: the last reading is at or below the least thickness.
 */
export type HandResult =
  | { readonly kind: 'no reading' }
  | {
      readonly kind: 'no wear measured';
      readonly last: ThicknessReading;
      readonly longTerm: number;
      readonly shortTerm: ShortTerm;
    }
  | {
      readonly kind: 'at the limit';
      readonly last: ThicknessReading;
      readonly longTerm: number;
      readonly shortTerm: ShortTerm;
      readonly below: number;
    }
  | {
      readonly kind: 'rate';
      readonly last: ThicknessReading;
      readonly longTerm: number;
      readonly shortTerm: ShortTerm;
      readonly ruling: number;
      readonly rules: 'long-term' | 'short-term';
      readonly remaining: number;
      /** Units of exposure from the last reading: half of `remaining`. */
      readonly nextInspection: number;
    };

/** The rate between the last two readings, or why there is none. */
export type ShortTerm =
  | { readonly kind: 'rate'; readonly rate: number; readonly from: ThicknessReading }
  | { readonly kind: 'one reading' }
  | { readonly kind: 'no exposure between' }
  /** The later reading is thicker, by `gain` mm: measurement error, another place, or a liner changed without a record. */
  | { readonly kind: 'thicker later'; readonly gain: number; readonly from: ThicknessReading };

export function handArithmetic(input: HandInput): HandResult {
  const readings = input.readings
    .filter(
      (r) =>
        Number.isFinite(r.exposure) && Number.isFinite(r.thickness) && r.exposure > 0 && r.thickness >= 0,
    )
    .sort((a, b) => a.exposure - b.exposure);
  const last = readings.at(-1);
  if (!last || !Number.isFinite(input.fitted) || !Number.isFinite(input.least)) return { kind: 'no reading' };

  const longTerm = longTermRate(input.fitted, last.thickness, last.exposure);
  const shortTerm = shortTermRate(readings.at(-2), last);
  if (last.thickness <= input.least)
    return { kind: 'at the limit', last, longTerm, shortTerm, below: input.least - last.thickness };

  const short = shortTerm.kind === 'rate' ? shortTerm.rate : -Infinity;
  const ruling = Math.max(longTerm, short);
  if (!(ruling > 0)) return { kind: 'no wear measured', last, longTerm, shortTerm };
  const remaining = remainingLife(last.thickness, input.least, ruling);
  return {
    kind: 'rate',
    last,
    longTerm,
    shortTerm,
    ruling,
    rules: short > longTerm ? 'short-term' : 'long-term',
    remaining,
    nextInspection: remaining / 2,
  };
}

/** The larger of the two rates, at the limit too: how fast it wore says as much once it is worn down; undefined where it is none. */
export function rulingRate(hand: HandResult): number | undefined {
  if (hand.kind === 'rate') return hand.ruling;
  if (hand.kind !== 'at the limit') return undefined;
  const ruling = Math.max(hand.longTerm, hand.shortTerm.kind === 'rate' ? hand.shortTerm.rate : -Infinity);
  return ruling > 0 ? ruling : undefined;
}

/** LT = (t₀ − t) / T, mm per unit of exposure; negative where the liner reads thicker than it was fitted. `exposure` > 0. */
export function longTermRate(fitted: number, thickness: number, exposure: number): number {
  return (fitted - thickness) / exposure;
}

/** ST = (t₁ − t) / ΔT between the last two readings. */
export function shortTermRate(previous: ThicknessReading | undefined, last: ThicknessReading): ShortTerm {
  if (!previous) return { kind: 'one reading' };
  const between = last.exposure - previous.exposure;
  if (!(between > 0)) return { kind: 'no exposure between' };
  const loss = previous.thickness - last.thickness;
  return loss < 0
    ? { kind: 'thicker later', gain: -loss, from: previous }
    : { kind: 'rate', rate: loss / between, from: previous };
}

/** RL = (t − t_min) / rate in units of exposure; 0 at or below the least thickness. `rate` > 0, mm per unit of exposure. */
export function remainingLife(thickness: number, least: number, rate: number): number {
  return Math.max(0, thickness - least) / rate;
}
