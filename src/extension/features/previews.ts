// Reports, work packs and drawings beside the text: the server's own pages, shown in a webview that can lead back to the
// line something was said in, and that says when the text has moved on.

import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  makePreview,
  type EstateChanged,
  type MakePreview,
  type MakePreviewAnswer,
  type PreviewKind,
  type SourcePosition,
} from '../../protocol/messages.js';
import type { FromPage, ToPage } from '../../protocol/webview.js';
import { pageInFrame, wordsInFrame } from './preview-frame.js';
import { pick, subjectsOf } from './pick.js';

interface Open {
  readonly panel: vscode.WebviewPanel;
  readonly wanted: MakePreview;
  origins: Readonly<Record<string, SourcePosition>>;
  revision: number;
  html: string;
}

const viewType = 'troughline.preview';

export function addPreviews(
  context: vscode.ExtensionContext,
  client: BaseLanguageClient,
  news: vscode.Event<EstateChanged>,
): void {
  const open = new Map<string, Open>();
  const media = vscode.Uri.joinPath(context.extensionUri, 'dist', 'views');
  let refreshing: ReturnType<typeof setTimeout> | undefined;

  const show = async (wanted: MakePreview, panel?: vscode.WebviewPanel): Promise<void> => {
    const key = JSON.stringify([wanted.kind, wanted.subject, wanted.near]);
    const known = open.get(key);
    if (known && !panel) {
      known.panel.reveal();
      await fill(known);
      return;
    }
    const made =
      panel ??
      vscode.window.createWebviewPanel(
        viewType,
        titles(wanted.kind),
        { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true },
        {},
      );
    made.webview.options = { enableScripts: true, localResourceRoots: [media] };
    const entry: Open = { panel: made, wanted, origins: {}, revision: -1, html: '' };
    open.set(key, entry);
    made.onDidDispose(() => open.delete(key), undefined, context.subscriptions);
    made.webview.onDidReceiveMessage(
      async (message: FromPage) => receive(entry, message),
      undefined,
      context.subscriptions,
    );
    await fill(entry);
  };

  async function fill(entry: Open): Promise<void> {
    const { panel, wanted } = entry;
    if (entry.html === '')
      panel.webview.html = wordsInFrame(
        panel.webview,
        media,
        { title: vscode.l10n.t('Making the page…'), text: vscode.l10n.t('Forecasts take a few seconds.') },
        wanted,
      );
    const answer = await vscode.window.withProgress(
      { location: vscode.ProgressLocation.Window, title: titles(wanted.kind) },
      async () => {
        await client.start();
        return client.sendRequest<MakePreviewAnswer>(makePreview, wanted);
      },
    );
    if (!answer.ok && entry.html !== '') {
      // The last page is worth more than none, as long as it says that it is the last.
      const kept: ToPage = { type: 'kept', reason: answer.reason };
      void panel.webview.postMessage(kept);
      return;
    }
    if (!answer.ok) {
      panel.title = titles(wanted.kind);
      panel.webview.html = wordsInFrame(
        panel.webview,
        media,
        { title: vscode.l10n.t('Nothing to show yet'), text: answer.reason },
        wanted,
      );
      return;
    }
    panel.title = answer.title;
    entry.origins = answer.origins;
    entry.revision = answer.revision;
    entry.html = answer.html;
    panel.webview.html = pageInFrame(panel.webview, media, answer, wanted);
  }

  async function receive(entry: Open, message: FromPage): Promise<void> {
    switch (message.type) {
      case 'open': {
        const spot = entry.origins[message.origin];
        if (spot) await reveal(spot);
        return;
      }
      case 'refresh':
        await fill(entry);
        return;
      case 'save':
        await save(entry);
        return;
      case 'ready':
        return;
    }
  }

  const command = (
    name: string,
    kind: PreviewKind,
    choose: () => Promise<{ subject: string; near: string } | undefined | 'all'>,
  ): vscode.Disposable =>
    // The first argument comes from a lens or the estate view; menus pass an address of their own, which is not a name.
    vscode.commands.registerCommand(name, async (subject?: unknown, near?: unknown) => {
      if (typeof subject === 'string') {
        const active = vscode.window.activeTextEditor?.document;
        const place =
          typeof near === 'string'
            ? near
            : active?.languageId === 'troughline'
              ? active.uri.toString()
              : undefined;
        await show({ kind, subject, ...(place ? { near: place } : {}) });
        return;
      }
      const chosen = await choose();
      if (chosen === 'all') await show({ kind });
      else if (chosen) await show({ kind, ...chosen });
    });

  const chooseConveyor = async (): Promise<{ subject: string; near: string } | undefined> => {
    const { conveyors } = await subjectsOf(client);
    const conveyor = await pick(
      conveyors,
      vscode.l10n.t('Which conveyor?'),
      vscode.l10n.t('There is no conveyor yet. Describe one first, or open the sample estate.'),
    );
    return conveyor && { subject: conveyor.name, near: conveyor.spot.uri };
  };

  context.subscriptions.push(
    command('troughline.showReport', 'report', async () => 'all'),
    command('troughline.showWorkPack', 'work pack', async () => {
      const { jobs } = await subjectsOf(client);
      const job = await pick(
        jobs,
        vscode.l10n.t('Which job?'),
        vscode.l10n.t(
          'There is no job yet. Write one first: a job names a conveyor, a window, crews and what is relined.',
        ),
      );
      return job && { subject: job.name, near: job.spot.uri };
    }),
    command('troughline.showDrawing', 'drawing', chooseConveyor),
    command('troughline.showInspectionSheet', 'inspection sheet', chooseConveyor),
    vscode.window.registerWebviewPanelSerializer(viewType, {
      async deserializeWebviewPanel(panel: vscode.WebviewPanel, state: unknown): Promise<void> {
        const wanted = wantedIn(state);
        if (wanted) await show(wanted, panel);
        else panel.dispose();
      },
    }),
    news(({ revision }) => {
      // A page stays as it is while someone reads it; it only says that the text has moved on.
      clearTimeout(refreshing);
      refreshing = setTimeout(() => {
        for (const entry of open.values()) {
          if (entry.revision === revision) continue;
          const stale: ToPage = { type: 'stale' };
          void entry.panel.webview.postMessage(stale);
        }
      }, 300);
    }),
  );
}

function titles(kind: PreviewKind): string {
  switch (kind) {
    case 'report':
      return vscode.l10n.t('Remaining life');
    case 'work pack':
      return vscode.l10n.t('Work pack');
    case 'inspection sheet':
      return vscode.l10n.t('Inspection sheet');
    case 'drawing':
      return vscode.l10n.t('Drawing');
  }
}

async function reveal({ uri, line, column }: SourcePosition): Promise<void> {
  const position = new vscode.Position(line, column);
  const target = vscode.Uri.parse(uri);
  const shown = vscode.window.visibleTextEditors.find(
    (editor) => editor.document.uri.toString() === target.toString(),
  );
  await vscode.window.showTextDocument(target, {
    selection: new vscode.Selection(position, position),
    viewColumn: shown?.viewColumn ?? vscode.ViewColumn.One,
  });
}

async function save({ panel, html }: Open): Promise<void> {
  if (html === '') return;
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
  const name = `${panel.title.replace(/[^\p{L}\p{N}]+/gu, '-').toLowerCase()}.html`;
  const target = await vscode.window.showSaveDialog({
    ...(folder ? { defaultUri: vscode.Uri.joinPath(folder, name) } : {}),
    filters: { HTML: ['html'] },
  });
  if (target) await vscode.workspace.fs.writeFile(target, new TextEncoder().encode(html));
}

/** What a page remembered over a reload; it is our own page, and still checked. */
function wantedIn(state: unknown): MakePreview | undefined {
  if (typeof state !== 'object' || state === null || !('wanted' in state)) return undefined;
  const { wanted } = state;
  if (typeof wanted !== 'object' || wanted === null || !('kind' in wanted)) return undefined;
  const kinds: readonly unknown[] = [
    'report',
    'work pack',
    'inspection sheet',
    'drawing',
  ] satisfies PreviewKind[];
  return kinds.includes(wanted.kind) ? (wanted as MakePreview) : undefined; // kind was just checked; the other fields are optional texts
}
