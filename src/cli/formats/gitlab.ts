// Findings as the code quality report that GitLab shows in a merge request: a list of issues with description, rule, fingerprint,
// severity, path and line (docs of GitLab, "Code quality report format"). Paths are those of the repository.

import { visibleLine } from '../../domain/units/visible-text.js';
import type { CheckResult } from './located.js';

const severities = { error: 'major', warning: 'minor', information: 'info' } as const;

export function toGitlab({ findings }: CheckResult): string {
  const issues = findings.map(({ finding, fingerprint, repositoryFile, line, endLine }) => ({
    description: visibleLine(`${finding.message} ${finding.todo}`),
    check_name: finding.code,
    fingerprint,
    severity: severities[finding.severity],
    location: { path: repositoryFile, lines: { begin: line, end: endLine } },
  }));
  return `${JSON.stringify(issues, null, 2)}\n`;
}
