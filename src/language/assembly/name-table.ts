// Names of one kind across all texts: the first block of a name counts, a second is reported. A name whose block cannot be
// used is still known, so that its users are not told that it does not exist.

import type { Problem } from '../../domain/model/problem.js';
import type { NameUse } from '../../domain/model/stated.js';
import type { Named } from '../sheet.js';
import { compareNames } from '../compare-names.js';
import { nearest } from '../nearest.js';

export interface NameTable<T> {
  readonly what: string;
  readonly byName: ReadonlyMap<string, Named<T>>;
  /** Usable ones, by name. */
  readonly items: readonly T[];
}

export function collect<T>(what: string, all: readonly Named<T>[], problems: Problem[]): NameTable<T> {
  const byName = new Map<string, Named<T>>();
  for (const one of finishedFirst(all)) {
    const first = byName.get(one.name);
    if (first && one.unfinished) continue;
    if (first)
      problems.push({ kind: 'repeated name', origin: one.origin, what, name: one.name, first: first.origin });
    else byName.set(one.name, one);
  }
  const items = [...byName.values()]
    .sort((a, b) => compareNames(a.name, b.name))
    .flatMap(({ value }) => (value === undefined ? [] : [value]));
  return { what, byName, items };
}

/** Blocks that are no more than a name come last, so that they never stand in the way of a real one. */
export function finishedFirst<T extends Named<unknown>>(all: readonly T[]): readonly T[] {
  return all.some((one) => one.unfinished)
    ? [...all.filter((one) => !one.unfinished), ...all.filter((one) => one.unfinished)]
    : all;
}

/** The block of that name, perhaps without a value; a name that nothing has is reported. */
export function findNamed<T>(table: NameTable<T>, use: NameUse, problems: Problem[]): Named<T> | undefined {
  const found = table.byName.get(use.name);
  // A block whose name cannot be read may be this one.
  if (!found && !table.byName.has(''))
    problems.push({
      kind: 'unknown name',
      origin: use.origin,
      what: table.what,
      name: use.name,
      known: closest(use.name, [...table.byName.keys()]),
    });
  return found;
}

/** The few names an author may have meant, nearest first. */
export function closest(name: string, known: readonly string[]): readonly string[] {
  return nearest(
    name,
    known.length > 2000
      ? known.filter((one) => Math.abs(one.length - name.length) < 3).slice(0, 2000)
      : known,
  ).slice(0, 5);
}
