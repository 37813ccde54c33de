// Asks which conveyor or job is meant; does not ask where there is only one.

import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { listSubjects, type ListSubjectsAnswer, type Subject } from '../../protocol/messages.js';

export async function subjectsOf(client: BaseLanguageClient): Promise<ListSubjectsAnswer> {
  await client.start(); // at once where it runs already
  return client.sendRequest<ListSubjectsAnswer>(listSubjects);
}

export async function pick<S extends Subject>(
  subjects: readonly S[],
  question: string,
  none: string,
): Promise<S | undefined> {
  if (subjects.length === 0) {
    void vscode.window.showInformationMessage(none);
    return undefined;
  }
  if (subjects.length === 1) return subjects[0];
  const editor = vscode.window.activeTextEditor?.document.uri.toString();
  const here = subjects.filter(({ spot }) => spot.uri === editor);
  const ordered = [...here, ...subjects.filter((subject) => !here.includes(subject))];
  const chosen = await vscode.window.showQuickPick(
    ordered.map((subject) => ({
      label: subject.name,
      ...(subject.title ? { description: subject.title } : {}),
      subject,
    })),
    { placeHolder: question, matchOnDescription: true },
  );
  return chosen?.subject;
}
