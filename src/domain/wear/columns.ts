// Readings in columns: one row a reading, one row a unit. A unit is one liner set at one point (or one screw flight at one place).
// Columns are plain typed arrays, so that a million readings cost a few flat blocks of memory and no objects.
// Exposure is whatever wears the liner: running hours since that liner was fitted, or tonnes carried; one measure in one set of columns.

import type { ClockColumns } from './change.js';

export interface ReadingColumns {
  /** Row of the unit in `UnitColumns`, from 0. */
  readonly unit: ArrayLike<number>;
  /** Since the unit's liner was fitted, in the chosen measure, ≥ 0. */
  readonly exposure: ArrayLike<number>;
  /** A ReadingKind; of `notSeen` and `trough` the `value` is not read, of `colour` it is the layer, 0 for none worn through. */
  readonly kind: ArrayLike<number>;
  readonly value: ArrayLike<number>;
  /** Day of the reading as a whole number; needed by the track record and by the wear clock. */
  readonly day?: ArrayLike<number>;
  /** One standard deviation of each thickness as its gauge declares it, mm; NaN or left out: `WearOptions.gaugeError`. */
  readonly error?: ArrayLike<number>;
}

/** How a liner is built, or a flight: the wear at which each layer is through, mm from the screw side; the last is the full thickness. */
export interface Build {
  readonly depths: readonly number[];
  /** Tolerance of a layer's depth as a ratio of the depth (one standard deviation). Where left out, `defaultDepthTolerance`. */
  readonly tolerance?: number;
}

/** One standard deviation of a layer's depth, as a ratio of the depth: our judgement, for skived sheet and an edge read by eye. */
export const defaultDepthTolerance = 0.05;

export interface UnitColumns {
  readonly count: number;
  /** Thickness when fitted, mm. */
  readonly fitted: ArrayLike<number>;
  /** Row of each unit's build in `builds`. */
  readonly build: ArrayLike<number>;
  readonly builds: readonly Build[];
  /** Known logarithm of a factor on the unit's rate, say ln(its sliding speed / the pool's). 0 where left out. */
  readonly offset?: ArrayLike<number>;
  /** Former sets known by their life only. A unit may have several rows (a bound, then the life). */
  readonly lives?: LifeColumns;
  /** Which units share a wear clock, and where they lie; left out: wear is a straight line. */
  readonly clock?: ClockColumns;
}

/** What is known of a set's life without readings: it reached a depth at an exposure, or was still short of it. */
export interface LifeColumns {
  readonly unit: ArrayLike<number>;
  /** Exposure at which the depth was reached, or up to which it was not. */
  readonly exposure: ArrayLike<number>;
  /** mm of wear. */
  readonly depth: ArrayLike<number>;
  /** 1: reached at this exposure. 0: still running short of the depth. */
  readonly reached: ArrayLike<number>;
  readonly day?: ArrayLike<number>;
}

/**
 * Something a report must say about the records. `reading` and `earlier` are rows of the reading columns, `unit` a row of the units.
 * `left out` says that the reading took no part; everything else took part, if need be with a small weight.
 */
export type Remark =
  | { readonly kind: 'no such unit'; readonly reading: number; readonly unit: number; readonly leftOut: true }
  | { readonly kind: 'not a number'; readonly reading: number; readonly unit: number; readonly leftOut: true }
  | {
      readonly kind: 'before fitting';
      readonly reading: number;
      readonly unit: number;
      readonly exposure: number;
      readonly leftOut: true;
    }
  /** A reading at no exposure tells of the gauge, not of the rate. A layer or the trough seen worn at no exposure is left out. */
  | {
      readonly kind: 'no exposure yet';
      readonly reading: number;
      readonly unit: number;
      readonly leftOut: boolean;
    }
  | {
      readonly kind: 'no such layer';
      readonly reading: number;
      readonly unit: number;
      readonly layer: number;
      readonly leftOut: true;
    }
  | {
      readonly kind: 'negative thickness';
      readonly reading: number;
      readonly unit: number;
      readonly thickness: number;
      readonly leftOut: true;
    }
  | {
      readonly kind: 'thicker than fitted';
      readonly reading: number;
      readonly unit: number;
      readonly thickness: number;
      readonly fitted: number;
      readonly leftOut: boolean;
    }
  /** A later reading thicker than an earlier one beyond 3σ√2: a replaced liner, another point, or a misread. Kept; see outliers. */
  | {
      readonly kind: 'thicker than before';
      readonly reading: number;
      readonly earlier: number;
      readonly unit: number;
      readonly growth: number;
    }
  /** One reading says that the depth was reached, a later one that it was not. The worse one, `earlier`, is believed. */
  | {
      readonly kind: 'contradiction';
      readonly reading: number;
      readonly earlier: number;
      readonly unit: number;
      readonly depth: number;
    }
  /** The colours seen and the thicknesses measured cannot both be right. `chance`: of such colours, given the thicknesses. */
  | { readonly kind: 'colour against thickness'; readonly unit: number; readonly chance: number }
  /**
   * A thickness far from what all else foretold. `weight`, 0 to 1, is what it counts for, 1 where it is its unit's only one;
   * `expected` mm; `deviation` in standard deviations.
   */
  | {
      readonly kind: 'outlier';
      readonly reading: number;
      readonly unit: number;
      readonly weight: number;
      readonly expected: number;
      readonly deviation: number;
    };
