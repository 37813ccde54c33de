// A sheet is one text, read: its blocks as plain immutable values, the names they refer to still names, its readings
// already in columns. A sheet knows nothing of other texts, so an edit re-reads one text and leaves all others as they are.
// assemble.ts puts sheets together into the estate.

import type { Conveyor, LinerAlong } from '../domain/model/conveyor.js';
import type { CranePlace, Job, ScrewChangeScope, Step } from '../domain/model/job.js';
import type { Origin } from '../domain/model/origin.js';
import type { Plant } from '../domain/model/plant.js';
import type { Lacking, Problem } from '../domain/model/problem.js';
import type {
  Amendment,
  Correction,
  DriveChange,
  DutyChange,
  Inspection,
  MeterChange,
  NotLooked,
  PanelUse,
  PanelsMoved,
  Patch,
  PhotoUse,
  Reline,
  ScrewChange,
  SeenPlace,
  Service,
} from '../domain/model/records.js';
import type { LinerSpecification, ScrewSpecification } from '../domain/model/specifications.js';
import type { NameUse, Stated } from '../domain/model/stated.js';
import type { Stretch } from '../domain/model/stretch.js';
import type { Comment } from './comments.js';

export interface Sheet {
  readonly source: number;
  readonly uri: string;
  readonly plants: readonly NamedPlant[];
  readonly liners: readonly Named<LinerSpecification>[];
  readonly screws: readonly Named<ScrewSpecification>[];
  readonly conveyors: readonly NamedConveyor[];
  readonly inspections: readonly InspectionDraft[];
  readonly rows: Rows;
  readonly corrections: readonly Draft<Correction>[];
  readonly amendments: readonly AmendmentDraft[];
  readonly relines: readonly RelineDraft[];
  readonly panelsMoved: readonly Draft<PanelsMoved>[];
  readonly screwChanges: readonly ScrewChangeDraft[];
  readonly meterChanges: readonly Draft<MeterChange>[];
  readonly dutyChanges: readonly Draft<DutyChange>[];
  readonly driveChanges: readonly Draft<DriveChange>[];
  readonly patches: readonly Draft<Patch>[];
  readonly services: readonly Draft<Service>[];
  readonly jobs: readonly Named<JobDraft>[];
  /** Conveyors of records that cannot be read, or not in full. */
  readonly doubted: readonly NameUse[];
  /** Blocks in which something cannot be read. */
  readonly unsound: readonly UnsoundBlock[];
  readonly comments: readonly Comment[];
  readonly problems: readonly Problem[];
}

export interface UnsoundBlock extends Origin {
  /** Any fact where it is left out. */
  readonly lacks?: Lacking;
}

/** A block with a name. `value` is undefined where a required fact is missing or unreadable: the name exists, the thing does not. */
export interface Named<T> {
  readonly name: string;
  readonly origin: Origin;
  readonly value?: T;
  /** Not yet more than a name: gives way to a block of that name. */
  readonly unfinished?: boolean;
}

export interface NamedPlant extends Named<Plant> {
  /** Outages, crews and access units that are named but cannot be read; undefined where a slip may have hidden any. */
  readonly unread?: readonly string[];
}

export interface NamedConveyor extends Named<ConveyorDraft> {
  readonly plantUse?: NameUse;
  /** Its heading does not say what it is: perhaps no conveyor at all. */
  readonly perhaps?: boolean;
  /** Inspection points that are named but cannot be placed. */
  readonly unplaced: readonly string[];
}

export type ConveyorDraft = Omit<Conveyor, 'plant' | 'liner' | 'linersAlong' | 'screw' | 'plantUse'> & {
  readonly plantUse: NameUse;
  readonly linersAlong: readonly Omit<LinerAlong, 'liner'>[];
};

/** A record without the conveyor it belongs to. */
export type Draft<T extends { readonly conveyor: Conveyor }> = Omit<T, 'conveyor'>;

/** Where a measure was taken, and what its line says beside it. */
export interface MeasuredPlace {
  readonly place: SeenPlace;
  readonly note?: string;
}

/** A measure whose place is not yet found: by a name, a panel or an end, or all along a stretch. */
export type MeasureDraft<T extends { readonly at: Stated<'length'> }> = Omit<T, 'at' | 'clock'> &
  MeasuredPlace;

export type PlacedMeasures = Pick<
  Inspection,
  'holdDownGaps' | 'flights' | 'flightDiameters' | 'wornWidths' | 'plates' | 'notLooked'
>;

/** The same before their places are found. */
export type MeasureDrafts = {
  readonly [K in Exclude<keyof PlacedMeasures, 'notLooked'>]: readonly MeasureDraft<
    PlacedMeasures[K][number]
  >[];
} & { readonly notLooked: readonly (Omit<NotLooked, 'from' | 'to'> & MeasuredPlace)[] };

type AmendedSpot = Extract<Amendment['of'], { readonly at: unknown }>;

/** Of a measure whose place is not yet found. */
export type AmendmentDraft = Omit<Draft<Amendment>, 'of'> & {
  readonly of:
    Exclude<Amendment['of'], AmendedSpot> | { readonly kind: AmendedSpot['kind']; readonly place: SeenPlace };
};

/** Rows run from `firstRow` to before `endRow` in the sheet's own columns. */
export type InspectionDraft = Omit<Draft<Inspection>, keyof MeasureDrafts> & MeasureDrafts;
export type RelineDraft = Omit<Draft<Reline>, 'liner' | 'plates'> & Pick<MeasureDrafts, 'plates'>;
export type ScrewChangeDraft = Omit<Draft<ScrewChange>, 'screw' | 'taken'> & {
  readonly screwUse?: NameUse;
  readonly taken: Pick<MeasureDrafts, 'flights' | 'flightDiameters'>;
};

export type StepDraft = Omit<Step, 'crews' | 'attendants' | 'unit'> & {
  readonly crews: readonly NameUse[];
  readonly attendants: readonly NameUse[];
  readonly unit?: NameUse;
};

export interface JobDraft extends Omit<
  Job,
  'conveyor' | 'window' | 'relines' | 'screwChange' | 'crews' | 'accessUnits' | 'cranes' | 'order'
> {
  readonly window?: Omit<NonNullable<Job['window']>, 'outage'>;
  readonly outageUse?: NameUse & { readonly fact: Origin };
  readonly relines: readonly {
    readonly stretch: Stretch;
    readonly linerUse?: NameUse;
    readonly origin: Origin;
  }[];
  readonly screwChange?: Omit<ScrewChangeScope, 'screw'> & { readonly screwUse?: NameUse };
  readonly crews: readonly NameUse[];
  readonly accessUnits: readonly NameUse[];
  readonly cranes: readonly Omit<CranePlace, 'crane'>[];
  readonly order?: { readonly steps: readonly StepDraft[]; readonly origin: Origin };
}

/** Where a row was read: at a named point, or at a chainage (mm) and clock position (hours, seen in the direction of flow). */
export type ReadingSpot =
  | { readonly kind: 'point'; readonly name: string }
  | {
      readonly kind: 'chainage';
      readonly at: number;
      readonly clock: number;
      /** Read all along from here to there, mm; `at` is their middle. */
      readonly along?: { readonly from: number; readonly to: number } | undefined;
    }
  /** Settled where the records say which panels lay there; without a clock position as `spotOfPanel` says. */
  | { readonly kind: 'panel'; readonly panel: PanelUse; readonly clock: number | undefined }
  /** All along from here to there, mm, without a clock position: as of a panel. */
  | { readonly kind: 'stretch'; readonly from: number; readonly to: number }
  | { readonly kind: 'unreadable' };

/** The readings of one text in columns; names are numbered by the tables `spots` and `colours`. */
export interface Rows {
  readonly count: number;
  /** Index into `spots`. */
  readonly spot: Int32Array;
  /** A ReadingKind. */
  readonly kind: Uint8Array;
  /** mm for a thickness, index into `colours` for a colour, NaN otherwise. */
  readonly value: Float64Array;
  /** mm, or NaN. */
  readonly error: Float64Array;
  readonly start: Int32Array;
  readonly end: Int32Array;
  /** Where the name of a colour begins; 0 on other rows. */
  readonly colourStart: Int32Array;
  readonly notes: ReadonlyMap<number, string>;
  readonly photos: ReadonlyMap<number, PhotoUse>;
  readonly spots: readonly ReadingSpot[];
  readonly colours: readonly string[];
}
