// The estate at a glance in the Explorer: plants with their conveyors, and the jobs, each with what can be done with it.

import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { ConveyorSubject, EstateChanged, Subject } from '../../protocol/messages.js';
import { subjectsOf } from './pick.js';

type Node =
  | {
      readonly kind: 'plant';
      readonly name: string;
      readonly title?: string;
      readonly conveyors: readonly ConveyorSubject[];
    }
  | { readonly kind: 'conveyor'; readonly subject: ConveyorSubject }
  | { readonly kind: 'jobs'; readonly jobs: readonly Subject[] }
  | { readonly kind: 'job'; readonly subject: Subject };

export function addEstateView(
  context: vscode.ExtensionContext,
  client: BaseLanguageClient,
  news: vscode.Event<EstateChanged>,
): void {
  const changed = new vscode.EventEmitter<undefined>();
  const provider: vscode.TreeDataProvider<Node> = {
    onDidChangeTreeData: changed.event,
    getTreeItem: itemOf,
    getChildren: async (node) => (node ? childrenOf(node) : roots(client)),
  };
  const byName = (command: string) => (node: Node | undefined) =>
    node?.kind === 'conveyor' || node?.kind === 'job'
      ? vscode.commands.executeCommand(command, node.subject.name, node.subject.spot.uri)
      : undefined;
  context.subscriptions.push(
    changed,
    vscode.window.createTreeView('troughline.estateView', { treeDataProvider: provider }),
    news(() => changed.fire(undefined)),
    vscode.commands.registerCommand('troughline.estateView.drawing', byName('troughline.showDrawing')),
    vscode.commands.registerCommand('troughline.estateView.report', byName('troughline.showReport')),
    vscode.commands.registerCommand(
      'troughline.estateView.newInspection',
      byName('troughline.newInspection'),
    ),
    vscode.commands.registerCommand('troughline.estateView.workPack', byName('troughline.showWorkPack')),
  );
}

async function roots(client: BaseLanguageClient): Promise<Node[]> {
  const { plants, conveyors, jobs } = await subjectsOf(client);
  const named = plants.map((plant): Node => ({
    kind: 'plant',
    name: plant.name,
    ...(plant.title ? { title: plant.title } : {}),
    conveyors: conveyors.filter((conveyor) => conveyor.plant === plant.name),
  }));
  const loose = conveyors
    .filter((conveyor) => !plants.some((plant) => plant.name === conveyor.plant))
    .map((subject): Node => ({ kind: 'conveyor', subject }));
  return [...named, ...loose, ...(jobs.length > 0 ? [{ kind: 'jobs', jobs } satisfies Node] : [])];
}

function childrenOf(node: Node): Node[] {
  switch (node.kind) {
    case 'plant':
      return node.conveyors.map((subject) => ({ kind: 'conveyor', subject }));
    case 'jobs':
      return node.jobs.map((subject) => ({ kind: 'job', subject }));
    case 'conveyor':
    case 'job':
      return [];
  }
}

function itemOf(node: Node): vscode.TreeItem {
  switch (node.kind) {
    case 'plant': {
      const item = new vscode.TreeItem(node.title ?? node.name, vscode.TreeItemCollapsibleState.Expanded);
      item.iconPath = new vscode.ThemeIcon('home');
      return item;
    }
    case 'jobs': {
      const item = new vscode.TreeItem(vscode.l10n.t('Jobs'), vscode.TreeItemCollapsibleState.Expanded);
      item.iconPath = new vscode.ThemeIcon('checklist');
      return item;
    }
    case 'conveyor': {
      const { subject } = node;
      const item = leaf(subject, 'conveyor');
      const records = subject.newest
        ? vscode.l10n.t(
            '{0}: {1} inspections, newest record {2} at {3}',
            subject.name,
            subject.inspections,
            subject.newest.date,
            subject.newest.meter,
          )
        : vscode.l10n.t('{0}: no record yet', subject.name);
      item.tooltip = [records, ...(subject.todo === undefined ? [] : [subject.todo])].join('\n');
      if (subject.todo !== undefined)
        item.description = subject.title ? `${subject.title}: ${subject.todo}` : subject.todo;
      return item;
    }
    case 'job':
      return leaf(node.subject, 'job');
  }
}

function leaf({ name, title, spot }: Subject, kind: 'conveyor' | 'job'): vscode.TreeItem {
  const item = new vscode.TreeItem(name, vscode.TreeItemCollapsibleState.None);
  if (title) item.description = title;
  item.contextValue = kind;
  item.iconPath = new vscode.ThemeIcon(kind === 'conveyor' ? 'arrow-up' : 'tools');
  const place = new vscode.Position(spot.line, spot.column);
  const options: vscode.TextDocumentShowOptions = { selection: new vscode.Range(place, place) };
  item.command = {
    title: vscode.l10n.t('Open in the text'),
    command: 'vscode.open',
    arguments: [vscode.Uri.parse(spot.uri), options],
  };
  return item;
}
