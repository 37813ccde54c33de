// The trough on a conveyor's page: the last line of defence, where it is bare, what was read of the plate, what was welded in.

import { formatDay } from '../../../domain/units/calendar.js';
import type { ConveyorLife } from '../parts/conveyor-life.js';
import { lastLineText, plateCells, plateHeads, spanText } from '../trough-words.js';
import { metres, millimetres } from './wording.js';
import type { RecordSection } from './record-section.js';

export function troughSection({ trough, conveyor }: ConveyorLife): RecordSection {
  const { spans, places, patches } = trough;
  const { minimumPlate } = conveyor;
  const patchRows = patches.map((patch) => [
    metres(patch.from.value),
    `${metres(patch.to.value)}${patch.sector ? `, ${patch.sector.from.text} to ${patch.sector.to.text}` : ''}`,
    formatDay(patch.date.day),
    millimetres(patch.thickness.value),
    patch.by ?? 'not said',
    patch.note ?? '',
  ]);
  const patchHeads = ['From, m', 'To, m', 'Welded', 'Plate', 'By', 'Note'];
  return {
    title: 'The trough behind the liner',
    notes: [
      `${lastLineText(trough)}${minimumPlate.assumed === undefined ? '' : ` ${minimumPlate.assumed}`}`,
      ...spans.map(
        (span) => `${spanText(span)}${trough.unread.includes(span) ? '; the plate was not read there' : ''}.`,
      ),
    ],
    tables: [
      ...(places.length > 0 ? [{ heads: plateHeads, rows: places.map(plateCells) }] : []),
      ...(patches.length > 0 ? [{ caption: 'Patches', heads: patchHeads, rows: patchRows }] : []),
    ],
    lines: [],
    photos: [
      ...places.flatMap(({ at, readings }) =>
        readings.flatMap((r) =>
          r.photo ? [{ use: r.photo, words: `plate at ${metres(at)} m on ${formatDay(r.day)}` }] : [],
        ),
      ),
      ...patches.flatMap(({ photo: use, from, date }) =>
        use ? [{ use, words: `patch at ${metres(from.value)} m of ${formatDay(date.day)}` }] : [],
      ),
    ],
  };
}
