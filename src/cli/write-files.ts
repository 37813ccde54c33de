// Writes output files whole or not at all: a temporary file beside the target, then a rename. Never outside the folder.

import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { Trouble } from './console.js';
import { reasonOf } from './read-estate.js';

export interface OutputFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** Writes the files into the folder (made if missing) and returns their paths; all are prepared before the first is moved into place. */
export function writeFiles(folder: string, files: readonly OutputFile[]): string[] {
  const prepared: { temporary: string; target: string }[] = [];
  try {
    for (const file of files) {
      const target = path.resolve(folder, file.name);
      if (!target.startsWith(path.resolve(folder) + path.sep))
        throw new Trouble(`${file.name}: lies outside ${folder}`);
      mkdirSync(path.dirname(target), { recursive: true });
      const temporary = `${target}.${process.pid}.part`;
      prepared.push({ temporary, target });
      writeFileSync(temporary, file.content);
    }
    for (const { temporary, target } of prepared) renameSync(temporary, target);
    return prepared.map(({ target }) => target);
  } catch (error) {
    for (const { temporary } of prepared) rmSync(temporary, { force: true });
    if (error instanceof Trouble) throw error;
    throw new Trouble(`${folder}: could not write: ${reasonOf(error)}`);
  }
}

export function writeFile(target: string, content: string | Uint8Array): void {
  writeFiles(path.dirname(path.resolve(target)), [{ name: path.basename(target), content }]);
}

/** A name made safe for a file: letters, digits, dot, hyphen and underscore; never empty, never a dot file. */
export function fileName(name: string): string {
  const safe = name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}._-]+/gu, '-')
    .replace(/^[.-]+/, '');
  return safe === '' ? 'unnamed' : safe.slice(0, 100);
}
