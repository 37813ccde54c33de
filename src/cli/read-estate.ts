// Reads the texts of an estate: files as named, folders with every `.trough` file below them, `-` for standard input.
// What cannot be read is told with its path and, where there is one, its line and column; the rest is still read.

import { readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { Trouble, type Console } from './console.js';

export interface EstateText {
  /** Relative to the working folder where it lies below it, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

export interface TextsOnDisk {
  readonly texts: readonly EstateText[];
  /** One line each; not empty means that something was not read. */
  readonly unread: readonly string[];
}

/** Larger files are refused: no plant is described in that much text, and nothing after it would be checked in time. */
export const largestFile = 16 * 1024 * 1024;
const passedOver = new Set(['node_modules', 'dist', 'out']);

export async function readEstate(
  paths: readonly string[],
  console: Console,
  stdinFilename = 'stdin.trough',
): Promise<TextsOnDisk> {
  const texts: EstateText[] = [];
  const unread: string[] = [];
  const seen = new Set<string>();
  for (const given of paths.length === 0 ? ['.'] : paths) {
    if (given === '-') {
      take(stdinFilename, await console.readStdin());
      continue;
    }
    const full = path.resolve(console.cwd, given);
    const before = texts.length + unread.length;
    walk(full, given, true);
    if (texts.length + unread.length === before && !seen.has(full))
      unread.push(`${given}: no .trough file in this folder`);
  }
  return { texts, unread };

  function walk(full: string, shown: string, named: boolean): void {
    try {
      const stat = statSync(full);
      if (stat.isDirectory()) {
        if (!named && (passedOver.has(path.basename(full)) || path.basename(full).startsWith('.'))) return;
        for (const name of readdirSync(full).sort())
          walk(path.join(full, name), path.join(shown, name), false);
      } else if (named || full.endsWith('.trough')) {
        if (seen.has(full)) return;
        seen.add(full);
        if (stat.size > largestFile) {
          unread.push(
            `${slashes(shown)}: ${Math.round(stat.size / 1048576)} MB is larger than the ${largestFile / 1048576} MB read of one file; split it, one inspection a file`,
          );
          return;
        }
        take(display(full, console.cwd), readFileSync(full));
      }
    } catch (error) {
      unread.push(`${slashes(shown)}: ${reasonOf(error)}`);
    }
  }

  function take(shown: string, bytes: Uint8Array): void {
    const bad = firstBadByte(bytes);
    if (bad) unread.push(`${shown}:${bad.line}:${bad.column}: ${bad.reason}`);
    else texts.push({ path: shown, text: new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes) });
  }
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

export function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  switch (code) {
    case 'ENOENT':
      return 'no such file or folder';
    case 'EACCES':
    case 'EPERM':
      return 'no permission';
    case 'ELOOP':
      return 'a link that leads to itself';
    case 'EISDIR':
      return 'is a folder';
    case 'ENOSPC':
      return 'no space left on the disk';
    default:
      return error instanceof Error ? error.message : String(error);
  }
}

function display(full: string, cwd: string): string {
  const relative = path.relative(cwd, full);
  return slashes(relative.startsWith('..') ? full : relative);
}

function slashes(name: string): string {
  return name.split(path.sep).join('/');
}
