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
  const pages = createPages(context, client);
  const choose = async (): Promise<Chosen | undefined> => chooseConveyor(client);
  let noticing: ReturnType<typeof setTimeout> | undefined;
  context.subscriptions.push(
    vscode.commands.registerCommand('troughline.compareWithRevision', async () => {
      const wanted = await chooseRevision();
      if (wanted) await pages.show(wanted);
    }),
    command('troughline.showReport', 'report', pages, async () => 'all'),
    command('troughline.showProgramme', 'programme', pages, async () => 'all'),
    command('troughline.showWorkPack', 'work pack', pages, async () => chooseJob(client)),
    command('troughline.showDrawing', 'drawing', pages, choose),
    command('troughline.showInspectionSheet', 'inspection sheet', pages, choose),
    vscode.window.registerWebviewPanelSerializer(viewType, {
      async deserializeWebviewPanel(panel: vscode.WebviewPanel, state: unknown): Promise<void> {
        const wanted = wantedIn(state);
        if (wanted) await pages.show(wanted, panel);
        else panel.dispose();
      },
    }),
    news(({ revision }) => {
      clearTimeout(noticing);
      noticing = setTimeout(() => pages.markOlderThan(revision), 300);
    }),
  );
}

/** Asks which revision; undefined where nothing was chosen. Git is not run in a folder that nobody trusts. */
async function chooseRevision(): Promise<MakePreview | undefined> {
  if (!vscode.workspace.isTrusted) {
    void vscode.window.showInformationMessage(
      vscode.l10n.t('Comparing runs the git command, and this folder is not trusted. Trust it first.'),
    );
    return undefined;
  }
  const subject = await vscode.window.showInputBox({
    title: vscode.l10n.t('Compare with a revision'),
    prompt: vscode.l10n.t(
      'A branch, tag or commit; main...HEAD is what this branch adds since it left main.',
    ),
    value: 'HEAD',
  });
  if (subject === undefined || subject.trim() === '') return undefined;
  const active = vscode.window.activeTextEditor?.document;
  return {
    kind: 'comparison',
    subject: subject.trim(),
    ...(active?.languageId === 'troughline' ? { near: active.uri.toString() } : {}),
  };
}

interface Pages {
  /** Shows a page, in a panel that is there already or in one of its own. */
  show(wanted: MakePreview, panel?: vscode.WebviewPanel): Promise<void>;
  /** A page stays as it is while someone reads it; it only says that the text has moved on. */
  markOlderThan(revision: number): void;
}

function createPages(context: vscode.ExtensionContext, client: BaseLanguageClient): Pages {
  const open = new Map<string, Open>();
  const media = vscode.Uri.joinPath(context.extensionUri, 'dist', 'views');
  return {
    async show(wanted, panel) {
      const key = JSON.stringify([wanted.kind, wanted.subject, wanted.near]);
      const known = open.get(key);
      if (known && !panel) {
        known.panel.reveal();
        await fill(known, client, media);
        return;
      }
      const made = panel ?? openPanel(wanted.kind);
      made.webview.options = { enableScripts: true, localResourceRoots: [media] };
      const entry: Open = { panel: made, wanted, origins: {}, revision: -1, html: '' };
      open.set(key, entry);
      made.onDidDispose(() => open.delete(key), undefined, context.subscriptions);
      made.webview.onDidReceiveMessage(
        async (message: FromPage) => receive(entry, message, async () => fill(entry, client, media)),
        undefined,
        context.subscriptions,
      );
      await fill(entry, client, media);
    },
    markOlderThan(revision) {
      const stale: ToPage = { type: 'stale' };
      for (const entry of open.values())
        if (entry.revision !== revision) void entry.panel.webview.postMessage(stale);
    },
  };
}

function openPanel(kind: PreviewKind): vscode.WebviewPanel {
  const beside = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
  return vscode.window.createWebviewPanel(viewType, titles(kind), beside, {});
}

async function fill(entry: Open, client: BaseLanguageClient, media: vscode.Uri): Promise<void> {
  const { panel, wanted } = entry;
  const say = (title: string, text: string): void => {
    panel.webview.html = wordsInFrame(panel.webview, media, { title, text }, wanted);
  };
  if (entry.html === '')
    say(vscode.l10n.t('Making the page…'), vscode.l10n.t('Forecasts take a few seconds.'));
  const answer = await vscode.window.withProgress(
    { location: vscode.ProgressLocation.Window, title: titles(wanted.kind) },
    async () => {
      await client.start();
      return client.sendRequest<MakePreviewAnswer>(makePreview, wanted);
    },
  );
  if (answer.ok) {
    panel.title = answer.title;
    entry.origins = answer.origins;
    entry.revision = answer.revision;
    entry.html = answer.html;
    panel.webview.html = pageInFrame(panel.webview, media, answer, wanted);
  } else if (entry.html === '') {
    panel.title = titles(wanted.kind);
    say(vscode.l10n.t('Nothing to show yet'), answer.reason);
  } else {
    // The last page is worth more than none, as long as it says that it is the last.
    const kept: ToPage = { type: 'kept', reason: answer.reason };
    void panel.webview.postMessage(kept);
  }
}

async function receive(entry: Open, message: FromPage, refresh: () => Promise<void>): Promise<void> {
  switch (message.type) {
    case 'open': {
      const spot = entry.origins[message.origin];
      if (spot) await reveal(spot);
      return;
    }
    case 'refresh':
      return refresh();
    case 'save':
      return save(entry);
    case 'ready':
      return;
  }
}

/** What somebody picked from a list: its name, and a text of the estate it belongs to. */
interface Chosen {
  readonly subject: string;
  readonly near: string;
}

function command(
  name: string,
  kind: PreviewKind,
  pages: Pages,
  choose: () => Promise<Chosen | undefined | 'all'>,
): vscode.Disposable {
  // The first argument comes from a lens or the estate view; menus pass an address of their own, which is not a name.
  return vscode.commands.registerCommand(name, async (subject?: unknown, near?: unknown) => {
    if (typeof subject === 'string') {
      const place = typeof near === 'string' ? near : textInFront();
      await pages.show({ kind, subject, ...(place ? { near: place } : {}) });
      return;
    }
    const chosen = await choose();
    if (chosen === 'all') await pages.show({ kind });
    else if (chosen) await pages.show({ kind, ...chosen });
  });
}

function textInFront(): string | undefined {
  const active = vscode.window.activeTextEditor?.document;
  return active?.languageId === 'troughline' ? active.uri.toString() : undefined;
}

async function chooseConveyor(client: BaseLanguageClient): Promise<Chosen | undefined> {
  const { conveyors } = await subjectsOf(client);
  const conveyor = await pick(
    conveyors,
    vscode.l10n.t('Which conveyor?'),
    vscode.l10n.t('There is no conveyor yet. Describe one first, or open the sample estate.'),
  );
  return conveyor && { subject: conveyor.name, near: conveyor.spot.uri };
}

async function chooseJob(client: BaseLanguageClient): Promise<Chosen | undefined> {
  const { jobs } = await subjectsOf(client);
  const job = await pick(
    jobs,
    vscode.l10n.t('Which job?'),
    vscode.l10n.t(
      'There is no job yet. Write one first: a job names a conveyor, a window, crews and what is relined.',
    ),
  );
  return job && { subject: job.name, near: job.spot.uri };
}

function titles(kind: PreviewKind): string {
  switch (kind) {
    case 'report':
      return vscode.l10n.t('Remaining life');
    case 'programme':
      return vscode.l10n.t('Programme over all outages');
    case 'work pack':
      return vscode.l10n.t('Work pack');
    case 'inspection sheet':
      return vscode.l10n.t('Inspection sheet');
    case 'drawing':
      return vscode.l10n.t('Drawing');
    case 'comparison':
      return vscode.l10n.t('Comparison');
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
    'programme',
    'work pack',
    'inspection sheet',
    'drawing',
  ] satisfies PreviewKind[];
  return kinds.includes(wanted.kind) ? (wanted as MakePreview) : undefined; // kind was just checked; the other fields are optional texts
}
