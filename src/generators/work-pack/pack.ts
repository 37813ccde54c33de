// The work pack as a value: everything a crew, a planner and a buyer need for one job, worked out once and printed by html.ts,
// markdown.ts, xlsx.ts and calendar.ts. Lengths and chainages in mm, masses in kg, times in hours; dates are ISO 8601 text.

import type { StepAction } from '../../domain/model/job.js';
import type { Drawing } from '../drawing/drawing-sheet.js';

export interface WorkPack {
  readonly formatVersion: 1;
  /** Date the records were read at. */
  readonly asOf: string;
  /** Identification of the pack and its drawings: `DG1-J1`. */
  readonly number: string;
  readonly drawnFrom: string;
  readonly plant: string;
  readonly job: { readonly name: string; readonly title?: string; readonly doc?: string };
  readonly conveyor: { readonly name: string; readonly title?: string; readonly facts: readonly Fact[] };
  readonly window?: Window;
  /** Why the job cannot be done as it stands; empty where no check speaks against it. */
  readonly obstacles: readonly Obstacle[];
  readonly scope: readonly string[];
  readonly crews: readonly CrewRow[];
  readonly accessUnits: readonly AccessUnitRow[];
  readonly cautions: readonly Caution[];
  readonly isolations: readonly IsolationRow[];
  readonly permits: readonly Permit[];
  readonly access: readonly AccessRow[];
  readonly runs: readonly RunRow[];
  readonly panels: readonly PanelRow[];
  readonly takings: readonly Taking[];
  /** Where the order comes from: the author, or a proposal. */
  readonly order: 'as written' | 'proposed';
  readonly steps: readonly StepRow[];
  readonly drawings: readonly Drawing[];
  /** Last days to order, from the plant's lead times; empty without a window or lead times. */
  readonly orderBy: readonly OrderBy[];
}

export interface OrderBy {
  readonly item: 'liner' | 'screw' | 'fixings';
  readonly date: string;
  /** As the plant states it. */
  readonly leadTime: string;
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
  readonly grade: 'cannot be built' | 'unsafe' | 'incomplete';
  readonly message: string;
  readonly reason: string;
  readonly repairs: readonly string[];
}

export interface CrewRow {
  readonly name: string;
  /** People; undefined where the plant has no crew of that name. */
  readonly size: number | undefined;
  readonly skills: readonly string[];
}

export interface AccessUnitRow {
  readonly name: string;
  readonly title?: string;
  readonly reach?: number;
  readonly limit?: number;
}

export interface Caution {
  readonly heading: string;
  readonly text: readonly string[];
  /** Published rules usually met; what applies is for the site to say. */
  readonly sources: string;
}

export interface IsolationRow {
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
  readonly name: string;
  readonly kind: string;
  readonly from: number;
  readonly to: number;
  readonly height: number | undefined;
  /** Whether the job works there. */
  readonly used: boolean;
}

export interface RunRow {
  readonly number: number;
  readonly label: string;
  readonly from: number;
  readonly to: number;
  readonly liner: string;
  readonly panels: number;
  readonly renewed: number;
  readonly fitFrom?: 'head' | 'tail';
}

export interface PanelRow {
  readonly run: number;
  readonly panel: number;
  readonly from: number;
  readonly to: number;
  readonly length: number;
  readonly mass: number;
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
  readonly off: number;
  readonly back: number;
  /** Of one part; undefined where not declared. */
  readonly mass: number | undefined;
  readonly note: string;
}

export interface StepRow {
  readonly number: number;
  readonly name?: string;
  readonly action: StepAction;
  readonly where: string;
  readonly from: number;
  readonly to: number;
  readonly who: string;
  readonly access: string;
  /** What to do and what to look for. */
  readonly work: string;
  /** What must be true before the next step begins. */
  readonly check: string;
  /** Nobody goes on without this signature. */
  readonly hold: boolean;
  readonly after: readonly string[];
  readonly hours: number | undefined;
  readonly note?: string;
}
