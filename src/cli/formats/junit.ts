// Findings as JUnit XML, the form that build servers show as tests: one test case a file, one failure a finding.

import { visibleText } from '../../domain/units/visible-text.js';
import type { CheckResult, LocatedFinding } from './located.js';

export function toJunit(result: CheckResult, files: readonly string[]): string {
  const byFile = new Map<string, LocatedFinding[]>(files.map((file) => [file, []]));
  for (const located of result.findings)
    byFile.set(located.file, [...(byFile.get(located.file) ?? []), located]);
  const counted = result.findings.filter(({ finding }) => finding.severity !== 'information').length;
  const cases = [...byFile].map(([file, findings]) => testCase(file, findings));
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<testsuites name="troughline" tests="${byFile.size}" failures="${counted}">`,
    `  <testsuite name="troughline check" tests="${byFile.size}" failures="${counted}">`,
    ...cases,
    '  </testsuite>',
    '</testsuites>',
    '',
  ].join('\n');
}

function testCase(file: string, findings: readonly LocatedFinding[]): string {
  const failures = findings.filter(({ finding }) => finding.severity !== 'information');
  if (failures.length === 0) return `    <testcase classname="troughline" name="${xml(file)}"/>`;
  const lines = failures.map(
    ({ finding, line, column }) =>
      `      <failure type="${finding.code}" ` +
      `message="${xml(`${file}:${line}:${column} ${finding.message}`)}">${xml(`${finding.why}\n${finding.todo}`)}</failure>`,
  );
  return [`    <testcase classname="troughline" name="${xml(file)}">`, ...lines, '    </testcase>'].join(
    '\n',
  );
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
