// Writes output files as a set: whatever happens on the way, the folder holds the old set or the new one. All new files are
// written beside their places first; then a journal names them, and they are moved into place. A run that was killed while it
// moved them left the journal, and the next one finishes the move. Never outside the folder; links are replaced, not followed.
// A name may lead through folders of the set (`points/plant=P/points.parquet`), which are made where they are missing.

import {
  copyFileSync,
  linkSync,
  lstatSync,
  mkdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { Trouble } from './console.js';
import { told } from './foreign-text.js';
import { clearParts, oldPartOf, partOf, placeOf } from './parts.js';
import { reasonOf } from './reason.js';

export interface OutputFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** A new file beside its place, and the old one kept until all are in place. */
interface Prepared {
  readonly target: string;
  readonly part: string;
  readonly old: string;
}

const journalName = '.troughline-set.json';

/** Writes the files into the folder (made if missing) and returns their paths. `move` is replaced in tests. */
export function writeFiles(
  folder: string,
  files: readonly OutputFile[],
  move: (from: string, to: string) => void = renameSync,
): string[] {
  const root = path.resolve(folder);
  const prepared = files.map((file) => prepare(root, file.name));
  try {
    mkdirSync(root, { recursive: true });
    finishOldMove(root);
    for (const below of new Set([root, ...prepared.map(({ target }) => path.dirname(target))])) {
      makeFolder(root, below);
      clearParts(below);
    }
    for (const [index, { part }] of prepared.entries()) {
      writeFileSync(part, files[index]?.content ?? ''); // one for each file
    }
    moveAll(root, prepared, move);
  } catch (error) {
    for (const { part, old } of prepared) for (const left of [part, old]) remove(left);
    if (error instanceof Trouble) throw error;
    throw new Trouble(`${told(folder)}: could not write: ${reasonOf(error)}`);
  }
  return prepared.map(({ target }) => target);
}

/** A file of its own where the user said. A device or a pipe (`/dev/stdout`) is written to and not replaced. */
export function writeFile(target: string, content: string | Uint8Array): void {
  const full = path.resolve(target);
  try {
    const there = statSync(full, { throwIfNoEntry: false });
    if (there && !there.isFile() && !there.isDirectory()) {
      writeFileSync(full, content);
      return;
    }
  } catch (error) {
    throw new Trouble(`${told(target)}: could not write: ${reasonOf(error)}`);
  }
  writeFiles(path.dirname(full), [{ name: path.basename(full), content }]);
}

function prepare(root: string, name: string): Prepared {
  if (!staysBelow(name)) throw new Trouble(`${told(name)}: lies outside ${told(root)}`);
  const target = path.join(root, ...name.split('/'));
  return { target, part: partOf(target), old: oldPartOf(target) };
}

/** Folders and a name, one after the other, none of which leads up or elsewhere. */
export function staysBelow(name: string): boolean {
  return name
    .split('/')
    .every((part) => part !== '' && part !== '.' && part !== '..' && part === path.basename(part));
}

/** A link on the way that leads out of the folder is not followed. */
function makeFolder(root: string, folder: string): void {
  mkdirSync(folder, { recursive: true });
  if (leadsOut(root, folder)) throw new Trouble(`${told(folder)}: leads out of ${told(root)}`);
}

function leadsOut(root: string, folder: string): boolean {
  const below = path.relative(realpathSync(root), realpathSync(folder));
  return below.split(path.sep)[0] === '..' || path.isAbsolute(below);
}

/** Moves all or none. A file alone needs no journal: its move is one step of the system. */
function moveAll(
  root: string,
  prepared: readonly Prepared[],
  move: (from: string, to: string) => void,
): void {
  const [only] = prepared;
  if (only && prepared.length === 1) {
    move(only.part, only.target);
    return;
  }
  for (const each of prepared) keepOld(each);
  const journal = path.join(root, journalName);
  writeJournal(journal, prepared);
  const moved: Prepared[] = [];
  try {
    for (const each of prepared) {
      move(each.part, each.target);
      moved.push(each);
    }
  } catch (error) {
    for (const each of moved) putBack(each);
    rmSync(journal, { force: true });
    throw error;
  }
  rmSync(journal, { force: true });
  for (const { old } of prepared) rmSync(old, { force: true });
}

function keepOld({ target, old }: Prepared): void {
  const there = lstatSync(target, { throwIfNoEntry: false });
  if (!there) return;
  if (there.isDirectory()) throw new Trouble(`${told(target)}: is a folder`);
  if (!there.isFile()) return; // a link or a pipe of that name is not ours to keep
  try {
    linkSync(target, old);
  } catch {
    copyFileSync(target, old); // where the disk knows no hard links
  }
}

function putBack({ target, old }: Prepared): void {
  if (lstatSync(old, { throwIfNoEntry: false })) renameSync(old, target);
  else rmSync(target, { force: true });
}

function writeJournal(journal: string, prepared: readonly Prepared[]): void {
  const root = path.dirname(journal);
  const below = (file: string): string => path.relative(root, file).split(path.sep).join('/');
  const moves = prepared.map(({ part, target }) => [below(part), below(target)]);
  const part = partOf(journal);
  try {
    writeFileSync(part, JSON.stringify(moves));
    renameSync(part, journal);
  } catch (error) {
    rmSync(part, { force: true });
    throw error;
  }
}

/** A journal names only files that were whole when it was written, so what is left of them can be moved. */
function finishOldMove(root: string): void {
  const journal = path.join(root, journalName);
  if (!lstatSync(journal, { throwIfNoEntry: false })?.isFile()) return;
  for (const [part, target] of readJournal(journal)) {
    const [from, to] = [path.join(root, part), path.join(root, target)];
    if (!lstatSync(from, { throwIfNoEntry: false })?.isFile()) continue;
    if (!leadsOut(root, path.dirname(from))) renameSync(from, to);
  }
  rmSync(journal, { force: true });
}

/** Only moves that a run of ours can have written: `NAME.123.part` to `NAME`. */
function readJournal(journal: string): readonly (readonly [string, string])[] {
  let moves: unknown;
  try {
    moves = JSON.parse(readFileSync(journal, 'utf8'));
  } catch {
    return [];
  }
  return (Array.isArray(moves) ? moves : []).flatMap((move: unknown) => {
    const [part, target]: unknown[] = Array.isArray(move) ? move : [];
    const ours = typeof part === 'string' && staysBelow(part) && placeOf(part) === target;
    return ours && typeof target === 'string' ? [[part, target] as const] : [];
  });
}

/** Where even this fails, the first failure is the one to tell. */
function remove(file: string): void {
  try {
    rmSync(file, { force: true });
  } catch {
    return;
  }
}

/** A name made safe for a file: letters, digits, dot, hyphen and underscore; never empty, never a dot file. */
export function fileName(name: string): string {
  const safe = name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}._-]+/gu, '-')
    .replace(/^[.-]+/, '');
  return safe === '' ? 'unnamed' : safe.slice(0, 100);
}
