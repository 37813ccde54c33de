// Entries in the browser's storage, so that a dead battery loses nothing; says so where the browser keeps nothing. Several tabs may
// have one form open: what another tab wrote since is merged in (merge.ts) before anything is written over it.

import { merged, same, type Merged, type Plain } from './merge.js';

export interface Store<T> {
  load(): Partial<T>;
  /** Writes what is given. What another tab wrote meanwhile is merged into it first and handed to `adopt`. */
  keep(state: T): void;
  /** Puts the entries aside, to be found again with `aside`; nothing is lost by beginning anew. */
  putAside(state: T): void;
  aside(): readonly T[];
  takeBack(index: number): T | undefined;
  /** Deletes the entries and those put aside. */
  drop(): void;
  words(): string;
  /** Whether the browser kept what it was last given. */
  works(): boolean;
}

export interface StoreSettings<T> {
  readonly key: string;
  /** Parts of the entries that are one answer. */
  readonly whole?: (path: readonly string[]) => boolean;
  /** Another tab typed something: `value` is what both typed. Called with what this tab has. */
  readonly adopt: (mine: T, merge: Merged) => void;
  readonly mine: () => T;
}

export function storeFor<T>({ key, whole, adopt, mine }: StoreSettings<T>): Store<T> {
  let works = true;
  /** What this tab last read or wrote: on it both tabs agree. */
  let agreed: string | null = null;
  const attempt = <R>(work: () => R, otherwise: R): R => {
    try {
      return work();
    } catch {
      works = false;
      return otherwise;
    }
  };
  const asideKey = `${key} aside`;
  const readAside = (): T[] => attempt(() => (parsed(localStorage.getItem(asideKey)) ?? []) as T[], []); // only this store writes it
  const writeAside = (all: readonly T[]): void =>
    attempt(() => localStorage.setItem(asideKey, JSON.stringify(all)), undefined);
  /** Takes in what another tab wrote. */
  const meet = (written: string | null): void => {
    if (written === null || written === agreed) return;
    const theirs = parsed(written);
    if (theirs === undefined) return;
    const [own, base] = [mine(), agreed];
    // Agreed on before it is handed over: a form that shows it keeps it, and would meet it again without end.
    agreed = written;
    adopt(own, merged(parsed(base) ?? {}, plain(own), theirs, whole));
  };
  addEventListener('storage', (event) => {
    // What stands there now: the event tells of a writing that this tab may have written over since.
    if (event.key === key) attempt(() => meet(localStorage.getItem(key)), undefined);
  });
  return {
    load: () =>
      attempt(() => {
        agreed = localStorage.getItem(key);
        const found = parsed(agreed);
        // What cannot be read is put where a person can still find it, and not written over.
        if (agreed !== null && found === undefined) localStorage.setItem(`${key} unreadable`, agreed);
        return (found ?? {}) as Partial<T>; // this store wrote it; the form fills in what another version lacked
      }, {}),
    keep: (state) =>
      attempt(() => {
        meet(localStorage.getItem(key));
        // A tab that only listens writes nothing over what another types meanwhile.
        if (agreed !== null && same(parsed(agreed), plain(state))) return;
        const text = JSON.stringify(state);
        localStorage.setItem(key, text);
        agreed = text;
        works = true;
      }, undefined),
    putAside: (state) => writeAside([...readAside(), state]),
    aside: readAside,
    takeBack: (index) => {
      const all = readAside();
      const [taken] = all.splice(index, 1);
      writeAside(all);
      return taken;
    },
    drop: () =>
      attempt(() => {
        for (const each of [key, asideKey]) localStorage.removeItem(each);
        agreed = null;
      }, undefined),
    works: () => works,
    words: () =>
      works
        ? 'Kept on this phone.'
        : 'NOT KEPT: this browser stores nothing. Copy the text before you close.',
  };
}

function parsed(text: string | null): Plain {
  if (text === null) return undefined;
  try {
    return JSON.parse(text) as Plain; // whatever it holds is plain
  } catch {
    return undefined;
  }
}

/** As the storage would give it back. */
function plain(value: unknown): Plain {
  return JSON.parse(JSON.stringify(value)) as Plain;
}
