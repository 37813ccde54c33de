// A job: what is to be done at which window, by whom, and (where the author writes it) in which order.

import type { Conveyor } from './conveyor.js';
import type { Origin } from './origin.js';
import type { AccessUnit, Crew, Outage } from './plant.js';
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
    readonly origin: Origin;
  }[];
  readonly screwChange?: { readonly screw: ScrewSpecification; readonly origin: Origin };
  /** Crews and access units by name; `crew` is undefined where the plant has none of that name. */
  readonly crews: readonly { readonly use: NameUse; readonly crew?: Crew }[];
  readonly accessUnits: readonly { readonly use: NameUse; readonly unit?: AccessUnit }[];
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
  /** Undefined where the author leaves the order to the planner. */
  readonly order?: { readonly steps: readonly Step[]; readonly origin: Origin };
}

export const stepActions = [
  'isolate',
  'prove dead',
  'gas test',
  'covers off',
  'braces off',
  'hold-downs off',
  'restrain screw',
  'unbolt drive',
  'remove screw',
  'strip',
  'clean',
  'patch',
  'fit',
  'insert screw',
  'bolt drive',
  'hold-downs on',
  'braces on',
  'covers on',
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
  readonly crews: readonly { readonly use: NameUse; readonly crew?: Crew }[];
  readonly unit?: { readonly use: NameUse; readonly unit?: AccessUnit };
  readonly after: readonly NameUse[];
  readonly takes?: Stated<'duration'>;
  readonly note?: string;
  readonly origin: Origin;
  readonly actionOrigin: Origin;
}
