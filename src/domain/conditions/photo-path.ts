// May this path name a photo? It is taken from the folder of the text that names it, and may not leave it: so that a text from
// elsewhere can neither show nor publish what lies beside it on a reader's disk.

/** Pictures that pages and editors show. */
export const photoEndings = ['jpg', 'jpeg', 'png', 'webp', 'gif'] as const;

/** A page that carries larger ones is too heavy to send, and a phone makes smaller ones on request (judgement). */
export const largestPhoto = 3 * 1024 * 1024;

export type PhotoTrouble = 'empty' | 'absolute' | 'leaves the folder' | 'no picture';

/** Why a path is none; undefined where it is one. Blanks are part of names, a backslash is not. */
export function photoTrouble(path: string): PhotoTrouble | undefined {
  if (path.trim() === '') return 'empty';
  if (/^([A-Za-z]:|[\\/]|~|[a-z][a-z+.-]+:)/i.test(path)) return 'absolute';
  if (path.split(/[\\/]/).includes('..') || path.includes('\\')) return 'leaves the folder';
  const ending = /\.([A-Za-z0-9]+)$/.exec(path)?.[1]?.toLowerCase();
  return photoEndings.some((known) => known === ending) ? undefined : 'no picture';
}
