// The language status item beside the language's name: the server's state, and what it found in the site.
import * as vscode from 'vscode';
import { State } from 'vscode-languageclient/node';
import type { LanguageClient } from 'vscode-languageclient/node';
import { siteDocuments } from './client.ts';
import { commands } from './commands.ts';

/** What the server tells after each check, as the notification `plumbline/status`. */
export interface SiteStatus {
  /** The site's name. */
  readonly site: string;
  readonly devices: number;
  readonly streams: number;
  readonly errors: number;
  readonly warnings: number;
}

/** Shows the item wherever a site document is in front, until disposed. */
export function showStatus(client: LanguageClient): vscode.Disposable {
  const item = vscode.languages.createLanguageStatusItem('plumbline.status', siteDocuments);
  item.name = 'Plumbline';
  item.command = { title: 'Show output', command: commands.showOutput };

  const showState = (state: State): void => {
    const { text, isAmiss } = stateWords[state];
    item.text = text;
    item.detail = 'Plumbline';
    item.busy = state === State.Starting;
    item.severity = isAmiss ? vscode.LanguageStatusSeverity.Error : vscode.LanguageStatusSeverity.Information;
  };
  const showSite = (status: SiteStatus): void => {
    item.text = `${status.site}: ${problems(status)}`;
    item.detail = `${counted(status.devices, 'device')}, ${counted(status.streams, 'stream')}`;
    item.severity = siteSeverity(status);
  };

  showState(client.state);
  return vscode.Disposable.from(
    item,
    client.onDidChangeState(({ newState }) => showState(newState)),
    client.onNotification('plumbline/status', showSite),
  );
}

const stateWords: Readonly<Record<State, { readonly text: string; readonly isAmiss?: boolean }>> = {
  [State.Stopped]: { text: 'Server stopped', isAmiss: true },
  [State.StartFailed]: { text: 'Server could not start', isAmiss: true },
  [State.Starting]: { text: 'Server starting' },
  [State.Running]: { text: 'Server running' },
};

function problems({ errors, warnings }: SiteStatus): string {
  const parts = [errors && counted(errors, 'error'), warnings && counted(warnings, 'warning')].filter(Boolean);
  return parts.join(', ') || 'no problems';
}

function siteSeverity({ errors, warnings }: SiteStatus): vscode.LanguageStatusSeverity {
  if (errors > 0) return vscode.LanguageStatusSeverity.Error;
  return warnings > 0 ? vscode.LanguageStatusSeverity.Warning : vscode.LanguageStatusSeverity.Information;
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
