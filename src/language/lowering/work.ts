// Work on a day → Service without its conveyor and day: a record of its own says both, a row of a look or a reline has those of its
// block.

import type * as ast from '../generated/ast.js';
import type { Service } from '../../domain/model/records.js';
import { present, stated, wordsSaid } from './block.js';
import { lowerCondition } from './condition.js';
import { wordsOf, type Reader } from './reader.js';
import { lowerSeenAt, partNamed, sectorWords } from './seen-at.js';

export type WorkDraft = Omit<Service, 'conveyor' | 'conveyorUse' | 'date'>;

/** Undefined where it says nothing. */
export function lowerWork(
  reader: Reader,
  node: ast.Serviced | ast.WorkRow,
  mirrored = false,
): WorkDraft | undefined {
  const work = wordsOf(node, 'work') as Service['work']; // the grammar takes these words only
  const ended = node.ended && lowerCondition(reader, node.ended, mirrored)[0];
  const own = work === undefined && !ended;
  const [first, ...rest] = node.notes;
  if (own && first === undefined) return undefined;
  const notes = present([
    sectorWords(node),
    node.ended && present([sectorWords(node.ended), wordsSaid(node.ended)]).join(': '),
    ...(own ? rest : node.notes),
  ]).filter((note) => note !== '');
  const said = node.ended ?? node;
  return {
    place: lowerSeenAt(reader, node, mirrored),
    origin: reader.origin(node),
    ...stated({
      part: partNamed(node),
      work,
      words: own ? first : undefined,
      ended,
      by: said.by,
      photo: reader.photo(said),
      note: notes.length === 0 ? undefined : notes.join('; '),
    }),
  };
}
