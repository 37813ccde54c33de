// Findings as Markdown for a pull-request comment or a job summary: counts first, at most 65 536 characters.

import { visibleLine } from '../../domain/units/visible-text.js';
import { summarise } from '../../validation/summary.js';
import type { CheckResult, LocatedFinding } from './located.js';

const most = 65_536;

export function toMarkdown(result: CheckResult): string {
  const { text } = summarise(result.findings.map(({ finding }) => finding));
  const head = `### Check: ${text}\n\n${result.files} files read${result.suppressed > 0 ? `, ${result.suppressed} findings allowed by a comment` : ''}.\n`;
  if (result.findings.length === 0) return head;
  let body = `${head}\n| where | what | what to do |\n| --- | --- | --- |\n`;
  for (const [index, located] of result.findings.entries()) {
    const row = rowOf(located);
    if (body.length + row.length > most - 100)
      return `${body}\n${result.findings.length - index} more findings are not shown here.\n`;
    body += row;
  }
  return body;
}

function rowOf({ finding, file, line }: LocatedFinding): string {
  const word = finding.severity === 'information' ? 'note' : finding.severity;
  return `| ${cell(`${file}:${line}`)} | **${word} ${finding.code}** ${cell(finding.message)} | ${cell(finding.todo)} |\n`;
}

function cell(text: string): string {
  return visibleLine(text.replace(/\r?\n/g, ' ')).replace(
    /[\\`*_{}[\]<>#|]/g,
    (character) => `\\${character}`,
  );
}
