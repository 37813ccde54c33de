// Reads the texts of an estate: files as named, folders with every `.trough` file below them, `-` for standard input.
// What cannot be read is told with its path and, where there is one, its line and column; the rest is still read.

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { Trouble, type Console } from './console.js';
import { findFiles, type FoundFile } from './find-files.js';
import { reasonOf } from './reason.js';
import { slashes, told } from './foreign-text.js';

export interface EstateText {
  /** Relative to the working folder where it lies below it, with forward slashes. */
  readonly path: string;
  readonly text: string;
  /** Where it lies; standard input lies nowhere. */
  readonly full?: string;
}

export interface TextsOnDisk {
  readonly texts: readonly EstateText[];
  /** One line each; not empty means that something was not read. */
  readonly unread: readonly string[];
  /** One line for each name that leads to what was read under another. */
  readonly again: readonly string[];
}

/** Larger files are refused: no plant is described in that much text, and nothing after it would be checked in time. */
export const largestFile = 16 * 1024 * 1024;

export async function readEstate(
  paths: readonly string[],
  console: Console,
  stdinFilename = 'stdin.trough',
): Promise<TextsOnDisk> {
  const texts: EstateText[] = [];
  const unread: string[] = [];
  const again: string[] = [];
  const taken = new Map<string, string>();
  console.progress('reading');
  for (const given of paths.length === 0 ? ['.'] : paths) {
    if (given === '-') {
      take(stdinFilename, undefined, await console.readStdin());
      continue;
    }
    const before = texts.length + unread.length;
    const found = findFiles(given, console.cwd, taken);
    for (const { shown, reason } of found.failed) unread.push(`${told(shown)}: ${reason}`);
    for (const { shown, before } of found.again)
      if (before !== shown) again.push(`${told(shown)}: is ${told(before)}, which is read already`);
    for (const file of found.files) read(file);
    if (texts.length + unread.length === before && found.again.length === 0)
      unread.push(`${told(given)}: no .trough file in this folder`);
  }
  return { texts, unread, again };

  function read({ full, shown, size }: FoundFile): void {
    if (size > largestFile) {
      unread.push(
        `${told(shown)}: ${Math.round(size / 1048576)} MB is larger than the ${largestFile / 1048576} MB read of one file; split it, one inspection a file`,
      );
      return;
    }
    try {
      take(display(full, console.cwd), full, readFileSync(full));
    } catch (error) {
      unread.push(`${told(shown)}: ${reasonOf(error)}`);
    }
  }

  function take(shown: string, full: string | undefined, bytes: Uint8Array): void {
    const read = decoded(shown, bytes);
    if (!read.ok) unread.push(read.message);
    else texts.push({ path: shown, text: read.text, ...(full === undefined ? {} : { full }) });
  }
}

/** The text of a file, or the line that says where and why it is none. */
export function decoded(
  shown: string,
  bytes: Uint8Array,
): { readonly ok: true; readonly text: string } | { readonly ok: false; readonly message: string } {
  const bad = firstBadByte(bytes);
  return bad
    ? { ok: false, message: `${told(shown)}:${bad.line}:${bad.column}: ${bad.reason}` }
    : { ok: true, text: new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes) };
}

/** What was passed over, for the messages of a command. */
export function tellAgain({ again }: TextsOnDisk, console: Console): void {
  for (const line of again.slice(0, 20)) console.err(`troughline: ${line}\n`);
  if (again.length > 20)
    console.err(`troughline: ${again.length - 20} more names of what is read already are not told\n`);
}

/** For commands that cannot go on with a part of the estate. */
export function allRead({ texts, unread }: TextsOnDisk): readonly EstateText[] {
  if (unread.length > 0) throw new Trouble(unread.join('\n'));
  return texts;
}

/** Where the bytes stop being UTF-8 text (RFC 3629): line, column in characters, and why. */
function firstBadByte(bytes: Uint8Array): { line: number; column: number; reason: string } | undefined {
  const nul = bytes.indexOf(0);
  let end = -1;
  let reason = '';
  if (nul >= 0) {
    end = nul;
    reason = 'a NUL byte; this is not a text file';
  } else {
    try {
      new TextDecoder('utf-8', { fatal: true }).decode(bytes);
      return undefined;
    } catch {
      end = firstNotUtf8(bytes);
      reason = `byte 0x${(bytes[end] ?? 0).toString(16).padStart(2, '0')} is not UTF-8; save the file as UTF-8`;
    }
  }
  const before = new TextDecoder('utf-8').decode(bytes.subarray(0, end)).split('\n');
  return { line: before.length, column: (before.at(-1) ?? '').length + 1, reason };
}

function firstNotUtf8(bytes: Uint8Array): number {
  let low = 0;
  let high = bytes.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (decodes(bytes.subarray(0, middle + 1))) low = middle + 1;
    else high = middle;
  }
  return Math.min(low, bytes.length - 1);
}

function decodes(bytes: Uint8Array): boolean {
  try {
    // A sequence cut short at the end is not yet wrong.
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true });
    return true;
  } catch {
    return false;
  }
}

function display(full: string, cwd: string): string {
  const relative = path.relative(cwd, full);
  return slashes(relative.startsWith('..') ? full : relative);
}
