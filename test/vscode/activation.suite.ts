// How long the editor waits for the extension, by the editor's own marks.
import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { bareParse } from '../bench/bare-parse.ts';
import { generatedSite } from '../bench/generated-site.ts';

/** Where VS Code's extension host notes when what began and ended; seen in 1.139, documented nowhere. */
interface Marks {
  getMarks(): readonly { readonly name: string; readonly startTime: number }[];
}

/** Of `yaml`'s bare parse of 3,000 lines in the same process: 100 ms where that takes 24. */
const MOST = 4;

describe('activation', () => {
  it('keeps nobody waiting', async function () {
    const extension = vscode.extensions.getExtension('plumbline.plumbline');
    assert.ok(extension, 'the extension is there');
    await extension.activate();
    const marks = (globalThis as { MonacoPerformanceMarks?: Marks }).MonacoPerformanceMarks?.getMarks();
    assert.ok(marks, 'the editor notes times');
    const at = (what: string): number => {
      const mark = marks.find(({ name }) => name === `code/extHost/${what}/${extension.id}`);
      assert.ok(mark, `the editor has noted ${what}`);
      return mark.startTime;
    };
    const loaded = at('didLoadExtensionCode') - at('willLoadExtensionCode');
    const activated = at('didActivateExtension') - at('willActivateExtension');
    const floor = bareParse(generatedSite(3000)).median;
    const said = `code loaded in ${loaded} ms, activated in ${activated} ms, a bare parse of 3,000 lines in ${floor.toFixed(0)} ms`;
    this.runnable().title += `: ${said}`;
    assert.ok(loaded + activated < MOST * floor, said);
  });
});
