// Two tabs of one form, one storage: what each of them typed since they last agreed is kept from both. Where both changed the same
// field to different things, the tab that asks wins and what the other had is told, so that it can be carried along as typed.

export type Plain =
  null | undefined | string | number | boolean | readonly Plain[] | { readonly [name: string]: Plain };

export interface Merged {
  readonly value: Plain;
  /** What the other tab had where both changed one thing. */
  readonly displaced: readonly { readonly path: readonly string[]; readonly typed: Plain }[];
}

/** `base`: what both last agreed on. `whole` says which parts are one answer and are never mixed. */
export function merged(
  base: Plain,
  mine: Plain,
  theirs: Plain,
  whole: (path: readonly string[]) => boolean = () => false,
  path: readonly string[] = [],
): Merged {
  if (same(mine, theirs) || same(base, theirs)) return { value: mine, displaced: [] };
  if (same(base, mine)) return { value: theirs, displaced: [] };
  if (isList(mine) && isList(theirs)) {
    // A list only grows or has an item changed: items of the other tab that are new to both go to the end.
    const known = [...mine, ...(isList(base) ? base : [])];
    return {
      value: [...mine, ...theirs.filter((item) => !known.some((one) => same(one, item)))],
      displaced: [],
    };
  }
  if (isRecord(mine) && isRecord(theirs) && !whole(path)) {
    const before = isRecord(base) ? base : {};
    const names = [...new Set([...Object.keys(mine), ...Object.keys(theirs)])];
    const parts = names.map(
      (name) => [name, merged(before[name], mine[name], theirs[name], whole, [...path, name])] as const,
    );
    return {
      value: Object.fromEntries(
        parts.flatMap(([name, { value }]) => (value === undefined ? [] : [[name, value]])),
      ),
      displaced: parts.flatMap(([, { displaced }]) => displaced),
    };
  }
  return { value: mine, displaced: theirs === undefined ? [] : [{ path, typed: theirs }] };
}

/** In whichever order the parts of a record were typed. */
export function same(a: Plain, b: Plain): boolean {
  if (isList(a) && isList(b)) return a.length === b.length && a.every((item, i) => same(item, b[i]));
  if (isRecord(a) && isRecord(b))
    return [...new Set([...Object.keys(a), ...Object.keys(b)])].every((name) => same(a[name], b[name]));
  return a === b;
}

function isList(value: Plain): value is readonly Plain[] {
  return Array.isArray(value);
}

function isRecord(value: Plain): value is { readonly [name: string]: Plain } {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
