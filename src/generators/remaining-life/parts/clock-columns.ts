// What the wear clocks need to know beside the readings: which units run by one meter and when each was fitted by it, on which
// side and how far along they lie, what the conveyor carries, and what tells hard hours from fast wear: tonnes an hour between
// counter readings, and the loaded motor current at looks. (Hours a week are no such sign: exposure counts the hours already.)

import type { Conveyor } from '../../../domain/model/conveyor.js';
import { totalBetween } from '../../../domain/model/counter.js';
import type { History } from '../../../domain/model/history.js';
import type { LinerSet } from '../../../domain/model/liner-sets.js';
import type { ClockColumns, WorkStretch } from '../../../domain/wear/change.js';

interface ClockMember {
  readonly conveyor: Conveyor;
  readonly set: LinerSet;
  /** mm from the tail. */
  readonly at: number;
  /** Hours on its face; undefined where nothing tells. */
  readonly clock: number | undefined;
}

/** How well tonnes an hour, and the loaded current, tell the wear of an hour: one standard deviation of its ln, our judgement. */
const tonnesSpread = 0.1;
const currentSpread = 0.2;

export function clockColumns(
  members: readonly ClockMember[],
  histories: readonly History[],
  measure: 'h' | 't',
  productOf: (conveyor: Conveyor) => string | undefined,
): ClockColumns {
  const numberOf = new Map(histories.map((history, i) => [history.conveyor, i]));
  const starts = members.map(({ set }) => (measure === 't' ? set.fitted?.tonnes : set.fitted?.turned));
  return {
    conveyor: members.map((m, i) => (starts[i] === undefined ? -1 : (numberOf.get(m.conveyor) ?? -1))),
    start: starts.map((start) => start ?? NaN),
    side: members.map(({ clock }) => (clock === undefined ? NaN : sideOf(clock))),
    along: members.map(({ conveyor, at }) => at / conveyor.length.value),
    product: histories.map((h) => productOf(h.conveyor)),
    work: histories.map((history) => (measure === 't' ? currents(history) : workOf(history))),
  };
}

/** Seen along the flow: −1 at 9 o'clock, 0 at the bottom, 1 at 3 o'clock. */
export function sideOf(clock: number): number {
  return Math.sin(((6 - clock) * Math.PI) / 6);
}

/** By tonnes where they are counted, for they tell load better; else by current. */
function workOf(history: History): readonly WorkStretch[] {
  const tonnes = loads(history);
  return tonnes.length > 0 ? tonnes : currents(history);
}

/** Tonnes a running hour between readings of the counter, about the middle of all. */
function loads({ tonnes, hours }: History): readonly WorkStretch[] {
  const knots = tonnes?.knots ?? [];
  const stretches = knots.flatMap((to, i) => {
    const from = knots[i - 1];
    const [start, end] = [from && totalBetween(hours.knots, from.day), totalBetween(hours.knots, to.day)];
    if (!from || start === undefined || end === undefined || !(end > start) || !(to.total > from.total))
      return [];
    return [{ fromDay: from.day, toDay: to.day, value: (to.total - from.total) / (end - start) }];
  });
  return aboutMiddle(stretches, tonnesSpread);
}

/** Mean of the loaded currents at both ends of a stretch, about the middle of all. */
function currents({ inspections }: History): readonly WorkStretch[] {
  const read = inspections.flatMap(({ inspection }) => {
    const loaded = inspection.currents.flatMap((c) => (c.loaded ? [c.loaded.value] : []));
    const mean = loaded.reduce((a, b) => a + b, 0) / loaded.length;
    return mean > 0 ? [{ day: inspection.date.day, mean }] : [];
  });
  const stretches = read.flatMap((to, i) => {
    const from = read[i - 1];
    return from && to.day > from.day
      ? [{ fromDay: from.day, toDay: to.day, value: (from.mean + to.mean) / 2 }]
      : [];
  });
  return aboutMiddle(stretches, currentSpread);
}

/** One stretch alone says nothing: there is no usual to hold it against. */
function aboutMiddle(
  stretches: readonly { readonly fromDay: number; readonly toDay: number; readonly value: number }[],
  spread: number,
): readonly WorkStretch[] {
  if (stretches.length < 2) return [];
  const logs = stretches.map(({ value }) => Math.log(value)).sort((a, b) => a - b);
  const half = logs.length >> 1;
  const middle = logs.length % 2 === 1 ? (logs[half] ?? 0) : ((logs[half - 1] ?? 0) + (logs[half] ?? 0)) / 2;
  return stretches.map(({ fromDay, toDay, value }) => ({
    fromDay,
    toDay,
    logFactor: Math.log(value) - middle,
    spread,
  }));
}
