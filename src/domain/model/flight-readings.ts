// Where was the flight of the screw that turns now read, and what did each look read there? Depths and outside diameters of one
// place and day stand together; what was read before the screw, or its length there, went in is of another one. Lengths in mm.

import type { CalendarDay } from '../units/calendar.js';
import type { History } from './history.js';
import { screwSetSeen } from './lying-screw.js';
import type { DatedRecord, Inspection, ScrewChange } from './records.js';
import type { ScrewSet } from './screw-sets.js';
import type { Stated } from './stated.js';

export interface FlightSpot {
  /** Chainage of the first reading there, mm. */
  readonly at: number;
  /** What was read. */
  readonly set: ScrewSet;
  /** Oldest first. */
  readonly looks: readonly FlightLook[];
}

/** At least one of the two was read. */
export interface FlightLook {
  readonly day: CalendarDay;
  /** The look, or the change that took the screw out. */
  readonly inspection: DatedRecord;
  readonly depth: Stated<'length'> | undefined;
  readonly diameter: Stated<'length'> | undefined;
  readonly notes: readonly string[];
}

/** Readings within this of each other are of one place, mm (judgement: a hand's breadth along the edge). */
export const sameFlight = 100;

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** Of one set, of all that turn there now where none is given; tail first. */
export function flightSpots(history: History, only?: ScrewSet): readonly FlightSpot[] {
  const spots: { at: number; set: ScrewSet; looks: Mutable<FlightLook>[] }[] = [];
  const looksAt = (set: ScrewSet | undefined, at: number): Mutable<FlightLook>[] | undefined => {
    if (!set || (only ? set !== only : set.removed)) return undefined;
    const known = spots.find((spot) => spot.set === set && Math.abs(spot.at - at) <= sameFlight);
    if (known) return known.looks;
    const spot = { at, set, looks: [] };
    spots.push(spot);
    return spot.looks;
  };
  for (const { inspection } of history.inspections)
    addReadings(inspection, inspection, (at) => looksAt(screwSetSeen(history, inspection, at), at));
  for (const change of new Set(history.screwSets.flatMap(({ removedBy }) => removedBy ?? [])))
    if (change.taken) addReadings(change, change.taken, (at) => looksAt(takenOut(history, change, at), at));
  return spots.sort((a, b) => a.at - b.at);
}

/** The set that a change took out there. */
function takenOut({ screwSets }: History, change: ScrewChange, at: number): ScrewSet | undefined {
  return screwSets.find(({ removedBy, from, to }) => removedBy === change && from <= at && at <= to);
}

function addReadings(
  inspection: DatedRecord,
  { flights, flightDiameters }: Pick<Inspection, 'flights' | 'flightDiameters'>,
  looksAt: (at: number) => Mutable<FlightLook>[] | undefined,
): void {
  const { day } = inspection.date;
  const notesOf = (note: string | undefined): readonly string[] => (note === undefined ? [] : [note]);
  for (const { at, depth, note } of flights)
    looksAt(at.value)?.push({ day, inspection, depth, diameter: undefined, notes: notesOf(note) });
  for (const { at, diameter, note } of flightDiameters) {
    const looks = looksAt(at.value);
    const same = looks?.find((each) => each.inspection === inspection);
    if (same) {
      same.diameter = diameter;
      same.notes = [...same.notes, ...notesOf(note)];
    } else looks?.push({ day, inspection, depth: undefined, diameter, notes: notesOf(note) });
  }
}
