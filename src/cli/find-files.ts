// Which files make up an estate? Files as named, and every `.trough` file below the folders named. A folder of someone else
// may hold anything: links that lead in circles, pipes that never end, two names of one file. So each folder and each file
// is taken once, by what it really is, and what is left out is told.

import { readdirSync, realpathSync, statSync, type BigIntStats } from 'node:fs';
import path from 'node:path';
import { reasonOf } from './reason.js';

export interface FoundFile {
  readonly full: string;
  /** As the command line would name it. */
  readonly shown: string;
  /** Bytes. */
  readonly size: number;
}

export interface FoundFiles {
  readonly files: readonly FoundFile[];
  /** What could not be taken: a name and the reason. */
  readonly failed: readonly { readonly shown: string; readonly reason: string }[];
  /** What was passed over because it has been taken before, perhaps by another name. */
  readonly again: readonly { readonly shown: string; readonly before: string }[];
}

const passedOver = new Set(['node_modules', 'dist', 'out']);

/** Folders of that name below an estate are not read. */
export function isPassedOver(name: string): boolean {
  return passedOver.has(name) || name.startsWith('.');
}

/** `given` is a file or folder named by the user; `taken` keeps what earlier ones have given. */
export function findFiles(given: string, cwd: string, taken: Map<string, string>): FoundFiles {
  const files: FoundFile[] = [];
  const failed: { shown: string; reason: string }[] = [];
  const again: { shown: string; before: string }[] = [];
  // Links wait until all real folders are read, so that a file goes by its own name and not by that of a link.
  const links: { readonly full: string; readonly shown: string }[] = [];
  visit(path.resolve(cwd, given), path.normalize(given), true);
  for (const { full, shown } of links) visit(full, shown, false);
  return { files, failed, again };

  function visit(full: string, shown: string, named: boolean): void {
    try {
      const found = statSync(full, { bigint: true });
      if (found.isDirectory()) visitFolder(full, shown, named);
      else if (named || full.endsWith('.trough')) visitFile(full, shown, found);
    } catch (error) {
      failed.push({ shown, reason: reasonOf(error) });
    }
  }

  function visitFolder(full: string, shown: string, named: boolean): void {
    if (!named && isPassedOver(path.basename(full))) return;
    if (isTaken(`folder ${realpathSync(full)}`, shown)) return;
    const entries = readdirSync(full, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
    for (const entry of entries) {
      const below = { full: path.join(full, entry.name), shown: path.join(shown, entry.name) };
      if (entry.isSymbolicLink()) links.push(below);
      else visit(below.full, below.shown, false);
    }
  }

  function visitFile(full: string, shown: string, found: BigIntStats): void {
    if (!found.isFile()) {
      failed.push({ shown, reason: `is ${kindOf(found)} and no file: not read` });
      return;
    }
    // Two names of one file, by link or by hard link, are one file.
    const identity = found.nlink > 1n ? `${found.dev}:${found.ino}` : realpathSync(full);
    if (!isTaken(`file ${identity}`, shown)) files.push({ full, shown, size: Number(found.size) });
  }

  function isTaken(identity: string, shown: string): boolean {
    const before = taken.get(identity);
    if (before === undefined) taken.set(identity, shown);
    else again.push({ shown, before });
    return before !== undefined;
  }
}

function kindOf(found: BigIntStats): string {
  if (found.isFIFO()) return 'a pipe';
  if (found.isSocket()) return 'a socket';
  return 'a device';
}
