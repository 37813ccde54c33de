// A run is the lined length between two neighbouring breaks, numbered from the tail. Panels of a run are numbered from
// its tail end. Everything that speaks of "run 2" or "panels 3 to 5 of run 1" gets its chainages here.

import type { Break, Conveyor } from './conveyor.js';
import type { NameUse } from './stated.js';
import type { RunUse, Stretch } from './stretch.js';

export interface Run {
  readonly conveyor: Conveyor;
  /** 1 for the run nearest the tail. */
  readonly number: number;
  /** For people: `run 2 (Gate to Head)`. */
  readonly label: string;
  /** Chainages of the lined length, mm. */
  readonly from: number;
  readonly to: number;
  readonly length: number;
  readonly tailBreak: Break;
  readonly headBreak: Break;
}

/** A stretch worked out: chainages in mm, and the run and panels where it names them. */
export interface Interval {
  readonly from: number;
  readonly to: number;
  readonly run?: Run;
  readonly panels?: { readonly first: number; readonly last: number };
}

/** What lies between two breaks, chainages in mm. */
export type Lined = Pick<Run, 'number' | 'from' | 'to' | 'tailBreak' | 'headBreak'>;

const cache = new WeakMap<Conveyor, readonly Run[]>();

/** The runs of a conveyor in chainage order; overlapping breaks leave no run between them. */
export function runsOf(conveyor: Conveyor): readonly Run[] {
  const known = cache.get(conveyor);
  if (known) return known;
  const runs = runsBetween(conveyor.breaks).map((lined): Run => {
    const { number, from, to, tailBreak, headBreak } = lined;
    const label = `run ${number} (${tailBreak.name} to ${headBreak.name})`;
    return { conveyor, ...lined, length: to - from, label };
  });
  cache.set(conveyor, runs);
  return runs;
}

/** As `runsOf`, of breaks that are of no conveyor yet; those at both ends among them. */
export function runsBetween(all: readonly Break[]): readonly Lined[] {
  const lined: Lined[] = [];
  const breaks = [...all].sort((a, b) => a.from.value - b.from.value || a.to.value - b.to.value);
  for (let i = 0; i + 1 < breaks.length; i++) {
    const tailBreak = breaks[i]!; // i and i + 1 are below breaks.length
    const headBreak = breaks[i + 1]!;
    const from = tailBreak.to.value;
    const to = headBreak.from.value;
    if (to > from) lined.push({ number: lined.length + 1, from, to, tailBreak, headBreak });
  }
  return lined;
}

/** The run at a chainage (mm); undefined at a break or outside the conveyor. */
export function runAt(conveyor: Conveyor, chainage: number): Run | undefined {
  return runsOf(conveyor).find((run) => chainage >= run.from && chainage <= run.to);
}

/** `2`, `above Gate`, `between Inlet and Gate`. */
export function runUseText(use: RunUse): string {
  switch (use.by) {
    case 'number':
      return String(use.number.count);
    case 'break':
      return `${use.side} ${use.break.name}`;
    case 'breaks':
      return `between ${use.break.name} and ${use.other.name}`;
  }
}

/** `panel 2 of run 1`, `panels 2 to 4 of run above Gate`. */
export function panelsText(first: number, last: number, run: number | string): string {
  return `${first === last ? `panel ${first}` : `panels ${first} to ${last}`} of run ${run}`;
}

/** Numbers in order, by what follows one another: 1, 2, 3, 5 are 1 to 3, and 5. */
export function sideBySide(
  numbers: readonly number[],
): readonly { readonly first: number; readonly last: number }[] {
  const groups: { first: number; last: number }[] = [];
  for (const number of numbers) {
    const before = groups.at(-1);
    if (before?.last === number - 1) before.last = number;
    else groups.push({ first: number, last: number });
  }
  return groups;
}

/** The breaks that a run is named by. */
export function breaksNamed(use: RunUse): readonly NameUse[] {
  switch (use.by) {
    case 'number':
      return [];
    case 'break':
      return [use.break];
    case 'breaks':
      return [use.break, use.other];
  }
}

export function findRun(conveyor: Conveyor, use: RunUse): Run | undefined {
  return runNamed(runsOf(conveyor), use);
}

export function runNamed<T extends Lined>(runs: readonly T[], use: RunUse): T | undefined {
  return runs.find((run) => {
    if (use.by === 'number') return run.number === use.number.count;
    if (use.by === 'breaks') {
      const ends = [run.tailBreak.name, run.headBreak.name];
      return (
        ends.includes(use.break.name) && ends.includes(use.other.name) && use.break.name !== use.other.name
      );
    }
    return (use.side === 'above' ? run.tailBreak : run.headBreak).name === use.break.name;
  });
}

/**
 * Chainages of a stretch. For panels, `panelEnds` gives the chainages of the joints of the run (first the tail end, last
 * the head end), so panel n lies between ends n−1 and n. Undefined where the run or a panel does not exist.
 */
export function intervalOf(
  conveyor: Conveyor,
  stretch: Stretch,
  panelEnds: (run: Run) => readonly number[],
): Interval | undefined {
  switch (stretch.kind) {
    case 'all':
      return { from: 0, to: conveyor.length.value };
    case 'chainage':
      return { from: stretch.from.value, to: stretch.to.value };
    case 'run': {
      const run = findRun(conveyor, stretch.run);
      return run && { from: run.from, to: run.to, run };
    }
    case 'panels': {
      const run = findRun(conveyor, stretch.run);
      if (!run) return undefined;
      const ends = panelEnds(run);
      const from = ends[stretch.first.count - 1];
      const to = ends[stretch.last.count];
      if (from === undefined || to === undefined || stretch.first.count > stretch.last.count)
        return undefined;
      return { from, to, run, panels: { first: stretch.first.count, last: stretch.last.count } };
    }
  }
}
