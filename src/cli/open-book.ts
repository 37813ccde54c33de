// Reads the file of somebody's readings by what it is and not by its name: a text of separated values, or a workbook. What cannot
// be read is told with what to save it as.

import { readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { readCsv, type CsvStated } from '../exchange/read-csv.js';
import type { WorkbookStated } from '../exchange/read-workbook.js';
import type { Book } from '../exchange/table.js';
import { Trouble, type Console } from './console.js';
import { told } from './foreign-text.js';
import { reasonOf } from './reason.js';

/** No workbook of readings comes near; what does is something else. */
const largestBook = 64 * 1024 * 1024;

export async function openBook(
  given: string,
  stated: CsvStated & WorkbookStated,
  console: Console,
): Promise<Book> {
  const bytes = bytesOf(path.resolve(console.cwd, given), given);
  console.progress(`reading ${path.basename(given)}`);
  const read = startsWith(bytes, workbookMark)
    ? await (await import('../exchange/read-workbook.js')).readWorkbook(bytes, stated)
    : startsWith(bytes, oldMark)
      ? { ok: false as const, message: oldBook(bytes) }
      : readCsv(bytes, stated);
  if (!read.ok) throw new Trouble(`${told(given)}: ${read.message}`);
  return read.book;
}

function bytesOf(full: string, given: string): Uint8Array {
  try {
    const { size } = statSync(full);
    if (size > largestBook)
      throw new Trouble(
        `${told(given)}: ${Math.round(size / 1048576)} MB is larger than the ${largestBook / 1048576} MB read of one file; split it`,
      );
    return readFileSync(full);
  } catch (error) {
    if (error instanceof Trouble) throw error;
    throw new Trouble(`${told(given)}: ${reasonOf(error)}`);
  }
}

/** A zip archive, as every .xlsx is (APPNOTE 4.3.7). */
const workbookMark = [0x50, 0x4b, 0x03, 0x04];
/** A compound file, as .xls is, and a workbook with a password (MS-CFB 2.2). */
const oldMark = [0xd0, 0xcf, 0x11, 0xe0];

function startsWith(bytes: Uint8Array, mark: readonly number[]): boolean {
  return mark.every((byte, i) => bytes[i] === byte);
}

function oldBook(bytes: Uint8Array): string {
  const stream = Buffer.from('EncryptedPackage', 'utf16le');
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).includes(stream)
    ? 'is protected by a password; open it, take the password away, and save it'
    : 'is a workbook of the old binary form (.xls); save it as .xlsx or CSV';
}
