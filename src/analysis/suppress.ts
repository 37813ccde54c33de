// Which findings do comments silence, and which comments are no use: of a code that no rule has, past their day, hiding nothing?

import type { Problem } from '../domain/model/problem.js';
import { formatDay, type CalendarDay } from '../domain/units/calendar.js';
import type { Suppression } from '../language/suppress.js';
import { reportProblems, ruleOf } from '../validation/catalogue.js';
import type { Finding } from '../validation/finding.js';
import type { Suppressed } from './analyse.js';

export interface Judged {
  readonly findings: readonly Finding[];
  readonly suppressed: readonly Suppressed[];
}

/** Without a day nothing is past its day. */
export function suppress(findings: readonly Finding[], suppressions: readonly Suppression[], asOf: CalendarDay | undefined): Judged {
  if (suppressions.length === 0) return { findings, suppressed: [] };
  const problems: Problem[] = [];
  const useful = new Map<string, Suppression[]>();
  for (const one of suppressions) {
    const { code, origin, until } = one;
    if (!ruleOf(code)) problems.push({ kind: 'suppression of unknown code', origin, code });
    else if (until !== undefined && asOf !== undefined && asOf > until) {
      problems.push({ kind: 'expired suppression', origin, code, until: formatDay(until), asOf: formatDay(asOf) });
    } else {
      const key = `${origin.source} ${code}`;
      useful.set(key, [...(useful.get(key) ?? []), one]);
    }
  }
  const used = new Set<Suppression>();
  const kept: Finding[] = [];
  const suppressed: Suppressed[] = [];
  for (const finding of findings) {
    const { source, start } = finding.origin;
    const by = useful.get(`${source} ${finding.code}`)?.find((one) => start >= one.from && start <= one.to);
    if (!by) {
      kept.push(finding);
      continue;
    }
    used.add(by);
    suppressed.push({ finding, by });
  }
  for (const one of [...useful.values()].flat()) {
    if (!used.has(one)) problems.push({ kind: 'unused suppression', origin: one.origin, code: one.code });
  }
  return { findings: [...kept, ...reportProblems(problems)], suppressed };
}
