// Which findings were there already in a revision (`check --new-since REV`)? The same paths are read as it has them and checked
// on the same day, so that only what a change brought is left.

import { statSync } from 'node:fs';
import path from 'node:path';
import { analyse } from '../analysis/analyse.js';
import type { SourceText } from '../analysis/analysis.js';
import { findingKeys } from '../analysis/finding-keys.js';
import type { CalendarDay } from '../domain/units/calendar.js';
import { Trouble, type Console } from './console.js';
import { fingerprintOf } from './fingerprint.js';
import { readRevision } from './git/revision.js';
import { decoded } from './read-estate.js';

/** Fingerprints of what the check of that revision finds. */
export function olderFindings(
  revision: string,
  paths: readonly string[],
  asOf: CalendarDay | undefined,
  console: Console,
): ReadonlySet<string> {
  const texts = (paths.length === 0 ? ['.'] : paths).flatMap((given) => textsAt(revision, given, console));
  const analysis = analyse(texts, asOf === undefined ? {} : { asOf });
  return new Set(findingKeys(analysis, analysis.findings).map(fingerprintOf));
}

function textsAt(revision: string, given: string, { cwd }: Console): readonly SourceText[] {
  if (given === '-') throw new Trouble('--new-since needs files, not standard input');
  const full = path.resolve(cwd, given);
  const isFolder = statSync(full, { throwIfNoEntry: false })?.isDirectory() ?? false;
  const read = readRevision(revision, isFolder ? full : path.dirname(full));
  if (!read.ok) throw new Trouble(`--new-since ${read.message}`);
  return read.texts
    .filter((text) => isFolder || text.path === path.basename(full))
    .map(({ path: file, bytes }) => {
      const text = decoded(`${revision}:${file}`, bytes);
      // What could not be read then has no findings: all of today's are new.
      return { uri: `${given}/${file}`, text: text.ok ? text.text : '' };
    });
}
