// Opens the file that `npm start` names, and the problems view below it.
const vscode = require('vscode');

exports.activate = async () => {
  await vscode.commands.executeCommand('workbench.actions.view.problems');
  const file = process.env.PLUMBLINE_OPEN;
  if (file) await vscode.window.showTextDocument(vscode.Uri.file(file), { preview: false });
  else await vscode.commands.executeCommand('workbench.action.focusActiveEditorGroup');
};
