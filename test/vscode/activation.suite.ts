// The extension starts by itself, and the editor's own marks show how long that took.
import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { eventually } from './eventually.ts';

/** Where VS Code's extension host notes when what began and ended; seen in 1.139, documented nowhere. */
interface Marks {
  getMarks(): readonly { readonly name: string; readonly startTime: number }[];
}

describe('activation', () => {
  it('comes with a folder that holds a site', async function () {
    const extension = vscode.extensions.getExtension('plumbline.plumbline');
    assert.ok(extension, 'the extension is there');
    await eventually(() => assert.ok(extension.isActive));
    const marks = (globalThis as { MonacoPerformanceMarks?: Marks }).MonacoPerformanceMarks?.getMarks();
    const took = (from: string, to: string): string => {
      const [begun, done] = [from, to].map((what) =>
        marks?.find(({ name }) => name.endsWith(`/${what}/${extension.id}`)),
      );
      return begun === undefined || done === undefined ? 'unknown' : `${done.startTime - begun.startTime} ms`;
    };
    const loaded = took('willLoadExtensionCode', 'didLoadExtensionCode');
    this.runnable().title += `: loaded in ${loaded}, activated in ${took('willActivateExtension', 'didActivateExtension')}`;
  });
});
