// What each kind of step needs to find, and what it leaves behind (all but `fit`, which front.ts follows panel by panel).
// The order between kinds of work over the same stretch: isolate and prove dead, test the air where enclosed, covers off,
// braces and hold-downs off, strip, clean, fit, braces and hold-downs back, covers back, hand back, run empty, run loaded.
// A screw: restrain the spiral before the drive plate is unbolted; in again after the liner under it and before the
// hold-downs. Only stretches that touch bind one another.

import type { Step } from '../model/job.js';
import { isHot, isProtected, linerInReach } from './heat.js';
import { touches, within, type Area, type Ground, type Piece } from './ground.js';
import {
  bolted,
  cleaned,
  cool,
  dead,
  emptied,
  free,
  gateOff,
  gateOpen,
  gateShut,
  hot,
  laidScrew,
  isolated,
  live,
  newPanel,
  newScrew,
  noScrew,
  off,
  oldPanel,
  oldScrew,
  on,
  restrained,
  runEmpty,
  runLoaded,
  states,
  stripped,
  tested,
  unbolted,
  notRun,
  untested,
  type States,
} from './states.js';
import type { Grade, ViolationKind } from './violation.js';

export interface Need {
  readonly piece: Piece;
  readonly allowed: States;
  /** The state to go on with where the need is not met, so that one slip is told once. */
  readonly good: number;
  readonly kind: ViolationKind;
  readonly grade: Grade;
  /** Told only where a later step brings it about; otherwise the end of the order tells it as left out. */
  readonly onlyIfLater?: boolean;
  /** With `onlyIfLater`: told as well where no step brings it about at all. */
  readonly orMissing?: boolean;
  /** The step itself is in the wrong place: nothing is taken as mended, and no later step is waited for. */
  readonly keep?: boolean;
  /** Told, and the piece stays as it is: what is wrong is how the step is done, not what came before it. */
  readonly stays?: boolean;
}

export interface Effect {
  readonly piece: Piece;
  readonly to: number;
}

export interface Demands {
  readonly needs: readonly Need[];
  readonly effects: readonly Effect[];
  /** Pieces that the step is about, with the states that say it was done before: `any` one of them, or `all`. */
  readonly done: { readonly pieces: readonly Piece[]; readonly states: States; readonly by: 'any' | 'all' };
}

const nothing = { pieces: [], states: 0, by: 'all' } as const;

export function demandsOf(ground: Ground, step: Step, areas: readonly Area[]): Demands {
  const covers = within(ground.covers, areas);
  const braces = within(ground.braces, areas);
  const holdDowns = within(ground.holdDowns, areas);
  const screw = within(ground.screw, areas);
  const panels = ground.runs.flatMap((run) => within(run.panels, areas));
  const { isolation, running, restraint, drive } = ground;

  const proved = need([isolation], states(dead), dead, 'isolation missing', 'unsafe');
  const enclosed = ground.job.conveyor.confinedSpace
    ? need(within(ground.air, areas), states(tested), tested, 'gas test missing', 'unsafe')
    : [];
  const safe = [...proved, ...enclosed];
  // The spiral and its drive are reached into at one place, and that place has no length.
  const reached = [...proved, ...(ground.job.conveyor.confinedSpace ? testedAt(ground, areas) : [])];
  const bare = states(stripped, cleaned);
  const flame = isHot(ground, step);
  const fire =
    flame && !isProtected(step)
      ? need(linerInReach(ground, areas), bare, cleaned, 'hot work over liner', 'unsafe').map((each) => ({
          ...each,
          stays: true,
        }))
      : [];
  const smoulders = flame ? to(within(ground.heat, areas), hot) : [];
  const watched = (over: readonly Piece[]): Need[] =>
    need(over, states(cool), cool, 'fire watch missing', 'unsafe');
  const coversOff = (over: readonly Piece[]): Need[] =>
    need(over, states(off), off, 'not opened up', 'cannot be built');
  const opened = [...safe, ...coversOff(covers), ...coversOff(braces), ...coversOff(holdDowns)];
  const linedUnder = (over: readonly Piece[]): Need[] =>
    need(
      panelsUnder(ground, over),
      states(oldPanel, newPanel),
      newPanel,
      'closed up too early',
      'cannot be built',
      true,
    );
  const screwUnder = (over: readonly Piece[], kind: ViolationKind): Need[] =>
    need(
      piecesUnder(ground.screw, over),
      states(oldScrew, newScrew),
      newScrew,
      kind,
      'cannot be built',
      true,
    );

  switch (step.action) {
    case 'isolate':
      return {
        needs: [],
        effects: [...to([isolation], isolated), ...to([running], notRun)],
        done: { pieces: [isolation], states: states(isolated, dead), by: 'all' },
      };
    case 'empty':
      return {
        needs: need([isolation], states(live), live, 'emptied too late', 'cannot be built').map((each) => ({
          ...each,
          keep: true,
        })),
        effects: to([ground.content], emptied),
        done: { pieces: [ground.content], states: states(emptied), by: 'all' },
      };
    case 'pause':
      return { needs: watched(ground.heat), effects: to(ground.air, untested), done: nothing };
    case 'fire watch':
      return { needs: [], effects: to(within(ground.heat, areas), cool), done: nothing };
    case 'gate off':
    case 'gate on':
    case 'gate shut':
    case 'gate open':
      return gateDemands(ground, step, proved, safe);
    case 'join screw':
      return {
        needs: [
          ...opened,
          ...fire,
          ...need(screw, states(laidScrew), laidScrew, 'screw out of turn', 'cannot be built'),
        ],
        effects: [...to(screw, newScrew), ...smoulders],
        done: { pieces: screw, states: states(newScrew), by: 'any' },
      };
    case 'prove dead':
      return {
        needs: need([isolation], states(isolated, dead), isolated, 'isolation missing', 'unsafe'),
        effects: to([isolation], dead),
        done: { pieces: [isolation], states: states(dead), by: 'all' },
      };
    case 'gas test':
      return { needs: proved, effects: to(within(ground.air, areas), tested), done: nothing };
    case 'covers off':
      return {
        needs: safe,
        effects: to(covers, off),
        done: { pieces: covers, states: states(off), by: 'all' },
      };
    case 'braces off':
      return {
        needs: [...safe, ...coversOff(piecesUnder(ground.covers, braces, areas))],
        effects: to(braces, off),
        done: { pieces: braces, states: states(off), by: 'all' },
      };
    case 'hold-downs off':
      return {
        needs: [...safe, ...coversOff(piecesUnder(ground.covers, holdDowns, areas))],
        effects: to(holdDowns, off),
        done: { pieces: holdDowns, states: states(off), by: 'all' },
      };
    case 'restrain screw':
      return {
        needs: reached,
        effects: to([restraint], restrained),
        done: { pieces: [restraint], states: states(restrained), by: 'all' },
      };
    case 'unbolt drive':
      return {
        needs: [
          ...reached,
          ...fire,
          ...need([restraint], states(restrained), restrained, 'screw not restrained', 'unsafe'),
        ],
        effects: [...to([drive], unbolted), ...smoulders],
        done: { pieces: [drive], states: states(unbolted), by: 'all' },
      };
    case 'remove screw':
      return {
        needs: [
          ...opened,
          ...need([restraint], states(restrained), restrained, 'screw not restrained', 'unsafe'),
          ...need([drive], states(unbolted), unbolted, 'screw out of turn', 'cannot be built'),
          ...fire,
        ],
        effects: [...to(screw, noScrew), ...smoulders],
        done: { pieces: screw, states: states(noScrew), by: 'any' },
      };
    case 'strip':
      return {
        needs: opened,
        effects: to(panels, stripped),
        done: { pieces: panels, states: states(stripped, cleaned, newPanel), by: 'any' },
      };
    case 'clean':
      return {
        needs: [...opened, ...need(panels, bare, stripped, 'liner not stripped', 'cannot be built')],
        effects: to(panels, cleaned),
        done: { pieces: panels, states: states(cleaned), by: 'any' },
      };
    case 'patch':
      return { needs: [...opened, ...fire], effects: smoulders, done: nothing };
    case 'fit':
      return { needs: opened, effects: [], done: nothing };
    case 'insert screw':
      return {
        needs: [
          ...opened,
          ...need(
            panelsUnder(ground, screw),
            states(oldPanel, newPanel),
            newPanel,
            'screw out of turn',
            'cannot be built',
            true,
          ),
          ...fire,
          ...need(
            screw,
            states(noScrew, newScrew, laidScrew),
            noScrew,
            'screw out of turn',
            'cannot be built',
          ),
        ],
        effects: [...to(screw, ground.joins ? laidScrew : newScrew), ...smoulders],
        done: { pieces: screw, states: states(laidScrew, newScrew), by: 'any' },
      };
    case 'bolt drive':
      return {
        needs: [
          ...reached,
          ...need(
            ground.screw,
            states(oldScrew, newScrew),
            newScrew,
            'screw out of turn',
            'cannot be built',
            true,
          ),
          ...need([drive], states(unbolted, bolted), unbolted, 'screw out of turn', 'cannot be built'),
        ],
        effects: [...to([drive], bolted), ...to([restraint], free)],
        done: { pieces: [drive], states: states(bolted), by: 'all' },
      };
    case 'hold-downs on':
      return {
        needs: [
          ...safe,
          ...coversOff(piecesUnder(ground.covers, holdDowns, areas)),
          ...linedUnder(holdDowns),
          ...screwUnder(holdDowns, 'screw out of turn'),
        ],
        effects: to(holdDowns, on),
        done: { pieces: holdDowns, states: states(on), by: 'all' },
      };
    case 'braces on':
      return {
        needs: [
          ...safe,
          ...coversOff(piecesUnder(ground.covers, braces, areas)),
          ...linedUnder(braces),
          ...screwUnder(braces, 'closed up too early'),
        ],
        effects: to(braces, on),
        done: { pieces: braces, states: states(on), by: 'all' },
      };
    case 'covers on':
      return {
        needs: [
          ...safe,
          ...watched(within(ground.heat, areas)),
          ...linedUnder(covers),
          ...screwUnder(covers, 'closed up too early'),
          ...need(
            [...piecesUnder(ground.braces, covers, areas), ...piecesUnder(ground.holdDowns, covers, areas)],
            states(on),
            on,
            'closed up too early',
            'cannot be built',
            true,
          ),
        ],
        effects: to(covers, on),
        done: { pieces: covers, states: states(on), by: 'all' },
      };
    case 'remove isolation':
      return {
        needs: [
          ...need([isolation], states(isolated, dead), dead, 'isolation missing', 'unsafe'),
          ...watched(ground.heat),
          ...whole(ground, 'handed back too early'),
        ],
        effects: [...to([isolation], live), ...to(ground.air, untested)],
        done: { pieces: [isolation], states: states(live), by: 'all' },
      };
    case 'run empty':
      return {
        needs: [
          ...orMissing(need([isolation], states(live), live, 'run too early', 'unsafe', true)),
          ...whole(ground, 'run too early'),
        ],
        effects: to([running], runEmpty),
        done: { pieces: [running], states: states(runEmpty, runLoaded), by: 'all' },
      };
    case 'run loaded':
      return {
        needs: [
          ...orMissing(need([isolation], states(live), live, 'run too early', 'unsafe', true)),
          ...whole(ground, 'run too early'),
          ...need([running], states(runEmpty, runLoaded), runEmpty, 'run too early', 'incomplete'),
        ],
        effects: to([running], runLoaded),
        done: { pieces: [running], states: states(runLoaded), by: 'all' },
      };
  }
}

/** A gate is shut and opened from outside, and stripped and refitted from within. */
function gateDemands(ground: Ground, step: Step, proved: readonly Need[], safe: readonly Need[]): Demands {
  const gate = ground.gates.filter((each) => each.name === step.gate?.name);
  const change = (from: States, good: number, then: number): Demands => ({
    needs: [
      ...(step.action === 'gate off' || step.action === 'gate on' ? safe : proved),
      ...need(gate, from | states(then), good, 'gate out of turn', 'cannot be built').map((each) => ({
        ...each,
        keep: true,
      })),
    ],
    effects: to(gate, then),
    done: { pieces: gate, states: states(then), by: 'all' },
  });
  switch (step.action) {
    case 'gate off':
      return change(states(gateOpen, gateShut), gateOpen, gateOff);
    case 'gate on':
      return change(states(gateOff), gateOff, gateOpen);
    case 'gate shut':
      return change(states(gateOpen), gateOpen, gateShut);
    default:
      return change(states(gateShut), gateShut, gateOpen);
  }
}

/** Everything that was taken off is back, and no gate is left pinned. */
function whole(ground: Ground, kind: ViolationKind): Need[] {
  return orMissing([
    ...need([...ground.covers, ...ground.braces, ...ground.holdDowns], states(on), on, kind, 'unsafe', true),
    ...need(
      ground.runs.flatMap((run) => run.panels),
      states(oldPanel, newPanel),
      newPanel,
      kind,
      'unsafe',
      true,
    ),
    ...need(ground.screw, states(oldScrew, newScrew), newScrew, kind, 'unsafe', true),
    ...need([ground.drive], states(bolted), bolted, kind, 'unsafe', true),
    ...need(ground.gates, states(gateOpen), gateOpen, kind, 'unsafe', true),
  ]);
}

function orMissing(needs: readonly Need[]): Need[] {
  return needs.map((each) => ({ ...each, orMissing: true }));
}

function testedAt(ground: Ground, areas: readonly Area[]): Need[] {
  const cells = ground.air.filter((cell) =>
    areas.some(({ from, to }) =>
      from === to ? from >= cell.from && from <= cell.to : touches(cell, { from, to }),
    ),
  );
  return need(cells, states(tested), tested, 'gas test missing', 'unsafe');
}

function need(
  pieces: readonly Piece[],
  allowed: States,
  good: number,
  kind: ViolationKind,
  grade: Grade,
  onlyIfLater = false,
): Need[] {
  return pieces.map((piece) => ({ piece, allowed, good, kind, grade, onlyIfLater }));
}

function to(pieces: readonly Piece[], state: number): Effect[] {
  return pieces.map((piece) => ({ piece, to: state }));
}

function panelsUnder(ground: Ground, over: readonly Piece[]): Piece[] {
  return piecesUnder(
    ground.runs.flatMap((run) => run.panels),
    over,
  );
}

/**
 * Pieces that share some length with others, or hold a chainage where one of them is. Where a part stands just where two covers
 * meet, the cover (or the part, seen from the cover) counts if it also lies in the step's own stretch.
 */
export function piecesUnder(
  pieces: readonly Piece[],
  over: readonly Piece[],
  areas?: readonly Area[],
): Piece[] {
  return pieces.filter((piece) =>
    over.some((other) => {
      const contact = meet(piece, other);
      return (
        contact === 'inside' || (contact === 'edge' && (!areas || areas.some((area) => touches(piece, area))))
      );
    }),
  );
}

function meet(a: Piece, b: Piece): 'inside' | 'edge' | 'apart' {
  if (a.from === a.to && b.from === b.to) return a.from === b.from ? 'inside' : 'apart';
  if (a.from !== a.to && b.from !== b.to)
    return Math.min(a.to, b.to) - Math.max(a.from, b.from) > 1 ? 'inside' : 'apart';
  const [span, at] = a.from === a.to ? [b, a.from] : [a, b.from];
  if (at < span.from - 1 || at > span.to + 1) return 'apart';
  return at > span.from + 1 && at < span.to - 1 ? 'inside' : 'edge';
}
