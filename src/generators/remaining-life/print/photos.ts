// Photos in the report. The pages carry them inside, so that one file is the whole report; where the pictures cannot be had (in the
// editor, in the web) their names stand there, so that nobody takes them for missing.

import type { PhotoUse } from '../../../domain/model/records.js';
import { element, type Markup } from '../../page/markup.js';

/** `data:` address of a photo; undefined where it is not to be had, `missing` where there is no such file. */
export type PhotoBytes = (use: PhotoUse) => string | undefined;

/** The name of a photo that is not shown. */
export function photoName({ path }: PhotoUse, isMissing: boolean): string {
  return `Photo ${path}${isMissing ? ' (there is no such file)' : ''}`;
}

export interface ShownPhoto {
  readonly use: PhotoUse;
  /** What it shows: a place, or a condition. */
  readonly words: string;
}

/** So many on the page of one conveyor; more would hide what the page is for. */
const most = 12;

export function photoStrip(photos: readonly ShownPhoto[], photo: PhotoBytes | undefined): Markup | undefined {
  if (photos.length === 0) return undefined;
  const more = photos.length - most;
  return element(
    'div',
    { class: 'photos' },
    photos.slice(0, most).map(({ use, words }) => {
      const source = photo?.(use);
      const caption = `${words} (${use.path})`;
      return element(
        'figure',
        { class: 'photo' },
        source === undefined || source === 'missing'
          ? element('p', { class: 'small' }, photoName(use, source === 'missing'))
          : element('img', { src: source, alt: `Photo: ${words}` }),
        element('figcaption', {}, caption),
      );
    }),
    more > 0 && element('p', { class: 'small' }, `${more} more in the records.`),
  );
}
