// The whole estate as one immutable value: everything a rule or a generator may know.

import type { CalendarDay } from '../units/calendar.js';
import type { Conveyor } from './conveyor.js';
import type { Job } from './job.js';
import type { Plant } from './plant.js';
import type {
  ConditionLine,
  DriveChange,
  DutyChange,
  Inspection,
  JudgedAmendment,
  JudgedCorrection,
  MeterChange,
  PanelsMoved,
  Patch,
  Place,
  Readings,
  Reline,
  ScrewChange,
  Service,
} from './records.js';
import type { LinerSpecification, ScrewSpecification } from './specifications.js';

export interface Estate {
  readonly plants: readonly Plant[];
  readonly liners: readonly LinerSpecification[];
  readonly screws: readonly ScrewSpecification[];
  readonly conveyors: readonly Conveyor[];
  /** By date within a conveyor, conveyors in the order of `conveyors`. */
  readonly inspections: readonly Inspection[];
  readonly readings: Readings;
  /** Corrections of readings, by conveyor, then by day. */
  readonly corrections: readonly JudgedCorrection[];
  readonly amendments: readonly JudgedAmendment[];
  readonly places: readonly Place[];
  readonly relines: readonly Reline[];
  readonly panelsMoved: readonly PanelsMoved[];
  readonly screwChanges: readonly ScrewChange[];
  readonly meterChanges: readonly MeterChange[];
  readonly dutyChanges: readonly DutyChange[];
  readonly driveChanges: readonly DriveChange[];
  readonly patches: readonly Patch[];
  readonly services: readonly Service[];
  readonly jobs: readonly Job[];
  /** What was written and cannot be read; absent where everything is. */
  readonly unread?: UnreadConveyors;
}

export interface UnreadConveyors {
  /** Conveyors of which something is left out. */
  readonly partly: ReadonlySet<Conveyor>;
  /** Names of conveyors that are left out altogether. */
  readonly wholly: readonly string[];
  /** What records say of those. */
  readonly told: readonly ToldOnly[];
}

/** What a record says is wrong or was put right, of a conveyor by its name as written. */
export interface ToldOnly {
  readonly conveyor: string;
  readonly day: CalendarDay;
  readonly conditions: readonly ConditionLine[];
  readonly work?: Pick<Service, 'part' | 'place' | 'work' | 'ended'>;
}
