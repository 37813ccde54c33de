// How many findings of each severity: for the last line of a check, a report's head, an exit code.

import type { Finding, Severity } from './finding.js';

export interface Summary {
  readonly error: number;
  readonly warning: number;
  readonly information: number;
  readonly total: number;
  /** `2 errors, 1 warning`, or `no findings`. */
  readonly text: string;
}

const order: readonly Severity[] = ['error', 'warning', 'information'];

export function summarise(findings: readonly Pick<Finding, 'severity'>[]): Summary {
  const count = { error: 0, warning: 0, information: 0 };
  for (const finding of findings) count[finding.severity]++;
  const parts = order
    .filter((severity) => count[severity] > 0)
    .map((severity) => say(count[severity], severity));
  return { ...count, total: findings.length, text: parts.length === 0 ? 'no findings' : parts.join(', ') };
}

function say(count: number, severity: Severity): string {
  if (severity === 'information') return count === 1 ? '1 note' : `${count} notes`;
  return `${count} ${severity}${count === 1 ? '' : 's'}`;
}
