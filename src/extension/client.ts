// What both kinds of client, desktop and web, tell the server and answer to it.

import * as vscode from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import {
  listTexts,
  readSolver,
  readTexts,
  type ListTexts,
  type ListTextsAnswer,
  type ReadSolverAnswer,
  type ReadTexts,
  type ReadTextsAnswer,
  type StartOptions,
} from '../protocol/messages.js';

export const languageId = 'troughline';

export function clientOptions(output: vscode.LogOutputChannel, extension: vscode.Uri): LanguageClientOptions {
  const initializationOptions: StartOptions = {
    clientReads: true,
    rulePages: vscode.Uri.joinPath(extension, 'dist', 'rules').toString(),
  };
  return {
    // Old versions that a comparison shows are texts of no estate, and no findings are wanted on them.
    documentSelector: schemes().map((scheme) => ({ language: languageId, scheme })),
    initializationOptions,
    outputChannel: output,
    // A hover says nothing that could run; commands in it stay text.
    markdown: { isTrusted: false, supportHtml: false },
  };
}

function schemes(): readonly string[] {
  const folders = vscode.workspace.workspaceFolders ?? [];
  return [...new Set(['file', 'untitled', ...folders.map(({ uri }) => uri.scheme)])];
}

/** Answers the server where it cannot read for itself: in a browser, and in folders that are on no disk. */
export function answerReads(client: BaseLanguageClient, extension: vscode.Uri): void {
  client.onRequest(readSolver, async (): Promise<ReadSolverAnswer> => {
    const file = vscode.Uri.joinPath(extension, 'dist', 'highs.wasm');
    return new Uint8Array(await vscode.workspace.fs.readFile(file));
  });
  client.onRequest(listTexts, async ({ folder }: ListTexts): Promise<ListTextsAnswer> => {
    const pattern = new vscode.RelativePattern(vscode.Uri.parse(folder), '**/*.trough');
    const found = await vscode.workspace.findFiles(pattern, '**/{node_modules,out,dist,.*}/**');
    return found.map((uri) => uri.toString()).sort();
  });
  client.onRequest(readTexts, async ({ uris }: ReadTexts): Promise<ReadTextsAnswer> =>
    Promise.all(uris.map(async (uri) => readText(vscode.Uri.parse(uri)))),
  );
}

async function readText(uri: vscode.Uri): Promise<ReadTextsAnswer[number]> {
  let bytes: Uint8Array;
  try {
    bytes = await vscode.workspace.fs.readFile(uri);
  } catch {
    return null; // gone, or no right to read it
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return { reason: vscode.l10n.t('This file is not UTF-8 text. It is left out of the estate.') };
  }
}
