// The walkthrough in a real VS Code: every button does something that this VS Code knows, and has its page.
import assert from 'node:assert/strict';
import * as vscode from 'vscode';

interface Step {
  readonly id: string;
  readonly description: string;
  readonly media: { readonly markdown: string };
  readonly completionEvents: readonly string[];
}

describe('the walkthrough', () => {
  const extension = vscode.extensions.getExtension('plumbline.plumbline');
  const { contributes } = (extension?.packageJSON ?? {}) as { contributes?: { walkthroughs?: { steps: Step[] }[] } };
  const steps = contributes?.walkthroughs?.flatMap(({ steps: own }) => own) ?? [];

  it('has few steps', () => assert.ok(steps.length >= 3 && steps.length <= 5));

  for (const { id, description, media, completionEvents } of steps) {
    it(`does something at the step ${id}, and is done with it then`, async () => {
      const commands = [...description.matchAll(/\]\(command:([\w.]+)/g)].map((match) => match[1] ?? '');
      assert.equal(commands.length, 1);
      const known = await vscode.commands.getCommands();
      assert.ok(
        commands.every((command) => known.includes(command)),
        `${commands.join()} is known`,
      );
      assert.deepEqual(
        completionEvents,
        commands.map((command) => `onCommand:${command}`),
      );
      assert.ok(extension);
      const page = await vscode.workspace.fs.readFile(vscode.Uri.joinPath(extension.extensionUri, media.markdown));
      assert.ok(page.length > 0);
    });
  }
});
