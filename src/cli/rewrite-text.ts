// Puts a new text in place of one that someone wrote: whole or not at all, through links to where the text really lies, with
// the mode and the owner it had. A file with several names (hard links) is written in place, so that they stay one file; a
// whole copy lies beside it until that is done.

import {
  chmodSync,
  chownSync,
  accessSync,
  constants,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { Trouble } from './console.js';
import { told } from './foreign-text.js';
import { clearParts, partOf } from './parts.js';
import { reasonOf } from './reason.js';

/** `full` is a file that was read. */
export function rewriteText(full: string, text: string): void {
  let part: string | undefined;
  try {
    const target = realpathSync(full);
    // A rename would pass over a file that may not be written.
    accessSync(target, constants.W_OK);
    const { mode, uid, gid, nlink } = statSync(target);
    if ((mode & 0o222) === 0) throw new Trouble(`${told(full)}: is read-only, and stays as it is`);
    clearParts(path.dirname(target));
    part = partOf(target);
    writeFileSync(part, text);
    if (nlink > 1) {
      writeFileSync(target, text, { flag: 'r+' });
      truncateSync(target, Buffer.byteLength(text));
      rmSync(part);
      return;
    }
    const fresh = statSync(part);
    if (fresh.uid !== uid || fresh.gid !== gid) chownSync(part, uid, gid);
    chmodSync(part, mode & 0o7777);
    renameSync(part, target);
  } catch (error) {
    if (part !== undefined) rmSync(part, { force: true });
    if (error instanceof Trouble) throw error;
    throw new Trouble(`${told(full)}: could not write: ${reasonOf(error)}`);
  }
}
