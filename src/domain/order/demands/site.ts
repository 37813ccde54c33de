// What lies in the stretch that a step names, and the needs that most steps share: dead, tested, opened up, no fire in
// reach of liner.

import type { Step, StepAction } from '../../model/job.js';
import { piecesUnder, panelsUnder } from '../contact.js';
import { overlaps, within, type Area, type Ground, type Piece } from '../ground.js';
import { isHot, isProtected, linerInReach } from '../heat.js';
import {
  cleaned,
  cool,
  dead,
  hot,
  newPanel,
  newScrew,
  off,
  oldPanel,
  oldScrew,
  states,
  stripped,
  tested,
} from '../states.js';
import type { ViolationKind } from '../violation.js';
import { need, to, type Demands, type Effect, type Need } from './demand.js';

export interface Site {
  readonly ground: Ground;
  readonly step: Step;
  readonly areas: readonly Area[];
  readonly covers: readonly Piece[];
  readonly braces: readonly Piece[];
  readonly holdDowns: readonly Piece[];
  readonly screw: readonly Piece[];
  readonly panels: readonly Piece[];
  readonly proved: readonly Need[];
  /** Proved dead, and the air tested all along the stretch where the space is enclosed. */
  readonly safe: readonly Need[];
  /** The spiral and its drive are reached into at one place, and that place has no length. */
  readonly reached: readonly Need[];
  /** Safe, with everything off that lies over the stretch. */
  readonly opened: readonly Need[];
  /** Asked of hot work that is not protected: no liner in reach of its sparks. */
  readonly fire: readonly Need[];
  /** Left behind by hot work. */
  readonly smoulders: readonly Effect[];
}

/** What one kind of step asks and does; grouped by what is worked on. */
export type DemandsByAction<A extends StepAction> = Readonly<Record<A, (site: Site) => Demands>>;

export function siteOf(ground: Ground, step: Step, areas: readonly Area[]): Site {
  const covers = within(ground.covers, areas);
  const braces = within(ground.braces, areas);
  const holdDowns = within(ground.holdDowns, areas);
  const enclosed = ground.job.conveyor.confinedSpace;
  const proved = need([ground.isolation], states(dead), dead, 'isolation missing', 'unsafe');
  const safe = enclosed ? [...proved, ...gasTested(within(ground.air, areas))] : proved;
  const flame = isHot(ground, step);
  return {
    ground,
    step,
    areas,
    covers,
    braces,
    holdDowns,
    screw: within(ground.screw, areas),
    panels: ground.runs.flatMap((run) => within(run.panels, areas)),
    proved,
    safe,
    reached: enclosed ? [...proved, ...gasTested(cellsAt(ground.air, areas))] : proved,
    opened: [...safe, ...takenOff(covers), ...takenOff(braces), ...takenOff(holdDowns)],
    fire: flame && !isProtected(step) ? noLinerInReach(ground, areas) : [],
    smoulders: flame ? to(cellsAt(ground.heat, areas), hot) : [],
  };
}

/** A trough without liner: nothing there burns. */
export const bare = states(stripped, cleaned);

export function takenOff(over: readonly Piece[]): Need[] {
  return need(over, states(off), off, 'not opened up', 'cannot be built');
}

export function watched(over: readonly Piece[]): Need[] {
  return need(over, states(cool), cool, 'fire watch missing', 'unsafe');
}

export function linedUnder(
  ground: Ground,
  over: readonly Piece[],
  kind: ViolationKind = 'closed up too early',
): Need[] {
  const lined = states(oldPanel, newPanel);
  return need(panelsUnder(ground, over), lined, newPanel, kind, 'cannot be built', true);
}

export function screwUnder(ground: Ground, over: readonly Piece[], kind: ViolationKind): Need[] {
  const joined = states(oldScrew, newScrew);
  return need(piecesUnder(ground.screw, over), joined, newScrew, kind, 'cannot be built', true);
}

function gasTested(air: readonly Piece[]): Need[] {
  return need(air, states(tested), tested, 'gas test missing', 'unsafe');
}

/** Cells that a stretch shares some length with; those on either hand where it is one place, as the drive is. */
function cellsAt(cells: readonly Piece[], areas: readonly Area[]): Piece[] {
  return cells.filter((cell) => areas.some((area) => overlaps(area, cell)));
}

function noLinerInReach(ground: Ground, areas: readonly Area[]): Need[] {
  return need(linerInReach(ground, areas), bare, cleaned, 'hot work over liner', 'unsafe').map((each) => ({
    ...each,
    stays: true,
  }));
}
