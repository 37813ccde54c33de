// A scheduling problem in numbers, ready for search: times are whole units, precedence is closed, and pairs that can never
// overlap are known.

export interface WorkMode {
  readonly duration: number;
  /** Amount of each resource used, by resource. */
  readonly uses: readonly { readonly resource: number; readonly amount: number }[];
}

export interface ScheduleProblem {
  readonly activities: readonly {
    readonly name: string;
    /** Ways of doing it; at least one. */
    readonly modes: readonly WorkMode[];
    /** Positions of what must be finished first. */
    readonly after: readonly number[];
  }[];
  readonly resources: readonly { readonly name: string; readonly capacity: number }[];
  /** Pairs that may not overlap, whichever is first. */
  readonly exclusions?: readonly (readonly [number, number])[];
}

export interface Model extends ScheduleProblem {
  readonly n: number;
  /** Topological order. */
  readonly order: readonly number[];
  readonly followers: readonly (readonly number[])[];
  /** Shortest duration of each activity. */
  readonly shortest: Int32Array;
  /** Longest chain of shortest durations before, and after, each activity. */
  readonly head: Int32Array;
  readonly tail: Int32Array;
  /** n × n: 1 where row must be finished before column starts. */
  readonly before: Uint8Array;
  /** n × n: 1 where the two cannot overlap in any way of doing them. */
  readonly apart: Uint8Array;
  readonly excluded: readonly (readonly number[])[];
  /** There is one of every resource, and few enough of them for a bit each in `masks`. */
  readonly single: boolean;
  /** Resources of each way of each activity, as bits. */
  readonly masks: readonly Int32Array[];
  /** n × n: 1 where the two may not overlap, whatever they use. */
  readonly barred: Uint8Array;
}

/** Undefined where activities wait for one another in a circle. */
export function modelOf(problem: ScheduleProblem): Model | undefined {
  const { activities, resources } = problem;
  const n = activities.length;
  for (const { name, modes } of activities) {
    if (modes.length === 0) throw new RangeError(`"${name}" has no way of being done.`);
    for (const mode of modes) {
      if (!Number.isInteger(mode.duration) || mode.duration < 0)
        throw new RangeError(`"${name}" cannot take ${mode.duration}: whole units of time are needed.`);
      for (const { resource, amount } of mode.uses) {
        const found = resources[resource];
        if (!found || amount > found.capacity)
          throw new RangeError(
            `"${name}" needs ${amount} of ${found?.name ?? 'an unknown resource'}, which has ${found?.capacity ?? 0}.`,
          );
      }
    }
  }
  const followers: number[][] = activities.map(() => []);
  const left = activities.map(({ after }) => new Set(after).size);
  activities.forEach(({ after }, i) => {
    for (const j of new Set(after)) followers[j]?.push(i);
  });
  const order = left.flatMap((count, i) => (count === 0 ? [i] : []));
  for (let k = 0; k < order.length; k++) {
    for (const j of followers[order[k] ?? 0] ?? []) {
      left[j] = (left[j] ?? 0) - 1;
      if (left[j] === 0) order.push(j);
    }
  }
  if (order.length < n) return undefined;

  const shortest = Int32Array.from(activities, ({ modes }) =>
    Math.min(...modes.map((mode) => mode.duration)),
  );
  const before = new Uint8Array(n * n);
  for (const j of order) {
    for (const i of activities[j]?.after ?? []) {
      before[i * n + j] = 1;
      for (let k = 0; k < n; k++) if (before[k * n + i]) before[k * n + j] = 1;
    }
  }
  const head = new Int32Array(n);
  for (const i of order)
    for (const j of followers[i] ?? []) head[j] = Math.max(head[j] ?? 0, (head[i] ?? 0) + (shortest[i] ?? 0));
  const tail = new Int32Array(n);
  for (const i of [...order].reverse())
    for (const j of followers[i] ?? []) tail[i] = Math.max(tail[i] ?? 0, (tail[j] ?? 0) + (shortest[j] ?? 0));

  const excluded: number[][] = activities.map(() => []);
  for (const [i, j] of problem.exclusions ?? []) {
    excluded[i]?.push(j);
    excluded[j]?.push(i);
  }
  const apart = new Uint8Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++)
      if (
        i !== j &&
        (before[i * n + j] || before[j * n + i] || excluded[i]?.includes(j) || clash(problem, i, j))
      )
        apart[i * n + j] = 1;
  }
  const barred = new Uint8Array(n * n);
  excluded.forEach((list, i) => {
    for (const j of list) barred[i * n + j] = 1;
  });
  return {
    ...problem,
    n,
    order,
    followers,
    shortest,
    head,
    tail,
    before,
    apart,
    excluded,
    barred,
    single: resources.length <= 30 && resources.every((resource) => resource.capacity === 1),
    masks: activities.map(({ modes }) =>
      Int32Array.from(modes, (mode) =>
        mode.uses.reduce((bits, { resource, amount }) => (amount > 0 ? bits | (1 << resource) : bits), 0),
      ),
    ),
  };
}

/** True where every way of doing the one overloads a resource together with every way of doing the other. */
function clash({ activities, resources }: ScheduleProblem, i: number, j: number): boolean {
  const a = activities[i]?.modes ?? [];
  const b = activities[j]?.modes ?? [];
  return a.every((x) => b.every((y) => overloads(resources, x, y)));
}

export function overloads(resources: ScheduleProblem['resources'], x: WorkMode, y: WorkMode): boolean {
  return x.uses.some(({ resource, amount }) =>
    y.uses.some(
      (other) => other.resource === resource && amount + other.amount > (resources[resource]?.capacity ?? 0),
    ),
  );
}
