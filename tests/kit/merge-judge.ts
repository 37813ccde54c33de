// Is a merge of two concurrent edits right? Held against the models of what each side did: without a conflict the text says
// exactly what must be said; with conflicts nothing that either side says, and the other did not take out, is missing from both
// ways of settling them, and nothing stands twice.

import { blocksOf } from '../../src/language/blocks.js';
import { sidesOf } from '../../src/language/conflict.js';
import type { MergedTexts } from '../../src/language/merge-texts.js';
import type { Concurrent, Said } from './concurrent-edits.js';

/** What is wrong with it, in words; undefined where nothing is. */
export function wrongWith(
  { base, ours, theirs }: Concurrent,
  { text, conflicts }: MergedTexts,
): string | undefined {
  const marked = /^<{7} /m.test(text);
  if (marked !== conflicts > 0) return 'conflicts are counted and not shown, or the other way round';
  const wanted = reckoned(base.said, ours.said, theirs.said);
  if (conflicts === 0) {
    const said = saidIn(text);
    if (typeof said === 'string') return said;
    const missing = [...wanted].filter(([key, { must }]) => must !== undefined && said.get(key) !== must);
    const more = [...said.keys()].filter((key) => wanted.get(key)?.must === undefined);
    return missing.length + more.length === 0
      ? undefined
      : `missing ${missing.map(([key]) => key).join('; ')}, too much ${more.join('; ')}`;
  }
  const [first, second] = sidesOf(text).map(saidIn);
  if (typeof first === 'string' || typeof second === 'string' || !first || !second)
    return `a side reads ${String(first)} ${String(second)}`;
  for (const [key, { must, either }] of wanted) {
    const values = [first.get(key), second.get(key)];
    const all = must === undefined ? either : [must];
    if (all.some((value) => !values.includes(value)))
      return `lost in both ways of settling: ${key} ${all.join(' or ')}`;
  }
  return undefined;
}

interface Wanted {
  /** What it must say; undefined where both sides changed it, or where it must be gone. */
  readonly must: string | undefined;
  /** What the sides say where they do not agree. */
  readonly either: readonly string[];
}

function reckoned(base: Said, ours: Said, theirs: Said): ReadonlyMap<string, Wanted> {
  const [b, o, t] = [flat(base), flat(ours), flat(theirs)];
  const wanted = new Map<string, Wanted>();
  for (const key of new Set([...b.keys(), ...o.keys(), ...t.keys()])) {
    const [was, our, their] = [b.get(key), o.get(key), t.get(key)];
    if (our === their || their === was) wanted.set(key, { must: our, either: [] });
    else if (our === was) wanted.set(key, { must: their, either: [] });
    else wanted.set(key, { must: undefined, either: [our, their].filter((value) => value !== undefined) });
  }
  return wanted;
}

function flat(said: Said): ReadonlyMap<string, string> {
  return new Map(
    [...said].flatMap(([block, facts]) =>
      [...facts].map(([fact, words]): [string, string] => [`${block}: ${fact}`, words]),
    ),
  );
}

/** By block and fact; in words what stands twice. */
function saidIn(text: string): ReadonlyMap<string, string> | string {
  const blocks = blocksOf(text);
  if (!blocks) return `does not parse:\n${text}`;
  const said = new Map<string, string>();
  const there = new Set<string>();
  for (const { identity, head, facts } of blocks) {
    if (there.has(identity)) return `${identity} stands twice`;
    there.add(identity);
    for (const fact of [...head, ...facts]) {
      // A remark goes by what it says.
      const name = fact.words.startsWith('finding') ? fact.words : fact.identity;
      const key = `${identity}: ${name}`;
      if (said.has(key)) return `${key} stands twice`;
      said.set(key, fact.words);
    }
  }
  return said;
}
