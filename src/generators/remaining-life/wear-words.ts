// What a conveyor's looks say, in the report's own sentences, for whoever shows them elsewhere: lenses, hovers, hints.

import { disagreementOf } from './parts/hand-against-model.js';
import { conveyorChangeSentences, disagreementSentence, paceInShort } from './print/change-words.js';
import type { ConveyorLife, PointLife } from './remaining-life.js';
import { sizesOf } from './sizes.js';

/** Changes of rate, looks that read off, breaks in a record. */
export function wearSentences(life: ConveyorLife): readonly string[] {
  return conveyorChangeSentences(life);
}

/** Why an inspector's arithmetic and the model do not agree at a point; empty where they do. */
export function pointSentences(life: ConveyorLife, point: PointLife): readonly string[] {
  const told = disagreementOf(life, point);
  return told ? [disagreementSentence(told, sizesOf(life.conveyor))] : [];
}

/** A few words for a lens, `faster since 2026-03-04`; undefined where there is no sign. */
export function wearInShort(life: ConveyorLife): string | undefined {
  return life.model && paceInShort(life.model.pace);
}
