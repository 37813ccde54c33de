// Findings as JSON for other programs. `formatVersion` changes when a field changes its meaning or goes away.

import { summarise } from '../../validation/summary.js';
import type { CheckResult } from './located.js';

export function toJson(result: CheckResult): string {
  const { error, warning, information } = summarise(result.findings.map(({ finding }) => finding));
  return (
    JSON.stringify(
      {
        formatVersion: 1,
        files: result.files,
        counts: {
          error,
          warning,
          information,
          suppressed: result.suppressed,
          known: result.known,
          older: result.older,
        },
        unread: result.unread,
        findings: result.findings.map(
          ({ finding, fingerprint, file, line, column, endLine, endColumn, related }) => ({
            code: finding.code,
            fingerprint,
            severity: finding.severity,
            file,
            line,
            column,
            endLine,
            endColumn,
            message: finding.message,
            why: finding.why,
            todo: finding.todo,
            broughtBy: finding.broughtByTheCalendar ? 'calendar' : 'change',
            related: related.map((other) => ({
              file: other.file,
              line: other.line,
              column: other.column,
              message: other.message,
            })),
            fixes: (finding.fixes ?? []).map(({ title }) => title),
          }),
        ),
      },
      null,
      2,
    ) + '\n'
  );
}
