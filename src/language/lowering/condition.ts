// A line about something wrong → ConditionLine. Clock positions seen against the flow are mirrored here, once. Where a look says
// `worn through` it is a reading too: bare steel at its place, at the bottom (6:00) where no clock position is written.

import { measureOf, partOf, saysNoPlace } from '../../domain/conditions/kinds.js';
import type * as ast from '../generated/ast.js';
import type { ConditionKind, ConditionLine } from '../../domain/model/records.js';
import { bottom } from '../../domain/units/clock.js';
import { ReadingKind } from '../../domain/units/reading-kind.js';
import type { ReadingRows } from '../reading-rows.js';
import { notesOf, present, stated } from './block.js';
import { chainage, someLength, usual } from './limits.js';
import { keywordOf, wordsOf, type Reader } from './reader.js';
import { lowerSeenAt, partNamed, sectorWords } from './seen-at.js';

export function lowerCondition(
  reader: Reader,
  row: ast.Condition,
  mirrored: boolean,
): readonly ConditionLine[] {
  // The grammar takes these words only.
  const kind = wordsOf(row, 'kind') as ConditionKind | undefined;
  if (kind === undefined) return [];
  const counts = measureOf(kind) === 'count';
  const count = counts && row.size !== undefined ? reader.count(row, 'size', 'number of bolts') : undefined;
  const bare = measureOf(kind) === 'none' ? row.size : undefined;
  const isOfDrive = partOf(kind) === 'drive';
  const temperature =
    reader.quantity(row, 'temperature', 'temperature', 'temperature') ??
    // `tail bearing 71 degC`
    (bare !== undefined && isOfDrive
      ? reader.quantity(row, 'size', 'temperature', 'temperature')
      : undefined);
  const place = lowerSeenAt(reader, row, mirrored);
  // `cover stuck 20.4 m`: of what has no measure it is where it is.
  const spot =
    bare !== undefined && !isOfDrive && saysNoPlace(place)
      ? reader.quantity(row, 'size', 'length', 'chainage', chainage)
      : undefined;
  const isMeasured = !counts && spot === undefined && !(bare !== undefined && isOfDrive);
  // A joint that stands 0 mm open is shut: only what says that it is over has no measure left.
  const least = row.answer === undefined ? someLength : usual.length;
  const size = isMeasured ? reader.quantity(row, 'size', 'length', sizeOf(kind), least) : undefined;
  // `noise serious temperature 71 degC` says two things: what is wrong, and what was measured beside it.
  const isHot = keywordOf(row, 'temperature') !== undefined && row.temperature === undefined;
  const told = row.aspect !== undefined && temperature !== undefined;
  const line: ConditionLine = {
    kind,
    wornThrough: row.wornThrough,
    origin: reader.origin(row),
    ...(row.size !== undefined && bare === undefined && !size && !count ? { unread: true as const } : {}),
    ...place,
    ...(spot ? { at: spot } : {}),
    ...stated({
      answer: wordsOf(row, 'answer') as ConditionLine['answer'],
      size,
      count,
      aspect: aspectOf(row),
      temperature: told ? undefined : temperature,
      hot: isHot && row.aspect === undefined ? (true as const) : undefined,
      about: kind === 'finding' ? partNamed(row) : undefined,
      severity: row.severity,
      photo: reader.photo(row),
      closed: reader.day(row, 'closed'),
      note: present([sectorWords(row), notesOf(row)]).join(': ') || undefined,
    }),
  };
  return told ? [line, { kind, temperature, wornThrough: false, origin: line.origin }] : [line];
}

/** The level of the oil and the oil are one. */
function aspectOf(row: ast.Condition): ConditionLine['aspect'] {
  const aspect = wordsOf(row, 'aspect');
  return aspect === 'oil level low' ? 'oil low' : (aspect as ConditionLine['aspect']); // the grammar takes these words only
}

function sizeOf(kind: ConditionKind): string {
  return kind === 'joint open' ? 'width of the open joint' : `measure of the ${kind}`;
}

/** The reading that a condition is where it says `worn through`. */
export function addBareSteel(line: ConditionLine, row: ast.Condition, rows: ReadingRows): void {
  if (!line.wornThrough || line.answer !== undefined) return;
  const place = row.$cstNode;
  const spot =
    line.point !== undefined
      ? rows.point(line.point.name)
      : line.at && rows.chainage(line.at.value, line.clock?.hours ?? bottom);
  if (!place || spot === undefined) return;
  rows.add({
    start: place.offset,
    end: place.end,
    spot,
    kind: ReadingKind.trough,
    value: NaN,
    error: NaN,
    colourStart: 0,
    note: line.note ?? line.kind,
  });
}
