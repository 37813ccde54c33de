// The trough on a conveyor's page: the last line of defence, where it is bare, what was read of the plate, what was welded in.

import { formatDay } from '../../../domain/units/calendar.js';
import { element, type Markup } from '../../page/markup.js';
import { table } from '../../page/page.js';
import type { ConveyorLife } from '../parts/conveyor-life.js';
import { lastLineText, plateCells, plateHeads, spanText } from '../trough-words.js';
import { metres, millimetres } from './wording.js';
import { photoStrip, type PhotoBytes } from './photos.js';

export function troughSection({ trough, conveyor }: ConveyorLife, photo: PhotoBytes | undefined): Markup {
  const { spans, places, patches } = trough;
  const { minimumPlate } = conveyor;
  return element(
    'div',
    {},
    element('h3', {}, 'The trough behind the liner'),
    element(
      'p',
      { class: 'small' },
      `${lastLineText(trough)}${minimumPlate.assumed === undefined ? '' : ` ${minimumPlate.assumed}`}`,
    ),
    spans.length > 0 &&
      element(
        'ul',
        { class: 'small' },
        spans.map((span) =>
          element(
            'li',
            {},
            `${spanText(span)}${trough.unread.includes(span) ? '; the plate was not read there' : ''}.`,
          ),
        ),
      ),
    places.length > 0 &&
      table({
        class: 'tight',
        columns: plateHeads.map((head) => ({ head })),
        rows: places.map(plateCells),
      }),
    patches.length > 0 &&
      table({
        class: 'tight',
        caption: 'Patches',
        columns: [
          { head: 'From, m' },
          { head: 'To, m' },
          { head: 'Welded' },
          { head: 'Plate' },
          { head: 'By' },
          { head: 'Note' },
        ],
        rows: patches.map((patch) => [
          metres(patch.from.value),
          `${metres(patch.to.value)}${patch.sector ? `, ${patch.sector.from.text} to ${patch.sector.to.text}` : ''}`,
          formatDay(patch.date.day),
          millimetres(patch.thickness.value),
          patch.by ?? 'not said',
          patch.note ?? '',
        ]),
      }),
    photoStrip(
      [
        ...places.flatMap(({ at, readings }) =>
          readings.flatMap((r) =>
            r.photo ? [{ use: r.photo, words: `plate at ${metres(at)} m on ${formatDay(r.day)}` }] : [],
          ),
        ),
        ...patches.flatMap(({ photo: use, from, date }) =>
          use ? [{ use, words: `patch at ${metres(from.value)} m of ${formatDay(date.day)}` }] : [],
        ),
      ],
      photo,
    ),
  );
}
