// Any text → a sheet, whatever it holds: a text that cannot be one of ours is refused with a reason and not parsed.

import type { Problem } from '../domain/model/problem.js';
import { hiddenCharacters, type HiddenCharacter } from '../domain/units/visible-text.js';
import { conflictOf } from './conflict.js';
import { emptySheet, lower } from './lower.js';
import { namesAlone } from './names-alone.js';
import { parseText, prepare } from './parse.js';
import type { Sheet } from './sheet.js';

/** UTF-16 code units: about two million readings in one file. */
export const largestText = 64_000_000;
/** The same without the regular rows of inspections, which cost next to nothing. */
export const largestCode = 4_000_000;

export function readSheet(text: string, source: number, uri: string): Sheet {
  const refused = (message: string): Sheet => {
    const problem: Problem = {
      kind: 'syntax',
      origin: { source, start: 0, end: Math.min(1, text.length) },
      message,
    };
    return emptySheet(source, uri, [problem]);
  };
  if (text.includes('\0'))
    return refused('This file is not text: it holds bytes that no text has. Save it as plain text in UTF-8.');
  if (text.length > largestText) return refused(tooLong(text.length, largestText, 'characters'));
  const conflict = conflictOf(text);
  if (conflict) return namesAlone(text, source, uri, conflict);
  const prepared = prepare(text);
  const code = text.length - prepared.lifted.taken;
  if (code > largestCode) return refused(tooLong(code, largestCode, 'characters besides plain readings'));
  return withHidden(lower(parseText(text, prepared), source, uri), text);
}

/** With a problem for each run of hidden characters, unless the parser has stumbled over it already. */
function withHidden(sheet: Sheet, text: string): Sheet {
  const runs = runsOf(hiddenCharacters(text));
  if (runs.length === 0) return sheet;
  const slips = sheet.problems.filter(({ kind }) => kind === 'syntax');
  const told = runs.filter(
    ({ start, end }) => !slips.some(({ origin }) => origin.start < end && start < origin.end),
  );
  return {
    ...sheet,
    problems: [
      ...sheet.problems,
      ...told.map(({ start, end, name, count }): Problem => ({
        kind: 'hidden character',
        origin: { source: sheet.source, start, end },
        name,
        count,
      })),
    ],
  };
}

function runsOf(
  hidden: readonly HiddenCharacter[],
): readonly (HiddenCharacter & { readonly count: number })[] {
  const runs: { start: number; end: number; name: string; count: number }[] = [];
  for (const one of hidden) {
    const last = runs.at(-1);
    if (last && last.end === one.start) {
      last.end = one.end;
      last.count++;
    } else runs.push({ ...one, count: 1 });
  }
  return runs;
}

function tooLong(length: number, most: number, what: string): string {
  return (
    `This file holds ${(length / 1_000_000).toFixed(1)} million ${what}, ` +
    `and at most ${most / 1_000_000} million are read. ` +
    'Split it: one file an inspection keeps every file small.'
  );
}
