// Findings as the editor shows them: for every text of the estate, open or not. The message says what is wrong and what
// to do; why it matters on site is in the hover, with the code.

import { DiagnosticSeverity, DiagnosticTag, type Diagnostic } from 'vscode-languageserver';
import { ruleOf } from '../../validation/catalogue.js';
import type { Finding } from '../../validation/finding.js';
import type { Session } from '../session.js';

/** A text with more than this many findings has one cause that matters; the rest would only slow the editor down. */
const most = 1000;

export function diagnosticsOf(session: Session, uri: string): Diagnostic[] {
  const findings = session
    .findingsIn(uri)
    .filter(({ severity }) => severity !== 'information' || session.settings.diagnostics.information);
  const shown = findings.slice(0, most).map((finding) => diagnosticOf(session, finding));
  const left = findings.length - shown.length;
  const last = shown.at(-1);
  if (left > 0 && last) {
    shown.push({
      range: last.range,
      severity: DiagnosticSeverity.Information,
      source,
      message: `${left} more findings in this file are not shown. Mend the first ones and they will follow.`,
    });
  }
  return shown;
}

export const source = 'troughline';

const severities = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
} as const;

export function diagnosticOf(session: Session, finding: Finding): Diagnostic {
  const related = (finding.related ?? []).map(({ origin, message }) => ({
    location: session.locationOf(origin),
    message,
  }));
  return {
    range: session.locationOf(finding.origin).range,
    severity: severities[finding.severity],
    code: finding.code,
    ...(session.client.rulePages === undefined
      ? {}
      : { codeDescription: { href: `${session.client.rulePages}/${finding.code}.md` } }),
    source,
    message: `${finding.message}\n${finding.todo}`,
    ...(related.length > 0 ? { relatedInformation: related } : {}),
    // Text that could go without a change of meaning is shown faded.
    ...(ruleOf(finding.code)?.tags?.includes('unused') ? { tags: [DiagnosticTag.Unnecessary] } : {}),
  };
}
