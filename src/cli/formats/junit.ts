// Findings as JUnit XML, the form that build servers show as tests: a case a file, and a case a finding with at most one failure.
// A finding fails its case exactly where it gives the exit code 1; a file that could not be read is an error.

import { visibleText } from '../../domain/units/visible-text.js';
import type { CheckResult, LocatedFinding } from './located.js';

/** @param fails whether a finding gives the exit code 1 */
export function toJunit(
  result: CheckResult,
  files: readonly string[],
  fails: (finding: LocatedFinding) => boolean,
): string {
  const cases = [
    ...files.map((file) => empty(file, 'is read')),
    ...result.findings.map((found) => findingCase(found, fails(found))),
    ...result.unread.map((line) => unreadCase(line)),
  ];
  const failures = result.findings.filter(fails).length;
  const counts = `tests="${cases.length}" failures="${failures}" errors="${result.unread.length}"`;
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<testsuites name="troughline" ${counts}>`,
    `  <testsuite name="troughline check" ${counts}>`,
    ...cases,
    '  </testsuite>',
    '</testsuites>',
    '',
  ].join('\n');
}

function empty(file: string, name: string): string {
  return `    <testcase classname="${xml(file)}" name="${xml(name)}"/>`;
}

function findingCase({ finding, file, line, column }: LocatedFinding, fails: boolean): string {
  const name = `${finding.code} line ${line}: ${finding.message}`;
  const words = `${file}:${line}:${column} ${finding.message}\n${finding.why}\n${finding.todo}`;
  const body = fails
    ? `<failure type="${finding.code}" message="${xml(`${file}:${line}:${column} ${finding.message}`)}">${xml(words)}</failure>`
    : `<system-out>${xml(words)}</system-out>`;
  return `    <testcase classname="${xml(file)}" name="${xml(name)}">${body}</testcase>`;
}

function unreadCase(line: string): string {
  return `    <testcase classname="troughline" name="${xml(line)}"><error type="unread" message="${xml(line)}"/></testcase>`;
}

/** XML 1.0: the five predefined entities; what no XML text may hold is hidden and shown by its number. */
function xml(text: string): string {
  return visibleText(text)
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&apos;')
    .replace(/\n/g, '&#10;');
}
