// Findings as SARIF 2.1.0 (OASIS standard, errata 01) for code-scanning services: relative URIs, stable rule ids, and a
// partial fingerprint that does not move when lines above the finding change.

import { createHash } from 'node:crypto';
import { levelOf, ruleDescriptors } from '../../validation/descriptors.js';
import type { CheckResult, LocatedFinding } from './located.js';

export function toSarif(result: CheckResult, version: string): string {
  const rules = ruleDescriptors();
  const seen = new Map<string, number>();
  return (
    JSON.stringify(
      {
        $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
        version: '2.1.0',
        runs: [
          {
            tool: {
              driver: {
                name: 'troughline',
                semanticVersion: version,
                rules: rules.map((rule) => ({
                  id: rule.id,
                  name: rule.name,
                  shortDescription: { text: rule.shortDescription },
                  fullDescription: { text: rule.fullDescription },
                  help: rule.help,
                  defaultConfiguration: { level: rule.defaultLevel },
                  ...(rule.tags.length > 0 ? { properties: { tags: rule.tags } } : {}),
                })),
              },
            },
            columnKind: 'utf16CodeUnits',
            originalUriBaseIds: { ROOT: { description: { text: 'The folder the check was run in.' } } },
            results: result.findings.map((located) =>
              resultOf(
                located,
                rules.findIndex((rule) => rule.id === located.finding.code),
                seen,
              ),
            ),
          },
        ],
      },
      null,
      2,
    ) + '\n'
  );
}

function resultOf(located: LocatedFinding, ruleIndex: number, seen: Map<string, number>): object {
  const { finding } = located;
  return {
    ruleId: finding.code,
    ...(ruleIndex >= 0 ? { ruleIndex } : {}),
    level: levelOf(finding.severity),
    message: { text: `${finding.message} Why it matters: ${finding.why} What to do: ${finding.todo}` },
    locations: [{ physicalLocation: place(located.file, located) }],
    ...(located.related.length > 0
      ? {
          relatedLocations: located.related.map((r, id) => ({
            id,
            physicalLocation: {
              artifactLocation: artifact(r.file),
              region: { startLine: r.line, startColumn: r.column },
            },
            message: { text: r.message },
          })),
        }
      : {}),
    partialFingerprints: { 'troughlineFinding/v1': fingerprint(located, seen) },
  };
}

function place(file: string, { line, column, endLine, endColumn }: LocatedFinding): object {
  return {
    artifactLocation: artifact(file),
    region: { startLine: line, startColumn: column, endLine, endColumn },
  };
}

function artifact(file: string): object {
  return { uri: file.split('/').map(encodeURIComponent).join('/'), uriBaseId: 'ROOT' };
}

/** Code, file and the text of the line; a number where the same line says the same thing more than once. */
function fingerprint({ finding, file, sourceLine }: LocatedFinding, seen: Map<string, number>): string {
  const key = createHash('sha256')
    .update(`${finding.code}\n${file}\n${sourceLine.trim()}`)
    .digest('hex')
    .slice(0, 32);
  const count = (seen.get(key) ?? 0) + 1;
  seen.set(key, count);
  return `${key}:${count}`;
}
