// What do the two words of `diff` name? A folder or a file on disk, a saved report, a revision, or, where none is given, the
// working tree and HEAD. Each becomes one side of the comparison; what stops that is told with the side it is about.

import { readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { analyse } from '../analysis/analyse.js';
import type { Analysis, SourceText } from '../analysis/analysis.js';
import { estateLedger } from '../analysis/estate-ledger.js';
import { keyedFindings } from '../analysis/finding-keys.js';
import type { ComparedEstate, ComparedSide } from '../generators/change-summary/change-summary.js';
import { readSavedReport } from '../generators/change-summary/saved-report.js';
import { valueOfWords } from '../language/blocks.js';
import { Trouble, type Console } from './console.js';
import { told } from './foreign-text.js';
import { isRevision, readRevision } from './git/revision.js';
import { marksOfRevision, marksOnDisk } from './photo-marks.js';
import { decoded, readEstate } from './read-estate.js';
import { reasonOf } from './reason.js';

/** @param estate folder of the estate: what a revision is read below, and what the working tree is */
export async function comparedSides(
  given: readonly string[],
  estate: string,
  console: Console,
): Promise<readonly [ComparedSide, ComparedSide]> {
  const [first, second] = rangeOf(given, estate, console);
  const before = await sideOf(first ?? 'HEAD', estate, console);
  const after =
    second === undefined ? await treeSide(estate, console) : await sideOf(second, estate, console);
  return [before, after];
}

/** `A..B` as git has it is A and B; `A...B` is where they parted, and B. */
function rangeOf(given: readonly string[], estate: string, console: Console): readonly string[] {
  const [only, second] = given;
  if (only === undefined || second !== undefined || kindOnDisk(only, console) !== undefined) return given;
  const [, from, dots, to] = /^(.*?)(\.{2,3})(.*)$/.exec(only) ?? [];
  if (dots === undefined || from === undefined) return given;
  const end = to === '' || to === undefined ? 'HEAD' : to;
  const begin = from === '' ? 'HEAD' : from;
  return dots === '...' ? [`${begin}...${end}`, end] : [begin, end];
}

async function sideOf(name: string, estate: string, console: Console): Promise<ComparedSide> {
  const kind = kindOnDisk(name, console);
  if (kind === undefined) return revisionSide(name, estate, console);
  // A bare word that is both is neither until somebody says which, as git has it.
  if (!/[\\/.]/.test(name) && isRevision(name, path.resolve(console.cwd, estate)))
    throw new Trouble(`${name} is a folder and a revision: write ./${name} or the full name of the revision`);
  return kind === 'file' && name.endsWith('.json') ? savedSide(name, console) : diskSide(name, name, console);
}

function kindOnDisk(name: string, { cwd }: Console): 'folder' | 'file' | undefined {
  const found = statSync(path.resolve(cwd, name), { throwIfNoEntry: false });
  if (!found) return undefined;
  return found.isDirectory() ? 'folder' : 'file';
}

function savedSide(name: string, { cwd }: Console): ComparedSide {
  let text: string;
  try {
    text = readFileSync(path.resolve(cwd, name), 'utf8');
  } catch (error) {
    throw new Trouble(`${told(name)}: ${reasonOf(error)}`);
  }
  const read = readSavedReport(text, valueOfWords);
  if (!read.ok) throw new Trouble(`${told(name)} ${read.message}`);
  return { kind: 'saved report', name: told(name), saved: read.saved };
}

function revisionSide(name: string, estate: string, console: Console): ComparedEstate {
  const read = readRevision(name, path.resolve(console.cwd, estate));
  if (!read.ok) throw new Trouble(read.message);
  const texts = read.texts.map(({ path: file, bytes }): SourceText => {
    const text = decoded(`${name}:${file}`, bytes);
    if (!text.ok) throw new Trouble(text.message);
    return { uri: file, text: text.text };
  });
  const side = estateSide(told(name), texts);
  return { ...side, photos: marksOfRevision(side.ledger, read.photos, path.resolve(console.cwd, estate)) };
}

function treeSide(estate: string, console: Console): Promise<ComparedEstate> {
  return diskSide(estate, estate === '.' ? 'working tree' : `working tree (${told(estate)})`, console);
}

/** Names of texts are taken from the folder, so that they are the same on both sides. */
async function diskSide(folder: string, shown: string, console: Console): Promise<ComparedEstate> {
  const read = await readEstate([folder], console);
  // A folder without texts is an estate that does not begin yet, or has ended.
  const unread = read.unread.filter((line) => !line.endsWith('no .trough file in this folder'));
  if (unread.length > 0) throw new Trouble(unread.join('\n'));
  const root = path.resolve(console.cwd, folder);
  const placeOf = new Map<string, string>();
  const texts = read.texts.map(({ path: file, full, text }): SourceText => {
    const below = full === undefined ? file : path.relative(root, full);
    const uri = (below === '' ? path.basename(root) : below).split(path.sep).join('/');
    if (full !== undefined) placeOf.set(uri, full);
    return { uri, text };
  });
  const side = estateSide(shown, texts);
  return { ...side, photos: marksOnDisk(side.ledger, placeOf) };
}

export function estateSide(name: string, texts: readonly SourceText[]): ComparedEstate {
  const analysis = analyse(texts);
  const [conflict] = analysis.inConflict;
  if (conflict !== undefined)
    throw new Trouble(
      `${told(conflict)} in ${name} holds a merge conflict that is not settled: there is no one state to compare`,
    );
  return estateOfAnalysis(name, analysis);
}

export function estateOfAnalysis(name: string, analysis: Analysis): ComparedEstate {
  const { blocks, unreadable } = estateLedger(analysis);
  return {
    kind: 'estate',
    name,
    estate: analysis.estate,
    ledger: blocks,
    unreadable: unreadable.map(told),
    findings: keyedFindings(analysis, (uri) => uri),
  };
}
