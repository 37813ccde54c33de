// A finding with its place worked out: what every output format of `check` starts from.

import type { Finding } from '../../validation/finding.js';

export interface LocatedFinding {
  readonly finding: Finding;
  readonly file: string;
  /** 1-based; columns in UTF-16 code units, end exclusive. */
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
  /** The line of text the finding starts on. */
  readonly sourceLine: string;
  readonly related: readonly {
    readonly file: string;
    readonly line: number;
    readonly column: number;
    readonly message: string;
  }[];
}

export interface CheckResult {
  readonly findings: readonly LocatedFinding[];
  readonly files: number;
  readonly suppressed: number;
}
