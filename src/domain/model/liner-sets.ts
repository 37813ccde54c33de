// Which liner lay where, since when and until when? A reline over part of a conveyor ends the sets beneath it there and
// leaves the rest of them lying, so a set is kept as the piece of length it still covers. Half a reline is no new conveyor.

import type { CalendarDay } from '../units/calendar.js';
import type { Conveyor } from './conveyor.js';
import { firstPieces } from './first-liner.js';
import type { Reline } from './records.js';
import { intervalOf, type Run } from './runs.js';
import { piecesBrought } from './same-again.js';
import type { LinerSpecification } from './specifications.js';

/** A day with the totals run by then; a total is undefined where the records do not give it. */
export interface Moment {
  readonly day: CalendarDay;
  /** Running hours since the start of the records' axis (commissioning where recorded). */
  readonly hours: number | undefined;
  /** The same, each hour at another speed than the drive's counted by its turns (turns.ts): what wear by hours follows. */
  readonly turned: number | undefined;
  readonly tonnes: number | undefined;
}

/** Whether a look came after work: by the day, and on the day of the work by the meter; at one meter it is of what came out. */
export function isAfter(look: Pick<Moment, 'day' | 'hours'>, work: Pick<Moment, 'day' | 'hours'>): boolean {
  if (look.day !== work.day) return look.day > work.day;
  return look.hours !== undefined && work.hours !== undefined && look.hours > work.hours;
}

/** The total that wear of a conveyor follows: h (by turns), or t. */
export function wearTotal(
  { wearBy }: Pick<Conveyor, 'wearBy'>,
  moment: Moment | undefined,
): number | undefined {
  return wearBy === 'tonnes' ? moment?.tonnes : moment?.turned;
}

export interface LinerSet {
  readonly liner: LinerSpecification;
  /** Undefined for the liner that was there first. */
  readonly reline: Reline | undefined;
  /** Undefined where neither commissioning nor a reline says when it went in. */
  readonly fitted: Moment | undefined;
  readonly removed: (Moment & { readonly reline: Reline }) | undefined;
  /** Of panels that were moved: when they were new; undefined where nothing says. */
  readonly new?: Moment | undefined;
  /** Thickness of its panels when fitted, mm, where a gauge was put on them. */
  readonly measured: readonly MeasuredPanel[];
  /** Chainages it covers, mm. */
  readonly from: number;
  readonly to: number;
}

export interface MeasuredPanel {
  /** Chainages, mm. */
  readonly from: number;
  readonly to: number;
  readonly thickness: number;
}

export interface LinerSetInput {
  readonly conveyor: Conveyor;
  readonly commissioned: Moment | undefined;
  /** In order of date; of two on one day the one with the lower total first. */
  readonly relines: readonly { readonly reline: Reline; readonly moment: Moment }[];
  /** Joints of a run as they lay when a reline named its panels. */
  readonly panelEnds: (reline: Reline) => (run: Run) => readonly number[];
}

/** Every set that ever lay in the conveyor, former ones first, each piece in chainage order within its reline. */
export function linerSetsOf(input: LinerSetInput): readonly LinerSet[] {
  const { conveyor, commissioned, relines, panelEnds } = input;
  const former: LinerSet[] = [];
  let lying: LinerSet[] = firstPieces(conveyor).map((piece) => ({
    ...piece,
    reline: undefined,
    measured: [],
    fitted: commissioned,
    removed: undefined,
  }));
  for (const { reline, moment } of relines) {
    const measured = measuredPanels(conveyor, reline, panelEnds(reline));
    const before = [...former, ...lying].filter((set) => set.reline?.moved !== reline.moved || !reline.moved);
    const renewed = scopeOf(conveyor, reline, panelEnds(reline));
    for (const { liner, from, to } of renewed.flatMap((area) => piecesBrought(reline, area))) {
      const left: LinerSet[] = [];
      const brought = reline.moved && broughtBy(conveyor, reline, { from, to }, before, panelEnds(reline));
      for (const set of lying) {
        if (set.to <= from || set.from >= to) {
          left.push(set);
          continue;
        }
        former.push({
          ...set,
          from: Math.max(set.from, from),
          to: Math.min(set.to, to),
          removed: { ...moment, reline },
        });
        if (set.from < from) left.push({ ...set, to: from });
        if (set.to > to) left.push({ ...set, from: to });
      }
      left.push({
        liner: brought?.liner ?? liner,
        reline,
        measured,
        fitted: moment,
        removed: undefined,
        from,
        to,
        ...(brought && { new: brought.new ?? brought.fitted }),
      });
      lying = left.sort((a, b) => a.from - b.from);
    }
  }
  return [...former.filter(lay), ...lying];
}

/** The set of the panel that was brought to a stretch: of the one it changed places with, else the one that lay there. */
function broughtBy(
  conveyor: Conveyor,
  { moved }: Reline,
  { from, to }: { readonly from: number; readonly to: number },
  before: readonly LinerSet[],
  panelEnds: (run: Run) => readonly number[],
): LinerSet | undefined {
  const places = (moved?.moves ?? []).flatMap(({ panel, other }) => {
    const [a, b] = [intervalOf(conveyor, panel, panelEnds), other && intervalOf(conveyor, other, panelEnds)];
    return a && b ? [[a, b] as const, [b, a] as const] : [];
  });
  const [, source] = places.find(([here]) => here.from === from && here.to === to) ?? [];
  const middle = source ? (source.from + source.to) / 2 : (from + to) / 2;
  return setsAt(before, middle).at(-1);
}

/** When its panels were new, also where they were moved since. */
export function newSince(set: LinerSet): Moment | undefined {
  return set.reline?.moved ? set.new : set.fitted;
}

/** Two scopes of one reline that overlap, or a reline written down twice, leave pieces of no life: they never lay there. */
function lay({ reline, fitted, removed }: LinerSet): boolean {
  if (reline === undefined || removed === undefined) return true;
  const isCopy = fitted?.day === removed.day && fitted.hours === removed.hours;
  return reline !== removed.reline && !isCopy;
}

/** Sets that lay at a chainage (mm), oldest first; where two pieces meet, the one towards the head. */
export function setsAt(sets: readonly LinerSet[], chainage: number): readonly LinerSet[] {
  const exact = sets.filter((set) => chainage >= set.from && chainage < set.to);
  return exact.length > 0 ? exact : sets.filter((set) => chainage === set.to);
}

/** Chainages a reline renewed, mm, clipped to the conveyor; a scope that names a run or panel that is not there is left out. */
export function scopeOf(
  conveyor: Conveyor,
  reline: Reline,
  panelEnds: (run: Run) => readonly number[],
): readonly { readonly from: number; readonly to: number }[] {
  const length = conveyor.length.value;
  if (reline.scope.length === 0) return [{ from: 0, to: length }];
  return reline.scope.flatMap((stretch) => {
    const interval = intervalOf(conveyor, stretch, panelEnds);
    if (!interval) return [];
    const from = Math.max(0, Math.min(interval.from, interval.to));
    const to = Math.min(length, Math.max(interval.from, interval.to));
    return to > from ? [{ from, to }] : [];
  });
}

/** Where a gauge was put on new panels; a row that names a panel that is not there is left out. `panelEnds` after the reline. */
export function measuredPanels(
  conveyor: Conveyor,
  { panelThicknesses }: Reline,
  panelEnds: (run: Run) => readonly number[],
): readonly MeasuredPanel[] {
  return panelThicknesses.flatMap(({ stretch, thickness }) => {
    const interval = intervalOf(conveyor, stretch, panelEnds);
    return interval ? [{ from: interval.from, to: interval.to, thickness: thickness.value }] : [];
  });
}
