// What a load hangs from: a crane of the job at the radius it then works at, or the lifting point of the conveyor nearest to
// the middle of the load. A crane's hook stands above the load; a lifting point does not move, and a load beside it is pulled
// sideways as it leaves the trough: it swings, and rope and point bear more than its weight.
// Between two points of a load chart the smaller load counts; beyond the last one the crane lifts nothing.

import type { LiftingPoint } from '../model/conveyor.js';
import type { CranePlace, Job, StepAction } from '../model/job.js';
import type { Crane } from '../model/plant.js';

export interface LiftingGear {
  /** kg; undefined where neither job, crane nor lifting point states one. */
  readonly limit: number | undefined;
  readonly liftingPoint: LiftingPoint | undefined;
  readonly crane: { readonly place: CranePlace; readonly radius: number } | undefined;
  /** Along the trough, from the middle of the load to the lifting point, mm; 0 under a crane. */
  readonly sidePull: number;
  /** True where the job has cranes and neither one of them nor a lifting point gets at the load. */
  readonly outOfReach: boolean;
}

/** Most that a load may hang beside its lifting point, mm; judgement, about 7 degrees under a hook 4 m above. */
export const mostSidePull = 500;

/** `middle`: chainage of the load's centre, mm. */
export function gearFor(job: Job, middle: number): LiftingGear {
  const both = (limit: number | undefined): number | undefined => {
    const limits = [job.liftLimit?.value, limit].filter((each) => each !== undefined);
    return limits.length > 0 ? Math.min(...limits) : undefined;
  };
  const points = [...job.conveyor.liftingPoints].sort(
    (a, b) => Math.abs(a.at.value - middle) - Math.abs(b.at.value - middle),
  );
  const point = points[0];
  const sidePull = point ? Math.abs(point.at.value - middle) : 0;
  const cranes = (job.cranes ?? []).flatMap((place) => {
    const radius = radiusTo(job, place, middle);
    const load = place.crane && loadAt(place.crane, radius);
    return load === undefined ? [] : [{ place, radius, load }];
  });
  const best = cranes.sort((a, b) => b.load - a.load || a.radius - b.radius)[0];
  const near = point !== undefined && sidePull <= mostSidePull;
  if (best && !(near && point.limit.value >= best.load))
    return {
      limit: both(best.load),
      liftingPoint: undefined,
      crane: { place: best.place, radius: best.radius },
      sidePull: 0,
      outOfReach: false,
    };
  return {
    limit: both(point?.limit.value),
    liftingPoint: point,
    crane: undefined,
    sidePull,
    outOfReach: (job.cranes ?? []).length > 0 && !near,
  };
}

/** Cranes that lift along a stretch, by name: those that hang more there than any lifting point near by. */
export function cranesAlong(
  job: Job,
  areas: readonly { readonly from: number; readonly to: number }[],
): string[] {
  const names = new Set<string>();
  if ((job.cranes ?? []).length === 0) return [];
  for (const { from, to } of areas)
    for (let at = from; at <= to; at += apart) {
      const crane = gearFor(job, at).crane;
      if (crane) names.add(crane.place.use.name);
    }
  return [...names];
}

/**
 * The stands from which each of them lifts what hangs there, as positions in the job's list of cranes, in the order they are
 * come to: by the middles of what hangs, so that a stretch which ends between two stands needs one of them.
 */
export function standsAlong(
  job: Job,
  areas: readonly { readonly from: number; readonly to: number }[],
): ReadonlyMap<string, readonly number[]> {
  const stands = new Map<string, number[]>();
  const places = job.cranes ?? [];
  if (places.length === 0) return stands;
  for (const { from, to } of areas) {
    const parts = Math.max(1, Math.round((to - from) / apart));
    for (let k = 0; k < parts; k++) {
      const place = gearFor(job, from + ((k + 0.5) * (to - from)) / parts).crane?.place;
      if (!place) continue;
      const known = stands.get(place.use.name) ?? [];
      stands.set(place.use.name, known);
      const stand = places.indexOf(place);
      if (!known.includes(stand)) known.push(stand);
    }
  }
  return stands;
}

/** mm between the places looked at. */
const apart = 500;

/** True for steps that hang pieces of the spiral from a hook. */
export function hangsLoads(step: { readonly action: StepAction }): boolean {
  return step.action === 'remove screw' || step.action === 'insert screw';
}

/** mm, horizontal, from the slewing centre to a hook above the trough at a chainage. */
export function radiusTo(job: Job, place: CranePlace, middle: number): number {
  const slope = (job.conveyor.incline.value * Math.PI) / 180;
  return Math.hypot((middle - place.at.value) * Math.cos(slope), place.offset.value);
}

/** kg by the load chart; undefined beyond its largest radius. */
export function loadAt(crane: Crane, radius: number): number | undefined {
  const reached = crane.chart.filter((point) => point.radius.value >= radius - 1e-9);
  const inside = crane.chart.filter((point) => point.radius.value <= radius + 1e-9);
  if (reached.length === 0) return undefined;
  const next = reached.reduce((a, b) => (b.radius.value < a.radius.value ? b : a));
  const last = inside.length > 0 ? inside.reduce((a, b) => (b.radius.value > a.radius.value ? b : a)) : next;
  return Math.min(next.load.value, last.load.value);
}
