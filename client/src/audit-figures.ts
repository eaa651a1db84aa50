// The figures of audits as documents, which can be opened until the audit is cleared.
import * as vscode from 'vscode';
import type { AuditKind } from '../../server/src/audit/audited.ts';

export const auditScheme = 'plumbline-audit';

export class AuditFigures implements vscode.TextDocumentContentProvider, vscode.Disposable {
  private readonly changed = new vscode.EventEmitter<vscode.Uri>();
  readonly onDidChange = this.changed.event;
  private readonly texts = new Map<string, string>();
  /** The audits of each folder, the newest first. */
  private readonly byFolder = new Map<string, AuditKind[]>();
  private readonly registered = vscode.workspace.registerTextDocumentContentProvider(auditScheme, this);

  /** Replaces the figures of the last audit of that kind. */
  take(folder: string, kind: AuditKind, summary: readonly string[]): void {
    const uri = documentOf(folder, kind);
    this.texts.set(uri.toString(), `${summary.join('\n')}\n`);
    const others = (this.byFolder.get(folder) ?? []).filter((one) => one !== kind);
    this.byFolder.set(folder, [kind, ...others]);
    this.changed.fire(uri);
  }

  /** Opens the figures of a kind; without one asks which, where there are several. */
  async show(folder: string, wanted?: AuditKind): Promise<void> {
    const kinds = this.byFolder.get(folder) ?? [];
    if (kinds.length === 0) {
      void vscode.window.showInformationMessage(
        'Nothing has been compared yet. Run “Compare the running system with the plan” first.',
      );
      return;
    }
    const kind = wanted ?? (kinds.length === 1 ? kinds[0] : await pick(kinds));
    if (kind === undefined) return;
    const document = await vscode.workspace.openTextDocument(documentOf(folder, kind));
    await vscode.window.showTextDocument(document, { viewColumn: vscode.ViewColumn.Beside, preview: true });
  }

  clear(folder: string): void {
    for (const kind of this.byFolder.get(folder) ?? []) {
      const uri = documentOf(folder, kind);
      this.texts.delete(uri.toString());
      this.changed.fire(uri);
    }
    this.byFolder.delete(folder);
  }

  provideTextDocumentContent(uri: vscode.Uri): string {
    return (
      this.texts.get(uri.toString()) ??
      'These figures have been cleared. Compare the running system with the plan again to see new ones.\n'
    );
  }

  dispose(): void {
    this.registered.dispose();
    this.changed.dispose();
  }
}

/** The folder and the audit of a document of figures; `undefined` for any other document. */
export function auditOf(uri: vscode.Uri | undefined): { folder: string; by: string } | undefined {
  return uri?.scheme === auditScheme ? { folder: uri.query, by: uri.path.slice(TITLE.length) } : undefined;
}

const TITLE = '/Audit of ';

function documentOf(folder: string, kind: AuditKind): vscode.Uri {
  return vscode.Uri.from({ scheme: auditScheme, path: TITLE + kind, query: folder });
}

async function pick(kinds: readonly AuditKind[]): Promise<AuditKind | undefined> {
  const picked = await vscode.window.showQuickPick(kinds, {
    title: 'Show audit figures',
    placeHolder: 'Of which audit?',
  });
  return kinds.find((kind) => kind === picked);
}
