// The sample estate that travels with the extension: copied to a folder of the user's choice, so that it can be changed.

import * as vscode from 'vscode';

export function addSampleEstate(context: vscode.ExtensionContext): void {
  context.subscriptions.push(
    vscode.commands.registerCommand('troughline.openSampleEstate', async () =>
      copyAndOpen(context.extensionUri),
    ),
  );
}

async function copyAndOpen(extension: vscode.Uri): Promise<void> {
  const chosen = await vscode.window.showOpenDialog({
    canSelectFiles: false,
    canSelectFolders: true,
    canSelectMany: false,
    openLabel: vscode.l10n.t('Put the sample here'),
    title: vscode.l10n.t('Folder for the sample estate'),
  });
  const parent = chosen?.[0];
  if (!parent) return;
  const folder = vscode.Uri.joinPath(parent, 'troughline-sample');
  if (await exists(folder)) {
    const open = vscode.l10n.t('Open it');
    const answer = await vscode.window.showWarningMessage(
      vscode.l10n.t('There is a folder troughline-sample there already. It is left as it is.'),
      open,
    );
    if (answer !== open) return;
  } else {
    const sample = vscode.Uri.joinPath(extension, 'dist', 'sample');
    // A list, because not every place an extension can live in can list its folders.
    const names = JSON.parse(
      new TextDecoder().decode(await vscode.workspace.fs.readFile(vscode.Uri.joinPath(sample, 'files.json'))),
    ) as string[]; // written by our own build
    for (const name of names) {
      const bytes = await vscode.workspace.fs.readFile(vscode.Uri.joinPath(sample, ...name.split('/')));
      await vscode.workspace.fs.writeFile(vscode.Uri.joinPath(folder, ...name.split('/')), bytes);
    }
  }
  await vscode.commands.executeCommand('vscode.openFolder', folder, {
    forceNewWindow: (vscode.workspace.workspaceFolders?.length ?? 0) > 0,
  });
}

async function exists(uri: vscode.Uri): Promise<boolean> {
  try {
    await vscode.workspace.fs.stat(uri);
    return true;
  } catch {
    return false;
  }
}
