// Who can do a step: each of the job's crews that has the skill, or all of them together where many hands help, with a mobile
// platform where the place needs one. Nobody and no platform can be shared by two steps at once.

import type { Access } from '../model/conveyor.js';
import type { Job, Step, StepAction } from '../model/job.js';
import { reaches } from '../order/access.js';
import { cranesAlong, hangsLoads, standsAlong } from '../order/lifting-gear.js';
import { reachesInside, worksInside } from '../order/people.js';
import { peopleAboard } from '../order/platform.js';
import type { Area } from '../order/ground.js';
import { atTheMachine } from '../order/side-by-side.js';
import { stretchText } from '../order/words.js';
import { unitTime, type Work } from './unit-times.js';

/** A crew, a mobile platform or a crane: what there is one of. */
export interface Team {
  readonly name: string;
  readonly kind: 'crew' | 'access unit' | 'crane';
  readonly people: number;
  readonly assumed?: string;
}

/** One way of doing a step. */
export interface Way {
  readonly crews: readonly string[];
  readonly people: number;
  readonly unit: string | undefined;
  /** People on the platform or inside at a time, those who stand by up there too, where that is fewer than would do the step. */
  readonly aboard?: number;
  /** Crews that stand by outside an enclosed trough, where the step names none and one person alone would do it. */
  readonly standBy?: readonly string[];
  /** Where the platform stands, for counting moves. */
  readonly place: string;
  /** Whole minutes, rounded up. */
  readonly minutes: number;
  /** Positions in the list of teams. */
  readonly teams: readonly number[];
}

/** People in a crew where the job names none; judgement. */
const usualCrew = 3;

export function teamsOf(job: Job): readonly Team[] {
  const crews = job.crews.map(({ use, crew }): Team => ({
    name: use.name,
    kind: 'crew',
    people: crew?.size.count ?? usualCrew,
    ...(crew
      ? {}
      : { assumed: `${use.name} is no crew of ${job.conveyor.plant.name}: ${usualCrew} people are taken.` }),
  }));
  const units = job.accessUnits.map(({ use }): Team => ({ name: use.name, kind: 'access unit', people: 0 }));
  const nobody: Team = {
    name: 'a crew',
    kind: 'crew',
    people: usualCrew,
    assumed: `The job names no crew: one of ${usualCrew} people is taken, a judgement.`,
  };
  const cranes = [...new Set((job.cranes ?? []).map(({ use }) => use.name))].map((name): Team => ({
    name: craneTeam(name),
    kind: 'crane',
    people: 0,
  }));
  return [...(crews.length > 0 ? crews : [nobody]), ...units, ...cranes];
}

/** Set apart from a crew or a platform of the same name. */
export function craneTeam(name: string): string {
  return `crane ${name}`;
}

export function waysOf(
  job: Job,
  step: Step,
  areas: readonly Area[],
  work: Work,
  teams: readonly Team[],
): readonly Way[] {
  const position = (name: string): number => teams.findIndex((team) => team.name === name);
  const all = teams.filter((team) => team.kind === 'crew');
  const named = step.crews.map((crew) => crew.use.name).filter((name) => position(name) >= 0);
  const sets =
    named.length > 0
      ? [named]
      : crewSets(
          job,
          step.action,
          all.map((team) => team.name),
        );
  const units = unitsFor(job, step, areas);
  const standBy = (step.attendants ?? []).map(({ use }) => use.name).filter((name) => position(name) >= 0);
  const stands = hangsLoads(step) ? standsAlong(job, areas) : new Map<string, readonly number[]>();
  const hooks = hangsLoads(step) ? cranesAlong(job, areas).map(craneTeam) : [];
  // From one stand to the next within the step: everybody waits for the crane.
  const moves = [...stands.values()].reduce((sum, each) => sum + each.length - 1, 0);
  const moving = step.takes || moves === 0 ? 0 : moves * unitTime(job, 'crane move').hours;
  const place = step.stretch ? stretchText(step.stretch) : '';
  return sets
    .flatMap((crews) => standingOutside(job, step, crews, all))
    .flatMap(({ crews, outside }) => {
      const people = Math.max(
        1,
        crews.reduce((sum, name) => sum + (teams[position(name)]?.people ?? 0), 0),
      );
      return units.map((unit): Way => {
        const watching =
          unit === undefined ? 0 : [...standBy, ...outside].filter((name) => !crews.includes(name)).length;
        const inside = leavesOneOutside(job, step) && people > 1 ? people - 1 : Infinity;
        const room = step.aboard?.count ?? Math.min(inside, roomOn(job, unit, work.load ?? 0));
        // Whoever stands by is up there too, and has no hand in the work.
        const hands = Math.min(people, work.mostPeople, Math.max(1, room - watching));
        const hours = step.takes ? step.takes.value : work.personHours / hands + moving;
        return {
          crews,
          people: hands,
          place,
          minutes: Math.max(1, Math.ceil(hours * 60 - 1e-6)),
          unit,
          ...(room < people + watching ? { aboard: room } : {}),
          ...(outside.length > 0 ? { standBy: outside } : {}),
          teams: [
            ...[...crews, ...standBy, ...outside].map(position),
            ...(unit === undefined ? [] : [position(unit)]),
            ...hooks.map(position),
          ],
        };
      });
    });
}

/** A proposed step that puts people into an enclosed trough: of those who come, one stays outside. */
function leavesOneOutside(job: Job, step: Step): boolean {
  const settled = (step.attendants ?? []).length > 0 || step.aboard !== undefined;
  return !job.order && job.conveyor.confinedSpace && worksInside(step.action) && !settled;
}

/** Where a proposed step would have one person alone inside, another crew stands by, whichever is free. */
function standingOutside(
  job: Job,
  step: Step,
  crews: readonly string[],
  all: readonly Team[],
): readonly { readonly crews: readonly string[]; readonly outside: readonly string[] }[] {
  const people = all.filter(({ name }) => crews.includes(name)).reduce((sum, team) => sum + team.people, 0);
  const alone = !job.order && job.conveyor.confinedSpace && people === 1 && reachesInside(step);
  const others = alone && !step.attendants?.length ? all.filter(({ name }) => !crews.includes(name)) : [];
  return others.length > 0
    ? others.map(({ name }) => ({ crews, outside: [name] }))
    : [{ crews, outside: [] }];
}

/** How many people the platform takes; where its load alone is too much, the checker says so, and one is reckoned with. */
function roomOn(job: Job, name: string | undefined, load: number): number {
  const unit = job.accessUnits.find(({ use }) => use.name === name)?.unit;
  return unit ? Math.max(1, peopleAboard(unit, load)) : Infinity;
}

/** Each crew that can, and all of them together for work that many hands make light. */
function crewSets(job: Job, action: StepAction, names: readonly string[]): readonly (readonly string[])[] {
  const able = names.filter((name) => canDo(job, name, action));
  const some = able.length > 0 ? able : names;
  const each = some.map((name) => [name]);
  return some.length > 1 && manyHands(action) ? [...each, some] : each;
}

/** Welding needs a crew that says it welds, wherever the plant says who can do what. */
export function canDo(job: Job, name: string, action: StepAction): boolean {
  if (!welds(job, action)) return true;
  const crew = job.crews.find(({ use }) => use.name === name)?.crew;
  const said = job.crews.some((each) => (each.crew?.skills.length ?? 0) > 0);
  return !said || (crew?.skills.some((skill) => /weld/i.test(skill)) ?? false);
}

/** Joins of their own leave nothing to weld when the pieces are laid in. */
export function welds(job: Job, action: StepAction): boolean {
  const bolted = job.screwChange?.joints === 'bolted';
  const joins = !job.order || job.order.steps.some((step) => step.action === 'join screw');
  return (
    action === 'patch' ||
    (action === 'join screw' && !bolted) ||
    (action === 'insert screw' && !bolted && !joins)
  );
}

function manyHands(action: StepAction): boolean {
  switch (action) {
    case 'covers off':
    case 'covers on':
    case 'braces off':
    case 'braces on':
    case 'hold-downs off':
    case 'hold-downs on':
    case 'strip':
    case 'clean':
    case 'remove screw':
    case 'insert screw':
      return true;
    default:
      return false;
  }
}

/** Platforms that reach every mobile zone of the step; `undefined` alone where none is needed or none does. */
function unitsFor(job: Job, step: Step, areas: readonly Area[]): readonly (string | undefined)[] {
  if (step.unit)
    return job.accessUnits.some(({ use }) => use.name === step.unit?.use.name)
      ? [step.unit.use.name]
      : [undefined];
  if (!atTheMachine(step) || step.action === 'gas test') return [undefined];
  const zones = job.conveyor.access.filter(
    (zone) => zone.kind === 'mobile platform' && areas.some((area) => overlaps(area, zone)),
  );
  if (zones.length === 0) return [undefined];
  const able = job.accessUnits
    .filter(({ unit }) => !unit || zones.every((zone) => reaches(unit, zone)))
    .map(({ use }) => use.name);
  return able.length > 0 ? able : [undefined];
}

function overlaps(area: Area, zone: Access): boolean {
  return area.from === area.to
    ? area.from >= zone.from.value && area.from <= zone.to.value
    : Math.min(area.to, zone.to.value) - Math.max(area.from, zone.from.value) > 1;
}
