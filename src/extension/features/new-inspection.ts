// Starts a new inspection: asks conveyor, date and meter, and writes one file with the points as rows left to fill in.

import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  draftInspection,
  type ConveyorSubject,
  type DraftInspection,
  type DraftInspectionAnswer,
} from '../../protocol/messages.js';
import { wrongDate, wrongMeter } from './inspection-answers.js';
import { pick, subjectsOf } from './pick.js';

export function addNewInspection(context: vscode.ExtensionContext, client: BaseLanguageClient): void {
  context.subscriptions.push(
    vscode.commands.registerCommand('troughline.newInspection', async (name?: unknown, near?: unknown) => {
      const { conveyors } = await subjectsOf(client);
      const called = conveyors.filter((conveyor) => conveyor.name === name);
      const named = called.find(({ spot }) => spot.uri === near) ?? called[0];
      const conveyor =
        named ??
        (await pick(
          conveyors,
          vscode.l10n.t('Which conveyor was inspected?'),
          vscode.l10n.t('There is no conveyor yet. Describe one first, or open the sample estate.'),
        ));
      if (conveyor) await write(client, conveyor);
    }),
  );
}

async function write(client: BaseLanguageClient, conveyor: ConveyorSubject): Promise<void> {
  const date = await ask({
    title: vscode.l10n.t('New inspection of {0}: date', conveyor.name),
    prompt: conveyor.newest
      ? vscode.l10n.t('Year, month, day. The newest record is of {0}.', conveyor.newest.date)
      : vscode.l10n.t('Year, month, day, such as 2026-03-14.'),
    placeHolder: conveyor.newest?.date ?? '2026-03-14',
    wrong: (text) => dateWords(text),
  });
  if (date === undefined) return;
  const meter = await ask({
    title: vscode.l10n.t('New inspection of {0}: hour meter', conveyor.name),
    prompt: conveyor.newest
      ? vscode.l10n.t('What the hour meter showed. At the newest record it was {0}.', conveyor.newest.meter)
      : vscode.l10n.t('What the hour meter showed, in hours.'),
    placeHolder: conveyor.newest?.meter ?? '8120 h',
    wrong: (text) => meterWords(text, date, conveyor.newest),
  });
  if (meter === undefined) return;

  const question: DraftInspection = {
    conveyor: conveyor.name,
    date,
    meter: /h$/.test(meter) ? meter : `${meter} h`,
    near: conveyor.spot.uri,
  };
  const { fileName, folder, text } = await client.sendRequest<DraftInspectionAnswer>(
    draftInspection,
    question,
  );
  const target = await freeName(vscode.Uri.joinPath(vscode.Uri.parse(folder), fileName));
  const edit = new vscode.WorkspaceEdit();
  edit.createFile(target, { contents: new TextEncoder().encode(text) });
  if (!(await vscode.workspace.applyEdit(edit))) {
    void vscode.window.showErrorMessage(vscode.l10n.t('{0} could not be written.', target.path));
    return;
  }
  const editor = await vscode.window.showTextDocument(target);
  const by = editor.document.getText().indexOf('by "') + 4;
  const position = editor.document.positionAt(by);
  editor.selection = new vscode.Selection(position, position);
}

function dateWords(text: string): string | undefined {
  switch (wrongDate(text)) {
    case 'form':
      return vscode.l10n.t('Write the date as year-month-day, such as 2026-03-14.');
    case 'no such date':
      return vscode.l10n.t('There is no day {0}.', text);
    case undefined:
      return undefined;
  }
}

function meterWords(text: string, date: string, newest: ConveyorSubject['newest']): string | undefined {
  switch (wrongMeter(text, date, newest)) {
    case 'form':
      return vscode.l10n.t('Write the meter reading in hours, such as 8120 h.');
    case 'runs back':
      return vscode.l10n.t(
        'The meter showed {0} on {1} already. If it was exchanged, write the meter change first.',
        newest?.meter ?? '',
        newest?.date ?? '',
      );
    case undefined:
      return undefined;
  }
}

async function ask(question: {
  title: string;
  prompt: string;
  placeHolder: string;
  wrong(text: string): string | undefined;
}): Promise<string | undefined> {
  const answer = await vscode.window.showInputBox({
    title: question.title,
    prompt: question.prompt,
    placeHolder: question.placeHolder,
    ignoreFocusOut: true,
    validateInput: (text) => (text.trim() === '' ? question.prompt : question.wrong(text.trim())),
  });
  return answer?.trim();
}

/** A second inspection on one day gets a letter; nothing is ever overwritten. */
async function freeName(wanted: vscode.Uri): Promise<vscode.Uri> {
  for (let letter = 'a'.charCodeAt(0), target = wanted; ; letter += 1) {
    try {
      await vscode.workspace.fs.stat(target);
    } catch {
      return target;
    }
    target = wanted.with({
      path: wanted.path.replace(/\.trough$/, `-${String.fromCharCode(letter + 1)}.trough`),
    });
  }
}
