// Findings in the order a reader goes through them: file, line, column, code. The same thing is said once, and a file with
// thousands of findings shows the first of them with a note of how many more there are.

import { reportProblems } from '../validation/catalogue.js';
import type { Finding } from '../validation/finding.js';
import type { FindingsKept } from './suppress.js';

/** Nobody reads more than this of one file; what follows is mostly the same slip again. */
export const mostInOneFile = 500;

export function sortFindings(
  findings: FindingsKept['findings'],
  suppressed: FindingsKept['suppressed'],
  uriOf: (source: number) => string,
): FindingsKept {
  const byPlace = (a: Finding, b: Finding): number => {
    if (a.origin.source !== b.origin.source) return compare(uriOf(a.origin.source), uriOf(b.origin.source));
    return (
      a.origin.start - b.origin.start ||
      compare(a.code, b.code) ||
      a.origin.end - b.origin.end ||
      compare(a.message, b.message)
    );
  };
  const sorted = [...findings].sort(byPlace);
  const kept: Finding[] = [];
  const counts = new Map<number, number>();
  let before: Finding | undefined;
  for (const finding of sorted) {
    if (before && byPlace(before, finding) === 0) continue;
    before = finding;
    const { source } = finding.origin;
    const count = (counts.get(source) ?? 0) + 1;
    counts.set(source, count);
    if (count <= mostInOneFile) kept.push(finding);
  }
  const notes = [...counts]
    .filter(([, count]) => count > mostInOneFile)
    .flatMap(([source, count]) => {
      const end = kept.findLast((finding) => finding.origin.source === source)?.origin;
      return end
        ? reportProblems([
            {
              kind: 'syntax',
              origin: { source, start: end.end, end: end.end },
              message: `${count - mostInOneFile} more findings in this file are not shown; mend those above first.`,
            },
          ])
        : [];
    });
  return {
    findings: notes.length === 0 ? kept : [...kept, ...notes].sort(byPlace),
    suppressed: [...suppressed].sort((a, b) => byPlace(a.finding, b.finding)),
  };
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
