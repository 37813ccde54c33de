// Does something again whenever a file of the estate changes. The files are looked at twice a second and not subscribed to: that
// works the same on every system and every kind of disk, and a thousand files take some milliseconds.

import { statSync } from 'node:fs';
import { Trouble, type Console } from './console.js';
import { findFiles } from './find-files.js';

const every = 500;

/** Returns the last exit code, once whoever watches ends it. */
export async function watched(
  once: () => Promise<number>,
  paths: readonly string[],
  console: Console,
): Promise<number> {
  if (paths.includes('-')) throw new Trouble('--watch needs files, not standard input');
  let seen = stateOf(paths, console);
  let exit = await once();
  for (;;) {
    console.progress('waiting for a change');
    if (!(await console.wait(every))) return exit;
    const now = stateOf(paths, console);
    if (now === seen) continue;
    seen = now;
    console.out('\n');
    exit = await once();
  }
}

/** Names, sizes and times of all files that would be read. */
function stateOf(paths: readonly string[], { cwd }: Console): string {
  const taken = new Map<string, string>();
  return (paths.length === 0 ? ['.'] : paths)
    .flatMap((given) => findFiles(given, cwd, taken).files)
    .map(({ full, size }) => `${full} ${size} ${statSync(full, { throwIfNoEntry: false })?.mtimeMs ?? ''}`)
    .join('\n');
}
