// Photos that the texts name, on disk: whether they are there, how large, and as `data:` addresses for the report. A link that
// leads out of the folder of the text is no photo of it, whatever its name says.

import { readFileSync, realpathSync, statSync } from 'node:fs';
import path from 'node:path';
import type { Analysis, PhotoLook } from '../analysis/analysis.js';
import { largestPhoto, photoTrouble } from '../domain/conditions/photo-path.js';
import type { PhotoUse } from '../domain/model/records.js';
import type { TextsOnDisk } from './read-estate.js';

/** Standard input lies nowhere, so nothing is said of its photos. */
export function photosBeside({ texts }: Pick<TextsOnDisk, 'texts'>): PhotoLook {
  const placeOf = new Map(texts.map((text) => [text.path, text.full]));
  return (textUri, photo) => {
    const full = placeOf.get(textUri);
    if (full === undefined) return undefined;
    const file = fileOf(full, photo);
    return file === undefined ? 'missing' : file.size;
  };
}

const types: Readonly<Record<string, string>> = {
  jpg: 'jpeg',
  jpeg: 'jpeg',
  png: 'png',
  webp: 'webp',
  gif: 'gif',
};

/** All photos of a report together may be so large; what comes after stays a name. */
const largestReport = 25 * 1024 * 1024;

export function photoAddresses(
  { texts }: Pick<TextsOnDisk, 'texts'>,
  analysis: Analysis,
): (use: PhotoUse) => string | undefined {
  const placeOf = new Map(texts.map((text) => [text.path, text.full]));
  let left = largestReport;
  return ({ path: photo, origin }) => {
    const full = placeOf.get(analysis.uriOf(origin.source));
    const file = full === undefined ? undefined : fileOf(full, photo);
    const type = types[/[^.]*$/.exec(photo)?.[0]?.toLowerCase() ?? ''];
    if (!file || type === undefined || file.size > largestPhoto || file.size > left) return undefined;
    left -= file.size;
    return `data:image/${type};base64,${readFileSync(file.full).toString('base64')}`;
  };
}

function fileOf(text: string, photo: string): { readonly full: string; readonly size: number } | undefined {
  if (photoTrouble(photo) !== undefined) return undefined;
  const folder = path.dirname(text);
  try {
    const full = realpathSync(path.join(folder, photo));
    const inside = path.relative(realpathSync(folder), full);
    const stat = statSync(full);
    return stat.isFile() && !inside.startsWith('..') && !path.isAbsolute(inside)
      ? { full, size: stat.size }
      : undefined;
  } catch {
    return undefined; // not there, or not to be read: for the report it is the same
  }
}
