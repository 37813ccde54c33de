// The plan of a job as a value: who does what when, how long it takes, and what stands in the way.

import type { Job, Step } from '../model/job.js';
import type { Ground } from '../order/ground.js';
import type { Violation } from '../order/violation.js';
import type { LiftTable } from './lifts.js';
import type { ProposedRun } from './proposed-steps.js';
import type { Work } from './unit-times.js';
import type { Shorter } from './what-shortens.js';
import type { CalendarMoment } from './work-calendar.js';
import type { Origin } from '../model/origin.js';

export interface JobPlan {
  readonly job: Job;
  readonly order: 'as written' | 'proposed';
  /** By start, then as listed. As steps of an order they carry names, crews, units and `after`. */
  readonly steps: readonly PlannedStep[];
  /** Working hours from the first step to the last. */
  readonly duration: number;
  /** No plan with these steps, crews and units can be shorter; hours. */
  readonly lowerBound: number;
  readonly boundBecause: string;
  /** duration over lowerBound − 1; 0 where the plan is proven shortest. */
  readonly gap: number;
  readonly optimal: boolean;
  /** Positions in `steps` of one chain of work and waiting in which every delay delays the end, first to last. */
  readonly criticalPath: readonly number[];
  /** Positions in `steps` of what may not be left half done and is longer than any shift. */
  readonly longerThanShift: readonly number[];
  /** Hours of working time by which covers lie open longer than a shift before the work under them begins; 0 where they do not. */
  readonly openTooLong: number;
  /** Hours of working time between the end of hot work and its fire watch; 0 where the watch begins at once. */
  readonly watchTooLate: number;
  /** Changes of place of mobile platforms; each has its time in the plan. */
  readonly accessMoves: number;
  /** Working hours in the window; undefined without one. */
  readonly available: number | undefined;
  readonly finish: CalendarMoment | undefined;
  /** What would shorten it, most first. */
  readonly shorten: readonly Shorter[];
  /** Tests of the air that are rows of the plan and no steps of the order: at their interval, and when work goes on after a break. */
  readonly repeatGasTests: { readonly every?: number; readonly times: number } | undefined;
  /** Working hours at the ends of shifts in which the air would have to be tested again and too little is left for it. */
  readonly everybodyOut: readonly { readonly from: number; readonly to: number }[];
  /** For proposed orders: how each run is fitted. */
  readonly runs: readonly ProposedRun[];
  readonly lifts: LiftTable;
  readonly problems: readonly PlanProblem[];
  /** False where a problem stands that must be settled first. */
  readonly buildable: boolean;
  /** Defaults that were used, as shown to the reader. */
  readonly defaults: readonly string[];
  readonly ground: Ground;
  /** What the checker has against the order; a proposed one is checked like a written one. */
  readonly violations: readonly Violation[];
}

export interface PlannedStep {
  readonly step: Step;
  readonly crews: readonly string[];
  readonly people: number;
  readonly unit: string | undefined;
  readonly work: Work;
  /** Working hours since the first shift began. */
  readonly start: number;
  readonly finish: number;
  readonly from: CalendarMoment | undefined;
  readonly to: CalendarMoment | undefined;
  /** Working hours it may be late without delaying the end, given who does what in which order. */
  readonly float: number;
  readonly critical: boolean;
  /** Positions in `steps` that must be finished first. */
  readonly after: readonly number[];
  /** Set for a repeated test of the air, which is no step of the order: why it is repeated. */
  readonly repeat?: 'interval' | 'break';
}

export interface PlanProblem {
  readonly kind:
    | 'order'
    | 'nothing to do'
    | 'no run'
    | 'cut to fit'
    | 'scope too small'
    | 'window too short'
    | 'no shift'
    | 'no crew'
    | 'crew of nobody'
    | 'no welder'
    | 'lift over limit'
    | 'too heavy by hand'
    | 'no lift limit'
    | 'mass unknown'
    | 'longer than a shift'
    | 'covers open too long'
    | 'fire watch too late'
    | 'too many'
    | 'side pull'
    | 'gas test not repeated'
    | 'spiral held by nothing';
  readonly stops: boolean;
  readonly origin: Origin;
  /** `Not buildable because …` goes before it. */
  readonly message: string;
  readonly todo: string;
}
