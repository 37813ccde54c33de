// The rules described for machines: the fields that SARIF 2.1.0 (OASIS) names in `reportingDescriptor`.

import { rules } from './catalogue.js';
import { explain, explainInMarkdown } from './explain.js';
import type { Severity } from './finding.js';
import type { RuleTag } from './rule.js';

export interface RuleDescriptor {
  readonly id: string;
  /** Title in PascalCase, as SARIF asks of a name. */
  readonly name: string;
  readonly shortDescription: string;
  readonly fullDescription: string;
  readonly help: { readonly text: string; readonly markdown: string };
  readonly defaultLevel: 'error' | 'warning' | 'note';
  readonly tags: readonly RuleTag[];
}

export function ruleDescriptors(): readonly RuleDescriptor[] {
  return rules.map((rule) => ({
    id: rule.code,
    name: pascalCase(rule.title),
    shortDescription: `${rule.title}.`,
    fullDescription: rule.why,
    help: { text: explain(rule.code) ?? '', markdown: explainInMarkdown(rule.code) ?? '' },
    defaultLevel: levelOf(rule.severity),
    tags: rule.tags ?? [],
  }));
}

/** The SARIF level of a severity. */
export function levelOf(severity: Severity): 'error' | 'warning' | 'note' {
  return severity === 'information' ? 'note' : severity;
}

function pascalCase(title: string): string {
  return title
    .split(/[^A-Za-z0-9]+/)
    .filter((word) => word !== '')
    .map((word) => word.charAt(0).toUpperCase() + word.slice(1))
    .join('');
}
