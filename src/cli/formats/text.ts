// Findings for a terminal: place, code, what is wrong; the line with a marker under it; why and what to do.

import { summarise } from '../../validation/summary.js';
import type { CheckResult, LocatedFinding } from './located.js';

const colours = { error: '31', warning: '33', information: '36' } as const;

export function toText(result: CheckResult, colour: boolean): string {
  const paint = (code: string, text: string): string => (colour ? `\u001b[${code}m${text}\u001b[0m` : text);
  const blocks = result.findings.map((located) => block(located, paint));
  const { text } = summarise(result.findings.map(({ finding }) => finding));
  const files = `${result.files} ${result.files === 1 ? 'file' : 'files'}`;
  const suppressed = result.suppressed > 0 ? `, ${result.suppressed} allowed by a comment` : '';
  return [...blocks, `${files}: ${text}${suppressed}\n`].join('\n');
}

function block(located: LocatedFinding, paint: (code: string, text: string) => string): string {
  const { finding, file, line, column, endLine, endColumn, sourceLine } = located;
  const gutter = ' '.repeat(String(line).length);
  const shown = sourceLine.replace(/\t/g, ' ');
  const length = Math.max(
    1,
    (endLine === line ? Math.min(endColumn - 1, shown.length) : shown.length) - column + 1,
  );
  const word = finding.severity === 'information' ? 'note' : finding.severity;
  return [
    `${paint('1', `${file}:${line}:${column}`)} ${paint(colours[finding.severity], `${word} ${finding.code}`)}: ${finding.message}`,
    ` ${line} | ${shown}`,
    ` ${gutter} | ${' '.repeat(column - 1)}${paint(colours[finding.severity], '^'.repeat(length))}`,
    ...located.related.map((r) => ` ${gutter} = see ${r.file}:${r.line}:${r.column}: ${r.message}`),
    ` ${gutter} = why: ${finding.why}`,
    ` ${gutter} = do:  ${finding.todo}`,
    '',
  ].join('\n');
}
