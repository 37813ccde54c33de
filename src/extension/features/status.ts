// What the estate amounts to, in the status bar while one of its texts is open.

import * as vscode from 'vscode';
import { State, type BaseLanguageClient } from 'vscode-languageclient';
import type { EstateChanged } from '../../protocol/messages.js';
import { languageId } from '../client.js';

export function addStatus(
  context: vscode.ExtensionContext,
  client: BaseLanguageClient,
  changed: vscode.Event<EstateChanged>,
): void {
  const item = vscode.window.createStatusBarItem('troughline.estate', vscode.StatusBarAlignment.Left, 10);
  item.name = vscode.l10n.t('Troughline estate');
  item.command = 'workbench.actions.view.problems';
  item.text = '$(loading~spin) Troughline';
  let known: EstateChanged | undefined;

  const show = (): void => {
    if (vscode.window.activeTextEditor?.document.languageId === languageId) item.show();
    else item.hide();
  };
  context.subscriptions.push(
    item,
    vscode.window.onDidChangeActiveTextEditor(show),
    changed((news) => {
      known = news;
      item.text = `${news.errors > 0 ? '$(error)' : news.warnings > 0 ? '$(warning)' : '$(check)'} ${words(news)}`;
      item.tooltip = tooltip(news);
    }),
    client.onDidChangeState(({ newState }) => {
      if (newState === State.Starting) item.text = '$(loading~spin) Troughline';
      else if (newState === State.Stopped)
        item.text = `$(debug-disconnect) ${vscode.l10n.t('Troughline stopped')}`;
      else if (known) item.text = words(known);
    }),
  );
  show();
}

function words({ conveyors, errors, warnings }: EstateChanged): string {
  const things = conveyors === 1 ? vscode.l10n.t('1 conveyor') : vscode.l10n.t('{0} conveyors', conveyors);
  if (errors > 0)
    return errors === 1
      ? vscode.l10n.t('{0}, 1 error', things)
      : vscode.l10n.t('{0}, {1} errors', things, errors);
  if (warnings > 0)
    return warnings === 1
      ? vscode.l10n.t('{0}, 1 warning', things)
      : vscode.l10n.t('{0}, {1} warnings', things, warnings);
  return things;
}

function tooltip({ texts, errors, warnings, information }: EstateChanged): string {
  return vscode.l10n.t(
    '{0} files read. {1} errors, {2} warnings, {3} notes. Click to see them.',
    texts,
    errors,
    warnings,
    information,
  );
}
