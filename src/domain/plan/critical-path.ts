// How long must work take that only waits for other work, what is critical, and how much slack has the rest?
// The critical path method (Kelley and Walker 1959): earliest times forwards, latest times backwards, float between.

export interface CpmActivity {
  readonly name: string;
  /** Any unit, not negative. */
  readonly duration: number;
  /** Names of what must be finished first. */
  readonly after: readonly string[];
}

export interface CpmTimes {
  readonly name: string;
  readonly earliestStart: number;
  readonly earliestFinish: number;
  readonly latestStart: number;
  readonly latestFinish: number;
  /** How long it may be late without delaying the end. */
  readonly totalFloat: number;
  /** How long it may be late without delaying anything. */
  readonly freeFloat: number;
  readonly critical: boolean;
}

export type CriticalPath =
  | {
      readonly kind: 'found';
      readonly duration: number;
      readonly times: readonly CpmTimes[];
      /** One longest chain, first to last. */ readonly path: readonly string[];
    }
  /** Names that wait for one another. */
  | { readonly kind: 'circular'; readonly names: readonly string[] }
  | { readonly kind: 'unknown'; readonly name: string; readonly after: string };

/** `times` are in the order of the input. An empty list takes no time. */
export function criticalPath(activities: readonly CpmActivity[]): CriticalPath {
  const index = new Map(activities.map((activity, i) => [activity.name, i]));
  const before: number[][] = [];
  for (const activity of activities) {
    if (!(activity.duration >= 0))
      throw new RangeError(`"${activity.name}" cannot take ${activity.duration}.`);
    const row: number[] = [];
    for (const name of activity.after) {
      const i = index.get(name);
      if (i === undefined) return { kind: 'unknown', name: activity.name, after: name };
      row.push(i);
    }
    before.push(row);
  }
  const order = inOrder(before);
  if (order.length < activities.length) {
    const done = new Set(order);
    return {
      kind: 'circular',
      names: activities.filter((_, i) => !done.has(i)).map((activity) => activity.name),
    };
  }
  const duration = (i: number): number => activities[i]?.duration ?? 0;
  const start = new Float64Array(activities.length);
  for (const i of order)
    for (const j of before[i] ?? []) start[i] = Math.max(start[i] ?? 0, (start[j] ?? 0) + duration(j));
  const end = Math.max(0, ...activities.map((_, i) => (start[i] ?? 0) + duration(i)));
  const latest = new Float64Array(activities.length).fill(end);
  const soonest = new Float64Array(activities.length).fill(end);
  for (const i of [...order].reverse()) {
    for (const j of before[i] ?? []) {
      latest[j] = Math.min(latest[j] ?? end, (latest[i] ?? end) - duration(i));
      soonest[j] = Math.min(soonest[j] ?? end, start[i] ?? 0);
    }
  }
  const tolerance = 1e-9 * Math.max(1, end);
  const times = activities.map((activity, i): CpmTimes => {
    const earliestStart = start[i] ?? 0;
    const latestFinish = latest[i] ?? end;
    const totalFloat = latestFinish - activity.duration - earliestStart;
    return {
      name: activity.name,
      earliestStart,
      earliestFinish: earliestStart + activity.duration,
      latestStart: latestFinish - activity.duration,
      latestFinish,
      totalFloat,
      freeFloat: (soonest[i] ?? end) - earliestStart - activity.duration,
      critical: totalFloat <= tolerance,
    };
  });
  return { kind: 'found', duration: end, times, path: longestChain(activities, before, times, tolerance) };
}

/** Walked back from the end, at each step the critical predecessor that ends when this one starts; the first written of several. */
function longestChain(
  activities: readonly CpmActivity[],
  before: readonly (readonly number[])[],
  times: readonly CpmTimes[],
  tolerance: number,
): string[] {
  const end = Math.max(0, ...times.map((each) => each.earliestFinish));
  let at = times.findIndex((each) => each.critical && each.earliestFinish >= end - tolerance);
  const path: string[] = [];
  while (at >= 0) {
    path.unshift(activities[at]?.name ?? '');
    const start = times[at]?.earliestStart ?? 0;
    const previous: number | undefined = before[at]?.find(
      (j) => times[j]?.critical === true && Math.abs(times[j].earliestFinish - start) <= tolerance,
    );
    at = previous ?? -1;
  }
  return path;
}

function inOrder(before: readonly (readonly number[])[]): number[] {
  const left = before.map((row) => row.length);
  const followers: number[][] = before.map(() => []);
  before.forEach((row, i) => {
    for (const j of row) followers[j]?.push(i);
  });
  const ready = left.flatMap((count, i) => (count === 0 ? [i] : []));
  for (let k = 0; k < ready.length; k++) {
    for (const j of followers[ready[k] ?? 0] ?? []) {
      left[j] = (left[j] ?? 0) - 1;
      if (left[j] === 0) ready.push(j);
    }
  }
  return ready;
}
