// `troughline format`: one way to lay out the text, so that a change of one fact is a change of one line.

import { hasConflict } from '../../language/conflict.js';
import { formatText } from '../../language/format.js';
import { Exit, type Console } from '../console.js';
import { told } from '../foreign-text.js';
import { readEstate, tellAgain } from '../read-estate.js';
import { rewriteText } from '../rewrite-text.js';

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
  tellAgain(read, console);
  let changed = 0;
  const refused: string[] = [];
  for (const { path: file, full, text } of read.texts) {
    if (hasConflict(text)) {
      // Indented markers would hide from git, which looks for them at the start of a line.
      refused.push(`${told(file)}: holds a merge conflict that is not settled; it stays as it is`);
      continue;
    }
    const formatted = formatText(text);
    if (paths.includes('-') && !options.check) {
      console.out(formatted);
      continue;
    }
    if (formatted === text) continue;
    changed++;
    console.out(`${told(file)}\n`);
    if (!options.check && full !== undefined) rewriteText(full, formatted);
  }
  for (const line of [...read.unread, ...refused]) console.err(`troughline: ${line}\n`);
  if (!paths.includes('-') || options.check)
    console.err(`${changed} of ${read.texts.length} files ${options.check ? 'would change' : 'changed'}\n`);
  if (read.unread.length + refused.length > 0) return Exit.trouble;
  return options.check && changed > 0 ? Exit.findings : Exit.clean;
}
