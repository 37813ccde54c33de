// The records behind a report, fact by fact as they were written: what a later comparison with this report needs to see whether
// one of them was edited, taken out or put in since. Sorted, so that moving a text changes nothing.

import type { LedgerBlock } from '../../domain/model/ledger.js';
import { day, type Json } from './json-values.js';

export function ledgerJson(ledger: readonly LedgerBlock[]): Json {
  return [...ledger]
    .sort((a, b) => (a.identity < b.identity ? -1 : a.identity > b.identity ? 1 : 0))
    .map((block) => ({
      kind: block.kind,
      block: block.identity,
      name: block.name,
      day: day(block.day),
      facts: block.facts.map(({ identity, words, reading }) => ({
        fact: identity,
        words,
        ...(reading ? { reading } : {}),
      })),
    }));
}
