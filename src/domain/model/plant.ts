// A plant: the works a conveyor stands in, with what it shares: outages, crews, access units, rates, lead times, costs, risk.

import type { Origin } from './origin.js';
import type {
  NameUse,
  Range,
  Stated,
  StatedClock,
  StatedCount,
  StatedDay,
  StatedWords,
  Toleranced,
} from './stated.js';

export interface Plant {
  readonly name: string;
  readonly title?: string;
  readonly doc?: string;
  readonly origin: Origin;
  readonly nameOrigin: Origin;
  /** Liner temperature expected while fitting. */
  readonly fittingTemperature?: Range<'temperature'>;
  readonly serviceTemperature?: Range<'temperature'>;
  /** Running hours a calendar day for conveyors that declare none. */
  readonly duty?: Toleranced<'duty'>;
  /** Accepted chance of reaching the condemn limit before the reline. */
  readonly risk: Stated<'ratio'>;
  /** Accepted chance that the screw touches steel before the reline. */
  readonly contactRisk: Stated<'ratio'>;
  readonly gasTestInterval?: Stated<'duration'>;
  readonly outages: readonly Outage[];
  readonly crews: readonly Crew[];
  readonly accessUnits: readonly AccessUnit[];
  readonly cranes: readonly Crane[];
  readonly shifts: readonly Shift[];
  readonly leadTimes: readonly {
    readonly item: LeadItem;
    readonly time: Stated<'duration'>;
    readonly origin: Origin;
  }[];
  readonly expedited: readonly Expedited[];
  /** Every count that was written down; the newest of an item up to a day is what lay there then. */
  readonly shelf: readonly ShelfCount[];
  /** Every count of whole spare spirals. */
  readonly spareScrews: readonly SpareScrew[];
  readonly spareParts?: readonly SparePart[];
  readonly orderedParts?: readonly OrderedPart[];
  /** What was bought and is on its way. */
  readonly ordered?: readonly OrderedStock[];
  /** Whole spirals that were. */
  readonly orderedScrews?: readonly OrderedScrew[];
  readonly costs: readonly Cost[];
  readonly unitTimes: readonly UnitTime[];
  readonly rescue?: Rescue;
  /** Of rules, in the order written; the last of a code counts. */
  readonly thresholds?: readonly PlantThreshold[];
}

/** As written: what it measures depends on its rule. */
export interface PlantThreshold {
  readonly code: string;
  readonly text: string;
  readonly note?: string;
  readonly codeOrigin: Origin;
  readonly valueOrigin: Origin;
}

/** How people are fetched out: by role and place, no names. */
export interface Rescue {
  readonly contact?: StatedWords;
  readonly means?: StatedWords;
  readonly meetingPoint?: StatedWords;
}

export interface Outage {
  readonly name: string;
  readonly title?: string;
  readonly from: StatedDay;
  /** Last day of the outage, inclusive. */
  readonly to: StatedDay;
  readonly origin: Origin;
  readonly nameOrigin: Origin;
}

export interface Crew {
  readonly name: string;
  readonly size: StatedCount;
  readonly skills: readonly string[];
  readonly rate?: Stated<'money a duration'>;
  readonly origin: Origin;
  readonly nameOrigin: Origin;
}

export interface AccessUnit {
  readonly name: string;
  readonly title?: string;
  readonly reach?: Stated<'length'>;
  /** Rated load: people, tools and what they handle, as on its plate. */
  readonly limit?: Stated<'mass'>;
  /** Most people allowed on it. */
  readonly people?: StatedCount;
  readonly origin: Origin;
  readonly nameOrigin: Origin;
}

export interface Crane {
  readonly name: string;
  readonly title?: string;
  /** Loads by radius from the slewing centre to the hook; at least one. */
  readonly chart: readonly { readonly load: Stated<'mass'>; readonly radius: Stated<'length'> }[];
  readonly origin: Origin;
  readonly nameOrigin: Origin;
}

export interface Shift {
  /** Hours after midnight. */
  readonly from: StatedClock;
  readonly to: StatedClock;
  /** 1 Monday … 7 Sunday (ISO 8601); empty means every day. */
  readonly days: readonly number[];
  readonly origin: Origin;
}

export type LeadItem = 'liner' | 'screw' | 'fixings';

/** A shorter lead time, and what it costs on top of the usual price, an order. */
export interface Expedited {
  readonly item: LeadItem;
  readonly time: Stated<'duration'>;
  readonly price: Stated<'money'>;
  readonly origin: Origin;
}

export type ShelfItem = 'panels' | 'stock lengths' | 'offcuts' | 'fixings';

/** Spirals that lay in the store on the day they were counted. */
export interface SpareScrew {
  readonly screw: NameUse;
  /** 0 where there was none. */
  readonly count: StatedCount;
  /** Of a length of one; undefined: whole ones. */
  readonly length?: Stated<'length'>;
  readonly note?: string;
  readonly counted: StatedDay;
  readonly origin: Origin;
}

/** Spirals that were bought, and the day they are promised for. */
export interface OrderedScrew extends Omit<SpareScrew, 'counted'> {
  readonly ordered?: StatedDay;
  readonly arrives: StatedDay;
}

/** What lay in the store on the day it was counted. */
export interface ShelfCount {
  readonly liner: NameUse;
  readonly item: ShelfItem;
  /** 0 where the shelf was found empty. */
  readonly count: StatedCount;
  /** Of panels or stock lengths; left out where the liner is sold in one length only. */
  readonly length?: Stated<'length'>;
  readonly counted: StatedDay;
  readonly note?: string;
  readonly origin: Origin;
}

/** Spare parts that lay in the store on the day they were counted. */
export interface SparePart {
  readonly part: string;
  /** Which of the part, where it is not all of it. */
  readonly what?: string;
  /** The one that it fits; undefined: nobody says that it fits one alone. */
  readonly conveyorUse?: NameUse;
  readonly count: StatedCount;
  readonly counted: StatedDay;
  readonly note?: string;
  readonly origin: Origin;
}

/** Spare parts that were bought, and the day they are promised for. */
export interface OrderedPart extends Omit<SparePart, 'counted'> {
  readonly ordered?: StatedDay;
  readonly arrives: StatedDay;
}

export interface OrderedStock extends Omit<ShelfCount, 'counted'> {
  /** The day it was ordered; undefined where it is not said. */
  readonly ordered?: StatedDay;
  /** The day it is promised for. */
  readonly arrives: StatedDay;
}

export type CostItem =
  'downtime' | 'trough repair' | 'liner' | 'screw' | 'reline' | 'unplanned reline' | 'inspection';
export interface Cost {
  readonly item: CostItem;
  readonly amount: Stated<'money'> | Stated<'money a duration'> | Stated<'money a length'>;
  readonly origin: Origin;
}

export type WorkItem =
  | 'isolate'
  | 'cover'
  | 'brace'
  | 'hold-down'
  | 'strip'
  | 'clean'
  | 'fit'
  | 'screw section'
  | 'weld'
  | 'prove'
  | 'access move'
  | 'crane move'
  | 'gate'
  | 'empty'
  | 'gas test'
  | 'clear up';
/** Person-hours for one of the item, or for a metre of it. */
export interface UnitTime {
  readonly item: WorkItem;
  readonly time: Stated<'duration'> | Stated<'labour a length'>;
  readonly origin: Origin;
}
