// Does a fire watch see what the hot work before it has left? It lasts as long as each of that work asks, and nobody turns to
// anything else in between: welds may follow one another directly, since whoever holds the torch is still there.

import { areasOf, touches, within, type Area } from './ground.js';
import { watchAfter } from './heat.js';
import { stepAt, walkedAt } from './sequence.js';
import { hot } from './states.js';
import { stateOf, type OrderSlip, type Walk } from './walk-state.js';

/** Tells of a watch at a position that is too short for what it watches, or that comes after other work. */
export function tellOfTheWatch(w: Walk, i: number, position: number, areas: readonly Area[]): void {
  const sparks = throwingSparks(w);
  const causes = unwatched(w, position, areas, sparks);
  const takes = stepAt(w.sequence, i).takes?.value ?? Infinity;
  const short = causes.filter((cause) => watchAfter(stepAt(w.sequence, cause)) > takes + 1e-9);
  if (short.length > 0) tell(w, i, areas, 'fire watch too short', short, []);
  const late = causes.flatMap((cause) => {
    const between = otherWork(w, cause, i, position, sparks);
    return between === undefined ? [] : [{ cause, between }];
  });
  if (late.length > 0)
    tell(
      w,
      i,
      areas,
      'fire watch too late',
      late.map(({ cause }) => cause),
      late.map(({ between }) => between),
    );
}

/** Steps whose sparks nobody has watched yet at these places, in the order of the walk. */
function unwatched(
  w: Walk,
  position: number,
  areas: readonly Area[],
  sparks: ReadonlySet<number>,
): readonly number[] {
  const cells = within(w.ground.heat, areas).filter((cell) => stateOf(w, cell) === hot);
  const found = new Set<number>();
  let open = cells;
  for (let p = position - 1; p >= 0 && open.length > 0; p--) {
    const j = walkedAt(w.sequence, p);
    const there = open.filter((cell) => areasOf(w.ground, j).some((area) => touches(cell, area)));
    if (stepAt(w.sequence, j).action === 'fire watch') open = open.filter((cell) => !there.includes(cell));
    else if (sparks.has(j) && there.length > 0) found.add(j);
  }
  return [...found].reverse();
}

/** The first step that is sure to be done between hot work and its watch and is neither; undefined where none is. */
function otherWork(
  w: Walk,
  cause: number,
  watch: number,
  position: number,
  sparks: ReadonlySet<number>,
): number | undefined {
  const { before } = w.sequence;
  for (let p = 0; p < position; p++) {
    const j = walkedAt(w.sequence, p);
    if (!before(cause, j) || !before(j, watch) || sparks.has(j)) continue;
    if (stepAt(w.sequence, j).action !== 'fire watch') return j;
  }
  return undefined;
}

/** Steps that left something hot behind, by what the walk has noted of them so far. */
function throwingSparks(w: Walk): ReadonlySet<number> {
  return new Set(
    w.touches.flatMap(({ step, change, piece }) =>
      change?.to === hot && w.ground.pieces[piece]?.kind === 'heat' ? [step] : [],
    ),
  );
}

function tell(
  w: Walk,
  step: number,
  areas: readonly Area[],
  kind: 'fire watch too short' | 'fire watch too late',
  causes: readonly number[],
  between: readonly number[],
): void {
  const others: OrderSlip['others'] = new Map();
  for (const cause of causes) others.set(cause, 'made it so');
  for (const other of between) others.set(other, 'comes between');
  w.slips.push({
    kind,
    grade: 'unsafe',
    step,
    pieces: within(w.ground.heat, areas),
    found: hot,
    wanted: -1,
    others,
  });
}
