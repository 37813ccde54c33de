// The work pack as a value: everything a crew, a planner and a buyer need for one job, worked out once and printed by html.ts,
// markdown.ts, xlsx.ts and calendar.ts. Lengths and chainages in mm, masses in kg, times in hours; dates are ISO 8601 text.

import type { DeclaredSafeguard } from '../../domain/conditions/safeguards-declared.js';
import type { Lift } from '../../domain/geometry/handling.js';
import type { StepAction } from '../../domain/model/job.js';
import type { Origin } from '../../domain/model/origin.js';
import type { LengthUnit } from '../../domain/units/length-words.js';
import type { Drawing } from '../drawing/drawing-sheet.js';

export interface WorkPack {
  readonly formatVersion: 1;
  /** Date the records were read at. */
  readonly asOf: string;
  /** Identification of the pack and its drawings: `DG1-J1`. */
  readonly number: string;
  readonly drawnFrom: string;
  readonly plant: string;
  /** In which the machine is declared; prints say it first. */
  readonly unit: LengthUnit;
  readonly job: {
    readonly name: string;
    readonly title?: string;
    readonly doc?: string;
    readonly origin: Origin;
  };
  readonly conveyor: { readonly name: string; readonly title?: string; readonly facts: readonly Fact[] };
  readonly window?: Window;
  /** On the first day of the window; undefined where nothing is forecast. */
  readonly standing?: StandingFacts;
  /** Earlier jobs that are planned and not done, and what of theirs this pack counts on; left out where there are none. */
  readonly restsOn?: readonly RestsOn[];
  /** Why the job cannot be done as it stands; empty where no check speaks against it. */
  readonly obstacles: readonly Obstacle[];
  /** What is to be settled and does not stop the job. */
  readonly warnings: readonly { readonly message: string; readonly todo: string }[];
  readonly scope: readonly string[];
  /** What stands open on the conveyor; `ends`: the work of this job takes it away. */
  readonly conditions: readonly {
    readonly what: string;
    readonly place: string;
    readonly severity: string;
    readonly since: string;
    readonly notes: string;
    readonly ends: boolean;
    /** What the job does there, so that it is looked at again: `comes off: look at it before it goes back`. */
    readonly again?: string;
    /** Named so for the gate that the order relies on. */
    readonly barrier?: string;
    /** The earlier job, planned and not done, that takes it away. */
    readonly before?: string;
    readonly origin: Origin;
  }[];
  /** The steel that is laid bare or welded on; left out where there is none, or nothing to say of it. */
  readonly steel?: SteelFacts;
  readonly crews: readonly CrewRow[];
  readonly accessUnits: readonly AccessUnitRow[];
  readonly cautions: readonly Caution[];
  readonly isolations: readonly IsolationRow[];
  /** As declared, each to be looked at and tried before the machine is handed back. */
  readonly safeguards: readonly DeclaredSafeguard[];
  readonly permits: readonly Permit[];
  readonly access: readonly AccessRow[];
  readonly runs: readonly RunRow[];
  readonly panels: readonly PanelRow[];
  /** How a panel is lifted into this trough by hand, and what the NIOSH equation allows there; undefined for no trough. */
  readonly panelLift?: PanelLift;
  readonly takings: readonly Taking[];
  /** Of each liner that goes in and is bolted. */
  readonly fixings: readonly FixingFacts[];
  readonly tools: readonly ToolRow[];
  /** Contact, means, meeting point; each says so where it is not written. */
  readonly rescue: readonly Fact[];
  /** How the spiral is kept up while panels pass under it; undefined where none do. */
  readonly heldUp?: string;
  /** Where the order comes from: the author, or a proposal. */
  readonly order: 'as written' | 'proposed';
  readonly steps: readonly StepRow[];
  readonly drawings: readonly Drawing[];
  /** Last days to order, from the plant's lead times; empty without a window or lead times. */
  readonly orderBy: readonly OrderBy[];
  readonly schedule: ScheduleFacts;
  /** The same plan by the hour of working time. */
  readonly hours: readonly HourRow[];
  readonly lifts: LiftFacts;
  readonly cutLists: readonly CutListFacts[];
  readonly materials: readonly MaterialRow[];
  /** Places whose hold-downs come off. */
  readonly holdDowns: readonly { readonly name: string; readonly at: number; readonly blocks: number }[];
  /** Declared gap between screw and liner, mm; undefined where none is declared. */
  readonly clearance: { readonly from: number; readonly to: number } | undefined;
  readonly asFitted: AsFittedFacts;
}

/** What is on record of the trough's plate where the job comes to it. */
export interface SteelFacts {
  /** `5 mm when new (S235), at least 2.5 mm must be left`. */
  readonly plate: string;
  readonly rows: readonly {
    readonly origin: Origin | undefined;
    readonly where: string;
    readonly known: string;
  }[];
}

export interface RestsOn {
  readonly origin: Origin;
  readonly job: string;
  readonly conveyor: string;
  /** `2027-01-18 to 2027-01-22`. */
  readonly window: string;
  /** What it renews here, and what it takes from the shelf that this job would have; a phrase each. */
  readonly changes: readonly string[];
}

export interface CutListFacts {
  readonly liner: string;
  readonly sticks: readonly {
    readonly name: string;
    readonly length: number;
    readonly offcut: boolean;
    /** It lies on the shelf of the plant, or is ordered and comes before the job. */
    readonly shelf: boolean;
    readonly ordered?: true;
    readonly rest: number;
    readonly keep: boolean;
    readonly cuts: readonly {
      readonly run: number;
      readonly panel: number;
      readonly length: number;
      readonly closing: boolean;
      /** The longest it may have to be; left out where that is its length. */
      readonly longest?: number;
    }[];
  }[];
  /** What was counted on the shelf of this liner, and how many of it these cuts take. */
  readonly shelf: readonly {
    readonly item: string;
    readonly length: number;
    readonly count: number;
    readonly taken: number;
    readonly counted: string;
    /** It is ordered, and promised for that day. */
    readonly ordered?: true;
    /** Why none of it counts although it was ordered. */
    readonly notThere?: string;
  }[];
  readonly toBuy: readonly { readonly length: number; readonly count: number }[];
  readonly missing: readonly { readonly length: number; readonly count: number }[];
  /** `order`: the sheet to ask for, where a closing panel would do as it is laid out and the gap may be longer. */
  readonly tooLong: readonly {
    readonly run: number;
    readonly panel: number;
    readonly length: number;
    readonly longest?: number;
    readonly order?: number;
  }[];
  /** mm of new stock, the least any plan needs, and what it would be if the saw took nothing. */
  readonly newStock: number;
  readonly lowerBound: number;
  readonly newStockWithoutKerf: number;
  readonly optimal: boolean;
  readonly wasteRatio: number;
  readonly recordedOffcuts: readonly {
    readonly length: number;
    readonly count: number;
    readonly date: string;
  }[];
}

export interface MaterialRow {
  readonly what: string;
  readonly kind: 'liner' | 'screw' | 'fixings' | 'consumable';
  readonly needed: number;
  readonly spares: number;
  /** In the store, less what earlier jobs take; left out where nothing of it was counted there. */
  readonly onShelf?: number;
  /** On its way, and promised for before the job begins. */
  readonly ordered?: number;
  /** Needed and spare, less what is there. */
  readonly toOrder: number;
  readonly unit: string;
  readonly basis: string;
  readonly orderBy: string | undefined;
}

export interface AsFittedFacts {
  readonly qualified: string;
  /** Whether the tonnes counter is written down too. */
  readonly tonnes: boolean;
  /** In which lengths and thicknesses are written down. */
  readonly unit: 'mm' | 'in';
  /** The hour meter's last reading. */
  readonly meter: { readonly value: number; readonly date: string } | undefined;
  readonly relines: readonly {
    readonly liner: string;
    /** Nominal, mm. */
    readonly thickness: number;
    readonly runs: readonly {
      readonly run: number;
      readonly whole: boolean;
      /** The panels are numbered as those that lie there are, so that the records can name a part by panels. */
      readonly numbered: boolean;
      /** In the order of the work. */
      readonly panels: readonly {
        readonly panel: number;
        readonly length: number;
        readonly from: number;
        readonly to: number;
      }[];
    }[];
    readonly points: readonly {
      readonly name: string;
      readonly at: number;
      readonly clock: string;
      /** The run and panels it lies on; two panels where it lies on a joint. */
      readonly run: number;
      readonly panels: readonly number[];
    }[];
  }[];
  readonly screw: string | undefined;
}

/** One hour of working time, or what is left of a shift. */
export interface HourRow {
  readonly from: number;
  readonly to: number;
  /** `2027-01-18 07:00`; undefined without a window. */
  readonly startText: string | undefined;
  readonly finishText: string | undefined;
  readonly doing: readonly {
    /** Number of the step. */
    readonly step: number;
    readonly action: StepAction;
    readonly where: string;
    readonly who: string;
    /** Crews that stand by, and do nothing else meanwhile. */
    readonly standBy?: string;
    readonly people: number;
    readonly unit?: string;
    /** Of the hour. */
    readonly hours: number;
  }[];
  /** Nobody may be inside at the end of the shift: the air would have to be tested again. */
  readonly everybodyOut: boolean;
  /** At the end of the hour: parts that are off, panels bare and fitted, and how the machine stands. */
  readonly off: {
    /** Left out where some are off and the conveyor does not say how many there are; hold-downs too. */
    readonly covers?: number;
    readonly braces?: number;
    readonly holdDowns?: { readonly places: number; readonly blocks: number };
  };
  readonly runs: readonly {
    readonly run: number;
    readonly panels: number;
    readonly bare: number;
    readonly clean: number;
    readonly fitted: number;
  }[];
  readonly machine: readonly string[];
}

/** Working hours count from the first shift of the window. */
export interface ScheduleFacts {
  readonly duration: number;
  readonly lowerBound: number;
  readonly boundBecause: string;
  readonly optimal: boolean;
  /** Working hours in the window; undefined without one. */
  readonly available: number | undefined;
  readonly finish: string | undefined;
  readonly accessMoves: number;
  /** Numbers of the steps on one longest chain. */
  readonly criticalPath: readonly number[];
  readonly shorten: readonly { readonly what: string; readonly saves: number }[];
  /** Judgements that stand where the plant declares nothing. */
  readonly defaults: readonly string[];
  readonly repeatGasTests: { readonly every?: number; readonly times: number } | undefined;
}

export interface LiftFacts {
  readonly slingAngle: number;
  readonly slingAngleAssumed: string | undefined;
  readonly spiral: SpiralFacts | undefined;
  readonly byHand: readonly HandLiftRow[];
}

export interface SpiralFacts {
  readonly out: string;
  readonly in: string;
  /** kg/m. */
  readonly massOut: number;
  readonly massIn: number;
  /** N, friction left out. */
  readonly downSlopeForce: number;
  /** mm; undefined where the flight is not described. */
  readonly springBack: number | undefined;
  readonly springIndex: number | undefined;
  readonly pieces: readonly SpiralPieceRow[];
}

export interface SpiralPieceRow {
  readonly number: number;
  readonly from: number;
  readonly to: number;
  readonly centre: number;
  readonly mass: number;
  readonly limit: number | undefined;
  readonly liftingPoint: string | undefined;
  /** N in each leg of a two-leg sling. */
  readonly legTension: number;
  readonly withinLimit: boolean;
}

export interface HandLiftRow {
  readonly what: string;
  readonly count: number;
  readonly mass: number;
  readonly centre: string;
  readonly people: number | undefined;
  readonly teamLift: number | undefined;
}

export interface OrderBy {
  readonly item: 'liner' | 'screw' | 'fixings';
  readonly date: string;
  /** As the plant states it. */
  readonly leadTime: string;
  /** The last day for this window, where the report says to order now. */
  readonly latest?: string;
}

/** Chances from 0 to 1 that the condemn limit, and the steel, has been reached; unseen panels counted in, and of what was seen. */
export interface StandingFacts {
  readonly day: string;
  readonly condemn: number;
  readonly contact: number;
  readonly condemnSeen?: number;
  readonly contactSeen?: number;
  readonly accepted: { readonly condemn: number; readonly contact: number };
  readonly panels: number;
  readonly panelsSeen: number;
  readonly governing?: {
    readonly place: string;
    readonly run: number;
    readonly panel: number;
    readonly seen: boolean;
    /** Whether the job renews it. */
    readonly covered: boolean;
    /** The earlier job, planned and not done, that renews it first. */
    readonly before?: string;
  };
}

export interface FixingFacts {
  readonly liner: string;
  readonly facts: readonly Fact[];
  /** What is declared, in one line. */
  readonly inShort: string;
}

export interface ToolRow {
  readonly what: string;
  readonly count: number;
}

export interface Fact {
  readonly name: string;
  readonly value: string;
}

export interface Window {
  readonly name?: string;
  readonly title?: string;
  readonly from: string;
  /** Last day, inclusive. */
  readonly to: string;
  readonly days: number;
}

export interface Obstacle {
  readonly message: string;
  readonly reason: string;
  readonly repairs: readonly string[];
}

export interface CrewRow {
  readonly name: string;
  /** People; undefined where the plant has no crew of that name. */
  readonly size: number | undefined;
  readonly skills: readonly string[];
  /** Set where no step is by this crew, and none is attended by it. */
  readonly idle?: true;
}

export interface AccessUnitRow {
  readonly name: string;
  readonly title?: string;
  readonly reach?: number;
  readonly limit?: number;
  /** Most people on it at once. */
  readonly people?: number;
}

export interface Caution {
  readonly heading: string;
  readonly text: readonly string[];
  /** Published rules usually met; what applies is for the site to say. */
  readonly sources: string;
}

export interface IsolationRow {
  readonly origin: Origin;
  readonly name: string;
  readonly title: string;
  readonly kind: string;
  readonly at: number | undefined;
}

export interface Permit {
  readonly name: string;
  readonly need: 'needed' | 'to be judged on site' | 'only if it comes up';
  readonly why: string;
  readonly ask: string;
}

export interface AccessRow {
  readonly origin: Origin;
  readonly name: string;
  readonly kind: string;
  readonly from: number;
  readonly to: number;
  readonly height: number | undefined;
  /** Whether a step of the pack names it. */
  readonly used: boolean;
  /** What is done there by somebody who goes in or reaches in, in the order of the work. */
  readonly inside: readonly string[];
  /** What else names it: tests of the air, isolation, runs. */
  readonly outside: readonly string[];
}

export interface RunRow {
  readonly number: number;
  readonly label: string;
  readonly from: number;
  readonly to: number;
  readonly liner: string;
  /** Between two panels, mm; 0 where they are butted. */
  readonly gap: number;
  readonly panels: number;
  readonly renewed: number;
  readonly fitFrom?: 'head' | 'tail';
  /** Which of the runs fitting reaches first, from 1. */
  readonly turn?: number;
  /** How far out the closing panel can be, and what the break there takes; all mm. */
  readonly closing?: {
    readonly at: string;
    readonly worst: number;
    readonly rootSumSquare: number;
    readonly allowance: number;
  };
}

export interface PanelRow {
  readonly run: number;
  readonly panel: number;
  /** Chainages from joint to joint: half the gap on either side is not the panel's. */
  readonly from: number;
  readonly to: number;
  /** Of the panel itself: as it is cut, carried and weighed. */
  readonly length: number;
  /** Undefined where the liner does not go into the trough. */
  readonly mass: number | undefined;
  readonly closing: boolean;
  readonly renewed: boolean;
  /** Place in the order of fitting within its run, from 1; undefined where the panel stays. */
  readonly turn: number | undefined;
  /** People that a lift by hand needs by the usual team guideline; undefined: not by hand. */
  readonly people: number | undefined;
  readonly bolts: number | undefined;
}

export interface Taking {
  readonly part: 'cover' | 'brace' | 'hold-down' | 'liner panel' | 'spiral' | 'drive plate bolt';
  /** Numbers or places of the parts, for marking them. */
  readonly which: string;
  /** Of hold-downs, blocks. */
  readonly off: number;
  readonly back: number;
  /** Of hold-downs: at how many places the blocks are. */
  readonly places?: { readonly off: number; readonly back: number };
  /** Of one part; undefined where not declared. */
  readonly mass: number | undefined;
  readonly note: string;
}

export interface StepRow {
  readonly number: number;
  /** The step as written; the job's name where it is proposed. */
  readonly origin: Origin;
  readonly name?: string;
  readonly action: StepAction;
  readonly where: string;
  readonly from: number;
  readonly to: number;
  readonly who: string;
  readonly access: string;
  /** What keeps people safe in this step as the order says it: hot work, who stands by, people aloft, repeats. */
  readonly measures: readonly string[];
  /** What to do and what to look for. */
  readonly work: string;
  /** What must be true before the next step begins. */
  readonly check: string;
  /** Nobody goes on without this signature. */
  readonly hold: boolean;
  /** Numbers of the steps that must be finished first. */
  readonly after: readonly number[];
  readonly people: number;
  /** Shift time, h. */
  readonly hours: number;
  /** Working hours since the first shift began. */
  readonly start: number;
  readonly finish: number;
  /** `2027-01-18 07:00`; undefined without a window. */
  readonly startText: string | undefined;
  readonly finishText: string | undefined;
  /** Working hours it may be late without delaying the end. */
  readonly float: number;
  readonly critical: boolean;
  readonly basis: string;
  /** Set for a repeated test of the air, which the order says by `every`: why it is repeated. */
  readonly repeat?: 'interval' | 'break';
  readonly note?: string;
}

/** Posture assumed (mm, degrees, multipliers 0 … 1) and the recommended weight limit in it, kg; 0: no load at that reach. */
export interface PanelLift {
  readonly posture: Lift;
  readonly limit: number;
  /** Mass of the heaviest panel of the job, kg, and that mass over the limit; undefined where the limit is 0. */
  readonly heaviest: number;
  readonly index?: number;
}
