// Photos that the texts of a command name: whether they are there, how large, and as addresses for the report.

import type { Analysis, PhotoLook } from '../analysis/analysis.js';
import type { PhotoUse } from '../domain/model/records.js';
import { photoFile, photosOfAPage } from '../lsp/photo-files.js';
import type { TextsOnDisk } from './read-estate.js';

/** Standard input lies nowhere, so nothing is said of its photos. */
export function photosBeside({ texts }: Pick<TextsOnDisk, 'texts'>): PhotoLook {
  const placeOf = new Map(texts.map((text) => [text.path, text.full]));
  return (textUri, photo) => {
    const full = placeOf.get(textUri);
    if (full === undefined) return undefined;
    const file = photoFile(full, photo);
    return file === undefined ? 'missing' : file.size;
  };
}

/** Whether somebody can look and there is no such file. */
export function photosMissing(
  read: Pick<TextsOnDisk, 'texts'>,
  analysis: Pick<Analysis, 'uriOf'>,
): (use: PhotoUse) => boolean {
  const look = photosBeside(read);
  return ({ path, origin }) => look(analysis.uriOf(origin.source), path) === 'missing';
}

/** `missing` where there is no such file. */
export function photoAddresses(
  { texts }: Pick<TextsOnDisk, 'texts'>,
  analysis: Analysis,
): (use: PhotoUse) => string | undefined {
  const placeOf = new Map(texts.map((text) => [text.path, text.full]));
  const photo = photosOfAPage();
  return ({ path, origin }) => {
    const full = placeOf.get(analysis.uriOf(origin.source));
    if (full === undefined) return undefined;
    return photoFile(full, path) === undefined ? 'missing' : photo(full, path);
  };
}
