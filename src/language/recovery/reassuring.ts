// Words that say of a thing that it is as it should be, or is so again: a condition with such a word as its note would say the opposite.

const good: ReadonlySet<string> = new Set(
  'fine good normal ok okay quiet sound tight clean gone cured ended stopped freely fixed'.split(' '),
);

/** They turn round what stands behind them. */
const not: ReadonlySet<string> = new Set(['not', 'no', 'never', 'none', 'without']);

export function isReassuring(image: string): boolean {
  return good.has(image.toLowerCase()) || not.has(image.toLowerCase());
}

/** `not leaking`, `no longer loose` */
export function isTurnedAt(words: readonly string[], at: number): boolean {
  const before = words[at - 1]?.toLowerCase() ?? '';
  return not.has(before) || (fills.has(before) && not.has(words[at - 2]?.toLowerCase() ?? ''));
}

/**
 * Of words about a thing that is wrong: it is over. `noise gone`, `not leaking`, `no longer loose` say so, and `loose, not tightened yet`
 * does not. `from` is the first word that says what is wrong, `taken` those that say nothing else.
 */
export function isOverIn(words: readonly string[], from: number, taken: ReadonlySet<number>): boolean {
  const plain = words.map((word) => word.toLowerCase());
  const isTurned = (at: number): boolean => isTurnedAt(plain, at);
  // `hand tight`, `with clean fan`: only what is said of the thing itself.
  const isOfItself = (at: number): boolean =>
    at === 0 ||
    (plain[at] === 'stopped' && !amid.has(plain[at - 1] ?? '')) ||
    taken.has(at - 1) ||
    taken.has(at + 1) ||
    leads.has(plain[at - 1] ?? '') ||
    // `noise in gearbox gone`
    (plain[at] === 'gone' && at > from && whose.has(plain[at - 2] ?? '') && !amid.has(plain[at - 1] ?? ''));
  // `stuck tight`
  const isStuck = (at: number): boolean => plain[at] === 'tight' && stuck.has(plain[at - 1] ?? '');
  const isGood = plain.some(
    (word, at) => !taken.has(at) && good.has(word) && !isTurned(at) && !isStuck(at) && isOfItself(at),
  );
  return isGood || isTurnedAt(words, from);
}

const whose: ReadonlySet<string> = new Set(['in', 'of', 'from', 'at']);

const amid: ReadonlySet<string> = new Set(['when', 'while', 'if', 'after', 'is', 'was', 'be', 'has', 'we']);

const stuck: ReadonlySet<string> = new Set(['stuck', 'jammed', 'seized', 'rusted', 'shut', 'frozen']);

const leads: ReadonlySet<string> = new Set(['now', 'again', 'is', 'was', 'all', 'ok', 'and', 'moves', ',']);

const fills: ReadonlySet<string> = new Set(['longer', 'more', 'further', 'any']);
