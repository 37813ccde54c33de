// What is the drive on a day? As the conveyor declares it, which is as it was built, with what its changes made of it since.

import type { CalendarDay } from '../units/calendar.js';
import type { Conveyor, Drive } from './conveyor.js';
import type { Estate } from './estate.js';
import type { DriveChange } from './records.js';

type Known = Pick<Estate, 'driveChanges'>;

/** First to last, up to a day. */
export function driveChangesOf(
  { driveChanges }: Known,
  conveyor: Conveyor,
  asOf: CalendarDay | undefined,
): readonly DriveChange[] {
  return driveChanges.filter((each) => each.conveyor === conveyor && each.date.day <= (asOf ?? Infinity));
}

/** Undefined where the conveyor declares none: at which end it sits is not known. */
export function presentDrive(estate: Known, conveyor: Conveyor, asOf?: CalendarDay): Drive | undefined {
  return conveyor.drive && driveAfter(conveyor.drive, driveChangesOf(estate, conveyor, asOf));
}

/** What changes, first to last, made of a drive. */
export function driveAfter(drive: Drive, changes: readonly DriveChange[]): Drive {
  const power = changes.findLast((each) => each.power)?.power ?? drive.power;
  const speed = changes.findLast((each) => each.speed)?.speed ?? drive.speed;
  return { ...drive, ...(power && { power }), ...(speed && { speed }) };
}

const known = new WeakMap<Conveyor, Conveyor>();

/** With the drive that it has; one whose drive never changed is itself, any other the same object while its power and speed are. */
export function asDriven(estate: Known, conveyor: Conveyor): Conveyor {
  const drive = presentDrive(estate, conveyor);
  if (!drive || isSameDrive(drive, conveyor.drive)) return conveyor;
  const before = known.get(conveyor);
  if (isSameDrive(drive, before?.drive)) return before ?? conveyor;
  const driven = { ...conveyor, drive };
  known.set(conveyor, driven);
  return driven;
}

function isSameDrive(a: Drive, b: Drive | undefined): boolean {
  return a.power === b?.power && a.speed === b?.speed;
}

export function conveyorsAsDriven(estate: Estate): readonly Conveyor[] {
  return estate.conveyors.map((conveyor) => asDriven(estate, conveyor));
}

/** Since when its motor is the one it has; undefined where it is that of the start. */
export function motorSince(estate: Known, conveyor: Conveyor, asOf?: CalendarDay): CalendarDay | undefined {
  return driveChangesOf(estate, conveyor, asOf).findLast((each) => each.power)?.date.day;
}
