// The extension in a browser: the server is a web worker, and all files are read by the editor.

import * as vscode from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { answerReads, clientOptions } from './client.js';
import { startFeatures } from './features.js';

let client: LanguageClient | undefined;

export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const output = vscode.window.createOutputChannel('Troughline', { log: true });
  const worker = new Worker(
    await addressOf(vscode.Uri.joinPath(context.extensionUri, 'dist', 'server-web.js')),
  );
  client = new LanguageClient(
    'troughline',
    'Troughline',
    worker,
    clientOptions(output, context.extensionUri),
  );
  answerReads(client, context.extensionUri);
  context.subscriptions.push(output, client);
  await startFeatures(context, client);
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}

/** A worker cannot be made from every address an extension may have, so its script is read and handed over as a blob. */
async function addressOf(script: vscode.Uri): Promise<string> {
  const bytes = await vscode.workspace.fs.readFile(script);
  return URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type: 'application/javascript' }));
}
