// Pairs of steps that may go on at the same time: each piece they share must be in a state that suits both whichever is
// first; neither a crew nor an access unit can be shared by two of them; and on a slope, parts that one crew has loose must not
// be able to slide down to where another is at work: an end plate stops them, or a slide gate that a step keeps shut.
// Two steps that would leave one piece in different states must always be in an order, whoever may need it later.

import type { Conveyor } from '../model/conveyor.js';
import type { Step } from '../model/job.js';
import { stepAt, type Sequence } from './sequence.js';
import { areasOf, type Area } from './ground.js';
import { cranesAlong, hangsLoads } from './lifting-gear.js';
import { holds } from './states.js';
import type { Touch, Walk } from './walk-state.js';

export interface Unsettled {
  /** The later written of the two is the one that waits too little. */
  readonly step: number;
  readonly other: number;
  readonly touches: readonly Touch[];
}

/** Pairs whose order is left open though one of them changes what the other needs. */
export function unsettledPairs(w: Walk): Unsettled[] {
  const found = new Map<string, { step: number; other: number; touches: Touch[] }>();
  const byPiece = new Map<number, Touch[]>();
  for (const touch of w.touches) {
    const list = byPiece.get(touch.piece);
    if (list) list.push(touch);
    else byPiece.set(touch.piece, [touch]);
  }
  for (const touches of byPiece.values()) {
    for (const [at, touch] of touches.entries()) {
      const change = couldChange(w, touches, at, touch);
      if (!change) continue;
      for (const reader of touches) {
        if (
          reader.step === change.step ||
          before(w, reader.step, change.step) ||
          before(w, change.step, reader.step)
        )
          continue;
        if (suits(reader, change) || reachedOtherwise(w, touches, reader, change)) continue;
        const other = Math.min(reader.step, change.step);
        const step = Math.max(reader.step, change.step);
        const key = `${step} ${other}`;
        const pair = found.get(key) ?? { step, other, touches: [] };
        pair.touches.push(reader);
        found.set(key, pair);
      }
    }
  }
  return [...found.values()].sort((a, b) => a.step - b.step || a.other - b.other);
}

interface Change {
  readonly step: number;
  readonly from: number;
  readonly to: number;
}

/** The change a step makes, or would make if it came before the one that did it; undefined for none. */
function couldChange(w: Walk, touches: readonly Touch[], at: number, touch: Touch): Change | undefined {
  if (!touch.change) return undefined;
  const { step } = touch;
  const { from, to } = touch.change;
  if (from !== to) return { step, from, to };
  const did = touches.slice(0, at).findLast(({ change }) => change?.to === to && change.from !== to);
  return did?.change === undefined || before(w, did.step, step)
    ? undefined
    : { step, from: did.change.from, to };
}

function suits(reader: Touch, { from, to }: Change): boolean {
  return reader.change ? reader.change.to === to : holds(reader.allowed, from) && holds(reader.allowed, to);
}

/** Another step that is sure to come before the reader brings the same state. */
function reachedOtherwise(w: Walk, touches: readonly Touch[], reader: Touch, { step, to }: Change): boolean {
  return (
    holds(reader.allowed, to) &&
    touches.some(
      (touch) => touch.change?.to === to && touch.step !== step && before(w, touch.step, reader.step),
    )
  );
}

export type Shared = 'crew' | 'access unit' | 'crane';

/** Pairs of steps that share a crew, an access unit, or a crane, and may be at the same time; the later written first. */
export function sharedPairs(
  w: Walk,
  most = Infinity,
): {
  readonly step: number;
  readonly other: number;
  readonly what: Shared;
  readonly name: string;
}[] {
  const found: { step: number; other: number; what: Shared; name: string }[] = [];
  eachOpenPair(w, (other, step, a, b) => {
    if (found.length >= most) return;
    const busy = busyWith(w, b);
    const crew = busyWith(w, a).find((name) => busy.includes(name));
    if (crew !== undefined) found.push({ step, other, what: 'crew', name: crew });
    const unit = a.unit?.use.name;
    if (unit !== undefined && unit === b.unit?.use.name)
      found.push({ step, other, what: 'access unit', name: unit });
    if (!hangsLoads(a) || !hangsLoads(b)) return;
    const { job } = w.ground;
    const cranes = cranesAlong(job, areasOf(w.ground, step));
    const crane = cranesAlong(job, areasOf(w.ground, other)).find((name) => cranes.includes(name));
    if (crane !== undefined) found.push({ step, other, what: 'crane', name: crane });
  });
  return found;
}

export interface FallingPair {
  readonly step: number;
  readonly other: number;
  /** The step that handles what may fall. */
  readonly above: number;
  readonly from: number;
  readonly below: number;
  /** Slide gates that lie between and that no step keeps shut; empty where nothing lies between. */
  readonly gates: readonly string[];
}

/** Pairs in which one crew would work below what another may drop. */
export function fallingPairs(w: Walk, most = Infinity): FallingPair[] {
  const { conveyor } = w.ground.job;
  if (conveyor.incline.value === 0) return [];
  const found: FallingPair[] = [];
  eachOpenPair(w, (other, step, a, b) => {
    if (found.length >= most) return;
    const crews = crewsOf(w, b);
    if (crewsOf(w, a)?.some((name) => crews?.includes(name))) return;
    for (const [above, below] of [
      [other, step],
      [step, other],
    ] as const) {
      const upper = above === other ? a : b;
      if (!handlesLooseParts(upper) || !atTheMachine(above === other ? b : a)) continue;
      const meeting = fallsOnto(conveyor, areasOf(w.ground, above), areasOf(w.ground, below), (gate) =>
        isShutFor(w.sequence, gate, other, step),
      );
      if (!meeting) continue;
      found.push({ step, other, above, ...meeting });
      return;
    }
  });
  return found;
}

/** Where something could slide from one stretch onto people at another; `isShut` says which slide gates stand as barriers. */
export function fallsOnto(
  conveyor: Conveyor,
  upper: readonly Area[],
  lower: readonly Area[],
  isShut: (gate: string) => boolean,
): Pick<FallingPair, 'from' | 'below' | 'gates'> | undefined {
  const up = conveyor.incline.value > 0;
  const meeting = meets(upper, lower, zonesOf(conveyor, isShut), up);
  if (!meeting) return undefined;
  const allShut = meets(
    upper,
    lower,
    zonesOf(conveyor, () => true),
    up,
  );
  const [low, high] = [Math.min(meeting.from, meeting.below), Math.max(meeting.from, meeting.below)];
  const gates = allShut
    ? []
    : conveyor.breaks
        .filter(
          (place) => place.kind === 'slide gate' && place.from.value >= low - 1 && place.to.value <= high + 1,
        )
        .map((place) => place.name);
  return { ...meeting, gates };
}

/** True where a step shuts the gate before both of two steps, and none that opens or strips it can come in between. */
export function isShutFor(sequence: Sequence, gate: string, i: number, j: number): boolean {
  const { before } = sequence;
  const moves = gateMoves(sequence).get(gate);
  if (!moves) return false;
  return moves.shut.some(
    (shut) =>
      before(shut, i) &&
      before(shut, j) &&
      moves.opened.every((k) => before(k, shut) || (before(i, k) && before(j, k))),
  );
}

interface GateMoves {
  readonly shut: number[];
  readonly opened: number[];
}

const movesOf = new WeakMap<Sequence, ReadonlyMap<string, GateMoves>>();

/** Positions of the steps that move each gate; looked at for every pair of steps, so found once. */
function gateMoves(sequence: Sequence): ReadonlyMap<string, GateMoves> {
  const known = movesOf.get(sequence);
  if (known) return known;
  const found = new Map<string, GateMoves>();
  for (const [k, { action, gate }] of sequence.steps.entries()) {
    if (!gate) continue;
    const moves = found.get(gate.name) ?? { shut: [], opened: [] };
    found.set(gate.name, moves);
    if (action === 'gate shut') moves.shut.push(k);
    if (action === 'gate open' || action === 'gate off') moves.opened.push(k);
  }
  movesOf.set(sequence, found);
  return found;
}

/** Who does the step and who stands by. */
function busyWith(w: Walk, step: Step): string[] {
  return [...(crewsOf(w, step) ?? []), ...(step.attendants ?? []).map(({ use }) => use.name)];
}

/** Crews of a step; the job's only one, or a nameless one, where none is named; undefined where it could be any of several. */
export function crewsOf(w: Walk, step: Step): readonly string[] | undefined {
  if (step.crews.length > 0) return step.crews.map((crew) => crew.use.name);
  const { crews } = w.ground.job;
  return crews.length > 1 ? undefined : [crews[0]?.use.name ?? ''];
}

/** Panels, covers, plates or pieces of spiral are loose or in the air while these are done, or the whole spiral is let go. */
export function handlesLooseParts(step: Step): boolean {
  switch (step.action) {
    case 'covers off':
    case 'covers on':
    case 'unbolt drive':
    case 'remove screw':
    case 'strip':
    case 'patch':
    case 'fit':
    case 'insert screw':
    case 'join screw':
    case 'gate off':
    case 'gate on':
      return true;
    default:
      return false;
  }
}

/** People are in or at the trough along the step's stretch. */
export function atTheMachine(step: Step): boolean {
  switch (step.action) {
    case 'empty':
    case 'isolate':
    case 'prove dead':
    case 'pause':
    case 'remove isolation':
    case 'run empty':
    case 'run loaded':
      return false;
    case 'other work':
      return step.stretch !== undefined;
    default:
      return true;
  }
}

/** Stretches between barriers, in chainage order: end plates, and the slide gates that are shut. */
function zonesOf(conveyor: Conveyor, isShut: (gate: string) => boolean): Area[] {
  const at = conveyor.breaks
    .filter((place) => place.kind === 'end plate' || (place.kind === 'slide gate' && isShut(place.name)))
    .map((place) => (place.from.value + place.to.value) / 2);
  const cuts = [-Infinity, ...at.sort((a, b) => a - b), Infinity];
  return cuts.slice(1).map((to, i) => ({ from: cuts[i] ?? -Infinity, to }));
}

/** Where something could fall from, and where it would meet someone; undefined where it could not. */
function meets(
  upper: readonly Area[],
  lower: readonly Area[],
  zones: readonly Area[],
  headIsUp: boolean,
): { readonly from: number; readonly below: number } | undefined {
  for (const zone of zones) {
    const high = clip(upper, zone).map((area) => (headIsUp ? area.to : -area.from));
    const low = clip(lower, zone).map((area) => (headIsUp ? area.from : -area.to));
    if (high.length === 0 || low.length === 0) continue;
    const from = Math.max(...high);
    const below = Math.min(...low);
    if (below < from) return { from: Math.abs(from), below: Math.abs(below) };
  }
  return undefined;
}

function clip(areas: readonly Area[], zone: Area): Area[] {
  return areas
    .map(({ from, to }) => ({ from: Math.max(from, zone.from), to: Math.min(to, zone.to) }))
    .filter(({ from, to }) => from < to || (from === to && areas.some((area) => area.from === area.to)));
}

function eachOpenPair(w: Walk, visit: (i: number, j: number, a: Step, b: Step) => void): void {
  const { steps } = w.sequence;
  for (let j = 1; j < steps.length; j++) {
    for (let i = 0; i < j; i++) {
      if (!before(w, i, j) && !before(w, j, i)) visit(i, j, stepAt(w.sequence, i), stepAt(w.sequence, j));
    }
  }
}

function before(w: Walk, i: number, j: number): boolean {
  return w.sequence.before(i, j);
}
