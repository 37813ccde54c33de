// A job: what is to be done at which window, by whom, and (where the author writes it) in which order.

import type { Conveyor } from './conveyor.js';
import type { Origin } from './origin.js';
import type { AccessUnit, Crane, Crew, Outage, Rescue } from './plant.js';
import type { LinerSpecification, ScrewSpecification } from './specifications.js';
import type { NameUse, Range, Stated, StatedCount, StatedDay } from './stated.js';
import type { Stretch } from './stretch.js';

export interface Job {
  readonly name: string;
  readonly title?: string;
  readonly doc?: string;
  readonly origin: Origin;
  readonly nameOrigin: Origin;
  readonly conveyor: Conveyor;
  readonly conveyorUse: NameUse;
  readonly window?: {
    readonly outage?: Outage;
    readonly from: StatedDay;
    readonly to: StatedDay;
    readonly origin: Origin;
  };
  readonly relines: readonly {
    readonly stretch: Stretch;
    readonly liner: LinerSpecification;
    /** As written behind `with`; without it the liner that lies there, in a part for each where several lie. */
    readonly linerUse?: NameUse;
    /** It names none, and several lie that did not come so with the machine. */
    readonly unsure?: true;
    readonly origin: Origin;
  }[];
  readonly screwChange?: ScrewChangeScope;
  /** The screw that a change before the job has put in, where there was one (found-by-job.ts). */
  readonly screwLying?: ScrewSpecification;
  /** The job whose isolation and space this one shares, as named. */
  readonly partOf?: NameUse;
  /** Crews and access units by name; `crew` is undefined where the plant has none of that name. */
  readonly crews: readonly { readonly use: NameUse; readonly crew?: Crew }[];
  readonly accessUnits: readonly { readonly use: NameUse; readonly unit?: AccessUnit }[];
  /** Where cranes stand; one crane may stand in several places, one after another. */
  readonly cranes?: readonly CranePlace[];
  /** Heaviest single crane lift allowed. */
  readonly liftLimit?: Stated<'mass'>;
  /** Heaviest load for the team by hand. */
  readonly teamLift?: Stated<'mass'>;
  /** Of each sling leg from the vertical. */
  readonly slingAngle?: Stated<'angle'>;
  readonly sawKerf: Stated<'length'>;
  readonly minimumClosingPiece: Stated<'length'>;
  readonly measuringTolerance: Stated<'length'>;
  /** Joints are kept this far from trough flanges and hold-down bolts. */
  readonly jointClearance: Stated<'length'>;
  readonly fittingTemperature?: Range<'temperature'>;
  readonly stock: readonly {
    readonly length: Stated<'length'>;
    readonly count?: StatedCount;
    readonly offcut: boolean;
    readonly origin: Origin;
  }[];
  /** What comes before the plant's. */
  readonly rescue?: Rescue;
  readonly tools?: readonly {
    readonly what: string;
    readonly count?: StatedCount;
    readonly origin: Origin;
  }[];
  /** More than the work needs; a usual share where left out. */
  readonly spares?: readonly Spare[];
  readonly heldUp?: HeldUp;
  /** Undefined where the author leaves the order to the planner. */
  readonly order?: { readonly steps: readonly Step[]; readonly origin: Origin };
}

export interface Spare {
  readonly item: 'panels' | 'fixings';
  readonly count: StatedCount;
  readonly origin: Origin;
}

/** What keeps the spiral up while panels pass under it. */
export interface HeldUp {
  readonly gear: string;
  readonly rating: Stated<'mass'>;
  /** From one support to the next, along the trough. */
  readonly spacing: Stated<'length'>;
  readonly origin: Origin;
}

export interface ScrewChangeScope {
  readonly screw: ScrewSpecification;
  /** As written behind `screw`; without it the one that turns there. */
  readonly screwUse?: NameUse;
  /** How the new pieces are joined; welded where the author does not say. */
  readonly joints?: 'welded' | 'bolted';
  /** How the old spiral is cut; hot where the author does not say. */
  readonly cut?: 'hot' | 'cold';
  readonly origin: Origin;
}

export interface CranePlace {
  readonly use: NameUse;
  readonly crane?: Crane;
  /** Of its slewing centre: chainage, and distance sideways from the middle of the trough. */
  readonly at: Stated<'length'>;
  readonly offset: Stated<'length'>;
  readonly origin: Origin;
}

/** In the usual order of work. */
export const stepActions = [
  'empty',
  'isolate',
  'prove dead',
  'gas test',
  'pause',
  'gate off',
  'gate shut',
  'covers off',
  'braces off',
  'hold-downs off',
  'restrain screw',
  'unbolt drive',
  'remove screw',
  'strip',
  'clean',
  'patch',
  'other work',
  'fit',
  'insert screw',
  'join screw',
  'fire watch',
  'bolt drive',
  'release screw',
  'hold-downs on',
  'braces on',
  'clear up',
  'covers on',
  'gate open',
  'gate on',
  'remove isolation',
  'run empty',
  'run loaded',
] as const;
export type StepAction = (typeof stepActions)[number];

export interface Step {
  readonly name?: string;
  readonly action: StepAction;
  /** Left out: the whole scope of the job. */
  readonly stretch?: Stretch;
  /** For `fit`: the end of the run from which panels go in. */
  readonly start?: 'head' | 'tail';
  /** The slide gate that a `gate …` step is about. */
  readonly gate?: NameUse;
  /** The closing panel is measured on site and cut to what is left. */
  readonly cutToFit?: boolean;
  readonly crews: readonly { readonly use: NameUse; readonly crew?: Crew }[];
  /** Crews that stand by outside and do nothing else meanwhile. */
  readonly attendants?: Step['crews'];
  /** A comment that stands behind the step on its line, and where it ends: it goes where the step goes. */
  readonly remark?: { readonly text: string; readonly end: number };
  readonly unit?: { readonly use: NameUse; readonly unit?: AccessUnit };
  /** How many people are on the access unit at once; left out: all who do the step. */
  readonly aboard?: StatedCount;
  readonly after: readonly NameUse[];
  readonly takes?: Stated<'duration'>;
  /** For `gas test`: repeated so often while people are inside. */
  readonly every?: Stated<'duration'>;
  /** Nobody works there until so long after the step has ended, by the clock: nights count. */
  readonly rest?: {
    readonly kind: 'dries' | 'cools';
    readonly time: Stated<'duration'>;
  };
  readonly heat?: Heat;
  readonly note?: string;
  readonly origin: Origin;
  readonly actionOrigin: Origin;
}

/** What the author says about flame, arc and sparks in a step. */
export type Heat =
  | {
      readonly kind: 'hot';
      readonly shielded: boolean;
      readonly wet: boolean;
      /** How long the place is watched once the work has ended. */
      readonly fireWatch?: Stated<'duration'>;
      /** False while the measures are only demanded: nobody has said yet that it will be so. */
      readonly confirmed: boolean;
      readonly origin: Origin;
    }
  | { readonly kind: 'cold'; readonly origin: Origin };
