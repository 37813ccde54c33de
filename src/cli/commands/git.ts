// `troughline git …`: sets the drivers of git up and undoes that, and is what git calls then: `textconv` to show a text by facts,
// `merge` to merge two changes of one by facts.

import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { mergeTexts } from '../../language/merge-texts.js';
import { counted } from '../../domain/units/wording.js';
import { Exit, Trouble, type Console } from '../console.js';
import { told } from '../foreign-text.js';
import { setUpDrivers, undoDrivers, type DriverResult } from '../git/drivers.js';
import { readableText } from '../readable-text.js';
import { decoded } from '../read-estate.js';
import { reasonOf } from '../reason.js';

/** @param command what git is to run; left out, this program as it was started */
export function gitSetUp(command: string | undefined, console: Console): number {
  return done(setUpDrivers(console.cwd, command ?? console.self.map(quoted).join(' ')), console);
}

export function gitUndo(console: Console): number {
  return done(undoDrivers(console.cwd), console);
}

function done(result: DriverResult, console: Console): number {
  if (!result.ok) throw new Trouble(result.message);
  for (const line of result.said) console.out(`${line}\n`);
  return Exit.clean;
}

/** Git hands the command to a shell. */
function quoted(word: string): string {
  return /^[\w./:@=+-]+$/.test(word) ? word : `'${word.replaceAll("'", String.raw`'\''`)}'`;
}

export function gitTextconv(file: string, console: Console): number {
  const bytes = bytesOf(file, console);
  const read = decoded(file, bytes);
  console.out(read.ok ? readableText(read.text) : new TextDecoder().decode(bytes));
  return Exit.clean;
}

/**
 * As git asks of a merge driver: the result is written over `ours`; 0 where it is whole, 1 where conflicts stand in it. On any
 * trouble the files stay as they are and git keeps the conflict.
 */
export function gitMerge(
  [base, ours, theirs]: readonly [string, string, string],
  shown: string | undefined,
  console: Console,
): number {
  const [b, o, t] = [base, ours, theirs].map((file) => {
    const read = decoded(shown ?? file, bytesOf(file, console));
    if (!read.ok) throw new Trouble(`${read.message}; it cannot be merged by facts`);
    return read.text;
  });
  const { text, conflicts } = mergeTexts(b ?? '', o ?? '', t ?? '');
  writeFileSync(path.resolve(console.cwd, ours), text);
  if (conflicts === 0) return Exit.clean;
  console.err(`troughline: ${told(shown ?? ours)}: ${counted(conflicts, 'conflict')} to settle by hand\n`);
  return Exit.findings;
}

function bytesOf(file: string, { cwd }: Console): Uint8Array {
  try {
    return readFileSync(path.resolve(cwd, file));
  } catch (error) {
    throw new Trouble(`${told(file)}: ${reasonOf(error)}`);
  }
}
