// What was seen beside the readings, in a look and while work was done alike: what is wrong, what was noted, photos. A finding with a
// severity, or with an answer, is a condition; without one it is a note, and its photo is among those of its block.

import type { AskedLook, SeenBeside } from '../../domain/model/records.js';
import { nothingSeen, type Mutable } from '../../domain/model/other-facts.js';
import type * as ast from '../generated/ast.js';
import { present, stated, wordsSaid } from './block.js';
import { lowerCondition } from './condition.js';
import { someTime } from './limits.js';
import type { Reader } from './reader.js';
import { lowerOpenFinding, lowerRemark } from './remark.js';

/** `mirrored`: whoever saw it looked against the flow. */
export function lowerSeenBeside(
  reader: Reader,
  row: ast.FoundInWork,
  seen: Mutable<SeenBeside>,
  mirrored: boolean,
): void {
  switch (row.$type) {
    case 'Condition':
      seen.conditions.push(...lowerCondition(reader, row, mirrored));
      return;
    case 'Finding':
      lowerFinding(reader, row, seen, mirrored);
      return;
    case 'NextLook':
      seen.asked.push(...lowerNextLook(reader, row));
      return;
    case 'Photo':
      if (row.path !== undefined)
        seen.photos.push({ path: row.path, origin: reader.part(row, 'path'), ...stated({ note: row.note }) });
  }
}

function lowerNextLook(reader: Reader, row: ast.NextLook): readonly AskedLook[] {
  const by = reader.day(row, 'due');
  const after = reader.quantity(row, 'after', 'duration', 'time until the next look', someTime);
  return (by ?? after)
    ? [{ origin: reader.origin(row), ...stated({ by, after, note: wordsSaid(row), asker: row.by }) }]
    : [];
}

/** All that a record of work says of it. */
export function seenInWork(
  reader: Reader,
  facts: readonly { readonly $type: string }[],
  mirrored = false,
): SeenBeside {
  const seen = nothingSeen();
  for (const fact of facts)
    if (isFound(fact)) lowerSeenBeside(reader, fact, seen, mirrored);
    else if (isPictured(fact)) lowerPhotoBehind(reader, fact, seen);
  return seen;
}

type Pictured =
  | ast.HoldDownGap
  | ast.FlightReading
  | ast.WornWidth
  | ast.MeasuredSpeed
  | ast.MotorCurrent
  | ast.NotLooked
  | ast.OldPanel
  | ast.PanelMove;

const pictured: ReadonlySet<string> = new Set<Pictured['$type']>([
  'HoldDownGap',
  'FlightReading',
  'WornWidth',
  'MeasuredSpeed',
  'MotorCurrent',
  'NotLooked',
  'OldPanel',
  'PanelMove',
]);

export function isPictured(fact: { readonly $type: string }): fact is Pictured {
  return pictured.has(fact.$type);
}

/** A fact that keeps no photo of its own leaves it to its record, with what it is of. */
export function lowerPhotoBehind(
  reader: Reader,
  fact: Pictured | ast.Reading,
  seen: Mutable<SeenBeside>,
): void {
  const photo = reader.photo(fact);
  if (!photo) return;
  const of = /^(?:(?!\s*(?:"|(?:photo|by)\s*"))[\s\S])*/.exec(fact.$cstNode?.text ?? '')?.[0];
  const note = present([of?.replace(/\s+/g, ' '), wordsSaid(fact)]).join(': ') || undefined;
  seen.photos.push({ ...photo, ...stated({ note }) });
}

const found: ReadonlySet<string> = new Set<ast.FoundInWork['$type']>([
  'Condition',
  'Finding',
  'NextLook',
  'Photo',
]);

function isFound(fact: { readonly $type: string }): fact is ast.FoundInWork {
  return found.has(fact.$type);
}

function lowerFinding(reader: Reader, row: ast.Finding, seen: Mutable<SeenBeside>, mirrored: boolean): void {
  const open = lowerOpenFinding(reader, row, mirrored);
  if (open) {
    seen.conditions.push(open);
    return;
  }
  const remark = lowerRemark(reader, row, mirrored);
  if (remark) seen.remarks.push(remark);
  const photo = reader.photo(row);
  if (photo) seen.photos.push({ ...photo, ...stated({ note: wordsSaid(row) }) });
}
