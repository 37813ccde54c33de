// The ledger of a text: what it writes down, block by block and fact by fact, for whoever compares two states of an estate.

import type { LedgerBlock, LedgerFact } from '../domain/model/ledger.js';
import { blocksOf, type TextBlock, type TextFact } from './blocks.js';
import { linesOf, type Lines } from './lines.js';
import { readDay } from './lowering/days.js';

/** Undefined where the text does not parse. */
export function ledgerOf(text: string, uri: string): readonly LedgerBlock[] | undefined {
  const lines = linesOf(text);
  return blocksOf(text)?.map((block) => ledgerBlock(block, uri, lines));
}

function ledgerBlock(block: TextBlock, uri: string, lines: Lines): LedgerBlock {
  const { kind, identity, name, date } = block;
  const read = date === undefined ? undefined : readDay(date);
  return {
    kind,
    identity,
    name,
    ...(read?.ok ? { day: read.day } : {}),
    facts: [...block.head, ...block.facts].map((fact) => ledgerFact(fact, lines)),
    uri,
    line: lines.at(block.start).line,
  };
}

function ledgerFact({ identity, words, value, remark, type, start }: TextFact, lines: Lines): LedgerFact {
  return {
    identity,
    words,
    value,
    remark,
    reading: type === 'Reading' || type === 'OldPanel',
    line: lines.at(start).line,
  };
}
