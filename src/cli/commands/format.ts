// `troughline format`: one way to lay out the text, so that a change of one fact is a change of one line.

import path from 'node:path';
import { formatText } from '../../language/format.js';
import { Exit, type Console } from '../console.js';
import { readEstate } from '../read-estate.js';
import { writeFile } from '../write-files.js';

export interface FormatCommandOptions {
  /** Say which files would change and change none. */
  readonly check: boolean;
  readonly stdinFilename: string;
}

export async function format(
  paths: readonly string[],
  options: FormatCommandOptions,
  console: Console,
): Promise<number> {
  const read = await readEstate(paths, console, options.stdinFilename);
  let changed = 0;
  for (const { path: file, text } of read.texts) {
    const formatted = formatText(text);
    if (paths.includes('-') && !options.check) {
      console.out(formatted);
      continue;
    }
    if (formatted === text) continue;
    changed++;
    console.out(`${file}\n`);
    if (!options.check) writeFile(path.resolve(console.cwd, file), formatted);
  }
  for (const line of read.unread) console.err(`troughline: ${line}\n`);
  if (!paths.includes('-') || options.check)
    console.err(`${changed} of ${read.texts.length} files ${options.check ? 'would change' : 'changed'}\n`);
  if (read.unread.length > 0) return Exit.trouble;
  return options.check && changed > 0 ? Exit.findings : Exit.clean;
}
