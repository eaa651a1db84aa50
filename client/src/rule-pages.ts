// The page of a rule, as the editor shows Markdown: read-only, and beside the text.
import * as vscode from 'vscode';

const command = 'plumbline.showRule';

/** The editor's own command, of an extension that comes with it. */
const preview = 'markdown.showPreviewToSide';

/** The address that leads to the page of a rule; the server puts the rule's name in. */
export const rulePageLink = `command:${command}?%5B%22{rule}%22%5D`;

/** The folder with a page for each rule. */
export function rulePagesOf(context: vscode.ExtensionContext): vscode.Uri {
  return vscode.Uri.joinPath(context.extensionUri, 'schemas', 'rules');
}

export function registerRulePages(folder: vscode.Uri, log: vscode.LogOutputChannel): vscode.Disposable {
  return vscode.commands.registerCommand(command, async (rule: unknown) => {
    if (typeof rule !== 'string' || !/^[a-z0-9-]+$/.test(rule)) return;
    const page = vscode.Uri.joinPath(folder, `${rule}.md`);
    try {
      await vscode.commands.executeCommand(preview, page);
    } catch (error) {
      // The extension for Markdown may be disabled.
      log.info(`${preview} failed: ${String(error)}`);
      await vscode.window.showTextDocument(page, { viewColumn: vscode.ViewColumn.Beside, preview: true });
    }
  });
}
