// Delivers what a generator printed: into files of the chosen folder, or to standard output where there is none.

import path from 'node:path';
import { Trouble, type Console } from './console.js';
import { told } from './foreign-text.js';
import { writeFiles, type OutputFile } from './write-files.js';

export function deliver(files: readonly OutputFile[], out: string | undefined, console: Console): void {
  if (out === undefined) {
    for (const file of files) {
      if (typeof file.content !== 'string')
        throw new Trouble(`${file.name} is not text: give a folder with --out`);
      console.out(file.content);
    }
    return;
  }
  const folder = path.resolve(console.cwd, out);
  for (const written of writeFiles(folder, files))
    console.out(`${told(path.relative(console.cwd, written) || written)}\n`);
}

/** The formats asked for, each known; the given ones where none was. */
export function chosen<T extends string>(
  asked: readonly string[],
  known: readonly T[],
  otherwise: readonly T[],
  option = '--format',
): readonly T[] {
  if (asked.length === 0) return otherwise;
  return asked.map((name) => {
    const format = known.find((candidate) => candidate === name);
    if (!format) throw new Trouble(`${option} ${name}: not one of ${known.join(', ')}`);
    return format;
  });
}
