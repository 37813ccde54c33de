// The trough on a conveyor's page: the last line of defence, where it is bare, what was read of the plate, what was welded in.

import { formatDay } from '../../../domain/units/calendar.js';
import type { ConveyorLife } from '../parts/conveyor-life.js';
import { coveredCells, lastLineText, plateCells, plateHeads, spanText } from '../trough-words.js';
import type { RecordSection } from './record-section.js';
import { sizesOf } from '../sizes.js';

export function troughSection({ trough, conveyor }: ConveyorLife): RecordSection {
  const { spans, places, covered, patches } = trough;
  const { minimumPlate } = conveyor;
  const sizes = sizesOf(conveyor);
  const patchRows = patches.map((patch) => [
    sizes.along(patch.from.value),
    `${sizes.along(patch.to.value)}${patch.sector ? `, ${patch.sector.from.text} to ${patch.sector.to.text}` : ''}`,
    formatDay(patch.date.day),
    sizes.size(patch.thickness.value),
    patch.by ?? 'not said',
    patch.note ?? '',
  ]);
  const patchHeads = [`From, ${sizes.far}`, `To, ${sizes.far}`, 'Welded', 'Plate', 'By', 'Note'];
  return {
    title: 'The trough behind the liner',
    notes: [
      `${lastLineText(trough, sizes)}${minimumPlate.assumed === undefined ? '' : ` ${minimumPlate.assumed}`}`,
      ...spans.map(
        (span) =>
          `${spanText(span, sizes)}${trough.unread.includes(span) ? '; the plate was not read there' : ''}.`,
      ),
    ],
    tables: [
      ...(places.length > 0
        ? [{ heads: plateHeads(sizes), rows: places.map((place) => plateCells(place, sizes)) }]
        : []),
      ...(covered.length > 0
        ? [
            {
              caption: 'Plates before they were patched over',
              heads: [...plateHeads(sizes).slice(0, -1), 'Until'],
              rows: covered.map((place) => coveredCells(place, sizes)),
            },
          ]
        : []),
      ...(patches.length > 0 ? [{ caption: 'Patches', heads: patchHeads, rows: patchRows }] : []),
    ],
    lines: [],
    photos: [
      ...[...places, ...covered].flatMap(({ at, readings }) =>
        readings.flatMap((r) =>
          r.photo
            ? [{ use: r.photo, words: `plate at ${sizes.along(at)} ${sizes.far} on ${formatDay(r.day)}` }]
            : [],
        ),
      ),
      ...patches.flatMap(({ photo: use, from, date }) =>
        use
          ? [{ use, words: `patch at ${sizes.along(from.value)} ${sizes.far} of ${formatDay(date.day)}` }]
          : [],
      ),
    ],
  };
}
