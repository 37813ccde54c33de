// Findings as workflow commands that a hosted build turns into annotations on the changed lines. Ten of each level are
// shown a step, so the first ten are sent and the rest are counted in a last line.

import { visibleText } from '../../domain/units/visible-text.js';
import type { CheckResult } from './located.js';

const commands = { error: 'error', warning: 'warning', information: 'notice' } as const;
const shownOfEach = 10;

export function toGithub(result: CheckResult): string {
  const sent = { error: 0, warning: 0, information: 0 };
  const lines: string[] = [];
  let left = 0;
  for (const { finding, repositoryFile: file, line, endLine, column, endColumn } of result.findings) {
    if (++sent[finding.severity] > shownOfEach) {
      left++;
      continue;
    }
    const columns = endLine === line ? `,col=${column},endColumn=${endColumn}` : '';
    const properties = `file=${property(file)},line=${line},endLine=${endLine}${columns},title=${property(`${finding.code}`)}`;
    lines.push(
      `::${commands[finding.severity]} ${properties}::${data(`${finding.message}\n${finding.why}\n${finding.todo}`)}`,
    );
  }
  for (const line of result.unread) lines.push(`::error title=troughline::${data(line)}`);
  if (left > 0)
    lines.push(
      `::notice title=troughline::${left} more findings are not shown here; see the job summary or run troughline check`,
    );
  return lines.map((line) => `${line}\n`).join('');
}

function data(text: string): string {
  return visibleText(text).replace(/%/g, '%25').replace(/\r/g, '%0D').replace(/\n/g, '%0A');
}

function property(text: string): string {
  return data(text).replace(/:/g, '%3A').replace(/,/g, '%2C');
}
