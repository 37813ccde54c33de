// One schedule from a list of activities: they are placed one by one, each as early as precedence, resources and breaks allow
// (serial schedule generation, Kelley 1963); then everything is pushed to the end and back again (forward-backward
// justification, Li and Willis 1992); at last what must lie close before something else is moved up to it.

import type { Pause } from './clock.js';
import { afterWait, apartBy, beforeWait, moveBetween, pastBreak } from './model.js';
import type { Model, Wait, Within, WorkMode } from './model.js';
import { Profile } from './profile.js';

export interface Timing {
  readonly start: Int32Array;
  /** Which way each is done. */
  readonly mode: Int32Array;
  readonly makespan: number;
}

/** The model and its mirror image in time, each with what placing needs at hand. */
export interface Builder {
  readonly model: Model;
  /** The best of several: what is listed is placed in that order; ways are chosen for the earliest finish where not given. */
  readonly build: (list: readonly number[], modes?: ArrayLike<number>) => Timing;
  readonly justify: (timing: Timing) => Timing;
}

export function builderOf(model: Model): Builder {
  const forward = placerOf(model, model.waits, false);
  const behind: Wait[][] = model.activities.map(() => []);
  model.waits.forEach((list, j) => {
    for (const { on, least, clock } of list) behind[on]?.push({ on: j, least, clock });
  });
  const backward = placerOf(model, behind, true);
  const rank = new Int32Array(model.n);
  model.order.forEach((i, k) => {
    rank[i] = k;
  });
  const { breaks = [], pauses = [] } = model;
  const axis: Axis = { breaks, pauses };
  const build = (list: readonly number[], modes?: ArrayLike<number>): Timing => forward(list, axis, modes);
  const justify = (timing: Timing): Timing => {
    let best = timing;
    for (let k = 0; k < 4; k++) {
      const end = (i: number): number => (best.start[i] ?? 0) + durationOf(model, best, i);
      const last = [...model.order].sort((a, b) => end(b) - end(a) || (rank[b] ?? 0) - (rank[a] ?? 0));
      const mirrored: Axis = {
        breaks: breaks.map((at) => best.makespan - at).reverse(),
        pauses: pauses.map(({ at, length }) => ({ at: best.makespan - at, length })).reverse(),
      };
      const late = backward(last, mirrored, best.mode);
      const lateStart = (i: number): number => -((late.start[i] ?? 0) + durationOf(model, best, i));
      const first = [...model.order].sort(
        (a, b) => lateStart(a) - lateStart(b) || (rank[a] ?? 0) - (rank[b] ?? 0),
      );
      const early = forward(first, axis, best.mode);
      if (early.makespan >= best.makespan) return early.makespan < best.makespan ? early : best;
      best = early;
    }
    return best;
  };
  return { model, build, justify };
}

/** The order in which keys, smaller first, let the activities be placed. */
export function listBy(model: Model, keys: ArrayLike<number>): number[] {
  const left = Int32Array.from(model.waits, (list) => list.length);
  const ready: number[] = [];
  for (let i = 0; i < model.n; i++) if (left[i] === 0) ready.push(i);
  const list: number[] = [];
  while (ready.length > 0) {
    let place = 0;
    for (let k = 1; k < ready.length; k++) {
      const a = ready[k] ?? 0;
      const b = ready[place] ?? 0;
      if ((keys[a] ?? 0) < (keys[b] ?? 0) || (keys[a] === keys[b] && a < b)) place = k;
    }
    const next = ready[place] ?? 0;
    ready[place] = ready[ready.length - 1] ?? 0;
    ready.pop();
    list.push(next);
    for (const j of model.followers[next] ?? []) {
      left[j] = (left[j] ?? 0) - 1;
      if (left[j] === 0) ready.push(j);
    }
  }
  return list;
}

interface Axis {
  readonly breaks: readonly number[];
  readonly pauses: readonly Pause[];
}

type Placer = (list: readonly number[], axis: Axis, modes?: ArrayLike<number>) => Timing;

function placerOf(model: Model, waits: Model['waits'], mirrored: boolean): Placer {
  const { n, activities, resources, excluded } = model;
  const profile = new Profile(
    resources.map((resource) => resource.capacity),
    n,
  );
  const start = new Int32Array(n);
  const finish = new Int32Array(n);
  const mode = new Int32Array(n);
  const placed = new Uint8Array(n);
  // Resources that take time to move: what is placed on each.
  const moving = resources.map((resource) => (resource.move ?? 0) > 0);
  const visits: number[][] = resources.map(() => []);

  /** The first time from `earliest` at which it can be done in this way. */
  const firstTime = (i: number, way: WorkMode, earliest: number, breaks: readonly number[]): number => {
    const { duration, uses } = way;
    let at = earliest;
    for (;;) {
      const from = at;
      const activity = activities[i];
      if (activity?.whole) {
        // What must be left after it lies before it in the mirror.
        const room = activity.room ?? 0;
        const lead = mirrored ? room : 0;
        at = pastBreak(breaks, at - lead, duration + room) + lead;
      }
      at = profile.firstFit(at, duration, uses);
      for (const j of excluded[i] ?? [])
        if (placed[j] === 1 && (start[j] ?? 0) < at + duration && (finish[j] ?? 0) > at) at = finish[j] ?? 0;
      for (const { resource, place } of uses) {
        if (!moving[resource] || place === undefined) continue;
        for (const j of visits[resource] ?? []) {
          const gap = moveBetween(resources, way, activities[j]?.modes[mode[j] ?? 0] ?? way);
          if (gap > 0 && at < (finish[j] ?? 0) + gap && at + duration + gap > (start[j] ?? 0))
            at = (finish[j] ?? 0) + gap;
        }
      }
      if (at === from) return at;
    }
  };

  return (list, { breaks, pauses }, modes) => {
    profile.clear();
    placed.fill(0);
    for (const list_ of visits) list_.length = 0;
    let makespan = 0;
    for (const i of list) {
      let earliest = 0;
      for (const wait of waits[i] ?? [])
        earliest = Math.max(earliest, afterWait(pauses, finish[wait.on] ?? 0, wait));
      const ways = activities[i]?.modes ?? [];
      let chosen = 0;
      let from = 0;
      let end = Infinity;
      for (let m = 0; m < ways.length; m++) {
        const way = ways[m];
        if (!way || (modes && modes[i] !== m)) continue;
        const at = firstTime(i, way, earliest, breaks);
        if (at + way.duration >= end) continue;
        end = at + way.duration;
        from = at;
        chosen = m;
      }
      const way = ways[chosen];
      if (!way) continue;
      start[i] = from;
      finish[i] = end;
      mode[i] = chosen;
      placed[i] = 1;
      profile.take(from, way.duration, way.uses);
      for (const { resource } of way.uses) if (moving[resource]) visits[resource]?.push(i);
      makespan = Math.max(makespan, end);
    }
    return { start: start.slice(), mode: mode.slice(), makespan };
  };
}

export function durationOf(model: Model, timing: Timing, i: number): number {
  return model.activities[i]?.modes[timing.mode[i] ?? 0]?.duration ?? 0;
}

/** How much "no later than" is broken, in units of time. */
export function tooFarApart(model: Model, timing: Timing): number {
  let sum = 0;
  for (const within of model.within) sum += beyond(model, timing, timing.start, within);
  return sum;
}

function beyond(model: Model, timing: Timing, start: ArrayLike<number>, within: Within): number {
  const finish = (start[within.first] ?? 0) + durationOf(model, timing, within.first);
  return Math.max(0, apartBy(model.nights, within, finish, start[within.then] ?? 0) - within.most);
}

/** The same schedule with what lies too far ahead of its follower moved up to it, where there is room. */
export function drawnTogether(model: Model, timing: Timing): Timing {
  if (model.within.length === 0 || tooFarApart(model, timing) === 0) return timing;
  const start = timing.start.slice();
  const firsts = [...new Set(model.within.map(({ first }) => first))].sort(
    (a, b) => (start[b] ?? 0) - (start[a] ?? 0),
  );
  const followers: Wait[][] = model.activities.map(() => []);
  model.waits.forEach((list, j) => {
    for (const { on, least, clock } of list) followers[on]?.push({ on: j, least, clock });
  });
  for (const i of firsts) {
    const duration = durationOf(model, timing, i);
    const most = Math.min(
      timing.makespan - duration,
      ...(followers[i] ?? []).map(
        (wait) => beforeWait(model.pauses ?? [], start[wait.on] ?? 0, wait) - duration,
      ),
    );
    const moments = [most];
    for (let j = 0; j < model.n; j++) {
      const at = (start[j] ?? 0) - duration;
      if (at > (start[i] ?? 0) && at < most) moments.push(at);
    }
    for (const at of model.breaks ?? [])
      if (at - duration > (start[i] ?? 0) && at - duration < most) moments.push(at - duration);
    moments.sort((a, b) => b - a);
    const at = moments.find((time) => time > (start[i] ?? 0) && fitsAt(model, timing.mode, start, i, time));
    if (at !== undefined) start[i] = at;
  }
  return { ...timing, start };
}

/** Whether the activity can be moved to that time, everything else as it is; precedence is not looked at. */
function fitsAt(model: Model, modes: Int32Array, start: Int32Array, i: number, at: number): boolean {
  const { activities, resources, n } = model;
  const way = activities[i]?.modes[modes[i] ?? 0];
  if (!way) return false;
  const end = at + way.duration;
  const room = activities[i]?.room ?? 0;
  if (activities[i]?.whole && pastBreak(model.breaks ?? [], at, way.duration + room) !== at) return false;
  const overlapping: number[] = [];
  for (let j = 0; j < n; j++) {
    const other = activities[j]?.modes[modes[j] ?? 0];
    if (j === i || !other) continue;
    const from = start[j] ?? 0;
    const gap = moveBetween(resources, way, other);
    if (gap > 0 && at < from + other.duration + gap && end + gap > from) return false;
    if (from < end && from + other.duration > at) overlapping.push(j);
  }
  if (overlapping.some((j) => model.excluded[i]?.includes(j))) return false;
  const peaks = [at, ...overlapping.map((j) => start[j] ?? 0).filter((time) => time > at)];
  return way.uses.every(({ resource, amount }) =>
    peaks.every((time) => {
      let load = amount;
      for (const j of overlapping) {
        const other = activities[j]?.modes[modes[j] ?? 0];
        if (!other || (start[j] ?? 0) > time || (start[j] ?? 0) + other.duration <= time) continue;
        load += other.uses.find((use) => use.resource === resource)?.amount ?? 0;
      }
      return load <= (resources[resource]?.capacity ?? 0);
    }),
  );
}
