// The findings of the site: in the status bar, which leads to the report, and beside the language's name.
import * as vscode from 'vscode';
import { State } from 'vscode-languageclient';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { commands } from './commands.ts';
import { reportCommand } from './pages/report.ts';
import { siteDocuments } from './site-documents.ts';

/** The notification `plumbline/status`, which the server sends after each check of a site. */
export interface SiteStatus {
  /** The site's name; empty where it has none yet. */
  readonly site: string;
  /** Address of the folder that holds the site's files, without a slash at its end. */
  readonly folder: string;
  readonly devices: number;
  readonly streams: number;
  readonly errors: number;
  readonly warnings: number;
}

/**
 * Shows the item while a site document is active, until disposed.
 *
 * @param checked is called with the folder of a site after each check
 */
export function showStatus(client: BaseLanguageClient, checked: (folder: string) => void): vscode.Disposable {
  const item = vscode.languages.createLanguageStatusItem('plumbline.status', siteDocuments);
  item.name = 'Plumbline';
  const bar = vscode.window.createStatusBarItem('plumbline.site', vscode.StatusBarAlignment.Left);
  bar.name = 'Plumbline';
  const sites = new Map<string, SiteStatus>();

  /** The status of the site that was last active, which a page beside it belongs to. */
  let last: SiteStatus | undefined;

  const show = (): void => {
    const document = vscode.window.activeTextEditor?.document.uri.toString() ?? '';
    const status = client.state === State.Running ? sites.get(document.slice(0, document.lastIndexOf('/'))) : undefined;
    Object.assign(item, status ? siteWords(status) : stateWords[client.state]);
    item.command = status
      ? { title: 'Show report', command: reportCommand, arguments: [status.folder] }
      : { title: 'Show output', command: commands.showOutput };
    item.busy = client.state === State.Starting;
    showInBar(bar, status ?? (vscode.window.activeTextEditor === undefined ? last : undefined));
    last = status ?? last;
  };

  show();
  return vscode.Disposable.from(
    item,
    bar,
    client.onDidChangeState(() => {
      sites.clear();
      last = undefined;
      show();
    }),
    client.onNotification('plumbline/status', (status: SiteStatus) => {
      sites.set(status.folder, status);
      if (last?.folder === status.folder) last = status;
      show();
      checked(status.folder);
    }),
    vscode.window.onDidChangeActiveTextEditor(show),
  );
}

function showInBar(bar: vscode.StatusBarItem, status: SiteStatus | undefined): void {
  if (status === undefined) {
    bar.hide();
    return;
  }
  bar.text = `$(checklist) ${siteWords(status).text}`;
  bar.tooltip = 'Show the report of this site';
  bar.command = { title: 'Show report', command: reportCommand, arguments: [status.folder] };
  bar.show();
}

type Words = Pick<vscode.LanguageStatusItem, 'text' | 'detail' | 'severity'>;

const { Error: Bad, Warning, Information } = vscode.LanguageStatusSeverity;

const stateWords: Readonly<Record<State, Words>> = {
  [State.Stopped]: { text: 'Server stopped', detail: 'Plumbline', severity: Bad },
  [State.StartFailed]: { text: 'Server could not start', detail: 'Plumbline', severity: Bad },
  [State.Starting]: { text: 'Server starting', detail: 'Plumbline', severity: Information },
  [State.Running]: { text: 'Server running', detail: 'Plumbline', severity: Information },
};

function siteWords({ site, devices, streams, errors, warnings }: SiteStatus): Words {
  const found = [errors && counted(errors, 'error'), warnings && counted(warnings, 'warning')].filter(Boolean);
  return {
    text: `${site || 'Site'}: ${found.join(', ') || 'no problems'}`,
    detail: `${counted(devices, 'device')}, ${counted(streams, 'stream')}`,
    severity: errors > 0 ? Bad : warnings > 0 ? Warning : Information,
  };
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
