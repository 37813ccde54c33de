// A finding with its place worked out: what every output format of `check` starts from.

import type { Finding } from '../../validation/finding.js';

export interface LocatedFinding {
  readonly finding: Finding;
  /** As the command line names it. */
  readonly file: string;
  /** As the repository names it, for services that show findings beside its files. */
  readonly repositoryFile: string;
  /** Stays while lines and files move, whatever folder the check is run in; no two findings share one. */
  readonly fingerprint: string;
  /** 1-based; columns in UTF-16 code units, end exclusive. */
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
  /** The line of text the finding starts on. */
  readonly sourceLine: string;
  readonly related: readonly {
    readonly file: string;
    readonly repositoryFile: string;
    readonly line: number;
    readonly column: number;
    readonly message: string;
  }[];
}

export interface CheckResult {
  /** Those that count: not allowed by a comment, not known, not older than asked for. */
  readonly findings: readonly LocatedFinding[];
  readonly files: number;
  readonly suppressed: number;
  /** In the list of known findings, with a reason and not past their day. */
  readonly known: number;
  /** There already in the revision that new ones are counted from. */
  readonly older: number;
  /** Held back, because what they rest on is not read in full. */
  readonly heldBack: number;
  /** What could not be read, a line each: then nothing is clean. */
  readonly unread: readonly string[];
}

/** `12 files`, and what is not among the findings. */
export function readText({ files, suppressed, known, older, unread }: CheckResult): string {
  return [
    `${files} ${files === 1 ? 'file' : 'files'}`,
    ...(unread.length > 0 ? [`${unread.length} not read`] : []),
    ...(suppressed > 0 ? [`${suppressed} allowed by a comment`] : []),
    ...(known > 0 ? [`${known} known`] : []),
    ...(older > 0 ? [`${older} older`] : []),
  ].join(', ');
}
