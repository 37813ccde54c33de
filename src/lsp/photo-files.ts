// Photos that texts name, on disk: where they lie, how large they are, and as `data:` addresses, so that a page carries them inside.
// A link that leads out of the folder of the text is no photo of it, whatever its name says.

import { readFileSync, realpathSync, statSync } from 'node:fs';
import path from 'node:path';
import { largestPhoto, photoTrouble } from '../domain/conditions/photo-path.js';

export interface PhotoFile {
  readonly full: string;
  /** Bytes. */
  readonly size: number;
}

/** The photo a text names, by the text's own path; undefined where there is none that may be shown. */
export function photoFile(text: string, photo: string): PhotoFile | undefined {
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
    return undefined; // not there, or not to be read: for a page it is the same
  }
}

/** All photos of a page together may be so large; what comes after stays a name. */
const largestPage = 25 * 1024 * 1024;

const types: Readonly<Record<string, string>> = {
  jpg: 'jpeg',
  jpeg: 'jpeg',
  png: 'png',
  webp: 'webp',
  gif: 'gif',
};

/** For one page: the address of a photo, by the path of the text that names it. */
export function photosOfAPage(): (text: string, photo: string) => string | undefined {
  let left = largestPage;
  return (text, photo) => {
    const file = photoFile(text, photo);
    const type = types[/[^.]*$/.exec(photo)?.[0]?.toLowerCase() ?? ''];
    if (!file || type === undefined || file.size > largestPhoto || file.size > left) return undefined;
    left -= file.size;
    return `data:image/${type};base64,${readFileSync(file.full).toString('base64')}`;
  };
}
