// What would it take to reline a stretch? A trial job is put to the planner: which panels have to come off so that the run can
// be closed again, who is busy how long, and whether it can be built at all. Hours are those of the plan that a pack would print
// for it: the same search, over the shifts of the same outage, and of the job itself where one is written (plan/written-plan.ts).

import type { Conveyor } from '../model/conveyor.js';
import type { Estate } from '../model/estate.js';
import type { Job } from '../model/job.js';
import type { Origin } from '../model/origin.js';
import { panelsText, runsOf } from '../model/runs.js';
import type { AccessUnit, Crew, Outage } from '../model/plant.js';
import type { LinerSpecification, ScrewSpecification } from '../model/specifications.js';
import { millimetres, type Stated } from '../model/stated.js';
import type { Stretch } from '../model/stretch.js';
import { boltsOf } from '../plan/materials.js';
import type { JobPlan } from '../plan/job-plan.js';
import { planJob } from '../plan/plan-job.js';
import { workCalendar } from '../plan/work-calendar.js';
import { type CalendarDay } from '../units/calendar.js';
import type { Pieces } from './supply.js';
import { writtenPlan } from '../plan/written-plan.js';

/** Panels of one run, from the tail end of the run, from 1. */
export interface RunPart {
  readonly run: number;
  readonly first: number;
  readonly last: number;
}

export interface StretchWork {
  /** `the whole conveyor`, `run 1`, `panels 2 to 11 of run 1`. */
  readonly scope: string;
  readonly parts: readonly RunPart[];
  readonly whole: boolean;
  readonly panels: number;
  readonly metres: number;
  /** What is to be bought, one a liner, tail first. */
  readonly pieces: readonly Pieces[];
  readonly buildable: boolean;
  /** Why not, in the planner's words; empty where it is buildable. */
  readonly obstacles: readonly string[];
  /** What would do away with them, a sentence each. */
  readonly remedies: readonly string[];
  /** Runs that close only with the last panel cut to the gap as measured. */
  readonly cutToFit: readonly number[];
  /** With all crews and units of the plant, or as a job is written for it. */
  readonly together: TeamWork;
  /** In other ways, each crew alone among them; planned when it is asked for. */
  others(): readonly TeamWork[];
  /** The same begun on a day: in the shifts of its week, and as a job is written for that day, where one is. */
  at(day: CalendarDay): StretchWork;
}

export interface TeamWork {
  readonly crews: readonly string[];
  /** Working hours from first step to last. */
  readonly duration: number;
  readonly personHours: number;
  /** Mobile platforms and towers that the plan uses. */
  readonly units: readonly string[];
  /** The job that is written so; left out where it is a trial. */
  readonly job?: string;
}

/** The search of a pack; it only is not asked what would shorten the plan. */
const effort = { quick: true } as const;

/** Which liner is to lie at a chainage, mm: like for like. */
export type LinerAt = (chainage: number) => LinerSpecification;

export function workOf(
  conveyor: Conveyor,
  linerAt: LinerAt,
  wanted: readonly RunPart[] | 'whole',
  estate: Estate,
): StretchWork {
  const { accessUnits } = conveyor.plant;
  const crews = reliners(conveyor.plant.crews);
  const asked = planJob(trialJob(conveyor, linerAt, wanted, crews, accessUnits), estate, effort);
  const parts = asked.runs.map(({ run, first, last }) => ({ run: run.number, first, last }));
  const widened = asked.runs.some(({ beyond }) => beyond !== undefined);
  const scope = widened ? parts : wanted;
  const plan = widened
    ? planJob(trialJob(conveyor, linerAt, parts, crews, accessUnits), estate, effort)
    : asked;
  const panels = plan.ground.runs.flatMap((run) =>
    parts
      .filter((part) => part.run === run.run.number)
      .flatMap((part) => run.panels.filter(({ panel = 0 }) => panel >= part.first && panel <= part.last)),
  );
  const stopping = plan.problems.filter(({ stops }) => stops);
  const whole = plan.ground.runs.every((run) =>
    parts.some((p) => p.run === run.run.number && p.first === 1 && p.last === run.panels.length),
  );
  const found = {
    scope: whole ? 'the whole conveyor' : scopeText(parts, plan),
    parts,
    whole,
    panels: panels.length,
    metres: panels.reduce((sum, { length }) => sum + length, 0) / 1000,
    pieces: piecesOf(panels, linerAt),
    buildable: plan.buildable,
    obstacles: stopping.map(({ message }) => message.replace(/\.$/, '')),
    remedies: [...new Set(stopping.map(({ todo }) => todo))],
    cutToFit: plan.runs.filter((each) => each.cutToFit).map(({ run }) => run.number),
  };
  return onDays(found, plan, estate, (team, window) =>
    planJob({ ...trialJob(conveyor, linerAt, scope, team, accessUnits), ...window }, estate, effort),
  );
}

interface Teams {
  readonly together: TeamWork;
  readonly others: () => readonly TeamWork[];
}

/** Where the shifts fall alike from two days on, the plan is one; without a window days are counted from a Monday. */
function onDays(
  found: Omit<StretchWork, 'together' | 'others' | 'at'>,
  plan: JobPlan,
  estate: Estate,
  planFor: (crews: readonly Crew[], window: Pick<Job, 'window'>) => JobPlan,
): StretchWork {
  const crews = reliners(plan.job.conveyor.plant.crews);
  const origin = plan.job.nameOrigin;
  const teamsOf = (all: JobPlan, window: Pick<Job, 'window'>): Teams => {
    let singles: readonly TeamWork[] | undefined;
    return {
      together: teamOf(all, crews),
      others: () =>
        (singles ??= (crews.length < 2 ? [] : crews)
          .filter((crew) => canReline(crew, crews))
          .map((crew) => teamOf(planFor([crew], window), [crew]))),
    };
  };
  const anyDay = teamsOf(plan, {});
  const byShifts = new Map([[shiftsFrom(plan.job, {}), anyDay]]);
  const workBy = (teams: Teams): StretchWork => ({
    ...found,
    ...teams,
    at: (day) => {
      const window = { from: { day, origin }, to: { day, origin }, origin };
      const shifts = shiftsFrom(plan.job, { window });
      const known = byShifts.get(shifts) ?? teamsOf(planFor(crews, { window }), { window });
      byShifts.set(shifts, known);
      const written = writtenPlan(plan, day, estate);
      return workBy(written ? asWritten(written) : known);
    },
  });
  return workBy(anyDay);
}

/**
 * By itself: two people at least, since panels are carried and somebody stays where help can be called from; and a crew that says
 * what it can do has to say that it fits, wherever a crew of the plant says so.
 */
function canReline(crew: Crew, crews: readonly Crew[]): boolean {
  return crew.size.count >= 2 && mayFit(crew, crews);
}

function mayFit({ skills }: Crew, crews: readonly Crew[]): boolean {
  const fits = (all: Crew['skills']): boolean =>
    all.some((skill) => /\bfit|\blin(er|ing)|\breline/i.test(skill));
  return skills.length === 0 || fits(skills) || !crews.some((each) => fits(each.skills));
}

/** Together: nobody waits for an electrician to fit panels, nor pays one for it. */
function reliners(crews: readonly Crew[]): readonly Crew[] {
  return crews.filter((crew) => mayFit(crew, crews));
}

/** Ends of shifts in working hours, and the hours until the next; they come round every week, so two weeks tell them all. */
function shiftsFrom(job: Job, window: Pick<Job, 'window'>): string {
  return JSON.stringify(workCalendar({ ...job, ...window }).shiftEnds(2 * 7 * 24));
}

/** A job that is written, and can be done so, is what will be done, with the crews that it names and no others. */
function asWritten(plan: JobPlan): Teams {
  const { plant } = plan.job.conveyor;
  const named = plan.job.crews.map(({ use }) => use.name);
  const written = {
    ...teamOf(
      plan,
      plant.crews.filter(({ name }) => named.includes(name)),
    ),
    job: plan.job.name,
  };
  return { together: written, others: () => [] };
}

/** A change of the screw, with the reline of the whole conveyor (`liner`) or by itself, with all crews and units. */
export function screwWorkOf(
  conveyor: Conveyor,
  screw: ScrewSpecification,
  linerAt: LinerAt | undefined,
  estate: Estate,
): TeamWork {
  const { crews, accessUnits } = conveyor.plant;
  const job = trialJob(conveyor, linerAt ?? own(conveyor), linerAt ? 'whole' : [], crews, accessUnits);
  const plan = planJob({ ...job, screwChange: { screw, origin: conveyor.nameOrigin } }, estate, effort);
  return teamOf(plan, crews);
}

/** Working hours of an outage by the plant's shifts. */
export function hoursIn(outage: Outage, conveyor: Conveyor): number {
  const { from, to, origin } = outage;
  const job = trialJob(conveyor, own(conveyor), 'whole', [], []);
  return workCalendar({ ...job, window: { from, to, origin } }).available ?? 0;
}

/** The liner named on the conveyor, everywhere. */
function own({ liner }: Conveyor): LinerAt {
  return () => liner;
}

type LaidPanel = JobPlan['ground']['runs'][number]['panels'][number];

/** Each panel is bought of the liner that is to lie at its middle. */
function piecesOf(panels: readonly LaidPanel[], linerAt: LinerAt): readonly Pieces[] {
  const lengths = new Map<LinerSpecification, number[]>();
  for (const panel of panels) {
    const liner = linerAt((panel.from + panel.to) / 2);
    const known = lengths.get(liner) ?? [];
    lengths.set(liner, known);
    known.push(panel.length);
  }
  return [...lengths].map(([liner, each]) => ({ liner, lengths: each, fixings: boltsIn(liner, each) }));
}

function teamOf(plan: JobPlan, crews: readonly Crew[]): TeamWork {
  return {
    crews: crews.map(({ name }) => name),
    duration: plan.duration,
    personHours: plan.steps.reduce((sum, { work }) => sum + work.personHours, 0),
    units: [...new Set(plan.steps.flatMap(({ unit }) => unit ?? []))].sort(),
  };
}

function scopeText(parts: readonly RunPart[], plan: JobPlan): string {
  return parts
    .map(({ run, first, last }) => {
      const all = plan.ground.runs.find((each) => each.run.number === run)?.panels.length;
      if (first === 1 && last === all) return `run ${run}`;
      return panelsText(first, last, run);
    })
    .join(' and ');
}

/** Bolts that panels of these lengths take, mm; 0 where the liner says nothing of them. */
export function boltsIn(liner: LinerSpecification, lengths: readonly number[]): number {
  const { bolt } = liner;
  const pitch = bolt?.pitch?.value;
  const rows = bolt?.rows?.count;
  if (pitch === undefined || rows === undefined || pitch <= 0) return 0;
  return lengths.reduce((sum, length) => sum + boltsOf(length, pitch, rows), 0);
}

/** The planner lays out one liner a run: that of the middle of what is relined. */
function trialJob(
  conveyor: Conveyor,
  linerAt: LinerAt,
  wanted: readonly RunPart[] | 'whole',
  crews: readonly Crew[],
  units: readonly AccessUnit[],
): Job {
  const origin = conveyor.nameOrigin;
  const mm = (value: number): Stated<'length'> => millimetres(value, origin);
  const relines =
    wanted === 'whole' ? wholeOf(conveyor, linerAt) : wanted.map((part) => partOf(conveyor, part, linerAt));
  return {
    name: 'trial',
    origin,
    nameOrigin: origin,
    conveyor,
    conveyorUse: { name: conveyor.name, origin },
    relines,
    crews: crews.map((crew) => ({ use: { name: crew.name, origin }, crew })),
    accessUnits: units.map((unit) => ({ use: { name: unit.name, origin }, unit })),
    // The values a job has that states none.
    sawKerf: mm(3),
    minimumClosingPiece: mm(200),
    measuringTolerance: mm(2),
    jointClearance: mm(50),
    stock: [],
  };
}

/** One stretch where one liner lies everywhere, else one a run. */
function wholeOf(conveyor: Conveyor, linerAt: LinerAt): Job['relines'] {
  const origin = conveyor.nameOrigin;
  const runs = runsOf(conveyor).map((run) => ({
    number: run.number,
    liner: linerAt((run.from + run.to) / 2),
  }));
  const [first] = runs;
  if (!first || runs.every(({ liner }) => liner === first.liner))
    return [{ stretch: { kind: 'all', origin }, liner: first?.liner ?? conveyor.liner, origin }];
  return runs.map(({ number, liner }) => ({
    stretch: { kind: 'run', run: { by: 'number', number: { count: number, origin } }, origin },
    liner,
    origin,
  }));
}

function partOf(conveyor: Conveyor, part: RunPart, linerAt: LinerAt): Job['relines'][number] {
  const run = runsOf(conveyor).find(({ number }) => number === part.run);
  const origin = conveyor.nameOrigin;
  const liner = run ? linerAt((run.from + run.to) / 2) : conveyor.liner;
  return { stretch: panelsOf(part, origin), liner, origin };
}

function panelsOf({ run, first, last }: RunPart, origin: Origin): Stretch {
  return {
    kind: 'panels',
    first: { count: first, origin },
    last: { count: last, origin },
    run: { by: 'number', number: { count: run, origin } },
    origin,
  };
}
