// What came, went, changed, was renamed or moved between two ledgers? By identities only: what a change means is for others.
// A name that changed and a text that was moved are no changes of what is said, so they are told apart first.

import { isRecord, type LedgerBlock, type LedgerFact } from '../../../domain/model/ledger.js';
import { namesFollowed, renamesOf, withoutNeedlessPlants, type Rename } from './renames.js';

export interface FactChange {
  readonly identity: string;
  /** Undefined where it was not there before, or is gone. */
  readonly before: LedgerFact | undefined;
  readonly after: LedgerFact | undefined;
  /** Only quoted texts differ: a remark, a name of a person. */
  readonly wordsOnly: boolean;
}

export interface BlockChange {
  readonly before: LedgerBlock;
  readonly after: LedgerBlock;
  readonly facts: readonly FactChange[];
}

export interface Move {
  readonly from: string;
  readonly to: string;
  readonly blocks: readonly string[];
}

export interface LedgerChanges {
  readonly added: readonly LedgerBlock[];
  readonly removed: readonly LedgerBlock[];
  readonly changed: readonly BlockChange[];
  readonly renames: readonly Rename[];
  readonly moves: readonly Move[];
}

/** @param before by the names it had; they are followed to those of `after` wherever a block or a part was only renamed. */
export function ledgerChanges(
  given: readonly LedgerBlock[],
  givenAfter: readonly LedgerBlock[],
): LedgerChanges {
  const after = withoutNeedlessPlants(givenAfter);
  const first = withoutNeedlessPlants(given);
  const renames = renamesOf(first, after);
  const before = namesFollowed(first, renames);
  const { pairs, removed, added } = matched(before, after);
  const redated = redatedPairs(removed, added);
  const gone = new Set(redated.map(([old]) => old));
  const come = new Set(redated.map(([, fresh]) => fresh));
  const changed = [...pairs, ...redated].flatMap(([old, fresh]): readonly BlockChange[] => {
    const facts = factChanges(old, fresh);
    return facts.length === 0 ? [] : [{ before: old, after: fresh, facts }];
  });
  return {
    added: added.filter((block) => !come.has(block)),
    removed: removed.filter((block) => !gone.has(block)),
    changed,
    renames,
    moves: movesOf(pairs),
  };
}

type Pair = readonly [LedgerBlock, LedgerBlock];

/** Blocks of one identity on both sides; where there are several, first those that say the same, then in their order. */
function matched(
  before: readonly LedgerBlock[],
  after: readonly LedgerBlock[],
): { pairs: readonly Pair[]; removed: readonly LedgerBlock[]; added: readonly LedgerBlock[] } {
  const left = new Map<string, LedgerBlock[]>();
  for (const block of before) left.set(block.identity, [...(left.get(block.identity) ?? []), block]);
  const pairs: Pair[] = [];
  const added: LedgerBlock[] = [];
  const waiting: LedgerBlock[] = [];
  const take = (fresh: LedgerBlock, fits: (old: LedgerBlock) => boolean): boolean => {
    const group = left.get(fresh.identity) ?? [];
    const at = group.findIndex(fits);
    const [old] = at < 0 ? [] : group.splice(at, 1);
    if (old) pairs.push([old, fresh]);
    return old !== undefined;
  };
  for (const block of after)
    if (!take(block, (old) => factChanges(old, block).length === 0)) waiting.push(block);
  for (const block of waiting) if (!take(block, () => true)) added.push(block);
  const place = new Map(after.map((block, i) => [block, i]));
  pairs.sort((a, b) => (place.get(a[1]) ?? 0) - (place.get(b[1]) ?? 0));
  return { pairs, removed: before.filter((block) => left.get(block.identity)?.includes(block)), added };
}

/** A record that went and one that came on another day, half of which or more is the same: its date was edited. */
function redatedPairs(removed: readonly LedgerBlock[], added: readonly LedgerBlock[]): readonly Pair[] {
  const taken = new Set<LedgerBlock>();
  return removed.flatMap((old): readonly Pair[] => {
    if (!isRecord(old.kind)) return [];
    const candidates = added
      .filter((fresh) => fresh.kind === old.kind && fresh.name === old.name && !taken.has(fresh))
      .map((fresh) => ({ fresh, share: shareInCommon(old, fresh) }))
      .sort((a, b) => b.share - a.share);
    const [best] = candidates;
    if (!best || best.share < 0.5) return [];
    taken.add(best.fresh);
    return [[old, best.fresh]];
  });
}

function shareInCommon(one: LedgerBlock, other: LedgerBlock): number {
  const [own, its] = [one, other].map(({ facts }) =>
    facts.filter(({ identity }) => !usual.has(identity)).map(({ value, remark }) => `${value} ${remark}`),
  );
  const said = new Set(its);
  const same = (own ?? []).filter((fact) => said.has(fact)).length;
  return same / Math.max(1, own?.length ?? 0, said.size);
}

/** Facts in which any two records of a conveyor are alike. */
const usual = new Set(['by', 'view', 'gauge', 'liner', 'screw', 'fitting temperature']);

/** In the order of the later block, what is gone at the end. */
export function factChanges(before: LedgerBlock, after: LedgerBlock): readonly FactChange[] {
  const left = new Map<string, LedgerFact[]>();
  for (const fact of before.facts) left.set(fact.identity, [...(left.get(fact.identity) ?? []), fact]);
  const changes: FactChange[] = [];
  // Of a record the day is part of its identity, be it one that exists or not.
  if (isRecord(after.kind) && dateOf(before) !== dateOf(after))
    changes.push({ identity: 'date', before: dateFact(before), after: dateFact(after), wordsOnly: false });
  for (const fact of after.facts) {
    const old = left.get(fact.identity)?.shift();
    if (old && old.value === fact.value && old.remark === fact.remark) continue;
    changes.push({
      identity: fact.identity,
      before: old,
      after: fact,
      wordsOnly: old?.value === fact.value || (old === undefined && isWords(fact)),
    });
  }
  for (const old of [...left.values()].flat())
    changes.push({ identity: old.identity, before: old, after: undefined, wordsOnly: isWords(old) });
  return [...changes, ...orderChange(before, after)];
}

/** Remarks, photographs and names of people: they change no number, whether they come, go or change. */
function isWords({ value }: LedgerFact): boolean {
  return value === '' || /^(by|finding)\b/.test(value);
}

/** As written, behind kind and name in the identity of a record. */
function dateOf({ kind, name, identity }: LedgerBlock): string {
  return identity.slice(kind.length + name.length + 2).split(' ')[0] ?? '';
}

function dateFact(block: LedgerBlock): LedgerFact {
  const text = dateOf(block);
  return { identity: 'date', words: text, value: text, remark: '', reading: false, line: block.line };
}

/** Layers count from the screw side and sections from the tail: the same facts in another order are another machine. */
function orderChange(before: LedgerBlock, after: LedgerBlock): readonly FactChange[] {
  return ['layer', 'section'].flatMap((keyword): readonly FactChange[] => {
    const names = (block: LedgerBlock): readonly LedgerFact[] =>
      block.facts.filter(({ identity }) => identity.startsWith(`${keyword} `));
    const [old, fresh] = [names(before), names(after)];
    const kept = new Set(fresh.map(({ identity }) => identity));
    const stayed = old.filter(({ identity }) => kept.has(identity)).map(({ identity }) => identity);
    const there = new Set(stayed);
    const now = fresh.filter(({ identity }) => there.has(identity)).map(({ identity }) => identity);
    if (stayed.join() === now.join()) return [];
    const fact = (names: readonly string[], line: number): LedgerFact => ({
      identity: `order of ${keyword}s`,
      words: `order of ${keyword}s ${names.map((name) => name.slice(keyword.length + 1)).join(', ')}`,
      value: names.join(),
      remark: '',
      reading: false,
      line,
    });
    return [
      {
        identity: `order of ${keyword}s`,
        before: fact(stayed, old[0]?.line ?? before.line),
        after: fact(now, fresh[0]?.line ?? after.line),
        wordsOnly: false,
      },
    ];
  });
}

function movesOf(pairs: readonly Pair[]): readonly Move[] {
  const moves = new Map<string, { from: string; to: string; blocks: string[] }>();
  for (const [old, fresh] of pairs) {
    if (old.uri === fresh.uri || old.uri === '' || fresh.uri === '') continue;
    const key = `${old.uri}\n${fresh.uri}`;
    const move = moves.get(key) ?? { from: old.uri, to: fresh.uri, blocks: [] };
    move.blocks.push(fresh.identity);
    moves.set(key, move);
  }
  return [...moves.values()];
}
