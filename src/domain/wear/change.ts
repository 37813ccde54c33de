// Has the wear rate changed, since when, and by how much? Each conveyor has a wear clock: effective hours that may run faster or
// slower, alike for all its points; within that clock wear is the straight line of fit.ts. This file is the contract between the
// model and the pages: what a page may say of a change, of the scatter of the readings and of the gauge, and nothing of how it is
// found (clock/). The report's track record and wear texts are built on these types, so they change only together with those.

import type { Quantiles } from './quantiles.js';

/**
 * Where units lie, for the wear clock; columns by unit. Without it (`UnitColumns.clock` left out) wear is taken as straight.
 * Looks are the days of the readings: `ReadingColumns.day` must be there.
 */
export interface ClockColumns {
  /** Conveyor of each unit, from 0; −1 where it has none. Units of one conveyor share a clock. */
  readonly conveyor: ArrayLike<number>;
  /** The conveyor's own meter when the unit's liner was fitted, in the measure of the exposures. Exposure + start = meter. */
  readonly start: ArrayLike<number>;
  /** Side of the trough seen along the flow: −1 left (9 o'clock), 0 bottom, 1 right (3 o'clock); NaN or left out where unknown. */
  readonly side?: ArrayLike<number>;
  /** Place along the conveyor, 0 at the inlet to 1 at the discharge; NaN or left out where unknown. */
  readonly along?: ArrayLike<number>;
  /** What each conveyor carries: those that carry the same may change on the same day. Undefined: nothing is shared. */
  readonly product: readonly (string | undefined)[];
  /**
   * What else tells duty from wear, by conveyor: ln of a proxy's mean (motor current, tonnes per hour, meter rate) over a stretch
   * between two days, about its own usual value. A stretch that worked harder by its proxy is not taken for a change of rate.
   */
  readonly work?: readonly (readonly WorkStretch[])[];
}

/** ln of how hard a stretch worked, about the usual: 0.3 is a third more. `spread`: one standard deviation of that figure. */
export interface WorkStretch {
  readonly fromDay: number;
  readonly toDay: number;
  readonly logFactor: number;
  readonly spread: number;
}

/** 5, 50 and 95 % points of what is believed. */
export interface Belief {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** A look after which the rate may have changed. The change acts on the wear after that look. */
export interface ChangeSince {
  /** Day of that look, and the conveyor's meter then. */
  readonly day: number;
  readonly meter: number;
  /** Chance of a change since this look and no other, 0 to 1. */
  readonly chance: number;
  /** Rate since over rate before, if it changed then. */
  readonly factor: Belief;
}

/** A whole look that reads off: mm, thickness read too thick is positive. */
export interface LookBias {
  readonly day: number;
  /** Declared error of the gauge, mm: a look with two gauges has two biases. */
  readonly error?: number;
  readonly bias: Belief;
  readonly readings: number;
}

export interface ConveyorChange {
  readonly kind: 'asked';
  readonly conveyor: number;
  /** Chance that the rate changed at one of the last four looks; the rest is steady (curved or not). */
  readonly chance: number;
  /** Of that, the chance of a change shared with the conveyors that carry the same product. */
  readonly shared: number;
  /** Candidate looks, oldest first; `likeliest` the one with the largest chance. */
  readonly since: readonly ChangeSince[];
  readonly likeliest: ChangeSince | undefined;
  /** Rate since over rate before, over all candidate looks, if it changed. */
  readonly factor: Belief;
  /** Rate now over the mean rate of the set so far, whatever the cause: change, age or wandering duty. */
  readonly pace: Belief;
  /** Chance that this is above 1.2, and below 1/1.2. */
  readonly faster: number;
  readonly slower: number;
  readonly looks: readonly LookBias[];
  /** ln rate of the right side over the left one, and of the discharge over the inlet; undefined where no places are known. */
  readonly side: Belief | undefined;
  readonly along: Belief | undefined;
  readonly thicknesses: number;
}

export type ConveyorClock =
  | ConveyorChange
  /** Nothing to tell a change by. Wear is then taken as straight, and the page must not call it steady. */
  | {
      readonly kind: 'not asked';
      readonly conveyor: number;
      readonly why: 'fewer than two looks' | 'too few thicknesses' | 'no meter' | 'too many points';
    };

/** wear ~ exposure^power. 1 is a straight line. */
export interface Curvature {
  /** Over all values, the straight line with its share among them. */
  readonly power: Belief;
  /** Power if it is not exactly 1, mean and one standard deviation. */
  readonly mean: number;
  readonly spread: number;
  /** Chance that wear speeds up with age (power above 1.05), and slows down (below 0.95). */
  readonly fasterWithAge: number;
  readonly slowerWithAge: number;
}

/** How far thicknesses scatter about smooth wear, over what their gauges declare. */
export interface Scatter {
  /** 1: as declared. */
  readonly factor: Belief;
  /** Chances that it is above 1.5 and above 2. */
  readonly above15: number;
  readonly above2: number;
  /** Each declared error (one standard deviation, mm), how many readings state it, and their scatter over it by itself. */
  readonly gauges: readonly {
    readonly error: number;
    readonly readings: number;
    readonly factor: number;
  }[];
}

export interface WearChange {
  /** By conveyor as in `ClockColumns.conveyor`. */
  readonly conveyors: readonly ConveyorClock[];
  readonly curvature: Curvature | undefined;
  readonly scatter: Scatter | undefined;
}

/** A forecast's two branches: if the rate has changed, and if it has not. They stand beside the forecast that weighs both. */
export interface Branches {
  /** Chance that it has changed. */
  readonly chance: number;
  readonly ifChanged: Quantiles;
  readonly ifNot: Quantiles;
  readonly reachedByIfChanged: (exposure: number) => number;
  readonly reachedByIfNot: (exposure: number) => number;
}
