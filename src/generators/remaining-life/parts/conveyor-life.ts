// What the report knows of one conveyor, and how urgent it is, as values.

import type { CalendarDay } from '../../../domain/units/calendar.js';
import type { ConveyorDecision } from '../../../domain/decision/conveyor-decision.js';
import type { OutageDecision } from '../../../domain/decision/outage-decision.js';
import type { OrderCall } from '../../../domain/decision/order-call.js';
import type { ClosedCondition, OpenCondition } from '../../../domain/conditions/rows.js';
import type { NotLookedAt } from '../../../domain/conditions/not-looked.js';
import type { TroughState } from '../../../domain/conditions/trough.js';
import type { LookDue } from '../../../domain/model/asked-looks.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { History } from '../../../domain/model/history.js';
import type { Duty } from '../../../domain/model/duty.js';
import type { LinerSet, Moment } from '../../../domain/model/liner-sets.js';
import type { BesideLiner } from './beside-liner.js';
import type { FlightLife } from './flights.js';
import type { MeasureComparison } from './measure.js';
import type { FormerSet } from './former-sets.js';
import type { ConveyorModel, HangsOn } from './model.js';
import type { PointLife } from './points.js';
import type { RunLife } from './runs.js';

export interface Attention {
  readonly level: AttentionLevel;
  /** What to do, as a sentence without a full stop. */
  readonly todo: string;
  /** Why; sentences without a full stop, the weightiest first. */
  readonly reasons: readonly string[];
  /** The day the order within a level goes by. */
  readonly day: CalendarDay | undefined;
  /** The outage to reline at; undefined where none is to be planned for. */
  readonly outage: OutageDecision | undefined;
}

export type AttentionLevel = (typeof attentionLevels)[number];

export const attentionLevels = [
  'worn through',
  'past the limit',
  'no outage in time',
  'reline to plan',
  'look now',
  'not enough seen',
  'in order',
] as const;

export interface ConveyorLife {
  readonly conveyor: Conveyor;
  readonly history: History;
  /** What lives count in: running hours, or tonnes where wear follows tonnes. */
  readonly unit: 'h' | 't';
  /** Totals on the day of the report; undefined parts are not known. */
  readonly now: Moment | undefined;
  /** The duty in force that dates rest on; undefined where none is declared or observed, and then there are no dates. */
  readonly duty: Duty | undefined;
  /** Liner sets that lie on the day of the report, tail first. */
  readonly lying: readonly LinerSet[];
  readonly former: readonly FormerSet[];
  readonly runs: readonly RunLife[];
  readonly points: readonly PointLife[];
  /** Flight depths of the screw that turns there now. */
  readonly flights: readonly FlightLife[];
  /** What is open on the day of the report, worst first. */
  readonly conditions: readonly OpenCondition[];
  /** Where nobody could look, and nobody has seen anything since. */
  readonly notLooked: readonly NotLookedAt[];
  /** Looks that the records ask for and nobody has made, the earliest due first. */
  readonly looksAsked: readonly LookDue[];
  /** What was put right or taken away, the newest first. */
  readonly closed: readonly ClosedCondition[];
  /** What was written down beside the liner. */
  readonly beside: BesideLiner;
  /** The steel under the liner: where it is bare, and how much of it is left. */
  readonly trough: TroughState;
  /** Where the records carry hours and tonnes. */
  readonly measure: MeasureComparison | undefined;
  /** The point whose limit comes first; undefined where no point allows a conclusion. */
  readonly worst: PointLife | undefined;
  /** Undefined where the model was not asked for or nothing is dated. */
  readonly model: ConveyorModel | undefined;
  /** What the answer at that point hangs on; undefined where it would be much the same without it. */
  readonly hangsOn: HangsOn | undefined;
  /** Its row in the table of decisions; undefined where the model gives no dates. */
  readonly decision: ConveyorDecision | undefined;
  readonly attention: Attention;
  /** When its liner is to be ordered, with the programme in it where one was made; undefined where nothing is. */
  readonly order: OrderCall | undefined;
}
