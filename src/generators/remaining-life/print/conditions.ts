// What is open on a conveyor, on its page: one row a condition, the photos that were taken of it beside.

import { sinceWords, type OpenCondition } from '../../../domain/conditions/rows.js';
import { element, type Markup } from '../../page/markup.js';
import { table } from '../../page/page.js';
import { placeInText } from '../../page/place-in-text.js';
import type { ConveyorLife } from '../parts/conveyor-life.js';
import { photoStrip, type PhotoBytes } from './photos.js';

export const conditionHeads = ['What', 'Where', 'Severity', 'Since', 'Notes'] as const;

export function conditionSection(life: ConveyorLife, photo: PhotoBytes | undefined): Markup | undefined {
  const { conditions } = life;
  if (conditions.length === 0) return undefined;
  return element(
    'div',
    {},
    element('h3', {}, 'Open conditions'),
    element(
      'p',
      { class: 'small' },
      'What was found and not yet put right. A condition tells nothing of the rate of wear unless it says that the liner was worn through.',
    ),
    table({
      class: 'tight',
      columns: conditionHeads.map((head) => ({ head })),
      rows: conditions.map((row) => {
        const [what = '', ...rest] = conditionCells(row);
        return [element('strong', placeInText(row.origin), what), ...rest];
      }),
    }),
    photoStrip(
      conditions.flatMap(({ photos, what }) => photos.map((use) => ({ use, words: what }))),
      photo,
    ),
  );
}

/** In the order of the heads. */
export function conditionCells(row: OpenCondition): readonly string[] {
  return [row.what, row.place, row.severity ?? '', sinceWords(row), row.notes.join('; ')];
}
