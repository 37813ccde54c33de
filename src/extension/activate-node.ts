// The extension on a desktop or a remote machine: the server is a process of its own.

import * as vscode from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { answerReads, clientOptions } from './client.js';
import { startFeatures } from './features.js';

let client: LanguageClient | undefined;

export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const output = vscode.window.createOutputChannel('Troughline', { log: true });
  const module = vscode.Uri.joinPath(context.extensionUri, 'dist', 'server.cjs').fsPath;
  const server = { module, transport: TransportKind.ipc };
  client = new LanguageClient(
    'troughline',
    'Troughline',
    { run: server, debug: server },
    clientOptions(output, context.extensionUri),
  );
  answerReads(client, context.extensionUri);
  context.subscriptions.push(output, client);
  await startFeatures(context, client);
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}
