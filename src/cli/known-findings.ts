// The list of findings that are known and lived with for a while (`check --baseline FILE`): each with its reason, and a day on
// which it counts again. A list without reasons would be a way to look away, so it is refused; what is past its day or no
// longer found is told.

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { formatDay, parseDay, type CalendarDay } from '../domain/units/calendar.js';
import { counted } from '../domain/units/wording.js';
import { Trouble, type Console } from './console.js';
import { told } from './foreign-text.js';
import type { LocatedFinding } from './formats/located.js';
import { reasonOf } from './reason.js';
import { writeFile } from './write-files.js';

interface KnownFinding {
  readonly fingerprint: string;
  readonly reason: string;
  /** Last day on which it is known. */
  readonly until: CalendarDay | undefined;
}

export interface Sorted {
  readonly findings: readonly LocatedFinding[];
  readonly known: number;
  /** What is to be said of the list, a line each. */
  readonly told: readonly string[];
}

export function readKnownFindings(file: string, { cwd }: Console): readonly KnownFinding[] {
  const named = `--baseline ${told(file)}`;
  let data: unknown;
  try {
    data = JSON.parse(readFileSync(path.resolve(cwd, file), 'utf8'));
  } catch (error) {
    throw new Trouble(`${named}: ${error instanceof SyntaxError ? 'is no JSON' : reasonOf(error)}`);
  }
  const list = field(data, 'findings');
  if (field(data, 'kind') !== 'known findings' || field(data, 'formatVersion') !== 1 || !Array.isArray(list))
    throw new Trouble(
      `${named}: is no list of known findings; 'troughline check --write-baseline' makes one`,
    );
  return list.map((entry: unknown, i) => {
    const [fingerprint, reason, until] = ['fingerprint', 'reason', 'until'].map((key) => field(entry, key));
    const which = `${named}: finding ${i + 1}`;
    if (typeof fingerprint !== 'string') throw new Trouble(`${which} has no fingerprint`);
    if (typeof reason !== 'string' || reason.trim() === '')
      throw new Trouble(`${which} has no reason: say why it is lived with`);
    const day = typeof until === 'string' ? parseDay(until) : undefined;
    if (until !== null && until !== undefined && day === undefined)
      throw new Trouble(`${which}: until is ${JSON.stringify(until)}; a day is written YYYY-MM-DD`);
    return { fingerprint, reason, until: day };
  });
}

/** Without a day nothing is past its day. */
export function sortOutKnown(
  findings: readonly LocatedFinding[],
  list: readonly KnownFinding[],
  asOf: CalendarDay | undefined,
): Sorted {
  const isPast = ({ until }: KnownFinding): boolean =>
    until !== undefined && asOf !== undefined && asOf > until;
  const there = new Set(findings.map(({ fingerprint }) => fingerprint));
  const known = new Set(list.filter((each) => !isPast(each)).map(({ fingerprint }) => fingerprint));
  const kept = findings.filter(({ fingerprint }) => !known.has(fingerprint));
  const past = list.filter((each) => isPast(each) && there.has(each.fingerprint));
  const gone = list.filter(({ fingerprint }) => !there.has(fingerprint));
  return {
    findings: kept,
    known: findings.length - kept.length,
    told: [
      ...past.map(
        ({ until, reason }) =>
          `a known finding counts again: it was lived with until ${until === undefined ? '' : formatDay(until)} (${reason})`,
      ),
      ...(gone.length > 0
        ? [`${counted(gone.length, 'known finding')} no longer found: take them out of the list`]
        : []),
    ],
  };
}

/** In the order of the findings, so that a list made again differs where they do. */
export function writeKnownFindings(
  file: string,
  findings: readonly LocatedFinding[],
  reason: string | undefined,
  until: CalendarDay | undefined,
  { cwd }: Console,
): void {
  if (reason === undefined || reason.trim() === '')
    throw new Trouble('--write-baseline needs --because: say why these findings are lived with');
  const list = {
    formatVersion: 1,
    kind: 'known findings',
    findings: findings.map(({ fingerprint, finding, file: at, line }) => ({
      fingerprint,
      code: finding.code,
      where: `${at}:${line}`,
      message: finding.message,
      reason,
      until: until === undefined ? null : formatDay(until),
    })),
  };
  writeFile(path.resolve(cwd, file), `${JSON.stringify(list, null, 2)}\n`);
}

function field(value: unknown, key: string): unknown {
  return typeof value === 'object' && value !== null && Object.hasOwn(value, key)
    ? (value as Readonly<Record<string, unknown>>)[key] // an object with that own field
    : undefined;
}
