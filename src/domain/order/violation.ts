// What an order of work can get wrong, as values: which step, which other steps it conflicts with, the physical reason in
// plain words with the numbers, and repairs as changes of steps.

import type { Origin } from '../model/origin.js';
import type { Heat, Step } from '../model/job.js';
import type { Stated, StatedCount } from '../model/stated.js';
import type { Stretch } from '../model/stretch.js';

/**
 * Stable names: one for each thing that can be wrong; the number beside it is the rule of the trade it belongs to. In the
 * order of the work: what is wrong early makes what comes later wrong too.
 */
export const violationKinds = {
  'circular order': 5,
  'no such stretch': 5,
  'emptied too late': 5,
  'isolation missing': 5,
  'gas test missing': 12,
  'lone worker': 12,
  'nobody outside': 12,
  'no access': 7,
  'no access unit': 7,
  'platform overloaded': 15,
  'gate out of turn': 17,
  'gate locked': 17,
  'gate above open': 17,
  'gate opened above people': 17,
  'work below loose parts': 8,
  'gate open between': 17,
  'crew in two places': 7,
  'access unit in two places': 7,
  'crane in two places': 7,
  'not opened up': 5,
  'screw not restrained': 6,
  'spiral from the middle': 6,
  'screw out of turn': 6,
  'hot work over liner': 11,
  'liner not stripped': 5,
  'trough not cleaned': 5,
  'not contiguous': 1,
  'two fronts': 2,
  'closes inside the run': 3,
  'closing error too large': 3,
  'panel would slide': 3,
  'fire watch too short': 11,
  'fire watch too late': 11,
  'fire watch missing': 11,
  'not cleared up': 9,
  'still drying': 5,
  'closed up too early': 5,
  'screw still restrained': 13,
  'handed back too early': 13,
  'run too early': 13,
  'done twice': 9,
  'not put back': 13,
  'scope not done': 9,
  'no trial run': 9,
} as const satisfies Readonly<Record<string, number>>;

export type ViolationKind = keyof typeof violationKinds;

/**
 * `cannot be built`: the parts will not go together, or the step has nothing to work on. `unsafe`: it can be done, and
 * someone can be hurt. `incomplete`: something is left out, and the machine or the record is not whole at the end.
 */
export type Grade = 'cannot be built' | 'unsafe' | 'incomplete';

export interface Violation {
  readonly kind: ViolationKind;
  readonly grade: Grade;
  /** The step that cannot be done; undefined where the order as a whole lacks something. */
  readonly step?: Step;
  /** Where to point: the action of the step, or the order. */
  readonly origin: Origin;
  /** Names the thing and the two facts that disagree. */
  readonly message: string;
  /** Why it is so, physically, with the numbers. */
  readonly reason: string;
  readonly conflicts: readonly { readonly step: Step; readonly words: string }[];
  /** Best first; every one was tried and removes this violation. The first is the one to apply without asking. */
  readonly repairs: readonly Repair[];
  /** For rules 2 and 3: how well the closing panel can fit. */
  readonly closing?: ClosingError;
}

/** Length error at the closing panel of a front, mm. */
export interface ClosingError {
  /** The run's label and the number of the closing panel. */
  readonly run: string;
  readonly panel: number;
  /** Panels whose tolerances add up there. */
  readonly panels: number;
  readonly panelTolerance: number;
  readonly measuringTolerance: number;
  /** Growth against the trough that is left when gaps have closed; 0 where panels are butted; undefined where no temperatures are declared. */
  readonly growth: number | undefined;
  readonly worst: number;
  readonly rootSumSquare: number;
  /** Of the break at which the front closes; undefined where it closes at no break. */
  readonly allowance: number | undefined;
  readonly breakName?: string;
}

export interface Repair {
  /** As a command: `Fit panels 1 to 3 from the head too, after panels 4 to 7`. */
  readonly title: string;
  /** True where it writes down what the crew must see to: never taken without asking. */
  readonly asks?: boolean;
  /** Empty where the mend is for the author to make (a break to be declared, a unit to be hired). */
  readonly changes: readonly StepChange[];
}

/** Changes of the written order. Steps are named by the objects of the job they belong to. */
export type StepChange =
  | { readonly change: 'set start'; readonly step: Step; readonly start: 'head' | 'tail' }
  | { readonly change: 'set stretch'; readonly step: Step; readonly stretch: Stretch }
  | { readonly change: 'set crews'; readonly step: Step; readonly crews: Step['crews'] }
  | { readonly change: 'set heat'; readonly step: Step; readonly heat: Heat }
  | { readonly change: 'set attendants'; readonly step: Step; readonly attendants: Step['crews'] }
  | { readonly change: 'set aboard'; readonly step: Step; readonly aboard: StatedCount }
  | { readonly change: 'set takes'; readonly step: Step; readonly takes: Stated<'duration'> }
  | { readonly change: 'cut to fit'; readonly step: Step }
  | { readonly change: 'add after'; readonly step: Step; readonly after: Step }
  | { readonly change: 'drop after'; readonly step: Step; readonly name: string }
  | { readonly change: 'move'; readonly step: Step; readonly place: 'before' | 'after'; readonly other: Step }
  | {
      readonly change: 'insert';
      readonly step: Step;
      readonly place: 'before' | 'after';
      readonly other: Step;
    }
  /** At the end of the order. */
  | { readonly change: 'append'; readonly step: Step }
  | { readonly change: 'remove'; readonly step: Step };
