// How long does each liner last, how sure is that, and which conveyor needs attention first? Builds the whole answer as one
// value; html.ts, markdown.ts, json.ts and csv.ts only print it. Nothing here reads a clock: the day of the report is an
// input, records after it are ignored, and left out it is the day of the newest record.

import type { CalendarDay } from '../../domain/units/calendar.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Estate } from '../../domain/model/estate.js';
import { exposedReadings } from '../../domain/model/exposure.js';
import { forwardDuty, historyOf, momentOn, newestRecord, type History } from '../../domain/model/history.js';
import type { Duty } from '../../domain/model/duty.js';
import type { LinerSet, Moment } from '../../domain/model/liner-sets.js';
import { setLying } from '../../domain/model/exposure.js';
import { orderOfAttention, type Attention } from './work/attention.js';
import { countRecords, type Counts } from './work/counts.js';
import { formerSetsOf, type FormerSet } from './work/former-sets.js';
import { pointLife, worstOf, type PointLife } from './work/points.js';
import { runsWithPanels, type RunLife } from './work/runs.js';

export type { Attention, AttentionLevel } from './work/attention.js';
export type { Counts } from './work/counts.js';
export type { FormerSet } from './work/former-sets.js';
export type { LeftOut, Milestone, PointLife, Seen, SeenReading } from './work/points.js';
export type { PanelLife, RunLife } from './work/runs.js';

export interface RemainingLife {
  readonly estate: Estate;
  /** Day of the report; undefined only where nothing at all is dated. */
  readonly asOf: CalendarDay | undefined;
  readonly counts: Counts;
  /** The conveyor that needs attention first comes first. */
  readonly conveyors: readonly ConveyorLife[];
}

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
  /** The point whose limit comes first; undefined where no point allows a conclusion. */
  readonly worst: PointLife | undefined;
  readonly attention: Attention;
}

export interface RemainingLifeOptions {
  readonly asOf?: CalendarDay | undefined;
}

export function remainingLife(estate: Estate, options: RemainingLifeOptions = {}): RemainingLife {
  const asOf = options.asOf ?? newestRecord(estate) ?? lastCommissioning(estate);
  // Duty dated ahead is a plan; it is known only to a report that is not looking back.
  const looksBack = asOf !== undefined && asOf < (newestRecord(estate) ?? asOf);
  const historyOptions = { asOf, plannedDuty: !looksBack };
  const readings = exposedReadings(estate, historyOptions);
  const conveyors = estate.conveyors.map((conveyor): Omit<ConveyorLife, 'attention'> => {
    const history = historyOf(estate, conveyor, historyOptions);
    const places = estate.places.filter((place) => place.conveyor === conveyor);
    const points = places.map((place) => pointLife({ estate, history, place, readings: readings.get(place) ?? [], asOf }));
    return {
      conveyor, history, points, unit: conveyor.wearBy === 'tonnes' ? 't' : 'h',
      now: asOf === undefined ? undefined : momentOn(history, asOf),
      duty: asOf === undefined ? undefined : dutyInForce(history, asOf),
      lying: history.linerSets.filter((set) => set.removed === undefined && (asOf === undefined || set === setLying(history, (set.from + set.to) / 2, asOf))),
      former: formerSetsOf(history), runs: runsWithPanels(estate, conveyor, points, asOf), worst: worstOf(points),
    };
  });
  return { estate, asOf, counts: countRecords(estate, asOf, conveyors), conveyors: orderOfAttention(conveyors, asOf) };
}

function dutyInForce(history: History, day: CalendarDay): Duty | undefined {
  return forwardDuty(history).findLast((duty) => duty.from === undefined || duty.from <= day);
}

function lastCommissioning(estate: Estate): CalendarDay | undefined {
  const days = estate.conveyors.flatMap((c) => (c.commissioned ? [c.commissioned.date.day] : []));
  return days.reduce<CalendarDay | undefined>((a, b) => (a === undefined || b > a ? b : a), undefined);
}
