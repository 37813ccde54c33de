// Which findings do comments silence, and which comments are no use: of a code that no rule has, past their day, hiding nothing?

import type { Problem } from '../domain/model/problem.js';
import { formatDay, type CalendarDay } from '../domain/units/calendar.js';
import type { Suppression } from '../language/suppress.js';
import { reportProblems, ruleOf } from '../validation/catalogue.js';
import type { Finding } from '../validation/finding.js';
import type { Suppressed } from './analysis.js';

export interface FindingsKept {
  readonly findings: readonly Finding[];
  readonly suppressed: readonly Suppressed[];
}

/** Without a day nothing is past its day; while something cannot be read, nobody knows what a comment would hide. */
export function suppress(
  findings: readonly Finding[],
  suppressions: readonly Suppression[],
  asOf: CalendarDay | undefined,
  isAllRead: boolean,
): FindingsKept {
  if (suppressions.length === 0) return { findings, suppressed: [] };
  const problems: Problem[] = [];
  const useful = new Map<string, Suppression[]>();
  for (const one of suppressions) {
    const { code, origin, until } = one;
    if (!ruleOf(code)) problems.push({ kind: 'suppression of unknown code', origin, code });
    else if (until !== undefined && asOf !== undefined && asOf > until) {
      problems.push({
        kind: 'expired suppression',
        origin,
        code,
        until: formatDay(until),
        asOf: formatDay(asOf),
      });
    } else {
      const key = `${origin.source} ${code}`;
      const same = useful.get(key);
      if (same) same.push(one);
      else useful.set(key, [one]);
    }
  }
  const used = new Set<Suppression>();
  const kept: Finding[] = [];
  const suppressed: Suppressed[] = [];
  for (const finding of findings) {
    const { source, start } = finding.origin;
    const by = lineFor(useful.get(`${source} ${finding.code}`) ?? [], start);
    if (!by) {
      kept.push(finding);
      continue;
    }
    used.add(by);
    suppressed.push({ finding, by });
  }
  for (const one of [...useful.values()].flat()) {
    // What is wrong with the text itself is told whatever else cannot be read.
    if (used.has(one) || !(isAllRead || one.code.startsWith('TL1'))) continue;
    const { origin, code, isOneOfSeveral = false } = one;
    problems.push({ kind: 'unused suppression', origin, code, isOneOfSeveral });
  }
  return { findings: [...kept, ...reportProblems(problems)], suppressed };
}

/** The comment whose line of code holds the offset; `sorted` by where their comments stand, so by their lines too. */
function lineFor(sorted: readonly Suppression[], offset: number): Suppression | undefined {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle]?.to ?? Infinity) < offset) low = middle + 1;
    else high = middle;
  }
  const found = sorted[low];
  return found && offset >= found.from ? found : undefined;
}
