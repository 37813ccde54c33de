// How long had the liner under a reading been in when the reading was taken? Each reading belongs to the set that lay at its
// place on that day; its exposure is what ran between fitting and reading, in hours or tonnes as the conveyor declares.
// An inspection on the day of a reline at the same meter reading is taken to be of the liner that came out.

import { hoursRead } from './meter-read.js';
import { noOtherFacts } from './other-facts.js';
import type { CalendarDay } from '../units/calendar.js';
import { formatDay } from '../units/calendar.js';
import { ReadingKind } from '../units/reading-kind.js';
import type { Estate } from './estate.js';
import { historyOf, momentOf, type History, type HistoryOptions } from './history.js';
import { isImpossible } from './impossible-reading.js';
import { isAfter, setsAt, wearTotal, type LinerSet, type Moment } from './liner-sets.js';
import { isOfEitherSheet } from './on-a-joint.js';
import { isAfterMove, stretchesMoved } from './panels-moved.js';
import type { DatedRecord, Inspection, PanelsMoved, Place, Reline } from './records.js';
import type { Interval } from './runs.js';

/** Exposure in h or t (`unit`), never negative; or why there is none. */
export type Exposure =
  | { readonly known: true; readonly value: number; readonly unit: 'h' | 't' }
  | { readonly known: false; readonly reason: string };

/** What ran on a set until a moment. */
export function exposureBetween(history: History, set: LinerSet, until: Moment): Exposure {
  const byTonnes = history.wearBy === 'tonnes';
  const unit = byTonnes ? 't' : 'h';
  if (!set.fitted) {
    return {
      known: false,
      reason:
        history.start.kind === 'commissioned'
          ? 'nothing says when this liner was fitted'
          : history.start.reason,
    };
  }
  const from = wearTotal(history, set.fitted);
  const to = wearTotal(history, until);
  if (from === undefined || to === undefined) {
    return {
      known: false,
      reason: byTonnes ? 'no tonnes are recorded to count from' : 'no meter reading to count from',
    };
  }
  if (until.day < set.fitted.day || to < from) {
    return {
      known: false,
      reason: `dated ${formatDay(until.day)}, before this liner was fitted (${formatDay(set.fitted.day)})`,
    };
  }
  return { known: true, value: to - from, unit };
}

/** The set an inspection looked at, at a chainage (mm); undefined before commissioning. */
export function setSeen(history: History, chainage: number, inspection: DatedRecord): LinerSet | undefined {
  const seen = momentOf(history, inspection);
  const sets = setsAt(history.linerSets, chainage);
  return sets.findLast((set) => {
    if (set.fitted === undefined) return true;
    if (set.reline === undefined) return set.fitted.day <= seen.day;
    return isAfter(seen, set.fitted) || (set.fitted.day === seen.day && set.reline.startLook === inspection);
  });
}

/** The set lying at a chainage at the end of a day. */
export function setLying(history: History, chainage: number, day: CalendarDay): LinerSet | undefined {
  return setsAt(history.linerSets, chainage).findLast(
    (set) => set.fitted === undefined || set.fitted.day <= day,
  );
}

/**
 * The set that stands for a panel that nobody has seen: what lies in its middle. A panel that was moved by itself counts from a
 * reading of its own, so where there is none it goes by the nearest set of its run that was not moved.
 */
export function setOfPanel(
  history: History,
  run: { readonly from: number; readonly to: number },
  panel: { readonly from: number; readonly to: number },
  day: CalendarDay,
): LinerSet | undefined {
  const middle = (panel.from + panel.to) / 2;
  const there = setLying(history, middle, day);
  if (!there?.reline?.moved) return there;
  const others = setsLying(history, day).filter(
    (set) => set.from < run.to && set.to > run.from && !set.reline?.moved,
  );
  const off = (set: LinerSet): number =>
    set.from <= middle && middle <= set.to
      ? 0
      : Math.min(Math.abs(set.from - middle), Math.abs(set.to - middle));
  return others.reduce<LinerSet | undefined>((a, b) => (a && off(a) <= off(b) ? a : b), undefined) ?? there;
}

/** What lies along the conveyor on a day, tail first. */
export function setsLying(history: History, day: CalendarDay | undefined): readonly LinerSet[] {
  return history.linerSets
    .filter(
      (set) =>
        set.removed === undefined &&
        (day === undefined || set === setLying(history, (set.from + set.to) / 2, day)),
    )
    .sort((a, b) => a.from - b.from);
}

/** A reading's row with the set it is of and the exposure of that set. */
export interface ExposedReading {
  readonly row: number;
  readonly inspection: Inspection;
  readonly set: LinerSet | undefined;
  readonly exposure: Exposure;
}

/**
 * Readings of each place of the estate in order of exposure's time (date, then row), with set and exposure; places without
 * any reading have an empty list. Rows without a place (an unknown name) are left out. Records after `asOf` are ignored.
 */
export function exposedReadings(
  estate: Estate,
  options: HistoryOptions = {},
): ReadonlyMap<Place, readonly ExposedReading[]> {
  const byPlace = new Map<Place, ExposedReading[]>(estate.places.map((place) => [place, []]));
  const histories = new Map(estate.conveyors.map((c) => [c, historyOf(estate, c, options)]));
  for (const history of histories.values()) {
    const written = new Map<string, Inspection>();
    const waiting = history.panelsMoved.map((moved) => ({ moved, stretches: stretchesMoved(estate, moved) }));
    for (const { inspection } of history.inspections) {
      const moment = momentOf(history, inspection);
      const again = saidAgain(estate, inspection);
      for (let row = inspection.firstRow; row < inspection.endRow; row++) {
        const place = estate.places[estate.readings.place[row] ?? -1];
        const list = place && byPlace.get(place);
        if (!place || !list || again.has(row)) continue;
        const set = setSeen(history, place.at, inspection);
        const first = firstToSay(estate, written, inspection, row);
        const exposure: Exposure =
          unreckoned(estate, waiting, place, inspection, set, row) ??
          (estate.readings.kind[row] === ReadingKind.withdrawn
            ? { known: false, reason: estate.readings.notes.get(row) ?? 'said later not to count' }
            : first !== inspection
              ? { known: false, reason: 'the same reading is written down twice on that day' }
              : set
                ? (impossible(estate, row, set, place) ??
                  ofEither(estate, row, history, place, inspection) ??
                  exposureBetween(history, set, moment))
                : {
                    known: false,
                    reason: `dated ${formatDay(moment.day)}, before ${history.conveyor.name} was commissioned`,
                  });
        list.push({ row, inspection, set, exposure });
      }
    }
  }
  for (const [row, reline] of estate.readings.bench) {
    const place = estate.places[estate.readings.place[row] ?? -1];
    const history = histories.get(reline.conveyor);
    const list = place && byPlace.get(place);
    if (!list || !history?.relines.includes(reline)) continue;
    const { set, exposure } = takenOut(history, place, reline);
    list.push({
      row,
      inspection: benchLook(reline, row),
      set,
      exposure: impossible(estate, row, set, place) ?? exposure,
    });
    list.sort((a, b) => a.inspection.date.day - b.inspection.date.day);
  }
  return byPlace;
}

/** In words that are the same for all of them: a report counts what is left out by its reason. */
function impossible(
  estate: Estate,
  row: number,
  set: LinerSet | undefined,
  place: Place,
): Exposure | undefined {
  return isImpossible(estate, row, set, place)
    ? {
        known: false,
        reason: 'thicker than its liner can have been when new, by more than tolerance and gauge allow',
      }
    : undefined;
}

function ofEither(
  { readings }: Estate,
  row: number,
  history: History,
  place: Place,
  look: Inspection,
): Exposure | undefined {
  return readings.kind[row] === ReadingKind.thickness && isOfEitherSheet(history, place, look)
    ? {
        known: false,
        reason: 'on the joint of an older and a newer liner, and nobody can say of which it is',
      }
    : undefined;
}

interface Waiting {
  readonly moved: PanelsMoved;
  readonly stretches: readonly Interval[];
}

/** Of panels that were moved: what was seen before anything was measured on them, and colours, which tell no start. */
function unreckoned(
  { readings }: Estate,
  waiting: readonly Waiting[],
  place: Place,
  inspection: Inspection,
  set: LinerSet | undefined,
  row: number,
): Exposure | undefined {
  if (set?.reline?.moved && readings.kind[row] === ReadingKind.colour)
    return {
      known: false,
      reason: 'a colour on a panel that was moved: only a thickness tells how it wears there',
    };
  const unmeasured = waiting.find(
    ({ moved, stretches }) =>
      isAfterMove(inspection, moved) &&
      set?.reline?.moved !== moved &&
      // What a later reline or move put there is another panel.
      !(set?.fitted !== undefined && set.reline !== undefined && set.fitted.day > moved.date.day) &&
      stretches.some(({ from, to }) => place.at >= from && place.at <= to),
  );
  return unmeasured
    ? {
        known: false,
        reason: `the panel was moved on ${formatDay(unmeasured.moved.date.day)}, and no thickness had been measured on it since`,
      }
    : undefined;
}

/** The set that a reline took out at a place, and what had run on it. */
function takenOut(history: History, place: Place, reline: Reline): Pick<ExposedReading, 'set' | 'exposure'> {
  const set = setsAt(history.linerSets, place.at).find(({ removed }) => removed?.reline === reline);
  return set?.removed
    ? { set, exposure: exposureBetween(history, set, set.removed) }
    : { set: undefined, exposure: { known: false, reason: 'nothing was taken out there by that reline' } };
}

/** The bench as a look of its own, of the day and the meter of the reline. */
function benchLook({ conveyor, conveyorUse, date, meter, by, origin }: Reline, row: number): Inspection {
  return {
    conveyor,
    conveyorUse,
    date,
    meter,
    origin,
    view: { direction: 'downstream', stated: false, origin },
    ...(by === undefined ? {} : { by }),
    ...noOtherFacts(),
    firstRow: row,
    endRow: row + 1,
  };
}

/**
 * Whether a place is a point of the liner that lies there on a day: declared ones always; a spot without a name only where the
 * liner was read there that lies there now, and not all of it was taken back. `rows` as `exposedReadings` has them.
 */
export function isPointNow(
  { readings }: Pick<Estate, 'readings'>,
  history: History,
  place: Place,
  rows: readonly ExposedReading[],
  day: CalendarDay | undefined,
): boolean {
  if (place.declared) return true;
  const lying = day === undefined ? undefined : setLying(history, place.at, day);
  // Sets worked out at two times are two objects; the reline that fitted them is one.
  return rows.some(
    ({ row, set }) =>
      readings.kind[row] !== ReadingKind.withdrawn &&
      (set === undefined || lying === undefined || set.reline === lying.reline),
  );
}

/** Rows that say what another row of their look says of the spot, a point and a stretch over it; of two the one with a note or a photo stays. */
export function saidAgain({ readings }: Estate, { firstRow, endRow }: Inspection): ReadonlySet<number> {
  const kept = new Map<string, number>();
  const again = new Set<number>();
  const tellsMore = (row: number): boolean => readings.notes.has(row) || readings.photos.has(row);
  for (let row = firstRow; row < endRow; row++) {
    const said = [readings.place[row], readings.kind[row], readings.value[row], readings.error[row]].join(
      ' ',
    );
    const before = kept.get(said);
    const stays = before === undefined || (tellsMore(row) && !tellsMore(before)) ? row : before;
    if (before !== undefined) again.add(stays === row ? before : row);
    kept.set(said, stays);
  }
  return again;
}

/** The inspection that said this first, of those of one day at one meter reading: a block pasted twice counts once. */
function firstToSay(
  { readings }: Estate,
  written: Map<string, Inspection>,
  inspection: Inspection,
  row: number,
): Inspection {
  const { date, meter } = inspection;
  const said = [date.day, hoursRead(meter), readings.place[row], readings.kind[row], readings.value[row]];
  const key = said.join(' ');
  const first = written.get(key) ?? inspection;
  written.set(key, first);
  return first;
}
