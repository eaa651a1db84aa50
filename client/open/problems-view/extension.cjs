// Opens the file that `npm start` names, at its first problem, and the problems view below it. Offers a new site where
// there is none.
const vscode = require('vscode');

async function offerNewSite() {
  const newSite = 'New site';
  const chosen = await vscode.window.showInformationMessage('This folder has no site yet.', newSite);
  if (chosen === newSite) await vscode.commands.executeCommand('plumbline.newSite');
}

exports.activate = async ({ subscriptions }) => {
  await vscode.commands.executeCommand('workbench.actions.view.problems');
  const file = process.env.PLUMBLINE_OPEN;
  if (file) await vscode.window.showTextDocument(vscode.Uri.file(file), { preview: false });
  else await vscode.commands.executeCommand('workbench.action.focusActiveEditorGroup');
  const sites = await vscode.workspace.findFiles('**/*.site.yaml', null, 1);
  if (sites.length === 0) void offerNewSite();

  const told = vscode.languages.onDidChangeDiagnostics(show);
  subscriptions.push(told);
  show();

  /** Shows it once, and not where the user has opened something else in the meantime. */
  function show() {
    const editor = vscode.window.activeTextEditor;
    if (!editor) return;
    const problems = vscode.languages
      .getDiagnostics(editor.document.uri)
      .sort((one, other) => one.severity - other.severity || one.range.start.compareTo(other.range.start));
    if (problems.length === 0) return;
    told.dispose();
    if (!editor.selection.isEqual(new vscode.Selection(0, 0, 0, 0))) return;
    const { start } = problems[0].range;
    editor.selection = new vscode.Selection(start, start);
    editor.revealRange(problems[0].range, vscode.TextEditorRevealType.InCenter);
  }
};
