// What will a job find that an earlier one leaves? Jobs that are planned before it and not done yet: what they take from the shelf is
// gone for it, and what they renew on its conveyor lies there new. Nothing of it is on record: whoever rests on it says so.
// Jobs go by the first day of their window; two that begin on one day know nothing of each other.

import { partsToRenew, type PartToRenew } from '../conditions/to-renew.js';
import { historyOf, momentOn } from '../model/history.js';
import type { Estate } from '../model/estate.js';
import { jobBy } from '../model/found-by-job.js';
import type { Job } from '../model/job.js';
import { nothingSeen } from '../model/other-facts.js';
import type { Plant } from '../model/plant.js';
import type { Reline, ScrewChange, SeenBeside, Service } from '../model/records.js';
import { millimetres, type Stated } from '../model/stated.js';
import type { LinerSpecification, ScrewSpecification } from '../model/specifications.js';
import { areasOfAction, overlaps, within, type Area, type Ground, type RunGround } from '../order/ground.js';
import type { CalendarDay } from '../units/calendar.js';
import { groundOfJob, needsOf } from './job-needs.js';
import type { Material } from './materials.js';
import { emptyStore, storeBy, storeOf, type PlantStore, type SpiralStock } from './store.js';

export interface WorkBefore {
  /** The records, and after them what the earlier jobs on the same conveyor renew. */
  readonly estate: Estate;
  /** Less what the earlier jobs of the plant take. */
  readonly store: PlantStore;
  /** First to last; empty where none comes before. */
  readonly jobs: readonly JobBefore[];
}

export interface JobBefore {
  readonly job: Job;
  /** On the conveyor of the job that is asked for; empty on another. */
  readonly renewed: readonly RenewedPart[];
  /** The spiral that it puts in there; undefined where it changes none, or on another conveyor. */
  readonly screw: ScrewSpecification | undefined;
  /** What it takes from the shelf of the plant, spares too. */
  readonly takes: readonly TakenFromShelf[];
}

export interface RenewedPart extends Area {
  readonly run: number;
  readonly first: number;
  readonly last: number;
  readonly whole: boolean;
  readonly liner: LinerSpecification;
}

export type TakenFromShelf =
  | {
      readonly kind: 'liner';
      readonly liner: LinerSpecification;
      readonly length: number;
      readonly count: number;
      /** Of the count. */
      readonly spares: number;
    }
  | {
      readonly kind: 'fixings';
      readonly liner: LinerSpecification;
      readonly count: number;
      readonly spares: number;
    }
  | { readonly kind: 'spiral'; readonly screw: ScrewSpecification; readonly count: number };

/** `today`: what is over by then is done, or not done, by the records alone. */
export function jobsBefore(job: Job, records: Estate, today: CalendarDay | undefined): WorkBefore {
  const { conveyor, window } = job;
  const chain = chainOf(records, conveyor.plant, today);
  const links = window ? linksBefore(chain, window.from.day, records) : [];
  const own = links.findLast(({ before }) => before.job.conveyor === conveyor);
  return {
    estate: own?.estate ?? records,
    store: storeBy(links.at(-1)?.store ?? chain.store, window?.from.day),
    jobs: links.map(({ before }): JobBefore =>
      before.job.conveyor === conveyor ? before : { ...before, renewed: [], screw: undefined },
    ),
  };
}

/** A job as it will find its machine, and the estate that says so: what is planned from it knows the jobs before. */
export function asFoundThen(
  job: Job,
  records: Estate,
  today: CalendarDay | undefined,
): { readonly job: Job; readonly estate: Estate; readonly before: WorkBefore } {
  const before = jobsBefore(job, records, today);
  const { estate } = before;
  return { job: estate === records ? job : jobBy(job, estate), estate, before };
}

/** The jobs of a plant one after another, each worked out once however many others come behind it, and only when one asks. */
interface Chain {
  readonly store: PlantStore;
  /** To be done and not yet on record, in turn. */
  readonly planned: readonly Job[];
  readonly links: Link[];
}

interface Link {
  readonly before: JobBefore;
  /** The records, and what its conveyor's jobs up to this one renew there. */
  readonly estate: Estate;
  readonly store: PlantStore;
}

const chains = new WeakMap<Estate, Map<string, Chain>>();

function chainOf(records: Estate, plant: Plant, today: CalendarDay | undefined): Chain {
  const known = chains.get(records) ?? new Map<string, Chain>();
  chains.set(records, known);
  const key = `${plant.name} ${today ?? ''}`;
  const found = known.get(key) ?? {
    store: storeOf(records, plant, today),
    planned: plannedIn(plant, records, today),
    links: [],
  };
  known.set(key, found);
  return found;
}

function linksBefore({ store, planned, links }: Chain, from: CalendarDay, records: Estate): readonly Link[] {
  const wanted = planned.filter((each) => each.window !== undefined && each.window.from.day < from).length;
  for (const next of planned.slice(links.length, wanted)) {
    const { conveyor } = next;
    const found = links.findLast(({ before }) => before.job.conveyor === conveyor)?.estate ?? records;
    links.push(linkOf(jobBy(next, found), found, links.at(-1)?.store ?? store));
  }
  return links.slice(0, wanted);
}

function linkOf(job: Job, estate: Estate, store: PlantStore): Link {
  const worked = groundOfJob(job, estate);
  const { ground, areas } = worked;
  const there = storeBy(store, job.window?.from.day);
  const takes = needsOf(worked, estate, there).materials.flatMap((material) => taken(material) ?? []);
  const before = { job, renewed: renewedParts(ground.runs, areas), screw: job.screwChange?.screw, takes };
  return { before, estate: estateAfter(estate, job, ground, areas), store: storeLess(store, takes) };
}

/** In turn of their windows: of one day by their names. */
function plannedIn(plant: Plant, estate: Estate, today: CalendarDay | undefined): readonly Job[] {
  return estate.jobs
    .filter(
      (job) =>
        job.conveyor.plant === plant &&
        job.window !== undefined &&
        job.window.to.day >= (today ?? -Infinity) &&
        !isOnRecord(job, job.window.from.day, estate),
    )
    .sort((a, b) => (a.window?.from.day ?? 0) - (b.window?.from.day ?? 0) || (a.name < b.name ? -1 : 1));
}

/** A reline or a new screw since its window began: the record tells what was done. */
function isOnRecord({ conveyor }: Job, from: CalendarDay, { relines, screwChanges }: Estate): boolean {
  return [...relines, ...screwChanges].some((each) => each.conveyor === conveyor && each.date.day >= from);
}

/** Needed and spare, as far as it is there. */
function taken({ shelf, onShelf = 0, ordered = 0, needed, spares }: Material): TakenFromShelf | undefined {
  const count = Math.min(onShelf + ordered, needed + spares);
  if (!shelf || count <= 0) return undefined;
  // A spiral is whole, and its length is what the list counts.
  return shelf.kind === 'spiral'
    ? { ...shelf, count: 1 }
    : { ...shelf, count, spares: Math.max(0, count - needed) };
}

function storeLess(store: PlantStore, takes: readonly TakenFromShelf[]): PlantStore {
  if (takes.length === 0 || store === emptyStore) return store;
  return {
    stock: (liner) => {
      const left = takes.flatMap((each) =>
        each.kind !== 'spiral' && each.liner.name === liner.name ? { ...each } : [],
      );
      return store.stock(liner).map((lot) => {
        let { count } = lot;
        for (const each of left) {
          const same =
            each.kind === 'fixings'
              ? lot.item === 'fixings'
              : lot.item !== 'fixings' && lot.length === each.length;
          if (!same) continue;
          const gone = Math.min(count, each.count);
          count -= gone;
          each.count -= gone;
        }
        return { ...lot, count };
      });
    },
    spirals: (screw) => {
      const there = store.spirals(screw);
      const gone = takes.reduce(
        (sum, each) => sum + (each.kind === 'spiral' && each.screw.name === screw.name ? each.count : 0),
        0,
      );
      return there && spiralsLess(there, gone);
    },
  };
}

/** From the shelf first, then what comes first. */
function spiralsLess(there: SpiralStock, gone: number): SpiralStock {
  let left = Math.max(0, gone - there.count);
  const ordered = there.ordered.map((each) => {
    const taken = Math.min(left, each.count);
    left -= taken;
    return { ...each, count: each.count - taken };
  });
  return {
    ...there,
    count: Math.max(0, there.count - gone),
    ordered: ordered.filter(({ count }) => count > 0),
  };
}

function renewedParts(runs: readonly RunGround[], areas: readonly Area[]): readonly RenewedPart[] {
  return runs.flatMap((run) => {
    const panels = within(run.panels, areas);
    const [first, last] = [panels[0], panels.at(-1)];
    return first && last
      ? [
          {
            run: run.run.number,
            first: first.panel,
            last: last.panel,
            whole: panels.length === run.panels.length,
            from: first.from,
            to: last.to,
            liner: run.liner,
          },
        ]
      : [];
  });
}

/** As if the job were on record, done by the last day of its window. */
function estateAfter(estate: Estate, job: Job, ground: Ground, areas: readonly Area[]): Estate {
  const { window, conveyor, conveyorUse, nameOrigin: origin } = job;
  if (!window) return estate;
  const common = {
    conveyor,
    conveyorUse,
    date: { day: window.to.day, origin },
    meter: meterOn(estate, job, window.to.day),
    ...nothingSeen(),
    origin,
  };
  const relines = ground.runs.flatMap((run) => relineOf(common, run, areas) ?? []);
  const services = partsToRenew(estate, conveyor).flatMap((each) => serviceOf(common, ground, each) ?? []);
  const change: readonly ScrewChange[] = job.screwChange ? [{ ...common, screw: job.screwChange.screw }] : [];
  return {
    ...estate,
    relines: [...estate.relines, ...relines].sort(byDate),
    screwChanges: [...estate.screwChanges, ...change].sort(byDate),
    services: [...estate.services, ...services].sort(byDate),
  };
}

/** A hold-down or a brace that goes back as a new one. */
function serviceOf(
  { conveyor, conveyorUse, date, origin }: Pick<Reline, 'conveyor' | 'conveyorUse' | 'date' | 'origin'>,
  ground: Ground,
  each: PartToRenew,
): Service | undefined {
  const [action, pieces] =
    each.part === 'brace'
      ? (['braces off', ground.braces] as const)
      : (['hold-downs off', ground.holdDowns] as const);
  const taken = within(pieces, areasOfAction(ground, action)).some((piece) => overlaps(piece, each));
  if (!taken) return undefined;
  return { conveyor, conveyorUse, date, part: each.part, place: each.place, work: 'renewed', origin };
}

/** By chainages, which mean the same whatever the panels are counted by. */
function relineOf(
  common: Pick<Reline, 'conveyor' | 'conveyorUse' | 'date' | 'meter' | 'origin'> & SeenBeside,
  run: RunGround,
  areas: readonly Area[],
): Reline | undefined {
  const { origin } = common;
  const [part] = renewedParts([run], areas);
  if (!part) return undefined;
  const mm = (value: number): Stated<'length'> => millimetres(value, origin);
  return {
    ...common,
    liner: run.liner,
    scope: [{ kind: 'chainage', from: mm(part.from), to: mm(part.to), origin }],
    asFitted: [],
    panelsFitted: [
      {
        run: { kind: 'run', run: { by: 'number', number: { count: part.run, origin } }, origin },
        lengths: run.panels.slice(part.first - 1, part.last).map(({ length }) => mm(length)),
        origin,
      },
    ],
    oldPanels: [],
    panelThicknesses: [],
    plates: [],
    offcuts: [],
  };
}

/** What the meter in there will show: the last reading and the duty until then. */
function meterOn(estate: Estate, { conveyor, nameOrigin: origin }: Job, day: CalendarDay): Reline['meter'] {
  const history = historyOf(estate, conveyor);
  const last = history.hours.knots.at(-1);
  const more = Math.max(0, (momentOn(history, day).hours ?? 0) - (last?.total ?? 0));
  const value = Math.round((last?.reading.value ?? 0) + more);
  return { hours: { dimension: 'duration', value, text: `${value} h`, origin } };
}

function byDate(a: { readonly date: { readonly day: CalendarDay } }, b: typeof a): number {
  return a.date.day - b.date.day;
}
