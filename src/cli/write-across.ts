// Writes a set of files that lie in several folders, whole or not at all: folder after folder as `writeFiles` does, and when one
// fails, what was written before it is put back and folders that were made for it are taken away.

import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { Trouble } from './console.js';
import { told } from './foreign-text.js';
import { reasonOf } from './reason.js';
import { writeFiles } from './write-files.js';

export interface PlacedText {
  readonly full: string;
  readonly text: string;
}

export function writeAcross(files: readonly PlacedText[]): void {
  const folders = [...new Set(files.map(({ full }) => path.dirname(full)))];
  const undo: (() => void)[] = [];
  try {
    for (const folder of folders) {
      const own = files.filter(({ full }) => path.dirname(full) === folder);
      const before = own.map(({ full }) => (existsSync(full) ? readFileSync(full) : undefined));
      const made = madeFolder(folder);
      if (made !== undefined) undo.push(() => rmSync(made, { recursive: true, force: true }));
      writeFiles(
        folder,
        own.map(({ full, text }) => ({ name: path.basename(full), content: text })),
      );
      undo.push(() => {
        for (const [i, { full }] of own.entries()) putBack(full, before[i]);
      });
    }
  } catch (error) {
    for (const back of undo.reverse()) back();
    throw error;
  }
}

/** The topmost folder that was not there. */
function madeFolder(folder: string): string | undefined {
  if (existsSync(folder)) return undefined;
  try {
    return mkdirSync(folder, { recursive: true });
  } catch (error) {
    throw new Trouble(`${told(folder)}: could not write: ${reasonOf(error)}`);
  }
}

function putBack(full: string, old: Uint8Array | undefined): void {
  if (old === undefined) rmSync(full, { force: true });
  else writeFiles(path.dirname(full), [{ name: path.basename(full), content: old }]);
}
