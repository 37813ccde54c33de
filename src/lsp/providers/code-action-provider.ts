// Mends: the fixes of the findings here, all of one kind in this text, everything that is certain in this text, and a
// comment that allows a finding with a reason.

import {
  CodeActionKind,
  type CodeAction,
  type CodeActionParams,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { certainFix, fixesTogether, offeredFix } from '../../analysis/fixes-together.js';
import type { Edit, Finding } from '../../validation/finding.js';
import type { Session } from '../session.js';
import type { EstateDocument } from '../document.js';
import { workspaceEdit } from '../workspace-edit.js';
import { diagnosticOf } from './diagnostic-provider.js';

export const fixAll = `${CodeActionKind.SourceFixAll}.troughline`;

export function codeActions(
  session: Session,
  document: EstateDocument,
  { range, context }: CodeActionParams,
): CodeAction[] {
  const wanted = (kind: string): boolean =>
    !context.only || context.only.some((only) => kind === only || kind.startsWith(`${only}.`));
  const from = document.offsetAt(range.start);
  const to = document.offsetAt(range.end);
  const findings = session.findingsIn(document.uri);
  const here = findings.filter(({ origin }) => origin.start <= to && from <= origin.end);
  const actions: CodeAction[] = [];
  if (wanted(CodeActionKind.QuickFix)) {
    for (const finding of here) actions.push(...mendsOf(session, finding));
    for (const finding of firstOfEachCode(here)) actions.push(...mendAllLike(session, finding, findings));
    if (here.some((finding) => offeredFix(finding))) actions.push(...takeAllOffers(session, findings));
    for (const finding of firstOfEachCode(here)) actions.push(...allow(session, document, finding));
  }
  if (wanted(fixAll)) {
    const edits = together(session, findings);
    if (edits.length > 0)
      actions.push({
        title: 'Mend everything that is certain in this file',
        kind: fixAll,
        edit: editOf(session, edits),
      });
  }
  return actions;
}

function mendsOf(session: Session, finding: Finding): CodeAction[] {
  return (finding.fixes ?? []).map((fix) => ({
    title: fix.title,
    kind: CodeActionKind.QuickFix,
    diagnostics: [diagnosticOf(session, finding)],
    ...(fix.preferred ? { isPreferred: true } : {}),
    edit: editOf(session, fix.edits),
  }));
}

function editOf(session: Session, edits: readonly Edit[]): WorkspaceEdit {
  const changes = new Map<EstateDocument, TextEdit[]>();
  for (const edit of edits) {
    const { uri, range } = session.locationOf(edit.origin);
    const document = session.document(uri);
    if (!document) continue;
    changes.set(document, [...(changes.get(document) ?? []), { range, newText: edit.text }]);
  }
  return workspaceEdit(session, changes);
}

function firstOfEachCode(findings: readonly Finding[]): Finding[] {
  return findings.filter(
    (finding, index) => findings.findIndex(({ code }) => code === finding.code) === index,
  );
}

function together(session: Session, findings: readonly Finding[]): Edit[] {
  return fixesTogether(findings, (origin) => session.locationOf(origin).uri).flatMap(({ edits }) => edits);
}

function mendAllLike(session: Session, { code }: Finding, findings: readonly Finding[]): CodeAction[] {
  const alike = findings.filter((finding) => finding.code === code && certainFix(finding));
  if (alike.length < 2) return [];
  const edits = together(session, alike);
  return [
    {
      title: `Mend all ${alike.length} findings ${code} in this file`,
      kind: CodeActionKind.QuickFix,
      edit: editOf(session, edits),
    },
  ];
}

/** A first draft in one go: what is offered stays to be read. */
function takeAllOffers(session: Session, findings: readonly Finding[]): CodeAction[] {
  const offers = fixesTogether(findings, (origin) => session.locationOf(origin).uri, offeredFix);
  if (offers.length < 2) return [];
  return [
    {
      title: `Write all ${offers.length} lines of this file that cannot be read as they are offered`,
      kind: CodeActionKind.QuickFix,
      edit: editOf(
        session,
        offers.flatMap(({ edits }) => edits),
      ),
    },
  ];
}

/** A comment above the line. The reason is for a person to write: a placeholder where the editor has them, else a text that says so. */
function allow(session: Session, document: EstateDocument, finding: Finding): CodeAction[] {
  if (finding.severity === 'error') return [];
  const start = document.text.lastIndexOf('\n', finding.origin.start - 1) + 1;
  const indent = /^[ \t]*/.exec(document.text.slice(start))?.[0] ?? '';
  const at = document.positionAt(start);
  const range = { start: at, end: at };
  const line = (reason: string): string => `${indent}// allow ${finding.code} because "${reason}"\n`;
  const plain: TextEdit = { range, newText: line('write the reason here') };
  return [
    {
      title: `Allow ${finding.code} here, with a reason`,
      kind: CodeActionKind.QuickFix,
      diagnostics: [diagnosticOf(session, finding)],
      edit: session.client.snippetEdits
        ? {
            documentChanges: [
              {
                textDocument: { uri: document.uri, version: document.version ?? null },
                edits: [{ range, snippet: { kind: 'snippet', value: line('${1:reason}') } }],
              },
            ],
          }
        : workspaceEdit(session, new Map([[document, [plain]]])),
    },
  ];
}
