// What was written down, block by block and fact by fact, each under a name of its own that stays the same while its value is
// edited. It knows nothing of what the facts mean: two ledgers tell which facts came, went, changed or moved, whatever they
// are, so that no edit of a record goes unseen. Made by src/language; compared by the change summary and the merge of texts.

import type { CalendarDay } from '../units/calendar.js';

export const blockKinds = [
  'plant',
  'liner',
  'screw',
  'conveyor',
  'inspection',
  'correction',
  'reline',
  'panels moved',
  'screw change',
  'meter change',
  'duty',
  'drive change',
  'patch',
  'serviced',
  'job',
] as const;
export type BlockKind = (typeof blockKinds)[number];

export interface LedgerFact {
  /** `P1`, `condemn at`, `break Gate`, `meter`: one of a block, but for the rare block that says a thing twice. */
  readonly identity: string;
  /** As written, with single blanks and without comments: `P1 thickness 4.6 mm`. */
  readonly words: string;
  /** Equal where two spellings say the same: quantities in base units, quoted texts left out. */
  readonly value: string;
  /** The quoted texts in it: remarks, titles, names of people; they change no number. */
  readonly remark: string;
  /** Says how a liner stands at a place. */
  readonly reading: boolean;
  /** Line of the text, from 1. */
  readonly line: number;
}

export interface LedgerBlock {
  readonly kind: BlockKind;
  /** `inspection DG1 2026-08-17`, `liner TwoLayer12`. */
  readonly identity: string;
  /** What it is called, or the conveyor a record is of, as written. */
  readonly name: string;
  /** Of a record. */
  readonly day?: CalendarDay;
  /** What stands in its head comes first. */
  readonly facts: readonly LedgerFact[];
  /** The text it stands in, and its line there, from 1. */
  readonly uri: string;
  readonly line: number;
}

/** Blocks about something that happened on a day. */
export function isRecord(kind: BlockKind): boolean {
  switch (kind) {
    case 'inspection':
    case 'correction':
    case 'reline':
    case 'panels moved':
    case 'screw change':
    case 'meter change':
    case 'duty':
    case 'drive change':
    case 'patch':
    case 'serviced':
      return true;
    case 'plant':
    case 'liner':
    case 'screw':
    case 'conveyor':
    case 'job':
      return false;
  }
}
