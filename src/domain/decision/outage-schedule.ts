// Do these jobs fit into one outage, and who works where when? Each job holds its crews and its platforms from its first hour to
// its last. Jobs that need every crew go first; the rest is laid on one by one in several orders, and the first that ends within
// the window is kept. What fits here can be done; a set that does not is barred by the programme and tried no more.

export interface OutageJob {
  readonly conveyor: string;
  readonly crews: readonly string[];
  /** Platforms it holds. */
  readonly units: number;
  readonly hours: number;
}

export interface PlacedJob extends OutageJob {
  readonly from: number;
  readonly to: number;
}

export function fitIntoOutage(
  jobs: readonly OutageJob[],
  hours: number,
  units: number,
): readonly PlacedJob[] | undefined {
  const orders: readonly ((a: OutageJob, b: OutageJob) => number)[] = [
    (a, b) => b.crews.length - a.crews.length || b.hours - a.hours,
    (a, b) => b.crews.length - a.crews.length || b.units - a.units || b.hours - a.hours,
    (a, b) => b.crews.length - a.crews.length || a.units - b.units || b.hours - a.hours,
    (a, b) => b.hours - a.hours,
  ];
  for (const order of orders) {
    const placed = inOrder(
      [...jobs].sort((a, b) => order(a, b) || (a.conveyor < b.conveyor ? -1 : 1)),
      units,
    );
    if (placed?.every(({ to }) => to <= hours + 1e-9)) return placed;
  }
  return undefined;
}

function inOrder(jobs: readonly OutageJob[], units: number): readonly PlacedJob[] | undefined {
  const placed: PlacedJob[] = [];
  for (const job of jobs) {
    // Something changes only where another job ends.
    const starts = [0, ...placed.map(({ to }) => to)].sort((a, b) => a - b);
    const from = starts.find((start) => free(job, start, placed, units));
    // More platforms than there are: no order helps.
    if (from === undefined) return undefined;
    placed.push({ ...job, from, to: from + job.hours });
  }
  return placed;
}

function free(job: OutageJob, from: number, placed: readonly PlacedJob[], units: number): boolean {
  const beside = placed.filter((other) => other.from < from + job.hours - 1e-9 && other.to > from + 1e-9);
  if (beside.some((other) => other.crews.some((crew) => job.crews.includes(crew)))) return false;
  const moments = [from, ...beside.map((other) => Math.max(from, other.from))];
  return moments.every(
    (moment) =>
      beside
        .filter((other) => other.from <= moment + 1e-9 && other.to > moment + 1e-9)
        .reduce((sum, other) => sum + other.units, 0) +
        job.units <=
      units,
  );
}
