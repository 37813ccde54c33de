// Keeps the texts of an estate while they are edited. A changed text is read again, all others stay as they are; names,
// readings and rules are then put together anew, which takes milliseconds and gives what a fresh analysis would give.

import type { Origin } from '../domain/model/origin.js';
import type { PhotoUse } from '../domain/model/records.js';
import { newestDay } from '../domain/model/newest.js';
import { assemble } from '../language/assemble.js';
import { linesOf, type Lines } from '../language/lines.js';
import { readSheet } from '../language/read.js';
import type { Sheet } from '../language/sheet.js';
import { suppressionsOf } from '../language/suppress.js';
import { reportProblems, runRules } from '../validation/catalogue.js';
import { leavesUnread, withoutConsequences } from './consequences.js';
import { sortFindings } from './sorting.js';
import { suppress } from './suppress.js';
import { wholeLines } from './whole-lines.js';
import type { Analysis, AnalyseOptions, PhotoLook } from './analysis.js';

export interface Workspace {
  /** New or changed; the same text again changes nothing. */
  set(uri: string, source: { readonly text: string }): void;
  delete(uri: string): void;
  has(uri: string): boolean;
  /** The same object as before where nothing has changed. */
  analyse(options?: AnalyseOptions): Analysis;
}

interface Entry {
  readonly uri: string;
  readonly source: number;
  readonly text: string;
  readonly sheet: Sheet;
  readonly suppressions: ReturnType<typeof suppressionsOf>;
  lines?: Lines;
}

export function createWorkspace(photos?: PhotoLook): Workspace {
  const entries = new Map<string, Entry>();
  // A text keeps its number for good, so that the origins in its sheet stay true.
  const numbers = new Map<string, number>();
  let last: { readonly asOf: AnalyseOptions['asOf']; readonly analysis: Analysis } | undefined;

  return {
    set(uri, { text }) {
      if (entries.get(uri)?.text === text) return;
      const source = numbers.get(uri) ?? numbers.size;
      numbers.set(uri, source);
      const sheet = readSheet(text, source, uri);
      entries.set(uri, {
        uri,
        source,
        text,
        sheet,
        suppressions: suppressionsOf(text, sheet.comments, source),
      });
      last = undefined;
    },
    delete(uri) {
      if (entries.delete(uri)) last = undefined;
    },
    has: (uri) => entries.has(uri),
    analyse({ asOf } = {}) {
      if (last?.asOf === asOf && last) return last.analysis;
      const analysis = build([...entries.values()], asOf, photos);
      last = { asOf, analysis };
      return analysis;
    },
  };
}

function build(
  entries: readonly Entry[],
  given: AnalyseOptions['asOf'],
  photos: PhotoLook | undefined,
): Analysis {
  const byNumber = new Map(entries.map((entry) => [entry.source, entry]));
  const uriOf = (source: number): string => byNumber.get(source)?.uri ?? '';
  const byUri = new Map(entries.map((entry) => [entry.uri, entry]));
  const { estate, problems, doubted, lacksJobs } = assemble(entries.map((entry) => entry.sheet));
  const unread = entries.flatMap((entry) => entry.suppressions.problems);
  const asOf = given ?? newestDay(estate);
  const conflicts = problems.filter(({ kind }) => kind === 'conflict marker');
  // Of an estate with two versions in it nothing is true enough to be judged; what cannot be read is told all the same.
  const judged = conflicts.length === 0;
  const all = [...problems, ...unread];
  const photoOf = ({ path, origin }: PhotoUse): ReturnType<PhotoLook> => photos?.(uriOf(origin.source), path);
  const lineAt = ({ source, start }: Origin): string => {
    const entry = byNumber.get(source);
    return `${source}:${entry ? (entry.lines ??= linesOf(entry.text)).at(start).line : 0}`;
  };
  const unsound = entries.flatMap(({ sheet }) => sheet.unsound);
  const everything = judged
    ? runRules({ estate, problems: all, asOf: given, photo: photos && photoOf })
    : reportProblems(all);
  const kept = judged
    ? withoutConsequences(everything, estate, { doubted, lacksJobs, problems: all, unsound }, lineAt)
    : everything;
  const found = wholeLines(kept, (source) => byNumber.get(source)?.text);
  const { findings, suppressed } = suppress(
    found,
    judged ? entries.flatMap((entry) => entry.suppressions.suppressions) : [],
    asOf,
    !all.some(leavesUnread),
  );
  return {
    estate,
    ...sortFindings(findings, suppressed, uriOf),
    heldBack: everything.length - kept.length,
    uris: [...byUri.keys()].sort(),
    inConflict: [...new Set(conflicts.map(({ origin }) => uriOf(origin.source)))].sort(),
    asOf,
    uriOf,
    sourceOf: (uri) => byUri.get(uri)?.source,
    textOf: ({ source, start, end }) => byNumber.get(source)?.text.slice(start, end) ?? '',
    locate({ source, start, end }) {
      const entry = byNumber.get(source);
      if (!entry) return { uri: '', line: 1, column: 1, endLine: 1, endColumn: 1 };
      entry.lines ??= linesOf(entry.text);
      const from = entry.lines.at(start);
      const to = entry.lines.at(end);
      return { uri: entry.uri, line: from.line, column: from.column, endLine: to.line, endColumn: to.column };
    },
  };
}
