// Findings for a terminal: place, code, what is wrong; the line with a marker under it; why and what to do.

import { told, shownLine } from '../foreign-text.js';
import { counted } from '../../domain/units/wording.js';
import { summarise } from '../../validation/summary.js';
import { readText, type CheckResult, type LocatedFinding } from './located.js';

const colours = { error: '31', warning: '33', information: '36' } as const;

export function toText(result: CheckResult, colour: boolean): string {
  const paint = (code: string, text: string): string => (colour ? `\u001b[${code}m${text}\u001b[0m` : text);
  const blocks = result.findings.map((located) => block(located, paint));
  const { text } = summarise(result.findings.map(({ finding }) => finding));
  // Nothing was looked at: to say that nothing was found would read as clean.
  if (result.files === 0 && result.unread.length > 0) return 'nothing could be read\n';
  const where = result.unread.length > 0 ? ' in what was read' : '';
  return [...blocks, `${readText(result)}: ${text}${where}${heldBackText(result)}\n`].join('\n');
}

/** Who mends the last line that cannot be read is not surprised by what is told then. */
function heldBackText({ heldBack }: CheckResult): string {
  return heldBack === 0
    ? ''
    : `; ${counted(heldBack, 'finding')} ${heldBack === 1 ? 'waits' : 'wait'} until what cannot be read is mended`;
}

function block(located: LocatedFinding, paint: (code: string, text: string) => string): string {
  const { finding, line, column, endLine, endColumn, sourceLine } = located;
  const file = told(located.file);
  const gutter = ' '.repeat(String(line).length);
  const end = endLine === line ? Math.min(endColumn - 1, sourceLine.length) : sourceLine.length;
  // Hidden characters are wider when they are shown, so places are counted in what is shown.
  const before = shownLine(sourceLine.slice(0, column - 1)).length;
  const length = Math.max(1, shownLine(sourceLine.slice(0, Math.max(end, column - 1))).length - before);
  const word = finding.severity === 'information' ? 'note' : finding.severity;
  return [
    `${paint('1', `${file}:${line}:${column}`)} ${paint(colours[finding.severity], `${word} ${finding.code}`)}: ${shownLine(finding.message)}`,
    ` ${line} | ${shownLine(sourceLine)}`,
    ` ${gutter} | ${' '.repeat(before)}${paint(colours[finding.severity], '^'.repeat(length))}`,
    ...located.related.map(
      (r) => ` ${gutter} = see ${told(r.file)}:${r.line}:${r.column}: ${shownLine(r.message)}`,
    ),
    ...(finding.broughtByTheCalendar
      ? [` ${gutter} = brought by the calendar: on the day of the newest record it was not there`]
      : []),
    ` ${gutter} = why: ${shownLine(finding.why)}`,
    ` ${gutter} = do:  ${shownLine(finding.todo)}`,
    '',
  ].join('\n');
}
