// Findings as Markdown for a pull-request comment or a job summary: counts first, at most 65 536 characters.

import { visibleLine } from '../../domain/units/visible-text.js';
import { summarise } from '../../validation/summary.js';
import { readText, type CheckResult, type LocatedFinding } from './located.js';

const most = 65_536;

export function toMarkdown(result: CheckResult): string {
  const { text } = summarise(result.findings.map(({ finding }) => finding));
  const said =
    result.unread.length === 0
      ? text
      : result.files === 0
        ? 'nothing could be read'
        : `not everything could be read; ${text} in what could`;
  const unread = result.unread.map((line) => `- ${cell(line)}\n`).join('');
  const head = `### Check: ${said}\n\n${readText(result)}.\n${unread === '' ? '' : `\n${unread}`}`;
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
