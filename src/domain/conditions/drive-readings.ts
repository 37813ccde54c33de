// How have the bearings and the gearbox been, look by look? Temperatures as measured, noise and oil as they were told; a part that a
// look does not name has no entry of that look. Work that puts right what the look before told of is an entry of its own day: a
// leak is not getting worse when its seal has been renewed. Nothing is concluded: a housing's temperature goes with load and weather.

import { recordWord, recordsOf } from '../model/dated-records.js';
import type { History } from '../model/history.js';
import type { Origin } from '../model/origin.js';
import type { ConditionLine, DatedRecord, Service } from '../model/records.js';
import type { CalendarDay } from '../units/calendar.js';
import { aspectsOf, conditionKinds, isOfTemperature, partOf } from './kinds.js';
import { putsRight, servicesOf } from './service.js';

export interface DriveReadings {
  /** `tail bearing`, `thrust bearing`, `gearbox`; `motor at tail` of a second drive. */
  readonly part: string;
  readonly of: 'temperature' | NonNullable<ConditionLine['aspect']>;
  /** Newest first, at least one. */
  readonly read: readonly DriveRead[];
}

export interface DriveRead {
  readonly day: CalendarDay;
  /** °C. */
  readonly temperature: number | undefined;
  /** Of noise and oil: how bad as told, `noted` where it was not said, `put right` where a look closes it or work does. */
  readonly told: NonNullable<ConditionLine['severity']> | 'noted' | 'put right';
  readonly note: string | undefined;
  /** A look, the work during which it was seen, or work at the drive: what was done. */
  readonly by: string;
  readonly origin: Origin;
}

/** In the order of the language's kinds; what nobody ever looked at is left out. */
export function driveReadings(history: History, services: readonly Service[]): readonly DriveReadings[] {
  const lines = recordsOf(history)
    .flatMap((record) => record.conditions.map((line) => ({ line, record })))
    .filter(({ line }) => partOf(line.kind) === 'drive' && line.answer !== 'not seen')
    .reverse();
  const own = servicesOf(services, history);
  return conditionKinds
    .filter((kind) => partOf(kind) === 'drive')
    .flatMap((kind) => drives.map((otherDrive) => ({ kind, otherDrive })))
    .flatMap(({ kind, otherDrive }) =>
      (['temperature', ...aspectsOf(kind)] as const).flatMap((of) => {
        const read = lines
          .filter(({ line }) => line.kind === kind && line.otherDrive === otherDrive && says(line, of))
          .map(({ line, record }) => ({ line, read: readOf(line, record, of) }));
        const part = otherDrive === undefined ? kind : `${kind} at ${otherDrive}`;
        return read.length === 0 ? [] : [{ part, of, read: answered(read, of, own) }];
      }),
    );
}

/** That which is declared, and a second one. */
const drives = [undefined, 'head', 'tail'] as const;

/** Newest first, with the work that put right what was told before it; of a temperature no work says anything. */
function answered(
  looks: readonly { readonly line: ConditionLine; readonly read: DriveRead }[],
  of: DriveReadings['of'],
  services: readonly Service[],
): readonly DriveRead[] {
  if (of === 'temperature') return looks.map(({ read }) => read);
  return looks.flatMap(({ line, read }, i) => {
    const until = looks[i - 1]?.read.day ?? Infinity;
    const work = services.find(
      ({ date, ...service }) => date.day >= read.day && date.day < until && putsRight(service, line),
    );
    return work && read.told !== 'put right' ? [byWork(work), read] : [read];
  });
}

function byWork({ date, work, words, note, origin }: Service): DriveRead {
  const by = work ?? words ?? 'closed';
  return { day: date.day, temperature: undefined, told: 'put right', note, by, origin };
}

function says(line: ConditionLine, of: DriveReadings['of']): boolean {
  return of === 'temperature' ? isOfTemperature(line) : line.aspect === of;
}

function readOf(line: ConditionLine, record: DatedRecord, of: DriveReadings['of']): DriveRead {
  return {
    day: record.date.day,
    temperature: of === 'temperature' ? line.temperature?.value : undefined,
    told: line.answer === 'closed' ? 'put right' : (line.severity ?? 'noted'),
    note: line.note,
    by: recordWord(record),
    origin: line.origin,
  };
}
