// How much had run by a given day? Turns readings of an hour meter (or a tonnes counter) into one total that never runs
// back: declared meter changes are joined, and readings that cannot be true are set aside with the reason. Which to set
// aside is a choice of fewest readings: the kept ones must rise, and (for hours) not faster than the clock. Where a whole
// series restarts without a declared change, the gap is bridged by duty instead of throwing half the records away.

import type { CalendarDay } from '../units/calendar.js';
import type { Origin } from './origin.js';

export type CounterSource =
  | 'commissioning'
  | 'inspection'
  | 'reline'
  | 'panels moved'
  | 'screw change'
  | 'meter taken out'
  | 'meter put in';

export interface CounterReading {
  readonly day: CalendarDay;
  /** As read, h or t. */
  readonly value: number;
  readonly source: CounterSource;
  /** The record it was read at, where it is one. */
  readonly record?: object;
  readonly origin: Origin;
}

export interface CounterChange {
  readonly day: CalendarDay;
  readonly old: number;
  readonly new: number;
  readonly origin: Origin;
}

/** A reading that is kept; `total` counts from the first kept reading (0 there). */
export interface Knot {
  readonly day: CalendarDay;
  readonly total: number;
  readonly reading: CounterReading;
  /** True where the step from the knot before rests on duty, not on the counter. */
  readonly bridged: boolean;
}

export interface SetAside {
  readonly reading: CounterReading;
  /** A kept reading that it cannot be true together with. */
  readonly against: CounterReading;
  readonly kind: 'runs back' | 'faster than the clock';
}

export interface Bridge {
  readonly from: CounterReading;
  readonly to: CounterReading;
  readonly kind: 'runs back' | 'faster than the clock';
  /** By duty, h or t. */
  readonly added: number;
}

export interface Counter {
  readonly knots: readonly Knot[];
  readonly setAside: readonly SetAside[];
  readonly bridges: readonly Bridge[];
}

export interface CounterOptions {
  /** Most that can be added in a day: 24 for hours, Infinity for tonnes. */
  readonly mostPerDay: number;
  /** What duty adds between two days; undefined where no duty is known. */
  readonly byDuty: (from: CalendarDay, to: CalendarDay) => number | undefined;
}

interface Entry {
  readonly reading: CounterReading;
  /** Value with declared meter changes joined. */
  readonly joined: number;
  readonly weight: number;
}

/** Readings and changes in any order. */
export function readCounter(
  readings: readonly CounterReading[],
  changes: readonly CounterChange[],
  options: CounterOptions,
): Counter {
  const entries = joinChanges(readings, changes);
  const kept = fewestSetAside(entries, options);
  const knots: Knot[] = [];
  const bridges: Bridge[] = [];
  let total = 0;
  let before: Entry | undefined;
  for (const entry of kept) {
    let bridged = false;
    if (before) {
      const conflict = conflictOf(before, entry, options.mostPerDay);
      if (conflict) {
        const added = options.byDuty(before.reading.day, entry.reading.day) ?? 0; // bridges are only chosen where duty is known
        bridges.push({ from: before.reading, to: entry.reading, kind: conflict, added });
        total += added;
        bridged = true;
      } else total += entry.joined - before.joined;
    }
    knots.push({ day: entry.reading.day, total, reading: entry.reading, bridged });
    before = entry;
  }
  return { knots, bridges, setAside: explainSetAside(entries, kept, options.mostPerDay) };
}

/** Total at a day by straight line between knots. Undefined before the first knot and after the last. */
export function totalBetween(knots: readonly Knot[], day: CalendarDay): number | undefined {
  const first = knots[0];
  const last = knots.at(-1);
  if (!first || !last || day < first.day || day > last.day) return undefined;
  let low = 0;
  let high = knots.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((knots[middle]?.day ?? Infinity) <= day) low = middle;
    else high = middle - 1;
  }
  const a = knots[low] ?? first;
  const b = knots[low + 1];
  if (!b || a.day === day) return a.total;
  return a.total + ((b.total - a.total) * (day - a.day)) / (b.day - a.day);
}

/** On the day of a change a reading belongs to the meter it is nearer to. */
function joinChanges(readings: readonly CounterReading[], changes: readonly CounterChange[]): Entry[] {
  const ordered = withLastPutRight(changes);
  const offsets = [0];
  for (const change of ordered) offsets.push((offsets.at(-1) ?? 0) + change.old - change.new);
  const meterOf = (reading: CounterReading): number =>
    ordered.filter(
      (c) =>
        c.day < reading.day ||
        (c.day === reading.day && Math.abs(reading.value - c.new) < Math.abs(reading.value - c.old)),
    ).length;

  const entries = readings.map((reading) => ({
    reading,
    meter: meterOf(reading),
    weight: reading.source === 'commissioning' ? 2 : 1,
  }));
  ordered.forEach((change, meter) => {
    const { day, origin } = change;
    entries.push({
      reading: { day, value: change.old, source: 'meter taken out', origin },
      meter,
      weight: 1,
    });
    entries.push({
      reading: { day, value: change.new, source: 'meter put in', origin },
      meter: meter + 1,
      weight: 1,
    });
  });
  return entries
    .filter((e) => Number.isFinite(e.reading.value))
    .map((e) => ({ ...e, joined: e.reading.value + (offsets[e.meter] ?? 0) }))
    .sort(
      (a, b) =>
        a.reading.day - b.reading.day ||
        Number(b.reading.source === 'commissioning') - Number(a.reading.source === 'commissioning') ||
        a.meter - b.meter ||
        a.joined - b.joined ||
        rank(a) - rank(b),
    );
}

/**
 * In the order of time. One more of a day, from the same last reading to another one near it, says what the old counter should have
 * shown (it stood dead, or was misread): it puts that reading right and is no change itself. Of two files nobody knows which is later.
 */
function withLastPutRight(changes: readonly CounterChange[]): readonly CounterChange[] {
  const ordered = [...changes].sort((a, b) => a.day - b.day || a.origin.start - b.origin.start);
  const rightOf = (change: CounterChange): CounterChange | undefined =>
    ordered.findLast(
      (other) =>
        other.day === change.day &&
        other.old === change.old &&
        other.origin.source === change.origin.source &&
        other.origin.start > change.origin.start &&
        Math.abs(other.new - change.old) < Math.abs(other.new - change.new),
    );
  const rights = new Set(ordered.map(rightOf));
  return ordered
    .filter((change) => !rights.has(change))
    .map((change) => ({ ...change, old: rightOf(change)?.new ?? change.old }));
}

function rank(entry: Entry): number {
  return entry.reading.source === 'meter taken out' ? 2 : entry.reading.source === 'meter put in' ? 0 : 1;
}

function conflictOf(a: Entry, b: Entry, mostPerDay: number): SetAside['kind'] | undefined {
  const rise = b.joined - a.joined;
  if (rise < -1e-9) return 'runs back';
  // Readings are dated to the day, so a day is allowed on top.
  return rise > mostPerDay * (b.reading.day - a.reading.day + 1) + 1e-9 ? 'faster than the clock' : undefined;
}

/** Bridging counts as worse than setting one reading aside, better than setting two aside. */
const bridgeCost = 1.5;

function fewestSetAside(entries: readonly Entry[], options: CounterOptions): readonly Entry[] {
  const fine = entries.every((entry, i) => {
    const before = entries[i - 1];
    return !before || conflictOf(before, entry, options.mostPerDay) === undefined;
  });
  if (fine) return entries;

  const n = entries.length;
  const weightBefore = [0];
  for (const entry of entries) weightBefore.push((weightBefore.at(-1) ?? 0) + entry.weight);
  const cost: number[] = [];
  const from: number[] = [];
  entries.forEach((entry, i) => {
    let best = weightBefore[i] ?? 0;
    let bestFrom = -1;
    for (let j = i - 1; j >= 0; j--) {
      const before = entries[j];
      if (!before) continue;
      const skipped = (weightBefore[i] ?? 0) - (weightBefore[j + 1] ?? 0);
      if (skipped >= best) break;
      const conflict = conflictOf(before, entry, options.mostPerDay);
      const step =
        conflict === undefined
          ? 0
          : options.byDuty(before.reading.day, entry.reading.day) === undefined
            ? Infinity
            : bridgeCost;
      const candidate = (cost[j] ?? Infinity) + skipped + step;
      if (candidate < best) {
        best = candidate;
        bestFrom = j;
      }
    }
    cost.push(best);
    from.push(bestFrom);
  });
  let end = 0;
  let least = Infinity;
  cost.forEach((c, i) => {
    const whole = c + (weightBefore[n] ?? 0) - (weightBefore[i + 1] ?? 0);
    if (whole < least - 1e-9) {
      least = whole;
      end = i;
    }
  });
  const kept: Entry[] = [];
  for (let i = end; i >= 0; i = from[i] ?? -1) {
    const entry = entries[i];
    if (entry) kept.push(entry);
  }
  return kept.reverse();
}

function explainSetAside(entries: readonly Entry[], kept: readonly Entry[], mostPerDay: number): SetAside[] {
  const place = new Map(entries.map((entry, i) => [entry, i]));
  const chain = kept.map((entry) => place.get(entry) ?? 0);
  if (kept.length === entries.length) return [];
  const inChain = new Set(chain);
  return entries.flatMap((entry, at) => {
    if (inChain.has(at)) return [];
    const before = kept[chain.findLastIndex((k) => k < at)];
    const after = kept[chain.findIndex((k) => k > at)];
    const backward = before && conflictOf(before, entry, mostPerDay);
    if (before && backward) return [{ reading: entry.reading, against: before.reading, kind: backward }];
    const forward = after && conflictOf(entry, after, mostPerDay);
    if (after && forward) return [{ reading: entry.reading, against: after.reading, kind: forward }];
    const other = before ?? after;
    return other ? [{ reading: entry.reading, against: other.reading, kind: 'runs back' as const }] : [];
  });
}
