// The texts of an estate as a revision has them, and what git calls its photos, read from the repository without touching the working tree. A revision that
// is not there, a folder that is no repository and a history that was cut short are told in words with the way out.

import path from 'node:path';
import { gitLine, runGit } from './run-git.js';

export interface RevisionText {
  /** Below the folder asked for, with forward slashes. */
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** A file that may be a photo. */
export interface RevisionFile {
  readonly path: string;
  /** As git names its bytes. */
  readonly blob: string;
}

export type RevisionRead =
  | {
      readonly ok: true;
      readonly commit: string;
      readonly texts: readonly RevisionText[];
      readonly photos: readonly RevisionFile[];
    }
  | { readonly ok: false; readonly message: string };

/** What `find-files.ts` passes over on disk is passed over here as well. */
const passedOver = /(^|\/)(node_modules|dist|out|\.[^/]*)\//;

/** @param revision anything git takes for a commit; `A...B` is where A and B parted. @param folder the estate, on disk */
export function readRevision(revision: string, folder: string): RevisionRead {
  const found = commitOf(revision, folder);
  if (!found.ok) return found;
  const top = gitLine(['rev-parse', '--show-toplevel'], folder);
  const below = gitLine(['rev-parse', '--show-prefix'], folder);
  if (top === undefined || below === undefined)
    return { ok: false, message: `${folder} is no working tree of a git repository` };
  const listed = runGit(
    ['ls-tree', '-r', '-z', '--full-tree', found.commit, '--', ...(below === '' ? [] : [`${below}`])],
    top,
  );
  if (!listed.ok) return { ok: false, message: `${revision}: ${listed.message}` };
  const entries = entriesOf(listed.out.toString('utf8'), below);
  const files = entries.filter(({ path: name }) => name.endsWith('.trough'));
  const blobs = readBlobs(
    files.map(({ blob }) => blob),
    top,
  );
  if (!blobs)
    return { ok: false, message: `${revision}: some of its files could not be read (a partial clone?)` };
  return {
    ok: true,
    commit: found.commit,
    texts: files.map(({ path: name }, i) => ({ path: name, bytes: blobs[i] ?? new Uint8Array() })),
    photos: entries.filter(({ path: name }) => photoName.test(name)),
  };
}

/** Whether a word names a commit here; a folder without git knows none. */
export function isRevision(revision: string, folder: string): boolean {
  return commitOf(revision, folder).ok;
}

function commitOf(
  revision: string,
  folder: string,
): { readonly ok: true; readonly commit: string } | { readonly ok: false; readonly message: string } {
  if (revision.startsWith('-')) return { ok: false, message: `${revision} names no revision` };
  const inside = runGit(['rev-parse', '--is-inside-work-tree'], folder);
  if (!inside.ok)
    return {
      ok: false,
      message: inside.missing
        ? `${inside.message}: revisions cannot be read; compare two folders, or a saved report JSON`
        : `${folder} is no git repository: ${revision} cannot be read; compare two folders, or a saved report JSON`,
    };
  const parts = revision.split('...');
  const names = parts.length === 2 ? parts.map((part) => (part === '' ? 'HEAD' : part)) : [revision];
  const commits = names.map((name) =>
    gitLine(['rev-parse', '--verify', '--quiet', `${name}^{commit}`], folder),
  );
  const missing = names.find((_, i) => commits[i] === undefined);
  if (missing !== undefined) return { ok: false, message: notThere(missing, folder) };
  const [one = '', other] = commits;
  if (other === undefined) return { ok: true, commit: one };
  const base = gitLine(['merge-base', one, other], folder);
  return base === undefined
    ? { ok: false, message: `${revision}: the two have no common beginning${cutShort(folder)}` }
    : { ok: true, commit: base };
}

function notThere(revision: string, folder: string): string {
  if (revision === 'HEAD') return 'HEAD: this repository has no commit yet; there is nothing to compare with';
  const remote = gitLine(['rev-parse', '--verify', '--quiet', `origin/${revision}^{commit}`], folder);
  const hint = remote === undefined ? '' : `; origin/${revision} is there`;
  return `${revision}: this repository has no such revision, and there is no such file or folder${hint}${cutShort(folder)}`;
}

/** Build servers fetch one commit unless told otherwise. */
function cutShort(folder: string): string {
  return gitLine(['rev-parse', '--is-shallow-repository'], folder) === 'true'
    ? '. This is a shallow clone: fetch the whole history first (git fetch --unshallow; in a workflow, fetch-depth: 0)'
    : '';
}

const photoName = /\.(jpe?g|png|webp|gif)$/i;

/** Regular files below a folder, those of the language and photos; links and submodules hold no text of their own. */
function entriesOf(listing: string, below: string): readonly RevisionFile[] {
  return listing.split('\0').flatMap((line): readonly RevisionFile[] => {
    const [, mode, blob, name] = /^(\d+) blob ([0-9a-f]+)\t([\s\S]*)$/.exec(line) ?? [];
    if (mode === undefined || blob === undefined || name === undefined) return [];
    const shown = name.slice(below.length);
    if (!mode.startsWith('100') || passedOver.test(shown)) return [];
    if (!shown.endsWith('.trough') && !photoName.test(shown)) return [];
    return [{ path: path.posix.normalize(shown), blob }];
  });
}

/** Bytes of each blob, by its name; what is not in this clone is left out. */
export function sizesOf(blobs: readonly string[], folder: string): ReadonlyMap<string, number> {
  const answer = runGit(['cat-file', '--batch-check'], folder, `${blobs.join('\n')}\n`);
  const lines = answer.ok ? answer.out.toString('utf8').split('\n') : [];
  return new Map(
    lines.flatMap((line): readonly [string, number][] => {
      const [, blob, size] = /^(\S+) blob (\d+)$/.exec(line) ?? [];
      return blob === undefined ? [] : [[blob, Number(size)]];
    }),
  );
}

/** All blobs in one run of git; undefined where one is missing. */
export function readBlobs(blobs: readonly string[], folder: string): readonly Uint8Array[] | undefined {
  if (blobs.length === 0) return [];
  const answer = runGit(['cat-file', '--batch'], folder, `${blobs.join('\n')}\n`);
  if (!answer.ok) return undefined;
  const contents: Uint8Array[] = [];
  let at = 0;
  for (const blob of blobs) {
    const end = answer.out.indexOf(10, at);
    const [, , size] = /^(\S+) blob (\d+)$/.exec(answer.out.toString('utf8', at, end)) ?? [];
    if (end < 0 || size === undefined || !answer.out.toString('utf8', at, end).startsWith(blob))
      return undefined;
    contents.push(answer.out.subarray(end + 1, end + 1 + Number(size)));
    at = end + 1 + Number(size) + 1;
  }
  return contents;
}
