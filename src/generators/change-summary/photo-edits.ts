// Which photos show something else under the name they had? Their texts say the same on both sides, so only their bytes tell. A
// photo is evidence of its day: one that is exchanged is told with the records that were edited, though no number rests on it.

import type { LedgerBlock, LedgerFact } from '../../domain/model/ledger.js';
import { recordName, type HistoryEdit } from './parts/history.js';

/** What is known of a photo's bytes; two are alike where any one of these says so. */
export interface PhotoMark {
  /** SHA-256 of the bytes, hexadecimal. */
  readonly content?: string;
  /** As a git repository of either kind names them. */
  readonly gitSha1?: string;
  readonly gitSha256?: string;
  /** Bytes. */
  readonly size: number;
}

/** By name below the estate, with forward slashes; a photo that is not there has none. */
export type PhotoMarks = ReadonlyMap<string, PhotoMark>;

export interface NamedPhoto {
  /** Below the estate. */
  readonly name: string;
  readonly block: LedgerBlock;
  readonly fact: LedgerFact;
}

/** Photos that texts name, each by the place of its text; a path that leads upwards names none. */
export function photosNamed(ledger: readonly LedgerBlock[]): readonly NamedPhoto[] {
  return ledger.flatMap((block) =>
    block.facts.flatMap((fact) =>
      [...fact.words.matchAll(/\bphoto "((?:[^"\\]|\\.)+)"/g)].flatMap(([, path = '']) => {
        const name = [
          ...block.uri.split('/').slice(0, -1),
          ...path.split('/').filter((part) => part !== '.'),
        ];
        return name.includes('..') ? [] : [{ name: name.join('/'), block, fact }];
      }),
    ),
  );
}

/** Of photos that both sides name and have. */
export function photoEdits(
  before: PhotoMarks | undefined,
  after: PhotoMarks | undefined,
  ledger: readonly LedgerBlock[],
): readonly HistoryEdit[] {
  if (!before || !after) return [];
  const told = new Set<string>();
  return photosNamed(ledger).flatMap(({ name, block, fact }): readonly HistoryEdit[] => {
    const [old, now] = [before.get(name), after.get(name)];
    if (!old || !now || told.has(name) || !differ(old, now)) return [];
    told.add(name);
    return [
      {
        kind: 'record changed',
        conveyors: [block.name],
        where: recordName(block),
        before: `photo ${name}, ${old.size} bytes`,
        after: `another picture under that name, ${now.size} bytes`,
        reach: '',
        counts: false,
        place: { uri: block.uri, line: fact.line },
      },
    ];
  });
}

function differ(a: PhotoMark, b: PhotoMark): boolean {
  for (const key of ['content', 'gitSha1', 'gitSha256'] as const) {
    const [one, other] = [a[key], b[key]];
    if (one !== undefined && other !== undefined) return one !== other;
  }
  return a.size !== b.size;
}
