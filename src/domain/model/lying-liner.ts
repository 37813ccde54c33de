// What lies along a conveyor, in pieces: sets that are alike and meet are one, and where two do not, the liner changes. Asked by
// the sheet and the pack for what they name, and by rules for steps and panels across a change.

import type { CalendarDay } from '../units/calendar.js';
import { setsLying } from './exposure.js';
import type { History } from './history.js';
import { newSince, type LinerSet, type Moment } from './liner-sets.js';
import { runAt, type Interval, type Run } from './runs.js';
import type { LinerSpecification } from './specifications.js';

/** Chainages that differ by no more are one, mm. */
const meet = 1;

export interface LinerPiece extends Interval {
  readonly liner: LinerSpecification;
  /** When its panels were new; undefined where nothing says, or where sets of several ages make one piece. */
  readonly since: Moment | undefined;
}

/** Sets of one liner that meet, tail first; panels that were moved are no other liner. `ofOneAge`: and were new on one day. */
export function piecesOf(sets: readonly LinerSet[], ofOneAge: boolean): readonly LinerPiece[] {
  const pieces: LinerPiece[] = [];
  for (const set of [...sets].sort((a, b) => a.from - b.from)) {
    const { liner, from, to } = set;
    const since = newSince(set);
    const before = pieces.at(-1);
    const sameAge = before?.since?.day === since?.day;
    if (before && before.liner === liner && from <= before.to + meet && (sameAge || !ofOneAge))
      pieces[pieces.length - 1] = {
        ...before,
        since: sameAge ? before.since : undefined,
        to: Math.max(before.to, to),
      };
    else pieces.push({ liner, since, from, to });
  }
  return pieces;
}

/** The liners that lie there, each with the stretches it covers, mm. */
export function linersLying(
  history: History,
  day: CalendarDay | undefined,
): readonly { readonly liner: LinerSpecification; readonly stretches: readonly Interval[] }[] {
  const found = new Map<LinerSpecification, Interval[]>();
  for (const { liner, from, to } of piecesOf(setsLying(history, day), false))
    found.set(liner, [...(found.get(liner) ?? []), { from, to }]);
  return [...found].map(([liner, stretches]) => ({ liner, stretches }));
}

/** Where two sets that lie there now meet within a run, tail first; at a run's edge a break lies between them. */
export function setsMeeting(
  history: History,
): readonly { readonly run: Run; readonly at: number; readonly lower: LinerSet; readonly upper: LinerSet }[] {
  const lying = setsLying(history, undefined);
  return lying.flatMap((upper, index) => {
    const lower = lying[index - 1];
    const at = upper.from;
    const run = runAt(history.conveyor, at);
    return lower && run && Math.abs(lower.to - at) <= meet && at > run.from && at < run.to
      ? [{ run, at, lower, upper }]
      : [];
  });
}
