// The programs that a test with a real VS Code needs.
import { installEditor, installedEditor } from '../../client/open/install.ts';
import type { EmbeddedEditor } from '../../client/open/install.ts';
import { unavailable } from '../availability.ts';
import { chromiumPath } from './browser.ts';

export interface EditorAndBrowser {
  readonly editor: EmbeddedEditor;
  /** Path of the browser's program. */
  readonly chromium: string;
}

/**
 * The embedded editor and Chromium; skips the tests, with the reason, where one is not here.
 * In CI the editor is fetched. Called from a `before` hook.
 */
export async function editorAndBrowser(context: Mocha.Context): Promise<EditorAndBrowser> {
  const chromium = chromiumPath();
  if (!chromium) unavailable(context, 'there is no Chromium on the PATH, and CHROMIUM names none');
  const editor = process.env['CI'] ? await installEditor(console.log) : installedEditor();
  if (!editor) unavailable(context, 'the embedded editor is not here; `npm start -- --embedded` fetches it');
  return { editor, chromium };
}
