// How have the bearings and the gearbox been, look by look? Temperatures as measured, noise and oil as they were told; a part that a
// look does not name has no entry of that look. Nothing is concluded: a housing's temperature goes with load and weather.

import type { History } from '../model/history.js';
import type { Origin } from '../model/origin.js';
import type { ConditionLine, Inspection } from '../model/records.js';
import type { CalendarDay } from '../units/calendar.js';
import { aspectsOf, conditionKinds, partOf } from './kinds.js';

export interface DriveReadings {
  /** `tail bearing`, `thrust bearing`, `gearbox`. */
  readonly part: ConditionLine['kind'];
  readonly of: 'temperature' | NonNullable<ConditionLine['aspect']>;
  /** Newest first, at least one. */
  readonly read: readonly DriveRead[];
}

export interface DriveRead {
  readonly day: CalendarDay;
  /** °C. */
  readonly temperature: number | undefined;
  /** Of noise and oil: how bad as told, `noted` where it was not said, `put right` where the look closes it. */
  readonly told: NonNullable<ConditionLine['severity']> | 'noted' | 'put right';
  readonly note: string | undefined;
  readonly origin: Origin;
}

/** In the order of the language's kinds; what nobody ever looked at is left out. */
export function driveReadings({ inspections }: History): readonly DriveReadings[] {
  const lines = inspections
    .flatMap(({ inspection }) => inspection.conditions.map((line) => ({ line, inspection })))
    .filter(({ line }) => partOf(line.kind) === 'drive' && line.answer !== 'not seen')
    .reverse();
  return conditionKinds
    .filter((kind) => partOf(kind) === 'drive')
    .flatMap((part) =>
      (['temperature', ...aspectsOf(part)] as const).flatMap((of) => {
        const read = lines
          .filter(({ line }) => line.kind === part && says(line, of))
          .map(({ line, inspection }) => readOf(line, inspection, of));
        return read.length === 0 ? [] : [{ part, of, read }];
      }),
    );
}

function says({ aspect, temperature }: ConditionLine, of: DriveReadings['of']): boolean {
  return of === 'temperature' ? temperature !== undefined : aspect === of;
}

function readOf(line: ConditionLine, inspection: Inspection, of: DriveReadings['of']): DriveRead {
  return {
    day: inspection.date.day,
    temperature: of === 'temperature' ? line.temperature?.value : undefined,
    told: line.answer === 'closed' ? 'put right' : (line.severity ?? 'noted'),
    note: line.note,
    origin: line.origin,
  };
}
