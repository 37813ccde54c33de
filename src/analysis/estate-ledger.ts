// The ledger of all texts of an analysis: what is compared with another state, and what a saved report keeps of its records.

import type { Analysis } from './analysis.js';
import type { LedgerBlock } from '../domain/model/ledger.js';
import { ledgerOf } from '../language/ledger.js';

export interface EstateLedger {
  readonly blocks: readonly LedgerBlock[];
  /** Texts that do not parse. */
  readonly unreadable: readonly string[];
}

/** @param nameOf what a text is called for a reader */
export function estateLedger(
  analysis: Analysis,
  nameOf: (uri: string) => string = (uri) => uri,
): EstateLedger {
  const blocks: LedgerBlock[] = [];
  const unreadable: string[] = [];
  for (const uri of analysis.uris) {
    const source = analysis.sourceOf(uri);
    if (source === undefined) continue;
    const ledger = ledgerOf(analysis.textOf({ source, start: 0, end: Infinity }), nameOf(uri));
    if (ledger) blocks.push(...ledger);
    else unreadable.push(nameOf(uri));
  }
  return { blocks, unreadable };
}
