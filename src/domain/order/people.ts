// People in the order: nobody works alone inside an enclosed trough, somebody stays outside it, and a platform carries no more than it is rated for.
// Where the order leaves open who does a step, it is told only what is wrong whoever comes.

import type { AccessUnit } from '../model/plant.js';
import type { Step, StepAction } from '../model/job.js';
import { reaches } from './access.js';
import { areaOf, overlaps, type Area } from './ground.js';
import { crewsStandingBy, loadAboard, peopleAboard, standingByAboard } from './platform.js';
import { atTheMachine } from './side-by-side.js';
import type { Walk } from './walk-state.js';

export interface Alone {
  readonly step: number;
}

export interface Overload {
  readonly step: number;
  readonly unit: AccessUnit;
  readonly people: number;
  /** Of them, who stand by. */
  readonly standingBy: number;
  /** Of the part they handle, kg. */
  readonly load: number;
  /** How many it takes. */
  readonly most: number;
}

/** Steps that one person does inside an enclosed trough with nobody standing by. */
export function aloneInside(w: Walk): Alone[] {
  if (!w.ground.job.conveyor.confinedSpace) return [];
  return w.sequence.steps.flatMap((step, i) =>
    reachesInside(step) && peopleOn(w, step, Math.max) === 1 && crewsStandingBy(step).length === 0
      ? [{ step: i }]
      : [],
  );
}

/** Hands, or more, are inside the trough. */
export function reachesInside(step: Step): boolean {
  switch (step.action) {
    case 'gas test':
    case 'fire watch':
    case 'gate shut':
    case 'gate open':
      return false;
    default:
      return atTheMachine(step);
  }
}

/**
 * Steps that put people into an enclosed trough while the order leaves nobody outside: no other crew stands by, and the step is
 * not said to be done by fewer than come. Whoever is alone is told as that.
 */
export function nobodyOutside(w: Walk): number[] {
  if (!w.ground.job.conveyor.confinedSpace) return [];
  return w.sequence.steps.flatMap((step, i) => {
    const most = peopleOn(w, step, Math.max);
    if (!worksInside(step.action) || !atTheMachine(step) || most === undefined || most < 2) return [];
    const least = peopleOn(w, step, Math.min) ?? most;
    const inside = step.aboard?.count ?? least;
    return inside < least || crewsStandingBy(step).length > 0 ? [] : [i];
  });
}

/** More than hands is inside: what is done at the rim (covers, braces, hold-downs, the drive) is done standing beside it. */
export function worksInside(action: StepAction): boolean {
  switch (action) {
    case 'strip':
    case 'clean':
    case 'patch':
    case 'other work':
    case 'fit':
    case 'remove screw':
    case 'insert screw':
    case 'join screw':
    case 'gate off':
    case 'gate on':
      return true;
    default:
      return false;
  }
}

/** Undefined where a crew is not known. */
export function peopleOn(w: Walk, step: Step, ofSeveral: (...sizes: number[]) => number): number | undefined {
  const named = step.crews.length > 0 ? step.crews : undefined;
  const sizes = (named ?? w.ground.job.crews).map(({ crew }) => crew?.size.count);
  if (sizes.length === 0 || sizes.includes(undefined)) return undefined;
  const known = sizes.flatMap((size) => size ?? []);
  return named ? known.reduce((sum, size) => sum + size, 0) : ofSeveral(...known);
}

/** Steps whose people, tools and parts are more than any platform that may serve them carries. */
export function overloads(w: Walk): Overload[] {
  return w.sequence.steps.flatMap((step, i): Overload[] => {
    const areas = w.ground.areas[i];
    if (!areas || !atTheMachine(step)) return [];
    const doing = step.aboard?.count ?? peopleOn(w, step, Math.min);
    if (doing === undefined) return [];
    const standingBy = standingByAboard(step);
    const people = doing + standingBy;
    const load = loadAboard(w.ground, step, areas);
    const units = unitsOf(w, step, areas);
    const best = units
      .map((unit) => ({ unit, most: peopleAboard(unit, load) }))
      .sort((a, b) => b.most - a.most)[0];
    return best && best.most < people ? [{ step: i, people, standingBy, load, ...best }] : [];
  });
}

/** The platform named, or those that reach where one is needed; none where the step is done from elsewhere. */
function unitsOf(w: Walk, step: Step, areas: readonly Area[]): AccessUnit[] {
  if (step.unit) return step.unit.unit ? [step.unit.unit] : [];
  if (step.action === 'gas test') return [];
  const zones = w.ground.job.conveyor.access.filter(
    (zone) => zone.kind === 'mobile platform' && areas.some((area) => overlaps(areaOf(zone), area)),
  );
  if (zones.length === 0) return [];
  return w.ground.job.accessUnits.flatMap(({ unit }) =>
    unit && zones.every((zone) => reaches(unit, zone)) ? [unit] : [],
  );
}
