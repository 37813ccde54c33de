// Keeps the account of one block while it is read: which facts were seen, which one is written twice, which required one is
// missing. A block with a line that cannot be read gets no complaint about missing facts: the line may well be the fact. Whether
// such a block stands without its line is said in left-out.ts; the facts of a plant and the rows of an inspection stand alone.

import type { AstNode } from 'langium';
import type { Origin } from '../../domain/model/origin.js';
import type { LeftLine } from '../recover.js';
import { standingOf, type Footing } from './left-out.js';
import { most } from './limits.js';
import { keywordOf, type Reader } from './reader.js';

export interface FactAccount {
  readonly node: AstNode;
  readonly what: string;
  readonly name: string;
  readonly nameOrigin: Origin;
  /** Lines of this block that cannot be read. */
  readonly left: readonly LeftLine[];
  /** Whether the block can be used without them, and whether they may have said more of it. */
  readonly standing: Footing;
  readonly stands: boolean;
  /** True the first time a fact is seen; the second time the author is told. */
  first(fact: string, node: AstNode): boolean;
  /** Says that a required fact is missing, unless it was written but could not be read. `called`: what people call it. */
  require(fact: string, value: unknown, example: string, called?: string): void;
  /** False, and told, where there are more of a thing than can be planned with (`most` in limits.ts). */
  isFew(things: keyof typeof most, count: number, origin: Origin): boolean;
}

export function openBlock(
  reader: Reader,
  node: AstNode,
  what: string,
  left: readonly LeftLine[],
): FactAccount {
  const seen = new Map<string, Origin>();
  const named = reader.name(node, 'name') ?? reader.use(node, 'conveyor');
  const name = named?.name ?? '';
  const nameOrigin = named?.origin ?? reader.origin(node);
  const standing = standingOf(what, left, firstWords(node));
  return {
    node,
    what,
    name,
    nameOrigin,
    left,
    standing,
    stands: standing !== 'left out',
    first(fact, factNode) {
      const origin = reader.origin(factNode);
      const before = seen.get(fact);
      if (before) {
        reader.problems.push({
          kind: 'repeated fact',
          origin,
          block: `${what} ${name}`.trim(),
          fact,
          first: before,
        });
        return false;
      }
      seen.set(fact, origin);
      return true;
    },
    require(fact, value, example, called = fact) {
      if (value !== undefined || seen.has(fact) || left.length > 0) return;
      const brace = keywordOf(node, '{');
      const insertAt = brace ? { source: reader.source, start: brace.end, end: brace.end } : nameOrigin;
      reader.problems.push({
        kind: 'missing fact',
        origin: nameOrigin,
        block: what,
        name,
        fact: called,
        example,
        insertAt,
      });
    },
    isFew(things, count, origin) {
      if (count <= most[things]) return true;
      reader.problems.push({
        kind: 'too many',
        origin,
        block: `${what} ${name}`,
        what: things,
        count,
        most: most[things],
      });
      return false;
    },
  };
}

/** Of the facts of a record that make it what it is. */
function firstWords(node: AstNode): ReadonlySet<string> {
  if (!('facts' in node)) return new Set();
  // Every block of the grammar that has `facts` has a list of nodes there.
  return new Set((node.facts as readonly AstNode[]).map(({ $type }) => wordOf[$type] ?? ''));
}

const wordOf: Readonly<Record<string, string>> = {
  LinerUse: 'liner',
  Scope: 'scope',
  ScrewUse: 'screw',
  PanelMove: 'panel',
};

/** Drops the entries that are undefined, so that a fact left out is absent and not merely empty. */
/** Own words in the order in which they were written, and who says so. */
export function notesOf(node: {
  readonly notes: readonly string[];
  readonly by?: string;
}): string | undefined {
  return [...node.notes, ...(node.by === undefined ? [] : [`by ${node.by}`])].join('; ') || undefined;
}

/** Own words alone, of what keeps beside them who says so. */
export function wordsSaid({ notes }: { readonly notes: readonly string[] }): string | undefined {
  return notes.join('; ') || undefined;
}

export function stated<T extends object>(
  facts: T,
): { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
} {
  // Only entries whose value is undefined are removed, which is what the result type says.
  return Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined)) as never;
}

/** Items that could be read. */
export function present<T>(items: readonly (T | undefined)[]): readonly T[] {
  return items.filter((item) => item !== undefined);
}
