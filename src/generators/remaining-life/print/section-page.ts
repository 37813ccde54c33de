// Prints the sections of the records on a conveyor's page.

import { element, group, type Markup } from '../../page/markup.js';
import { table } from '../../page/page.js';
import { placeInText } from '../../page/place-in-text.js';
import { photoStrip, type PhotoBytes } from './photos.js';
import type { RecordSection, RecordTable } from './record-section.js';

/** Tables of so many rows at most stay on one page. */
const kept = 12;

export function sectionMarkup(section: RecordSection, photo: PhotoBytes | undefined): Markup {
  const { title, notes, tables, lines, photos } = section;
  const rows = tables.reduce((sum, each) => sum + each.rows.length, 0);
  return element(
    'div',
    { class: rows > 0 && rows <= kept && photos.length === 0 && lines.length === 0 ? 'keep' : undefined },
    element('h3', {}, title),
    notes.map((note) => element('p', { class: 'small' }, note)),
    tables.map(tableMarkup),
    lines.length > 0 &&
      element(
        'ul',
        { class: 'small' },
        lines.map((line) => element('li', {}, line)),
      ),
    photoStrip(photos, photo) ?? group(),
  );
}

function tableMarkup({ caption, heads, rows, origins }: RecordTable): Markup {
  return table({
    class: 'tight',
    ...(caption === undefined ? {} : { caption }),
    columns: heads.map((head) => (typeof head === 'string' ? { head } : head)),
    rows: rows.map(([first = '', ...rest], k) => {
      const origin = origins?.[k];
      return [origin ? element('span', placeInText(origin), first) : first, ...rest];
    }),
  });
}
