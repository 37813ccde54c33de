// Starts everything the extension adds besides the language itself; the same on the desktop and in a browser.

import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { estateChanged, type EstateChanged } from '../protocol/messages.js';
import { addEstateView } from './features/estate-view.js';
import { addNewInspection } from './features/new-inspection.js';
import { addPreviews } from './features/previews.js';
import { addSampleEstate } from './features/sample-estate.js';
import { addStatus } from './features/status.js';

export async function startFeatures(
  context: vscode.ExtensionContext,
  client: BaseLanguageClient,
): Promise<void> {
  // Registered before the server runs, so that a command given early waits instead of being unknown.
  const started = client.start();
  // A client has one handler for a message; everybody who wants the news gets it from here.
  const news = new vscode.EventEmitter<EstateChanged>();
  context.subscriptions.push(
    news,
    client.onNotification(estateChanged, (told: EstateChanged) => news.fire(told)),
  );
  addStatus(context, client, news.event);
  addPreviews(context, client, news.event);
  addEstateView(context, client, news.event);
  addNewInspection(context, client);
  addSampleEstate(context);
  context.subscriptions.push(
    vscode.commands.registerCommand('troughline.restartServer', async () => {
      await client.stop();
      await client.start();
    }),
  );
  await started;
}
