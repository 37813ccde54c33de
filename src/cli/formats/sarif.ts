// Findings as SARIF 2.1.0 (OASIS standard, errata 01) for code-scanning services: relative URIs, stable rule ids, and a
// partial fingerprint that stays while lines and files move. The address of the tool is one of a reserved name (RFC 2606),
// because the standard wants an absolute one and there is no public site.

import { levelOf, ruleDescriptors } from '../../validation/descriptors.js';
import type { CheckResult, LocatedFinding } from './located.js';

export function toSarif(result: CheckResult, version: string): string {
  const rules = ruleDescriptors();
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
                informationUri: 'https://troughline.example/',
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
            invocations: [
              {
                executionSuccessful: result.unread.length === 0,
                toolExecutionNotifications: result.unread.map((line) => ({
                  level: 'error',
                  message: { text: line },
                })),
              },
            ],
            columnKind: 'utf16CodeUnits',
            originalUriBaseIds: {
              ROOT: { description: { text: 'The repository, or the folder the check was run in.' } },
            },
            results: result.findings.map((located) =>
              resultOf(
                located,
                rules.findIndex((rule) => rule.id === located.finding.code),
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

function resultOf(located: LocatedFinding, ruleIndex: number): object {
  const { finding } = located;
  return {
    ruleId: finding.code,
    ...(ruleIndex >= 0 ? { ruleIndex } : {}),
    level: levelOf(finding.severity),
    message: { text: `${finding.message} Why it matters: ${finding.why} What to do: ${finding.todo}` },
    locations: [{ physicalLocation: place(located.repositoryFile, located) }],
    ...(located.related.length > 0
      ? {
          relatedLocations: located.related.map((r, id) => ({
            id,
            physicalLocation: {
              artifactLocation: artifact(r.repositoryFile),
              region: { startLine: r.line, startColumn: r.column },
            },
            message: { text: r.message },
          })),
        }
      : {}),
    partialFingerprints: { 'troughlineFinding/v2': located.fingerprint },
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
