// Which screw turned where along a conveyor, and from when to when? A change takes out all of it, or the stretch that its scope
// names: of a spiral made of several lengths, bolted or welded together, one length goes and the others turn on, each as old as
// before. Chainages in mm.

import type { Conveyor } from './conveyor.js';
import type { Moment } from './liner-sets.js';
import type { ScrewChange } from './records.js';
import type { ScrewSpecification } from './specifications.js';

/** One screw, or what of it came and went together. */
export interface ScrewSet {
  readonly screw: ScrewSpecification;
  /** Undefined for the screw that came with the machine. */
  readonly change: ScrewChange | undefined;
  readonly fitted: Moment | undefined;
  readonly removed: Moment | undefined;
  readonly removedBy: ScrewChange | undefined;
  readonly from: number;
  readonly to: number;
}

/** Two ends this near each other are one joint (judgement: nobody measures a flange to the millimetre from below). */
export const sameJoint = 50;

/** Of one place the older stands before the newer. */
export function screwSetsOf(
  conveyor: Conveyor,
  commissioned: Moment | undefined,
  changes: readonly ScrewChange[],
  moment: (record: ScrewChange) => Moment,
): readonly ScrewSet[] {
  const ordered = [...changes].sort((a, b) => a.date.day - b.date.day || a.origin.start - b.origin.start);
  const still = { removed: undefined, removedBy: undefined };
  const first = { screw: conveyor.screw, change: undefined, fitted: commissioned, ...still };
  let sets: readonly ScrewSet[] = [{ ...first, from: 0, to: conveyor.length.value }];
  for (const change of ordered) {
    const stretch = changedBy(change);
    const fitted = moment(change);
    sets = [
      ...sets.flatMap((set) => taken(set, stretch, fitted, change)),
      { screw: change.screw, change, fitted, ...still, ...stretch },
    ];
  }
  // A change written down twice leaves a screw that never turned.
  return sets.filter(
    ({ change, fitted, removed }) =>
      change === undefined ||
      removed === undefined ||
      fitted?.day !== removed.day ||
      fitted.hours !== removed.hours,
  );
}

/** The stretch that a change renewed: its scope as far as the conveyor goes, else all of it. */
export function changedBy({ conveyor, scope }: Pick<ScrewChange, 'conveyor' | 'scope'>): {
  readonly from: number;
  readonly to: number;
} {
  const end = conveyor.length.value;
  if (!scope) return { from: 0, to: end };
  const [from, to] = [scope.from.value, scope.to.value].sort((a, b) => a - b);
  const near = (at: number): number => (at <= sameJoint ? 0 : at >= end - sameJoint ? end : at);
  return { from: near(from ?? 0), to: near(to ?? end) };
}

export function isWholeScrew({ from, to }: Pick<ScrewSet, 'from' | 'to'>, conveyor: Conveyor): boolean {
  return from <= 0 && to >= conveyor.length.value;
}

/** What of it went, and what stayed on either side. */
function taken(
  set: ScrewSet,
  stretch: { readonly from: number; readonly to: number },
  removed: Moment,
  removedBy: ScrewChange,
): readonly ScrewSet[] {
  if (set.removed) return [set];
  const [from, to] = [Math.max(set.from, stretch.from), Math.min(set.to, stretch.to)];
  if (to - from <= sameJoint) return [set];
  const rest = (a: number, b: number): readonly ScrewSet[] =>
    b - a > sameJoint ? [{ ...set, from: a, to: b }] : [];
  return [
    {
      ...set,
      removed,
      removedBy,
      from: from - set.from <= sameJoint ? set.from : from,
      to: set.to - to <= sameJoint ? set.to : to,
    },
    ...rest(set.from, from),
    ...rest(to, set.to),
  ];
}
